//! Whether a set-up is geometrically possible.

use super::body::{Part, capsules, standing};
use super::house::{Geometry, TOP_OF_LADDER_M};
use super::plane::p;
use crate::scenario::{Problem, ProblemCode, Scenario, Stance};
use serde::{Deserialize, Serialize};

/// A set-up that can be simulated: every number in range, every place possible. Only [`SetUp::check`]
/// makes one, so that whoever holds one need not ask again; it reads like its [`Scenario`].
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(try_from = "Scenario", into = "Scenario")]
pub struct SetUp {
    scenario: Scenario,
    geometry: Geometry,
}

impl SetUp {
    /// Checks a scenario and works every place out.
    ///
    /// # Errors
    /// Everything that is out of range, not finite or geometrically impossible.
    pub fn check(scenario: Scenario) -> Result<SetUp, Vec<Problem>> {
        match looked_at(&scenario) {
            (found, Some(geometry)) if found.is_empty() => Ok(SetUp { scenario, geometry }),
            (found, _) => Err(found),
        }
    }

    /// The choices.
    pub fn scenario(&self) -> &Scenario {
        &self.scenario
    }

    /// Where everything is.
    pub fn geometry(&self) -> &Geometry {
        &self.geometry
    }

    /// The same with a change, checked again.
    ///
    /// # Errors
    /// As [`SetUp::check`].
    pub fn with(&self, change: impl FnOnce(&mut Scenario)) -> Result<SetUp, Vec<Problem>> {
        let mut s = self.scenario.clone();
        change(&mut s);
        SetUp::check(s)
    }
}

impl TryFrom<Scenario> for SetUp {
    type Error = String;
    fn try_from(scenario: Scenario) -> Result<SetUp, String> {
        SetUp::check(scenario).map_err(|found| found.first().map_or("", |p| p.field).to_owned())
    }
}

impl From<SetUp> for Scenario {
    fn from(s: SetUp) -> Scenario {
        s.scenario
    }
}

impl core::ops::Deref for SetUp {
    type Target = Scenario;
    fn deref(&self) -> &Scenario {
        &self.scenario
    }
}

impl Scenario {
    /// [`SetUp::check`] of a copy.
    ///
    /// # Errors
    /// What is wrong with it.
    pub fn set_up(&self) -> Result<SetUp, Vec<Problem>> {
        SetUp::check(self.clone())
    }

    /// Everything that is out of range, not finite or geometrically impossible. Empty means the
    /// set-up can be simulated. Never panics, whatever the numbers are.
    pub fn problems(&self) -> Vec<Problem> {
        looked_at(self).0
    }
}

/// What is wrong with a scenario, and where everything is as far as that can be said.
fn looked_at(s: &Scenario) -> (Vec<Problem>, Option<Geometry>) {
    let mut found = s.range_problems();
    // Geometry is only meaningful once every number is.
    if !found.is_empty() {
        return (found, None);
    }
    let geometry = Geometry::of(s);
    match &geometry {
        Some(g) => geometric_problems(s, g, &mut found),
        None => found.push(Problem { code: ProblemCode::LadderTooShort, field: "ladder.length_m" }),
    }
    (found, geometry)
}

fn geometric_problems(s: &Scenario, g: &Geometry, found: &mut Vec<Problem>) {
    let mut add = |code, field| found.push(Problem { code, field });
    let slope_m = g.ridge.dist(g.eave);
    let a = s.anchor.from_ridge_m;
    if a > slope_m - 0.05 || -a > slope_m - 0.05 {
        add(ProblemCode::AnchorOffRoof, "anchor.from_ridge_m");
    }
    if let Some((left, right, top)) = g.obstacle {
        // The ladder crosses heights up to `top` between its foot and x_at(top).
        let (x0, x1) = (g.ladder.x_at(top.min(g.ladder.support.y)), g.ladder.foot.x);
        if x1 > left - 0.02 && x0 < right + 0.02 {
            add(ProblemCode::LadderInObstacle, "ladder.foot_distance_m");
        }
    }
    match s.stance {
        Stance::Ladder { standing_height_m: y } => {
            if y > g.ladder.tip.y - TOP_OF_LADDER_M || y > g.eave.y {
                add(ProblemCode::StandsAboveLadder, "stance.ladder.standing_height_m");
                return;
            }
        }
        Stance::Roof { from_eave_m: d } => {
            if d > slope_m - 0.3 {
                add(ProblemCode::StandsOffRoof, "stance.roof.from_eave_m");
                return;
            }
            if a > slope_m - d - 0.5 {
                add(ProblemCode::AnchorBelowWorker, "anchor.from_ridge_m");
                return;
            }
        }
    }
    let pose = standing(g.soles, s.worker.stature_m, &s.stance, s.house.roof_pitch_rad);
    let caps = capsules(s.worker.mass_kg, s.worker.stature_m);
    let in_house = Part::ALL.iter().filter(|q| !q.is_arm()).any(|&part| {
        let (c, q) = (&caps[part as usize], &pose[part as usize]);
        [1.0, 0.0, -1.0].iter().any(|k| {
            let at = q.place(p(0.0, k * c.half_length_m));
            g.depth_in_house_m(at) > -c.radius_m
        })
    });
    // Nor in what stands below, arms and all.
    let in_obstacle = g.obstacle.is_some_and(|(left, right, top)| {
        pose.iter().zip(&caps).any(|(q, c)| {
            [1.0, 0.0, -1.0].iter().any(|k| {
                let (at, r) = (q.place(p(0.0, k * c.half_length_m)), c.radius_m);
                at.x + r > left && at.x - r < right && at.y - r < top
            })
        })
    });
    if in_obstacle && matches!(s.stance, Stance::Ladder { .. }) {
        add(ProblemCode::LadderInObstacle, "ladder.foot_distance_m");
    }
    if in_house && matches!(s.stance, Stance::Ladder { .. }) {
        add(ProblemCode::WorkerInHouse, "stance.ladder.standing_height_m");
    }
    if g.grab.dist(g.dring) > s.lanyard.length_m + 1e-6 {
        add(ProblemCode::GrabOutOfReach, "grab.above_dring_m");
    }
    if g.grab_rope_m < 0.1 {
        add(ProblemCode::GrabPastAnchor, "grab.above_dring_m");
    }
    if g.grab_rope_m + s.lifeline.slack_m > s.lifeline.length_m - 0.05 {
        add(ProblemCode::LifelineTooShort, "lifeline.length_m");
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::{LadderTop, P, ladder_line, taut_path};

    #[test]
    fn the_default_set_up_has_no_problem() {
        assert_eq!(Scenario::default().problems(), vec![]);
    }

    #[test]
    fn a_taut_rope_bends_over_the_eave_only_while_it_must() {
        let s = Scenario::default();
        let g = Geometry::of(&s).expect("stands");
        // Hanging outside: over the eave, not the fascia's lower edge.
        assert_eq!(taut_path(g.anchor, &g.corners, p(1.0, 3.0)), vec![g.anchor, g.eave, p(1.0, 3.0)]);
        // Swung in under the soffit: over both.
        assert_eq!(taut_path(g.anchor, &g.corners, p(0.1, 3.0)).len(), 4);
        // Standing on the roof: straight.
        assert_eq!(taut_path(g.anchor, &g.corners, p(-1.0, 9.0)).len(), 2);
        // Anchored on the far slope: over the ridge too.
        let far = Scenario { anchor: crate::scenario::Anchor { from_ridge_m: -2.0, ..s.anchor }, ..s };
        let g = Geometry::of(&far).expect("stands");
        assert_eq!(taut_path(g.anchor, &g.corners, p(1.0, 3.0)).len(), 4);
    }

    /// A bug: four of five workers began with a shin or a knee in the rails, which up to 900 J came from. The
    /// rails are 0.03 m thick; a centimetre of flesh against them is no more than standing there.
    #[test]
    fn nobody_begins_inside_the_ladder() {
        for stature_m in [1.5, 1.75, 2.0] {
            for foot_m in [0.3, 0.6, 1.0, 1.45, 2.0] {
                let mut s = Scenario::default();
                s.worker.stature_m = stature_m;
                s.ladder.foot_distance_m = foot_m;
                let g = Geometry::of(&s).expect("stands");
                let pose = standing(g.soles, stature_m, &s.stance, s.house.roof_pitch_rad);
                let caps = capsules(s.worker.mass_kg, stature_m);
                let (a, b) = (g.ladder.foot, g.ladder.tip);
                let l = a.dist(b);
                for part in Part::ALL.into_iter().filter(|q| !q.is_arm()) {
                    let c = &caps[part as usize];
                    for k in [-1.0, 0.0, 1.0] {
                        let q = pose[part as usize].place(p(0.0, k * c.half_length_m));
                        // Square off the rails, on the worker's side.
                        let off_m = ((b.y - a.y) * (q.x - a.x) - (b.x - a.x) * (q.y - a.y)) / l;
                        assert!(
                            off_m > c.radius_m + 0.03 - 0.01,
                            "{part:?} {stature_m} m, foot out {foot_m} m: {off_m}"
                        );
                    }
                }
            }
        }
    }

    #[test]
    fn a_ladder_too_short_for_the_eave_leans_on_the_wall() {
        let mut s = Scenario::default();
        s.ladder.length_m = 4.0;
        s.ladder.foot_distance_m = 1.0;
        let l = ladder_line(&s).expect("stands");
        assert_eq!(l.top, LadderTop::Wall);
        assert!((l.support.y - 15f64.sqrt()).abs() < 1e-12);
    }

    #[test]
    fn on_falling_ground_the_ladder_stands_lower_and_there_is_more_room() {
        let mut s = Scenario::default();
        let level = Geometry::of(&s).expect("stands");
        s.house.ground_slope_rad = 0.2;
        let g = Geometry::of(&s).expect("stands");
        assert!((g.ladder.foot.y + g.ladder.foot.x * 0.2_f64.tan()).abs() < 1e-12);
        assert_eq!(g.soles, P { x: g.soles.x, ..level.soles });
        assert!(g.surface_below_m(g.soles.x, 0.2) < level.surface_below_m(level.soles.x, 0.2) - 0.1);
        // Too short for the eave: on the wall, and as long as it is.
        s.ladder.length_m = 4.0;
        let l = ladder_line(&s).expect("stands");
        assert_eq!(l.top, LadderTop::Wall);
        assert!((l.foot.dist(l.support) - 4.0).abs() < 1e-12);
    }

    /// Whoever holds one need not ask again: nothing impossible becomes one, and what does is where its
    /// geometry says.
    #[test]
    fn only_a_possible_scenario_becomes_a_set_up() {
        let s = Scenario::default();
        let set_up = s.set_up().expect("possible");
        assert_eq!((set_up.scenario(), Some(set_up.geometry())), (&s, Geometry::of(&s).as_ref()));
        let short = set_up.with(|s| s.lifeline.length_m = 4.0).expect_err("not down to the grab");
        assert_eq!(short.iter().map(|p| p.code).collect::<Vec<_>>(), [ProblemCode::LifelineTooShort]);
        let odd = set_up.with(|s| s.worker.mass_kg = f64::NAN).expect_err("no number");
        assert_eq!(odd.first().map(|p| p.field), Some("worker.mass_kg"));
    }
}
