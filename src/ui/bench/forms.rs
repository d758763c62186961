//! Form parts: a number with buttons, a field and (where it helps) a slider; a choice of a few.

use super::state::bench;
use crate::practice::hand::{Held, moved};
use crate::scenario::{Field, Scenario};
use crate::texts::Worded;
use crate::texts::{Key, number, say};
use crate::ui::shared::settings::settings;
use crate::units::{Quantity, Rounding, Units, round_to};
use leptos::prelude::*;

fn step_si(f: Field, q: Quantity, units: Units) -> f64 {
    let metric = f.range().step;
    match (units, q) {
        (Units::Metric, _) | (_, Quantity::Angle | Quantity::Ratio) => metric,
        // Round steps in the shown unit, near the metric one.
        (_, Quantity::Length) if metric >= 0.5 => 2.0 * crate::units::FT_M,
        (_, Quantity::Length) if metric >= 0.1 => 0.5 * crate::units::FT_M,
        (_, Quantity::Length) => 0.1 * crate::units::FT_M,
        (_, Quantity::Force) => 25.0 * crate::units::LBF_N,
        (_, Quantity::Modulus) => 250.0 * crate::units::LBF_N,
        (_, Quantity::Mass) => 2.0 * crate::units::LB_KG,
        _ => metric,
    }
}

/// A number of the scenario.
#[component]
pub fn NumberField(
    field: Field,
    #[prop(optional)] slider: bool,
    #[prop(optional)] by_hand: Option<Held>,
) -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    let (label, q) = say::field(field);
    let id = format!("{}-{}", if by_hand.is_some() { "h" } else { "f" }, field.path().replace('.', "-"));
    let value = Memo::new(move |_| bench.scenario.with(|s| field.get(s)).unwrap_or(f64::NAN));
    let shown = move || {
        let (units, lang) = (settings.units.get(), settings.lang.get());
        let d = q.decimals(units);
        let x = round_to(value.get() * q.shown_per_si(units), d, Rounding::Nearest);
        // A field takes plain digits: no grouping, no true minus.
        number(lang, x, d).replace('\u{2212}', "-").replace(['\u{202f}'], "")
    };
    let typed = RwSignal::new(None::<String>);
    let bad = RwSignal::new(false);
    let set = move |si: f64| {
        bad.set(false);
        typed.set(None);
        bench.edit(|s| match by_hand {
            Some(part) => *s = moved(s, part, si),
            None => field.set(s, si),
        });
    };
    let nudge = move |dir: f64| {
        let r = field.range();
        let step = step_si(field, q, settings.units.get_untracked());
        // Onto the grid of steps, so that repeated presses give round numbers.
        let now = value.get_untracked();
        let next = ((now / step + dir * 0.999).round() * step).clamp(r.min, r.max);
        set(if (next - now).abs() < step * 0.01 { (now + dir * step).clamp(r.min, r.max) } else { next });
    };
    let on_change = move |text: String| {
        let plain: String = text
            .chars()
            .filter(|c| !c.is_whitespace())
            .map(|c| match c {
                // Either decimal mark in either language; there are no thousands to mark here.
                ',' => '.',
                '\u{2212}' => '-',
                c => c,
            })
            .collect();
        match plain.parse::<f64>() {
            Ok(x) if x.is_finite() => set(x / q.shown_per_si(settings.units.get_untracked())),
            _ => {
                typed.set(Some(text));
                bad.set(true);
            }
        }
    };
    let has_problem = move || bad.get() || bench.problems.with(|p| p.iter().any(|p| p.field == field.path()));
    let hint = move || {
        let r = settings.reader();
        let range = field.range();
        r.f(
            Key::RangeHint,
            &[("min", &r.q(q, range.min, Rounding::Up)), ("max", &r.q(q, range.max, Rounding::Down))],
        )
    };
    let (for_id, hint_id, described) = (id.clone(), format!("{id}-hint"), format!("{id}-hint"));
    let slide_label = settings.s(label);
    view! {
        <div class="number" class:bad=has_problem>
            <label for=for_id>{settings.s(label)}</label>
            <div class="row">
                <button type="button" class="step" on:click=move |_| nudge(-1.0)
                    aria-label=move || format!("{} −", settings.t(label))>"−"</button>
                <input id=id type="text" inputmode="decimal" autocomplete="off"
                    aria-describedby=described
                    aria-invalid=move || has_problem().to_string()
                    prop:value=move || typed.get().unwrap_or_else(shown)
                    on:change=move |ev| on_change(event_target_value(&ev))
                    on:keydown=move |ev| match ev.key().as_str() {
                        "ArrowUp" => { ev.prevent_default(); nudge(1.0); }
                        "ArrowDown" => { ev.prevent_default(); nudge(-1.0); }
                        _ => {}
                    } />
                <span class="unit">{move || crate::texts::symbol(settings.reader().lang, q, settings.reader().units)}</span>
                <button type="button" class="step" on:click=move |_| nudge(1.0)
                    aria-label=move || format!("{} +", settings.t(label))>"+"</button>
            </div>
            {slider.then(|| view! {
                <input type="range" aria-label=slide_label
                    min=field.range().min max=field.range().max step=field.range().step
                    aria-valuetext=move || settings.reader().q(q, value.get(), Rounding::Nearest)
                    prop:value=move || value.get().to_string()
                    on:input=move |ev| {
                        if let Ok(x) = event_target_value(&ev).parse::<f64>() { set(x) }
                    } />
            })}
            <p class="hint" id=hint_id>{hint}</p>
        </div>
    }
}

/// A choice of a few, as radio buttons. `get` gives the number of today's option, `set` takes one.
#[component]
pub fn Choice<K: Worded>(
    name: &'static str,
    label: K,
    options: Vec<K>,
    get: fn(&Scenario) -> usize,
    set: fn(&mut Scenario, usize),
    #[prop(optional)] icons: &'static [&'static str],
) -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    let buttons = options
        .into_iter()
        .enumerate()
        .map(|(i, key)| {
            let icon = icons.get(i).copied().unwrap_or("");
            view! {
                <label class="pill">
                    <input
                        type="radio"
                        name=name
                        value=i.to_string()
                        prop:checked=move || bench.scenario.with(|s| get(s) == i)
                        on:change=move |_| bench.edit(|s| set(s, i))
                    />
                    <span>
                        {(!icon.is_empty()).then(|| view! { <b aria-hidden="true">{icon}</b>" " })}
                        {move || settings.t(bench.scenario.with(|s| key.in_place(&s.place)))}
                    </span>
                </label>
            }
        })
        .collect_view();
    view! {
        <fieldset class="choice">
            <legend>{settings.s(label)}</legend>
            <div class="pills">{buttons}</div>
        </fieldset>
    }
}

/// A whole number of the scenario, by two buttons and a field.
#[component]
pub fn Count(
    name: &'static str,
    label: Key,
    get: fn(&Scenario) -> u32,
    set: fn(&mut Scenario, u32),
    most: fn(&Scenario) -> u32,
    #[prop(optional)] least: u32,
) -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    let value = Memo::new(move |_| bench.scenario.with(get));
    let put = move |n: i64| {
        let top = bench.scenario.with_untracked(most);
        let n = u32::try_from(n.max(0)).unwrap_or(least).clamp(least, top.max(least));
        bench.edit(|s| set(s, n));
    };
    let by = move |d: i64| put(i64::from(value.get_untracked()) + d);
    view! {
        <div class="number">
            <label for=name>{settings.s(label)}</label>
            <div class="row">
                <button type="button" class="step" on:click=move |_| by(-1)
                    aria-label=move || format!("{} −", settings.t(label))>"−"</button>
                <input id=name type="text" inputmode="numeric" autocomplete="off"
                    prop:value=move || value.get().to_string()
                    on:change=move |ev| put(event_target_value(&ev).trim().parse().unwrap_or(i64::from(value.get_untracked())))
                    on:keydown=move |ev| match ev.key().as_str() {
                        "ArrowUp" => { ev.prevent_default(); by(1); }
                        "ArrowDown" => { ev.prevent_default(); by(-1); }
                        _ => {}
                    } />
                <button type="button" class="step" on:click=move |_| by(1)
                    aria-label=move || format!("{} +", settings.t(label))>"+"</button>
            </div>
        </div>
    }
}

/// A day of the calendar.
#[component]
pub fn Day(
    name: &'static str,
    label: Key,
    get: fn(&Scenario) -> &str,
    set: fn(&mut Scenario, String),
) -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    view! {
        <div class="number">
            <label for=name>{settings.s(label)}</label>
            <input id=name type="date"
                prop:value=move || bench.scenario.with(|s| get(s).to_owned())
                on:change=move |ev| { let day = event_target_value(&ev); bench.edit(|s| set(s, day)) } />
        </div>
    }
}
