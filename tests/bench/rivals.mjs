// General-purpose engines from npm on the same nine bodies: `cargo xtask bench`.
//
// Reads bodies, hinges and line (SI, JSON) from standard input; argument: the folder that has the engines.
// Each engine drops the worker 0.6 m onto a spring of 30 kN strain force and 8 m and runs on to 3 s. That is
// less than a whole answer: no house, no ladder, no absorber, no energy kept. Told: simulated seconds a second
// (median of 7), and how far the largest force is from the same engine's at 1/7680 s.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { resolve } from 'node:path';

const require = createRequire(resolve(process.argv[2], 'x.js'));
const { bodies, hinges, dring } = JSON.parse(readFileSync(0, 'utf8'));
const G = 9.80665, STIFF = 30000 / 8, SLACK = 0.6, LENGTH = 8, RUN_S = 3;

const world = (b, q) => [b.x + q[0] * Math.cos(b.angle) - q[1] * Math.sin(b.angle),
  b.y + q[0] * Math.sin(b.angle) + q[1] * Math.cos(b.angle)];
const at = world(bodies[0], dring);
const anchor = [at[0], at[1] + LENGTH - SLACK];

/** Runs one fall; `engine` has step(dt, force or null) and ring() = [x, y]. The largest force, N. */
function fall(engine, dt) {
  let peak = 0;
  for (let i = 0, n = Math.round(RUN_S / dt); i < n; i++) {
    const d = engine.ring();
    const x = anchor[0] - d[0], y = anchor[1] - d[1], l = Math.hypot(x, y);
    const f = Math.max(0, STIFF * (l - LENGTH));
    peak = Math.max(peak, f);
    engine.step(dt, f > 0 ? [f * x / l, f * y / l] : null, d);
  }
  return peak;
}

const planck = require('planck');
function planckWorker() {
  const w = new planck.World({ gravity: { x: 0, y: -G }, allowSleep: false });
  const all = bodies.map((b) => {
    const body = w.createBody({ type: 'dynamic', position: { x: b.x, y: b.y }, angle: b.angle });
    body.createFixture({ shape: new planck.Circle(b.radius), density: 1, filterMaskBits: 0 });
    body.setMassData({ mass: b.mass, center: { x: 0, y: 0 }, I: b.inertia });
    return body;
  });
  for (const h of hinges) {
    w.createJoint(new planck.RevoluteJoint({ localAnchorA: { x: h.on_parent[0], y: h.on_parent[1] },
      localAnchorB: { x: h.on_child[0], y: h.on_child[1] }, lowerAngle: h.limits[0], upperAngle: h.limits[1],
      enableLimit: true, collideConnected: false }, all[h.parent], all[h.child]));
  }
  const local = { x: dring[0], y: dring[1] };
  return {
    ring() { const q = all[0].getWorldPoint(local); return [q.x, q.y]; },
    step(dt, f, d) {
      if (f) all[0].applyForce({ x: f[0], y: f[1] }, { x: d[0], y: d[1] }, true);
      w.step(dt, 8, 3);
    },
    free() {},
  };
}

const rapier = require('@dimforge/rapier2d-compat');
function rapierWorker() {
  const w = new rapier.World({ x: 0, y: -G });
  const all = bodies.map((b) => w.createRigidBody(rapier.RigidBodyDesc.dynamic().setTranslation(b.x, b.y)
    .setRotation(b.angle).setCanSleep(false).setAdditionalMassProperties(b.mass, { x: 0, y: 0 }, b.inertia)));
  for (const h of hinges) {
    const j = w.createImpulseJoint(rapier.JointData.revolute({ x: h.on_parent[0], y: h.on_parent[1] },
      { x: h.on_child[0], y: h.on_child[1] }), all[h.parent], all[h.child], true);
    j.setLimits(h.limits[0], h.limits[1]);
  }
  return {
    ring() { const t = all[0].translation(); return world({ x: t.x, y: t.y, angle: all[0].rotation() }, dring); },
    step(dt, f, d) {
      w.timestep = dt;
      all[0].resetForces(true);
      all[0].resetTorques(true);
      if (f) all[0].addForceAtPoint({ x: f[0], y: f[1] }, { x: d[0], y: d[1] }, true);
      w.step();
    },
    free() { w.free(); },
  };
}

await rapier.init();
console.log(`${'nine bodies in node'.padEnd(28)}${'step'.padStart(10)}${'sim. s per s'.padStart(16)}${'force off by'.padStart(16)}`);
for (const [name, make] of [['planck', planckWorker], ['rapier2d-compat', rapierWorker]]) {
  const run = (dt) => { const e = make(); const peak = fall(e, dt); e.free(); return peak; };
  const fine = run(1 / 7680);
  for (const hz of [960, 480]) {
    const times = [];
    let peak = 0;
    for (let i = 0; i < 7; i++) {
      const a = performance.now();
      peak = run(1 / hz);
      times.push(performance.now() - a);
    }
    times.sort((a, b) => a - b);
    const off = `${(100 * Math.abs(peak / fine - 1)).toFixed(2)} %`;
    console.log(`${name.padEnd(28)}${`1/${hz} s`.padStart(10)}${(RUN_S / times[3] * 1e3).toFixed(0).padStart(16)}${off.padStart(16)}`);
  }
}
