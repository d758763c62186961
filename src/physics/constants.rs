//! Step, tolerances and thresholds, each with its reason. Assumed figures of devices stand in `equipment`, the
//! spans that are asked of a fall in `neighbours`.

/// Steps in a second. 1/960 s keeps the peak force of a point mass on the line within 0.05 % of
/// the closed form over the whole grid of `tests/closed_forms.rs`.
pub const STEPS_PER_S: u32 = 960;
/// One step, s: undisturbed motion is made two at once, what is rough in parts.
pub const DT_S: f64 = 1.0 / STEPS_PER_S as f64;
/// A run that has not come to rest by now ends, s.
pub const LONGEST_RUN_S: f64 = 8.0;
/// Samples kept in a trace: one in this many steps (240 a second, four a frame at 60 Hz).
pub const STEPS_PER_SAMPLE: usize = 4;
/// Steps between two looks at the joints' gaps.
pub const STEPS_PER_JOINT_LOOK: usize = 16;
/// A run whose energy balance is off by more than this share is not graded.
pub const RESIDUAL_LIMIT: f64 = 0.01;
/// Nor one in which a joint comes open by more than this, m.
pub const OPEN_JOINT_M: f64 = 1e-4;
/// Floor of the energy the residual is measured against, J: a run with next to no fall has no
/// energy to balance.
pub const RESIDUAL_FLOOR_J: f64 = 50.0;
/// Line force above which the line counts as taut, N: above the drag of a running grab.
pub const TAUT_FORCE_N: f64 = 100.0;
/// At rest: kinetic energy under this, J (85 kg at 0.24 m/s) ...
pub const REST_ENERGY_J: f64 = 2.5;
/// ... for this long, s.
pub const REST_TIME_S: f64 = 0.4;
/// Damping ratio of the line about the worker's mass (assumed; design value, light).
pub const LINE_DAMPING_RATIO: f64 = 0.05;
/// Relaxation of the line's slip solve stops when no force moves by more than this, N.
pub const SLIP_TOLERANCE_N: f64 = 1e-6;
/// Most sweeps of the slip solve; it needs 3 to 12.
pub const SLIP_SWEEPS: usize = 200;
/// An impact slower than this is a touch, not a blow, m/s.
pub const TOUCH_SPEED_M_S: f64 = 0.3;

/// A grab that slips further than this runs, m.
pub const RUNS_M: f64 = 0.3;
/// Less than this is no new lowest point, m.
pub const LOWER_M: f64 = 1e-6;
/// How deep somebody who leans on the side of an obstacle is in it at most, m.
pub const LEANS_M: f64 = 0.03;
/// Contacts of one thing nearer in time than this are one blow, s.
pub const SAME_BLOW_S: f64 = 0.1;
/// Boots on the roof are no blow until then, s.
pub const BOOTS_S: f64 = 0.15;

/// Time without a new lowest point after which a held worker counts as stopped, s: a swing back
/// under the anchor takes longer only on ropes that cannot reach lower.
pub const SETTLED_TIME_S: f64 = 0.5;

/// While the line has more slack than this, two steps are made as one, m: more than a worker falls in them.
pub const COARSE_SLACK_M: f64 = 0.05;

/// Time without a new figure after which the run of a held worker ends, s.
pub const TOLD_TIME_S: f64 = 2.0;

/// Stiffness of flesh and clothes where a body part presses on something, N/m (assumed: 85 kg lying on
/// three places sink in by 12 mm) ...
pub const SKIN_N_PER_M: f64 = 20_000.0;
/// ... the depth at which force over depth has doubled, m ...
pub const SKIN_HARDENS_M: f64 = 0.03;
/// ... the speed of approach at which damping adds the spring's own force, m/s (a body does not bounce) ...
pub const SKIN_DAMPING_M_S: f64 = 1.0;
/// ... and the speed of slip under which friction fades towards rest, m/s.
pub const SKIN_STICK_M_S: f64 = 0.1;
/// The same for a ladder's feet and rails on ground and house, m/s (rubber and metal: they stand still).
pub const FOOT_STICK_M_S: f64 = 0.005;
/// Stiffness of a landing as a multiple of that of flesh elsewhere (assumed: boots, and what is below the skin).
pub const LANDING_STIFF_RATIO: f64 = 4.0;
/// Steps are made in this many parts while the worker tumbles on the roof: knees and back land there, and
/// at 1/960 s a landing is told to 2 % only.
pub const ROUGH_PARTS: usize = 3;
/// Nearer than this counts as about to touch, m: what a body of 9 m/s moves in two steps; on the roof, as tumbling
/// on it ...
pub const NEAR_M: f64 = 0.02;
/// ... while there is more energy in motion than this, J.
pub const ROUGH_ENERGY_J: f64 = 8.0;

/// How far past a folded sheet's edge the D-ring is when the rope bends there, m: before that, what
/// lies over the edge is the harness's own stretch.
pub const OVER_EDGE_M: f64 = 0.1;
/// The bend on an edge moves no further than this in a step, m.
pub const EDGE_MOVE_M: f64 = 0.02;
/// Parts in which a step is made where the rope can drag along the edge: the drop is then off by a
/// millimetre, in one of twenty falls by a centimetre.
pub const EDGE_PARTS: usize = 4;
/// Floor of a segment's compliance, m/N: a rigid segment would be infinitely stiff.
pub const COMPLIANCE_FLOOR_M_PER_N: f64 = 1e-6;
/// Radius of the rails, m.
pub const RAIL_RADIUS_M: f64 = 0.03;
/// Nothing counts as calm before this, s.
pub const CALM_FROM_S: f64 = 0.1;
/// A drop of less than this has no lowest point worth marking, m.
pub const MARKED_DROP_M: f64 = 0.05;
/// With nothing to land on, a run ends this long after its lowest point, s.
pub const ROOMY_S: f64 = 1.0;
/// Stiffness of a joint past the end of its range, N m/rad (assumed: ligaments; a joint that is forced by 100 N m
/// goes 4 degrees further) ...
pub const LIMIT_NM_PER_RAD: f64 = 1_500.0;
/// ... and the rate at which damping there adds the spring's own torque, rad/s (a joint hardly bounces).
pub const LIMIT_DAMPING_RAD_S: f64 = 2.0;
