//! What each device is: its parameters in SI, each with its source.
//!
//! A device is a number or two in the arrest line. What is 'assumed' has no published figure that
//! we have read; it is chosen to be plausible and shown as assumed wherever it decides an outcome.
//! Left out: wear, weather, knots (a later model), and any product's own data.

use super::constants::LINE_DAMPING_RATIO;
use crate::scenario::{
    AbsorberClass, Arrow, Bolt, ConnectorState, Gear, HarnessFit, Latch, Lifeline, PackState, RopeEnd,
    RopeKind, RopeState, Scenario, Weather, WebbingState,
};
use crate::strength;
use crate::units::KN_N;

/// Force with which a rope grab drags along the rope unlocked, N (assumed).
pub const GRAB_DRAG_N: f64 = 50.0;
/// How far a grab runs along the rope before it bites, at its drag, m (assumed: the middle of
/// [`GRAB_DEAD_TRAVELS_M`]; it is no part of the stop, and 29 CFR 1926.500(b) counts it as free fall).
pub const GRAB_DEAD_TRAVEL_M: f64 = 0.15;
/// The least and the most of it, m (assumed; EN 353-2 allows a whole arrest of 1 m).
pub const GRAB_DEAD_TRAVELS_M: (f64, f64) = (0.05, 0.3);
/// Travel over which the grip then rises to full, m (assumed).
pub const GRAB_BITE_M: f64 = 0.05;
/// Force at which a locked grab slips, N (assumed at the high end of what EN 353-2 lets a grab do with
/// 100 kg, no more than 6 kN: against the worker where force counts).
pub const GRAB_GRIP_N: f64 = 6.0 * KN_N;
/// The least and the most of it, N: with 100 kg, EN 353-2's two limits (an arrest within 1 m, no more than
/// 6 kN) leave 1.6 to 6 kN for a grab; to 8 kN elsewhere (assumed).
pub const GRAB_GRIPS_N: (f64, f64) = (3.0 * KN_N, 8.0 * KN_N);
/// Grip of a grab whose bolt has worked loose, N (assumed).
pub const GRAB_LOOSE_GRIP_N: f64 = 1.6 * KN_N;
/// Grip of a grab whose latch is open, N (assumed).
pub const GRAB_OPEN_GRIP_N: f64 = 2.0 * KN_N;
/// Slip after which the rope walks out of an open grab, m (assumed).
pub const GRAB_OPEN_RELEASE_M: f64 = 0.3;
/// Friction of rope over a roof edge (check 25 uses 0.3; capstan law).
pub const EDGE_FRICTION: f64 = 0.3;
/// Mean force of a tearing absorber as a share of its class figure, least and most (CSA
/// Z259.11-05: real average 65 to 85 %).
pub const ABSORBER_SHARE: (f64, f64) = (0.65, 0.85);
/// The middle of them, for a single fall.
pub const ABSORBER_SHARE_MIDDLE: f64 = 0.75;
/// Mean force as a share of the largest (drop tests with 100 kg: Carrion and others, Int. J.
/// Environ. Res. Public Health 17 (2020) 7647).
pub const MEAN_TO_PEAK_RATIO: f64 = 0.875;
/// Tear over which the opening force falls to the mean one, m (assumed).
pub const ABSORBER_OPENING_M: f64 = 0.1;
/// What a wet and frozen absorber adds to its force, N (CSA Z259.11-05, from memory).
pub const FROZEN_ABSORBER_N: f64 = 2.0 * KN_N;
/// Force with which a pack that tore before pays out what was pushed back into its cover, N
/// (assumed).
pub const TORN_PACK_N: f64 = 30.0;
/// Modulus of the lanyard's webbing, N per unit strain (assumed, stiff beside the rope).
pub const LANYARD_MODULUS_N: f64 = 150.0 * KN_N;
/// Stretch of harness and body together, m/N (assumed: 0.1 m at 4 kN).
pub const HARNESS_COMPLIANCE_M_PER_N: f64 = 0.1 / (4.0 * KN_N);
/// Force at which the D-ring slides up the back, N (assumed).
pub const HARNESS_SLIDE_FORCE_N: f64 = 600.0;
/// How far it slides in a snug harness, m. With the stretch it makes 0.3 m at 4 kN, the 0.3 m (1 ft) that
/// clearance tables allow (OSHA Technical Manual V-4; the 1 ft is from memory).
pub const HARNESS_SLIDE_SNUG_M: f64 = 0.20;
/// How far it slides in a loose harness, m (assumed: 0.2 m more, as straps can be set that far apart for
/// one person; Hsiao, NOIRS 2008, B1.4).
pub const HARNESS_SLIDE_LOOSE_M: f64 = 0.40;
/// Friction of a body or boots that have lost their grip on shingles (assumed: wet or dusty).
pub const ROOF_SLIP_FRICTION: f64 = 0.25;
/// Friction of a body on wall, ladder, ground and obstacles (assumed).
pub const BODY_FRICTION: f64 = 0.4;
/// Speed with which a slip carries the worker off the ladder, away from it, m/s (assumed).
pub const SLIP_OFF_LADDER_M_S: f64 = 0.5;
/// Speed with which a slip starts down the roof, m/s (assumed).
pub const SLIP_DOWN_ROOF_M_S: f64 = 1.0;

/// Breaking load of a sound lifeline, N (EN 1891 A, 22 kN without terminations; 29 CFR 1926.502(d)(9),
/// 5,000 lbf, 22.2 kN; both from memory).
pub const ROPE_BREAKING_N: f64 = 22.0 * KN_N;
/// What a knot leaves of it (from memory: 0.4 to 0.6).
pub const KNOT_SHARE: f64 = 0.5;
/// Breaking load of a lifeline whose core shows, N (assumed).
pub const FRAYED_ROPE_N: f64 = 1.8 * KN_N;
/// Breaking load of lanyard, connectors and harness together, N (EN 354, 362, 361: 15 kN and more;
/// from memory).
pub const LINK_BREAKING_N: f64 = 15.0 * KN_N;
/// Load at which an unlocked gate lets the ring out, N (assumed).
pub const UNLOCKED_GATE_N: f64 = 1.5 * KN_N;
/// Breaking load of a connector pitted by rust, N (assumed).
pub const CORRODED_CONNECTOR_N: f64 = 5.0 * KN_N;
/// Breaking load of webbing cut in from the edge, N (assumed).
pub const CUT_WEBBING_N: f64 = 1.8 * KN_N;

/// Elongation of a lifeline at [`ROPE_TABLE_N`], as a share of its length, as makers print it: 16 mm
/// polyester and polypropylene 10 %, 12 mm polyester 25 %, 12 mm nylon 27 % (makers' lifeline
/// instructions, read in a secondary list).
pub const ROPE_ELONGATIONS: [(RopeKind, f64); 3] =
    [(RopeKind::PolyBlend16, 0.10), (RopeKind::Polyester12, 0.25), (RopeKind::Nylon12, 0.27)];
/// The load at which makers print a lifeline's elongation, N: 1,800 lbf.
pub const ROPE_TABLE_N: f64 = 8_006.8;
/// Modulus of an 11 mm kernmantle rope, N per unit strain: between the 19.6 and 41.2 kN that the limits of
/// EN 1891 type A allow (elongation of 5 % from 50 to 150 kg; 6 kN at a fall factor of 0.3 with 100 kg).
pub const KERNMANTLE_MODULUS_N: f64 = 30.0 * KN_N;

/// Force per unit strain of a lifeline, N.
pub fn rope_modulus_n(line: &Lifeline) -> f64 {
    match line.kind {
        RopeKind::Stated => line.modulus_n,
        RopeKind::Kernmantle11 => KERNMANTLE_MODULUS_N,
        kind => ROPE_ELONGATIONS
            .iter()
            .find(|(k, _)| *k == kind)
            .map_or(KERNMANTLE_MODULUS_N, |(_, share)| ROPE_TABLE_N / share),
    }
}

/// What the rope bears, N.
pub fn rope_strength_n(gear: &Gear) -> f64 {
    match gear.rope {
        RopeState::Sound => ROPE_BREAKING_N,
        RopeState::Frayed => FRAYED_ROPE_N,
        RopeState::Knotted => KNOT_SHARE * ROPE_BREAKING_N,
    }
}

/// What the weakest of lanyard, connectors and harness bears, N.
pub fn link_strength_n(gear: &Gear) -> f64 {
    let connector_n = match gear.connector {
        ConnectorState::Sound => LINK_BREAKING_N,
        ConnectorState::Unlocked => UNLOCKED_GATE_N,
        ConnectorState::Corroded => CORRODED_CONNECTOR_N,
    };
    match gear.webbing {
        WebbingState::Sound => connector_n,
        WebbingState::Cut => connector_n.min(CUT_WEBBING_N),
    }
}

/// The rope grab as the line sees it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct GrabParams {
    /// Drag unlocked, N.
    pub drag_n: f64,
    /// Grip when locked, N.
    pub grip_n: f64,
    /// Slip at its drag before it bites, m.
    pub dead_travel_m: f64,
    /// Slip over which grip then rises from drag to full, m; 0 is at once.
    pub bite_m: f64,
    /// Slip after which it lets the rope go, m.
    pub release_slip_m: Option<f64>,
    /// Whether it locks at all; reversed it only drags.
    pub locks: bool,
}

impl GrabParams {
    /// Force with which it holds after so much slip, N.
    pub fn grip_n(&self, slip_m: f64) -> f64 {
        let drag_n = self.drag_n.min(self.grip_n);
        let bitten_m = slip_m - self.dead_travel_m;
        if !self.locks || bitten_m < 0.0 {
            drag_n
        } else if bitten_m >= self.bite_m {
            self.grip_n
        } else {
            drag_n + (self.grip_n - drag_n) * (bitten_m / self.bite_m)
        }
    }
}

/// The absorber as the line sees it: opens at one force, tears on at another, then hard.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AbsorberParams {
    /// Force at which it opens, N; it falls to the next over [`ABSORBER_OPENING_M`].
    pub opening_n: f64,
    /// Force at which it tears on, N.
    pub force_n: f64,
    /// Most extension, m.
    pub max_extension_m: f64,
}

impl AbsorberParams {
    /// One that opens and tears at the same force.
    pub fn steady(force_n: f64, max_extension_m: f64) -> AbsorberParams {
        AbsorberParams { opening_n: force_n, force_n, max_extension_m }
    }

    /// One of a class whose mean force is `share` of the class figure.
    pub fn of_class(class_n: f64, share: f64, max_extension_m: f64) -> AbsorberParams {
        let force_n = share * class_n;
        AbsorberParams { opening_n: (force_n / MEAN_TO_PEAK_RATIO).min(class_n), force_n, max_extension_m }
    }

    /// Force at which it tears at an extension, N.
    pub fn limit_n(&self, extension_m: f64) -> f64 {
        let left = (1.0 - extension_m / ABSORBER_OPENING_M).max(0.0);
        self.force_n + (self.opening_n - self.force_n) * left
    }

    /// The absorber of a scenario, with the mean force at `share` of its class figure (or as
    /// stated); none where there is none. One that tore before pays out its webbing again, against
    /// next to nothing.
    pub fn of(s: &Scenario, share: f64) -> Option<AbsorberParams> {
        let a = s.lanyard.absorber?;
        if s.gear.pack == PackState::Deployed {
            return Some(AbsorberParams::steady(TORN_PACK_N, a.max_extension_m));
        }
        // What a wet and frozen pack adds, it adds to opening and tearing alike.
        let more_n = if s.weather == Weather::Frozen { FROZEN_ABSORBER_N } else { 0.0 };
        let dry = match class_force_n(a.class) {
            None => AbsorberParams::steady(a.deploy_force_n, a.max_extension_m),
            Some(class_n) => AbsorberParams::of_class(class_n, share, a.max_extension_m),
        };
        Some(AbsorberParams { opening_n: dry.opening_n + more_n, force_n: dry.force_n + more_n, ..dry })
    }
}

/// Figure of an absorber's class, N (CSA Z259.11-05); none where a force is stated.
pub fn class_force_n(class: AbsorberClass) -> Option<f64> {
    match class {
        AbsorberClass::Stated => None,
        AbsorberClass::E4 => Some(4.0 * KN_N),
        AbsorberClass::E6 => Some(6.0 * KN_N),
    }
}

/// Body masses that an absorber's class is made for, kg (CSA Z259.11-05).
pub fn class_masses_kg(class: AbsorberClass) -> Option<(f64, f64)> {
    match class {
        AbsorberClass::Stated => None,
        AbsorberClass::E4 => Some((45.0, 115.0)),
        AbsorberClass::E6 => Some((90.0, 175.0)),
    }
}

/// Everything the arrest line is made of.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LineParams {
    /// Rope modulus, N per unit strain.
    pub rope_modulus_n: f64,
    /// Rope from anchor to end, m.
    pub rope_length_m: f64,
    /// Whether something at the end stops a grab.
    pub end_stop: bool,
    /// Lanyard length, m.
    pub lanyard_length_m: f64,
    /// Lanyard modulus, N per unit strain; infinite is inextensible.
    pub lanyard_modulus_n: f64,
    /// Compliance of harness and body, m/N.
    pub harness_compliance_m_per_n: f64,
    /// Force at which the D-ring slides, N.
    pub harness_slide_force_n: f64,
    /// How far it can slide, m.
    pub harness_slide_m: f64,
    /// Absorber, if any.
    pub absorber: Option<AbsorberParams>,
    /// Rope grab.
    pub grab: GrabParams,
    /// Load at which the anchor gives way, N.
    pub anchor_capacity_n: f64,
    /// Tension at which the rope breaks, N.
    pub rope_strength_n: f64,
    /// Load at which lanyard, connector or harness lets go, N.
    pub link_strength_n: f64,
    /// Capstan coefficient at roof edges.
    pub edge_friction: f64,
    /// Relaxation time of the line's damping, s: damping = stiffness times this.
    pub relaxation_s: f64,
}

impl LineParams {
    /// An ideal elastic rope with nothing else on it, for closed forms: no damping, no friction,
    /// no slide, a grab that grips at once and an anchor that never gives.
    pub fn ideal(rope_modulus_n: f64, rope_length_m: f64) -> LineParams {
        LineParams {
            rope_modulus_n,
            rope_length_m,
            end_stop: true,
            lanyard_length_m: 0.0,
            lanyard_modulus_n: f64::INFINITY,
            harness_compliance_m_per_n: 0.0,
            harness_slide_force_n: 0.0,
            harness_slide_m: 0.0,
            absorber: None,
            grab: GrabParams {
                drag_n: 0.0,
                grip_n: f64::INFINITY,
                dead_travel_m: 0.0,
                bite_m: 0.0,
                release_slip_m: None,
                locks: true,
            },
            anchor_capacity_n: f64::INFINITY,
            rope_strength_n: f64::INFINITY,
            link_strength_n: f64::INFINITY,
            edge_friction: 0.0,
            relaxation_s: 0.0,
        }
    }

    /// The line of a scenario.
    pub fn of(s: &Scenario) -> LineParams {
        let mut grip_n = GRAB_GRIP_N;
        if s.grab.bolt == Bolt::Loose {
            grip_n = grip_n.min(GRAB_LOOSE_GRIP_N);
        }
        if s.grab.latch == Latch::Open {
            grip_n = grip_n.min(GRAB_OPEN_GRIP_N);
        }
        // Damping about a mass on the whole rope's stiffness.
        let modulus_n = rope_modulus_n(&s.lifeline);
        let k = modulus_n / 6.0;
        let relaxation_s = 2.0 * LINE_DAMPING_RATIO * (s.worker.mass_kg / k).sqrt();
        LineParams {
            rope_modulus_n: modulus_n,
            rope_length_m: s.lifeline.length_m,
            end_stop: s.lifeline.end != RopeEnd::Nothing,
            lanyard_length_m: s.lanyard.length_m,
            lanyard_modulus_n: LANYARD_MODULUS_N,
            harness_compliance_m_per_n: HARNESS_COMPLIANCE_M_PER_N,
            harness_slide_force_n: HARNESS_SLIDE_FORCE_N,
            harness_slide_m: match s.worker.harness {
                HarnessFit::Snug => HARNESS_SLIDE_SNUG_M,
                HarnessFit::Loose => HARNESS_SLIDE_LOOSE_M,
            },
            absorber: AbsorberParams::of(s, ABSORBER_SHARE_MIDDLE),
            grab: GrabParams {
                drag_n: GRAB_DRAG_N,
                grip_n,
                dead_travel_m: GRAB_DEAD_TRAVEL_M,
                bite_m: GRAB_BITE_M,
                release_slip_m: (s.grab.latch == Latch::Open).then_some(GRAB_OPEN_RELEASE_M),
                locks: s.grab.arrow == Arrow::Up,
            },
            // The weakest in twenty: against the worker.
            anchor_capacity_n: strength::anchor(s).low.0,
            rope_strength_n: rope_strength_n(&s.gear),
            link_strength_n: link_strength_n(&s.gear),
            edge_friction: EDGE_FRICTION,
            relaxation_s,
        }
    }
}
