// Drives the app with random input. The tests put it into the page; the app itself has no such switch.
((seed) => {
  let x = seed || 1;
  const pick = (n) => { x = (x * 48271) % 2147483647; return x % n; };
  window.randomSteps = 0;
  // A question of the browser's own would stop the driver: it is answered here, either way.
  window.confirm = () => pick(2) === 0;
  window.print = () => {};
  const allowed = (e) => e.getClientRects().length && !e.disabled && e.type !== "file"
    && !e.matches("#clear-sure, #print, .sheet-of, .write, .skip, a[download], a[href^=http]");
  setInterval(() => {
    const all = [...document.querySelectorAll("button, input, select, summary, textarea, .drawing, svg.map, svg.roof-view, .pair-pane, [role=spinbutton]")].filter(allowed);
    if (!all.length) return;
    const e = all[pick(all.length)];
    window.randomSteps += 1;
    const say = (kind) => e.dispatchEvent(new Event(kind, { bubbles: true }));
    if (e.matches("input[type=range]")) {
      e.value = Number(e.min) + (pick(1000) / 999) * (Number(e.max) - Number(e.min)); say("input"); say("change");
    } else if (e.matches("select")) {
      e.selectedIndex = pick(e.options.length); say("change");
    } else if (e.matches("input[type=date]")) {
      e.value = ["", "2026-05-01", "2031-12-31"][pick(3)]; say("input"); say("change");
    } else if (e.matches("input[type=text], textarea")) {
      e.value = ["", "7", "-1e9", "abc", "3,5", "99999999999", "=1+1", "0.0001"][pick(8)]; say("input"); say("change");
    } else if (e.matches("[role=spinbutton]")) {
      e.dispatchEvent(new KeyboardEvent("keydown", { bubbles: true, key: ["ArrowUp", "PageDown", "PageUp", "Home"][pick(4)] }));
    } else if (e.matches("svg, .pair-pane")) {
      const b = e.getBoundingClientRect();
      const at = { bubbles: true, clientX: b.left + pick(1000) / 1000 * b.width, clientY: b.top + pick(1000) / 1000 * b.height };
      for (const k of ["pointerdown", "pointermove", "pointerup"]) if (!e.matches(".drawing")) e.dispatchEvent(new PointerEvent(k, { ...at, pointerId: 1 }));
      e.dispatchEvent(new MouseEvent("click", at));
      e.dispatchEvent(new KeyboardEvent("keydown", { bubbles: true, key: ["ArrowLeft", "PageDown", "Home", " "][pick(4)] }));
    } else {
      e.click();
    }
  }, 30);
})(SEED);
