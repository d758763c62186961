//! The player: a clock over a finished trace. First at true speed, then at 1/8, then the verdict;
//! afterwards at will, forwards and back, by step and by event.

use super::state::{Bench, Phase};
use crate::physics::trace::{EventKind, Trace};
use crate::texts::Key;
use crate::ui::shared::figure::decisive_s;
use crate::ui::shared::settings::Settings;
use crate::ui::shared::view;
use crate::units::{Quantity, Rounding};
use leptos::prelude::*;
use std::time::Duration;

/// Slow motion.
const SLOW: f64 = 1.0 / 8.0;
/// One press of a step key, s: a tenth of a second in slow motion.
const STEP_S: f64 = 1.0 / 80.0;
/// A frame that took longer than this does not jump the clock, s.
const LONGEST_FRAME_S: f64 = 0.1;

/// The clock and who drives it.
#[derive(Clone, Copy)]
pub struct Player {
    pub clock: RwSignal<f64>,
    pub playing: RwSignal<bool>,
    pub slow: RwSignal<bool>,
    generation: StoredValue<u32>,
    bench: Bench,
    settings: Settings,
}

pub fn provide_player(bench: Bench, settings: Settings) -> Player {
    let p = Player {
        clock: RwSignal::new(0.0),
        playing: RwSignal::new(false),
        slow: RwSignal::new(false),
        generation: StoredValue::new(0),
        bench,
        settings,
    };
    provide_context(p);
    // An edit ends the showing.
    Effect::new(move |_| {
        if bench.phase.get() == Phase::Choosing {
            p.stop();
        }
    });
    on_cleanup(move || {
        p.generation.try_update_value(|g| *g += 1);
    });
    p
}

pub fn player() -> Player {
    expect_context()
}

fn now_ms() -> f64 {
    window().performance().map_or(0.0, |p| p.now())
}

impl Player {
    /// Whether the body has come down on something by now: then it is grey, sober, not comic.
    pub fn is_struck(self, bench: Bench) -> bool {
        matches!(bench.phase.get(), Phase::Playing | Phase::Shown)
            && bench.run.with(|r| {
                r.as_ref().is_some_and(|r| {
                    [EventKind::StrikesGround, EventKind::StrikesObstacle]
                        .into_iter()
                        .filter_map(|k| r.trace.time_of(k))
                        .any(|at_s| at_s <= self.clock.get() + 1e-9)
                })
            })
    }

    /// When the first showing ends: a little after the lowest point or the blow that decided it.
    pub fn interest_end(self, t: &Trace) -> f64 {
        let last = [
            EventKind::Lowest,
            EventKind::PeakForce,
            EventKind::StrikesGround,
            EventKind::StrikesObstacle,
            EventKind::StrikesLadder,
        ]
        .into_iter()
        .filter_map(|k| t.time_of(k))
        .fold(0.6, f64::max);
        let landed = [EventKind::StrikesGround, EventKind::StrikesObstacle]
            .into_iter()
            .filter_map(|k| t.time_of(k))
            .fold(f64::INFINITY, f64::min);
        (last.min(landed) + 0.5).min(t.duration_s())
    }

    /// Where the film ends that is looked through afterwards, s: what comes later is a slow swing.
    pub fn film_end_s(self, t: &Trace) -> f64 {
        (self.interest_end(t) + 1.0).min(t.duration_s())
    }

    fn trace_end(self) -> f64 {
        self.bench.run.with_untracked(|r| r.as_ref().map_or(0.0, |r| r.trace.duration_s()))
    }

    /// Locks the prediction, computes and shows the fall.
    pub fn lock_and_play(self) {
        let p = self;
        self.bench.play(self.settings, move |r| {
            p.clock.set(0.0);
            if !r.trace.is_sound() || crate::ui::shared::view::wants_less_motion() {
                p.clock.set(decisive_s(&r.trace));
                p.bench.show(p.settings);
                return;
            }
            p.bench.phase.set(Phase::Playing);
            view::to_view("scene");
            p.bench.said.set(p.settings.reader_now().t(EventKind::Slip.label()).to_owned());
            p.slow.set(false);
            p.run();
        });
    }

    /// Ends the first showing and gives the verdict.
    pub fn skip(self) {
        self.stop();
        if let Some(r) = self.bench.run.get_untracked() {
            self.clock.set(decisive_s(&r.trace));
        }
        self.bench.show(self.settings);
    }

    fn run(self) {
        self.playing.set(true);
        self.generation.update_value(|g| *g += 1);
        self.frame(self.generation.get_value(), now_ms());
    }

    /// Stops the clock where it is.
    pub fn stop(self) {
        self.generation.update_value(|g| *g += 1);
        self.playing.set(false);
    }

    /// Plays or pauses; from the end, starts over.
    pub fn toggle(self) {
        if self.playing.get_untracked() {
            self.stop();
        } else {
            if self.clock.get_untracked() >= self.trace_end() - 1e-6 {
                self.clock.set(0.0);
            }
            self.run();
        }
    }

    /// Plays from the start.
    pub fn again(self, slow: bool) {
        self.slow.set(slow);
        self.clock.set(0.0);
        self.run();
    }

    fn frame(self, generation: u32, last_ms: f64) {
        request_animation_frame(move || {
            if self.generation.try_get_value() != Some(generation) {
                return;
            }
            let now = now_ms();
            let dt = ((now - last_ms) / 1000.0).min(LONGEST_FRAME_S);
            let rate = if self.slow.get_untracked() { SLOW } else { 1.0 };
            let before = self.clock.get_untracked();
            let showing = self.bench.phase.get_untracked() == Phase::Playing;
            let end = if showing {
                self.bench.run.with_untracked(|r| r.as_ref().map_or(0.0, |r| self.interest_end(&r.trace)))
            } else {
                self.trace_end()
            };
            let t = (before + dt * rate).min(end);
            self.clock.set(t);
            if self.slow.get_untracked() {
                self.say_events(before, t);
            }
            if t < end {
                self.frame(generation, now);
            } else if showing {
                self.next_pass(generation);
            } else {
                self.playing.set(false);
            }
        });
    }

    /// After true speed, 1/8; after that, the verdict.
    fn next_pass(self, generation: u32) {
        let slow = self.slow.get_untracked();
        set_timeout(
            move || {
                if self.generation.try_get_value() != Some(generation) {
                    return;
                }
                if slow {
                    self.stop();
                    self.bench.show(self.settings);
                } else {
                    self.slow.set(true);
                    self.clock.set(0.0);
                    self.run();
                }
            },
            Duration::from_millis(600),
        );
    }

    fn say_events(self, from_s: f64, to_s: f64) {
        let said = self.bench.run.with_untracked(|r| {
            r.as_ref().and_then(|r| {
                r.trace
                    .events
                    .iter()
                    .rfind(|e| e.time_s > from_s && e.time_s <= to_s && e.kind != EventKind::End)
                    .map(|e| self.settings.reader_now().t(e.kind.label()))
            })
        });
        if let Some(said) = said {
            self.bench.said.set(said.to_owned());
        }
    }

    /// Goes to a moment and stays there.
    pub fn seek(self, time_s: f64) {
        self.stop();
        self.clock.set(time_s.clamp(0.0, self.trace_end()));
    }

    /// Goes `steps` steps on.
    pub fn step(self, steps: f64) {
        self.seek(self.clock.get_untracked() + steps * STEP_S);
    }

    /// Goes to the next or the previous event and says it.
    pub fn to_event(self, forward: bool) {
        let now = self.clock.get_untracked();
        let found = self.bench.run.with_untracked(|r| {
            let events = &r.as_ref()?.trace.events;
            if forward {
                events.iter().find(|e| e.time_s > now + 1e-6).copied()
            } else {
                events.iter().rfind(|e| e.time_s < now - 1e-6).copied()
            }
        });
        if let Some(e) = found {
            self.seek(e.time_s);
            let r = self.settings.reader_now();
            self.bench.said.set(r.f(
                Key::StillOf,
                &[
                    ("event", r.t(e.kind.label())),
                    ("time", &r.q(Quantity::Time, e.time_s, Rounding::Nearest)),
                ],
            ));
        }
    }

    /// Keys of the drawing.
    pub fn key(self, ev: &web_sys::KeyboardEvent) {
        if self.bench.phase.get_untracked() != Phase::Shown {
            return;
        }
        let fine = if ev.shift_key() { 0.25 } else { 1.0 };
        match ev.key().as_str() {
            " " => self.toggle(),
            "ArrowRight" | "ArrowDown" => self.step(fine),
            "ArrowLeft" | "ArrowUp" => self.step(-fine),
            "PageDown" => self.to_event(true),
            "PageUp" => self.to_event(false),
            "Home" => self.seek(0.0),
            "End" => self.seek(self.trace_end()),
            _ => return,
        }
        ev.prevent_default();
    }
}
