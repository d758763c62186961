//! Bare bodies on a line, with nothing to strike: for checks against closed forms and published drops.

use super::equipment::LineParams;
use super::line::Line;
use super::run::Run;
use super::world::World;
use crate::geometry::{P, p};

impl Run {
    /// A point mass under an anchor: `slack_m` of free fall on a line of `params` with `grab_rope_m` of rope.
    pub fn point_mass(mass_kg: f64, slack_m: f64, params: LineParams, grab_rope_m: f64) -> Run {
        let at = p(0.0, slack_m - grab_rope_m - params.lanyard_length_m);
        Run::point_mass_at(mass_kg, p(0.0, 0.0), &[], at, params, grab_rope_m)
    }

    /// A point mass anywhere, with the rope over `corners`.
    pub fn point_mass_at(
        mass_kg: f64,
        anchor: P,
        corners: &[P],
        at: P,
        params: LineParams,
        grab_rope_m: f64,
    ) -> Run {
        let world = World::point_mass(mass_kg, at);
        let line = Line::new(params, anchor, corners, world.dring(), grab_rope_m);
        Run::new(world, line, at)
    }

    /// Bodies of any kind under an anchor at the origin.
    pub fn hung(world: World, params: LineParams, grab_rope_m: f64) -> Run {
        let at = world.dring();
        let line = Line::new(params, p(0.0, 0.0), &[], at, grab_rope_m);
        Run::new(world, line, at)
    }

    /// Height of the D-ring now, m.
    pub fn dring_y_m(&self) -> f64 {
        self.dring().y
    }
}
