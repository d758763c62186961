//! What a plan of the site walk comes to: said line by line, played, and its card on the screen and on paper.

use super::pair::swing_s;
use super::paper::{Foot, Head};
use super::site::{On, Phase, Plays, Why, method_words, said_of};
use crate::practice::site::*;
use crate::rules::{DutyKind, LimitKind, Method, Severity, place, reserve};
use crate::texts::Room as W;
use crate::texts::Walk as T;
use crate::texts::say::{Reader, upper_first};
use crate::texts::{Gear, Key, Text};
use crate::ui::shared::settings::settings;
use crate::ui::shared::signs::mark;
use crate::ui::shared::view;
use crate::units::{Quantity, Rounding};
use leptos::prelude::*;

/// How near to a wire.
fn near_words(r: Reader, m: f64) -> String {
    if m < 0.01 {
        return r.t(T::Touches).to_owned();
    }
    r.f(T::Near, &[("m", &r.q(Quantity::Length, m, Rounding::Down))])
}

/// A line of what the plan comes to, and how grave it is.
fn line_of(r: Reader, q: Said, on: On) -> (Severity, String) {
    let plain = |key: T| r.t(key).to_owned();
    let up = |q: Quantity, x: f64| r.q(q, x, Rounding::Up);
    let law = on.law.get();
    let severity = match q {
        Said::NeedNotAsk => Severity::Note,
        q if q.is_grave() => Severity::Critical,
        Said::Missed(_) | Said::Wrongly(..) | Said::Before(_) | Said::Meets(_) => Severity::Major,
        _ => Severity::Minor,
    };
    let words = match q {
        Said::NearWire(Sort::Line, m) => {
            let keep = up(Quantity::Length, Site::keep_m(Sort::Line, &law));
            r.f(T::NearLine, &[("near", &near_words(r, m)), ("keep", &keep)])
        }
        Said::NearWire(s, m) => {
            r.f(if s == Sort::Phone { T::NearPhone } else { T::NearDrop }, &[("near", &near_words(r, m))])
        }
        Said::ToAsk(s, m) => r.f(T::ToAsk, &[("what", r.t(s.label())), ("near", &near_words(r, m))]),
        Said::Asked(s) => r.f(T::Asked, &[("what", r.t(s.label()))]),
        Said::Meets(s) => r.f(T::Meets, &[("what", r.t(s.label())), ("does", r.t(s.does()))]),
        Said::Missed(s) => r.f(T::Missed, &[("what", r.t(s.label())), ("does", r.t(s.does()))]),
        Said::Wrongly(s, m) => {
            r.f(T::Wrongly, &[("what", r.t(s.label())), ("said", said_of(r, s, m)), ("does", r.t(s.does()))])
        }
        Said::Before(m) => r.f(T::Before, &[("what", r.t(method_words(m)))]),
        Said::Cannot(m) => cannot(r, m, on),
        Said::FarFromJob(m) => r.f(T::FarFromJob, &[("m", &up(Quantity::Length, m))]),
        Said::Angle(deg) => r.f(T::Angle, &[("deg", &format!("{deg:.0}"))]),
        Said::ComesDown(m) => r.f(T::ComesDown, &[("room", &up(Quantity::Length, m))]),
        Said::SwingsHard(v) => r.f(T::SwingsHard, &[("speed", &up(Quantity::Speed, v))]),
        Said::LittleRoom(m) => {
            let kept = reserve().map_or(String::new(), |l| r.limit(l));
            r.f(T::LittleRoom, &[("room", &r.q(Quantity::Length, m, Rounding::Down)), ("kept", &kept)])
        }
        Said::NotComputed => plain(T::NotComputed),
        Said::FirstBare => plain(T::FirstBare),
        Said::FirstOpen => plain(T::FirstOpen),
        Said::NoLift => plain(T::NoLift),
        Said::OutOfReach(Reach::Window) => plain(T::NoWindow),
        Said::OutOfReach(_) => {
            let all = on.site.with(|s| on.placed.with(|at| on.marks.with(|m| s.beside(at, m, &law))));
            let names: Vec<&str> = all.into_iter().map(|t| r.t(t.label())).collect();
            r.f(T::NoGround, &[("what", &names.join(", "))])
        }
        Said::NobodyReaches => {
            let within = place(&law)
                .and_then(|p| p.limit(LimitKind::RescueMinutes))
                .map(|l| r.f(T::Within, &[("minutes", &r.limit(l))]));
            format!("{} {}", r.t(T::NobodyReaches), within.unwrap_or_default()).trim_end().to_owned()
        }
        Said::ReachOpen => plain(T::ReachOpen),
        Said::WindOpen => plain(T::WindOpen),
        Said::WindOver => plain(T::WindOver),
        Said::NeedNotAsk => plain(T::NeedNotAsk),
    };
    (severity, words)
}

/// Why a method cannot be used here.
fn cannot(r: Reader, m: Method, on: On) -> String {
    let len = |m: f64| r.q(Quantity::Length, m, Rounding::Nearest);
    on.site.with(|s| match m {
        Method::Platform => r.t(if s.lift { T::CannotLift } else { T::CannotNoLift }).to_owned(),
        _ if s.work == Work::Hands => r.t(T::CannotHands).to_owned(),
        _ => r.f(T::CannotGround, &[("eave", &len(s.eave_m)), ("reach", &len(POLE_REACH_M))]),
    })
}

/// What the plan comes to.
#[component]
pub fn Told(on: On) -> impl IntoView {
    let settings = settings();
    let said = Memo::new(move |_| on.said());
    let arrest = move || on.is_arrest();
    let head = move || {
        let r = settings.reader();
        let Some(all) = said.get() else {
            return view! { <p class="sentence" id="site-told" tabindex="-1" role="status">{r.t(Key::Computing)}</p> }.into_any();
        };
        let open = all.iter().filter(|q| **q != Said::NeedNotAsk).count();
        let words = match open {
            0 => r.t(if on.is_arrest() { T::ToldFine } else { T::ToldFineOther }).to_owned(),
            1 => r.t(T::ToldOne).to_owned(),
            n => r.f(T::ToldOpen, &[("n", &n.to_string())]),
        };
        let severity = match (open, all.iter().any(|q| q.is_grave())) {
            (0, _) => Severity::Good,
            (_, true) => Severity::Critical,
            _ => Severity::Minor,
        };
        let asked = on.asks.get().then(|| view! { <p class="figure-line">{r.t(T::ToldAsk)}</p> });
        view! { <div class="head">{mark(severity)}<div class="told-lines"><p class="sentence" id="site-told" tabindex="-1">{words}</p>{asked}</div></div> }.into_any()
    };
    let list = move || {
        let r = settings.reader();
        let all = said.get().unwrap_or_default().into_iter().map(|q| line_of(r, q, on));
        all.map(|(severity, words)| view! { <li>{mark(severity)}<p>{words}</p></li> }).collect_view()
    };
    let change = move |_| {
        on.clock.stop();
        on.plays.set(Plays::Nothing);
        on.phase.set(Phase::Place);
        view::to_view("site-h");
    };
    let another = move |_| {
        on.begin((js_sys::Math::random() * 1e9) as u64);
        on.above.set(false);
        view::to_view("site-h");
    };
    view! {
        <div class="walk-result">{head}
            <Show when=arrest><Played on=on /></Show><ul class="walk-said">{list}</ul>
            <div class="next"><button type="button" id="walk-change" on:click=change>{settings.s(T::Change)}</button>
                <Show when=arrest><button type="button" id="walk-bench" on:click=move |_| view::to_bench(&on.set_up())>{settings.s(T::Bench)}</button></Show>
                <button type="button" class="main" id="walk-again" on:click=another>{settings.s(T::Another)}</button></div>
            <Rows on=on said=said /></div>
    }
}

/// The slip and the ladder that tips, to play.
#[component]
fn Played(on: On) -> impl IntoView {
    let settings = settings();
    let ready = move || on.swing.with(|w| matches!(w, Some(Some(_))));
    let words = move || {
        let r = settings.reader();
        match on.plays.get() {
            Plays::Nothing => None,
            Plays::Tip => on.site.with(|s| {
                on.placed.with(|at| {
                    let all = [Sort::ServiceDrop, Sort::Line, Sort::Phone].into_iter();
                    let near = all
                        .filter_map(|w| s.wire_m(w, at).map(|m| (w, m)))
                        .min_by(|a, b| a.1.total_cmp(&b.1));
                    Some(match near {
                        Some((w, m)) if m < 3.0 => {
                            r.f(T::Tipped, &[("near", &near_words(r, m)), ("what", r.t(w.label()))])
                        }
                        _ => r.t(T::TippedFree).to_owned(),
                    })
                })
            }),
            Plays::Slip => on.swing.get().flatten().map(|w| {
                let off = r.q(Quantity::Length, w.offset_m, Rounding::Up);
                let speed = r.q(Quantity::Speed, w.free.speed_m_s, Rounding::Up);
                let (key, room) = match w.room_m() {
                    Some(m) if m < 0.0 => (T::SlipDown, r.q(Quantity::Length, -m, Rounding::Up)),
                    m => {
                        let key = if w.offset_m < 0.01 { T::SlipPlumb } else { T::SlipRoom };
                        (key, r.q(Quantity::Length, m.unwrap_or(0.0), Rounding::Down))
                    }
                };
                r.f(key, &[("off", &off), ("speed", &speed), ("room", &room)])
            }),
        }
    };
    let slip = move |_| {
        if untrack(ready) {
            on.above.set(false);
            on.play(Plays::Slip, on.swing.get_untracked().flatten().map_or(1.0, |w| swing_s(&w)));
        }
    };
    view! {
        <div class="walk-play"><button type="button" class="play" id="walk-slip" aria-disabled=move || (!ready()).to_string() on:click=slip>{settings.s(T::Slip)}</button>
            <button type="button" class="play" id="walk-tip" on:click=move |_| on.play(Plays::Tip, super::site::TIP_S)>{settings.s(T::Tip)}</button></div>
        <p class="figure-line" role="status" id="walk-played">{words}</p>
    }
}

/// How a row stands.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Stands {
    Settled,
    Open,
    Unused,
}

impl Stands {
    fn word(self, r: Reader) -> (&'static str, &'static str) {
        match self {
            Stands::Settled => ("✓ ", r.t(T::CardDone)),
            Stands::Open => ("△ ", r.t(T::CardOpen)),
            Stands::Unused => ("– ", r.t(T::CardUnused)),
        }
    }
}

/// What a row of the card holds.
fn row_text(r: Reader, row: Row, on: On) -> String {
    let len = |m: f64| r.q(Quantity::Length, m, Rounding::Nearest);
    let at = on.placed.get();
    match row {
        Row::Wires | Row::Ground | Row::Around | Row::People => {
            let all = on.marks.get().into_iter().filter(|m| m.0.row() == Some(row));
            let all: Vec<String> = all
                .map(|(s, m)| match m {
                    Mark::Wire(kind) => format!("{}{}{}", r.t(kind.label()), r.colon(), r.t(kind.right())),
                    m => format!("{}{}{}", r.t(s.label()), r.colon(), said_of(r, s, m)),
                })
                .collect();
            if all.is_empty() { r.t(T::CardNothing).to_owned() } else { all.join("; ") }
        }
        Row::Method => on.method.get().map_or(String::new(), |m| r.t(method_words(m)).to_owned()),
        Row::Weather => at.stop_km_h.map_or(String::new(), |v| format!("{} {v}", r.t(T::Stop))),
        _ if !on.is_arrest() => String::new(),
        Row::Ladder => format!(
            "{}, {}",
            r.f(T::LadderAt, &[("at", &len(at.ladder_m))]),
            r.f(T::Foot, &[("at", &len(at.foot_m))])
        ),
        Row::Anchor => r.f(T::AnchorAt, &[("at", &len(at.anchor_m))]),
        Row::FirstUp => at.first.map_or(String::new(), |f| {
            r.t(match f {
                First::Thrown => T::FirstThrown,
                First::Lift => T::FirstLift,
                First::Quick => T::FirstQuick,
            })
            .to_owned()
        }),
        Row::Hangs => at.reach.map_or(String::new(), |w| r.t(w.label()).to_owned()),
    }
}

/// How a row stands: open where it says nothing or what it says does not hold. Who set the anchor is open until somebody
/// signs; while the engine has not answered, nothing is settled.
fn stands(row: Row, text: &str, said: Option<&[Said]>, arrest: bool) -> Stands {
    let of_ladder = matches!(row, Row::Ladder | Row::Anchor | Row::FirstUp | Row::Hangs);
    if of_ladder && !arrest {
        return Stands::Unused;
    }
    let open = row == Row::Anchor || text.is_empty() || said.is_none_or(|s| Site::is_open(row, s));
    if open { Stands::Open } else { Stands::Settled }
}

/// The card on the screen, and what the place asks of it.
#[component]
fn Rows(on: On, said: Memo<Option<Vec<Said>>>) -> impl IntoView {
    let settings = settings();
    let rows = move || {
        let r = settings.reader();
        Row::ALL.map(|row| {
            let text = row_text(r, row, on);
            let (shape, word) = said.with(|s| stands(row, &text, s.as_deref(), on.is_arrest())).word(r);
            view! { <tr><th scope="row">{r.t(row.label())}</th><td>{text}</td><td><b aria-hidden="true">{shape}</b>{word}</td></tr> }
        })
    };
    let duties = move || {
        let r = settings.reader();
        let kinds = [
            DutyKind::MethodOrder,
            DutyKind::AnchorByCompetentPerson,
            DutyKind::RescueWritten,
            DutyKind::RescuePlanned,
        ];
        let law = on.law.get();
        let own = place(&law);
        let all = kinds.into_iter().filter_map(|k| Some((k, r.duty(own?.duty(k)?))));
        all.map(
            |(k, t)| view! { <p><strong>{r.t(k.label())}</strong><br /><span class="source">{t}</span></p> },
        )
        .collect_view()
    };
    view! {
        <details class="guide walk-card"><summary>{settings.s(T::Card)}</summary><table>{rows}</table><p class="hint">{settings.s(T::CardNote)}</p>{duties}
            <button type="button" id="print" on:click=move |_| { let _ = window().print(); }>{settings.s(W::Print)}</button></details>
        <Why />
    }
}

/// The card on paper.
#[component]
pub fn Card(on: On) -> impl IntoView {
    let settings = settings();
    move || {
        if on.phase.get() != Phase::Told {
            return None;
        }
        let r = settings.reader();
        let said = on.said();
        let mut open = 0;
        let rows = Row::ALL.map(|row| {
            let text = row_text(r, row, on);
            let is = stands(row, &text, said.as_deref(), on.is_arrest());
            open += usize::from(is == Stands::Open);
            let (_, word) = is.word(r);
            view! { <p class="signs-line walk-line"><strong>{r.t(row.label())}{r.colon()}</strong>{text}" ("{word}")"<i></i></p> }
        });
        let len = |m: f64| r.q(Quantity::Length, m, Rounding::Nearest);
        let job = on.site.with(|s| r.f(T::CardFirst, &[("at", &len(s.job_m)), ("eave", &len(s.eave_m))]));
        let law = on.law.get();
        let rules =
            place(&law).map_or(String::new(), |p| r.f(T::CardRules, &[("place", r.lang.of(&p.name))]));
        let state = match open {
            0 => String::new(),
            1 => r.t(T::CardNotOne).to_owned(),
            n => r.f(T::CardNot, &[("n", &n.to_string())]),
        };
        Some(view! {
            <section class="sheet paper walk-page" aria-hidden="true">
                <Head over="Shortfall".to_owned() title=r.t(T::Card).to_owned() right=state under=format!("{}. {rules}", upper_first(&job)) />
                <p class="signs-line"><strong>{r.t(T::Danger)}</strong></p>
                {rows.collect_view()}
                <p class="signs-line">{r.t(T::Owner)}<i></i></p><p class="signs-line">{r.t(T::Signs)}<i></i></p>
                <Foot caution=Text::of(Gear::Caution) set_up=on.set_up() />
            </section>
        })
    }
}
