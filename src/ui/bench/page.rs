//! The page: header with the settings, the scene, the set-up beside it, the cautions below.

use super::drawing::Drawing;
use super::layers::Layers;
use super::overlay::Overlay;
use super::player::provide_player;
use super::stage::{provide_stage, stage};
use super::state::{Phase, bench, provide_bench};
use super::strip::Strip;
use crate::rules::{place, places};
use crate::texts::Bench as W;
use crate::texts::{Key, Lang, say};
use crate::ui::shared::asking::Lost;
use crate::ui::shared::settings::{Theme, settings};
use crate::ui::shared::store::{self, provide_settings};
use crate::ui::shared::view::{self, View, fetch_rooms, provide_view, watch_rooms};
use crate::units::Units;
use leptos::html::Div;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// The whole app.
#[component]
pub fn App() -> impl IntoView {
    let settings = provide_settings();
    let bench = provide_bench(settings);
    let view = provide_view();
    let missing = RwSignal::new(false);
    watch_rooms(missing);
    Effect::new(move |_| {
        if view.get() != View::Bench {
            fetch_rooms(missing);
        }
    });
    let player = provide_player(bench, settings);
    provide_stage(bench, player);
    let shown = move || bench.phase.get() == Phase::Shown;
    let words = move || {
        let r = settings.reader();
        let mut all = bench.scenario.with(|s| say::state(r, s));
        if shown()
            && let Some(run) = bench.run.get()
            && run.trace.is_sound()
        {
            all.push(say::events(r, &run.trace));
        }
        all.join(" ")
    };
    // What was said in another language or other units is no longer so.
    Effect::new(move |old: Option<()>| {
        settings.reader();
        if old.is_some() {
            bench.said.set(String::new());
        }
    });
    // The bench fills the window and never scrolls; the rooms do.
    Effect::new(move |_| {
        if let Some(body) = document().body() {
            let _ = body.class_list().toggle_with_force("bench-on", view.get() == View::Bench);
        }
    });
    view! {
        <a class="skip" href="#scene">{settings.s(Key::SkipToScene)}</a>
        <Header />
        <Show when=move || view.get() != View::Bench && missing.get()>
            <p class="problems" role="alert" id="rooms-missing">{settings.s(Key::RoomsMissing)}" "
                <button type="button" on:click=move |_| fetch_rooms(missing)>{settings.s(Key::TryAgain)}</button></p></Show>
        <Lost /><Update />
        // The second module mounts here and takes the line away.
        <div id="rooms" class:away=move || view.get() == View::Bench><p class="wait" role="status">
            {move || (!missing.get()).then(|| settings.t(Key::RoomsComing))}</p></div>
        <main class="bench" on:pointerdown=|_| shut_menu() class:away=move || view.get() != View::Bench>
            <section class="scene" aria-labelledby="scene-h">
                <h2 id="scene-h" class="vh">{settings.s(Key::SceneHeading)}</h2>
                <p id="scene-words" class="vh">{words}</p>
                <Picture />
                <Show when=move || bench.mine.with(|m| !m.is_empty())>
                    <div class="bar" id="by-link"><p>{settings.s(W::CameByLink)}" "{move || bench.is_looked_at().then(|| settings.t(W::NotKeptYet))}</p>
                        <button type="button" id="back-to-mine" on:click=move |_| bench.back_to_mine()>{settings.s(W::BackToMine)}</button>
                        {store::noted_lesson().map(|_| view! { <button type="button" id="back-to-lesson" on:click=move |_| view::go(View::Lessons)>{settings.s(crate::texts::Stage::BackToLesson)}</button> })}
                        <button type="button" class="plain" id="keep-this" on:click=move |_| bench.keep_this_one()>{settings.s(W::KeepThisOne)}</button></div>
                </Show>
                <Show when=move || !bench.notice.with(String::is_empty)>
                    <p class="bar notice" role="status">{move || bench.notice.get()}</p>
                </Show>
            </section>
            <Strip />
        </main>
        <footer><p>{settings.s(Key::Caution)}</p>
            <p><a href=view::part("notices.txt") target="_blank" rel="noopener">{settings.s(W::NoticesLink)}</a></p></footer>
        <div class="vh" role="status" aria-live="polite" id="live">{move || bench.said.get()}</div>
    }
}

/// A new version that is ready: offered where nothing is lost by a reload, never in the middle of a fall
/// or of a room.
#[component]
fn Update() -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    let view = expect_context::<RwSignal<View>>();
    let update = || js_sys::Reflect::get(&window(), &"shortfallUpdate".into()).ok();
    let ready = RwSignal::new(update().is_some_and(|f| f.is_function()));
    view::on_window("shortfall-update", move || ready.set(true));
    let quiet = move || {
        let still = matches!(bench.phase.get(), Phase::Choosing | Phase::Shown);
        ready.get() && (view.get() == View::Bench && still || view.get() == View::Crew)
    };
    let reload = move |_| {
        if let Some(f) = update().and_then(|f| f.dyn_into::<js_sys::Function>().ok()) {
            let _ = f.call0(&wasm_bindgen::JsValue::NULL);
        }
    };
    view! {
        <div role="status"><Show when=quiet>
            <p class="bar" id="update">{settings.s(W::UpdateReady)}" "
                <button type="button" on:click=reload>{settings.s(W::UpdateReload)}</button></p>
        </Show></div>
    }
}

/// The bar is one tab stop; the arrow keys go along it.
fn along_the_bar(ev: web_sys::KeyboardEvent) {
    let by = match ev.key().as_str() {
        "Escape" => return shut_menu(),
        "ArrowRight" => 1,
        "ArrowLeft" => -1,
        _ => return,
    };
    let Ok(all) = document().query_selector_all("header .bar-item") else { return };
    let items: Vec<web_sys::HtmlElement> = (0..all.length())
        .filter_map(|i| all.item(i)?.dyn_into::<web_sys::HtmlElement>().ok())
        .filter(|e| e.offset_width() > 0)
        .collect();
    let now = document().active_element();
    let Some(at) = items.iter().position(|e| now.as_ref().is_some_and(|n| n.is_same_node(Some(e)))) else {
        return;
    };
    let next = (at as i32 + by).rem_euclid(items.len() as i32) as usize;
    let _ = items[next].focus();
    ev.prevent_default();
}

/// Shuts the menu of the bar.
fn shut_menu() {
    if let Ok(Some(menu)) = document().query_selector(".options") {
        let _ = menu.remove_attribute("open");
    }
}

#[component]
fn Header() -> impl IntoView {
    let (bench, settings) = (bench(), settings());
    let view = expect_context::<RwSignal<View>>();
    let place_options = places()
        .map(|p| {
            let id = p.id.clone();
            view! {
                <option value=p.id.clone() prop:selected=move || bench.scenario.with(|s| s.place == id)>
                    {move || settings.lang.get().of(&p.name).to_owned()}</option>
            }
        })
        .collect_view();
    let note = move || {
        let id = bench.scenario.with(|s| s.place.clone());
        place(&id).and_then(|p| p.note.as_ref()).map(|n| settings.lang.get().of(n).to_owned())
    };
    let lang_button = move |l: Lang, name: &'static str, short: &'static str| {
        view! {
            <button type="button" lang=l.tag() class="seg bar-item" tabindex="-1" aria-pressed=move || (settings.lang.get() == l).to_string()
                on:click=move |_| settings.lang.set(l)><span class="long">{name}</span><span class="short">{short}</span></button>
        }
    };
    let is_here = move |v: View| view.get() == v || v == View::Lessons && view.get().is_practice();
    let stage = super::stage::stage();
    let narrow = Memo::new(move |_| stage.size.get().0 < 700.0);
    view! {
        <header on:keydown=along_the_bar>
            <div class="brand">
                <p class="name"><svg viewBox="0 0 24 24" width="26" height="26" aria-hidden="true">
                    <path d="M12 1v9M8 10h8v4H8zM12 14v4M6 23h12" fill="none" stroke="currentColor" stroke-width="2.2" /></svg>
                    <span>{settings.s(Key::AppName)}</span></p>
                <h1>{settings.s(Key::Tagline)}</h1>
            </div>
            <nav class="views" aria-label=settings.s(Key::NavLabel)>
                {[(View::Bench, Key::NavBench), (View::Lessons, Key::NavLessons), (View::Quiz, Key::NavQuiz), (View::Crew, Key::NavCrew), (View::Trainer, Key::NavTrainer)].map(|(v, k)| view! {
                    <button type="button" class="seg bar-item" aria-current=move || is_here(v).then_some("page") tabindex=move || if is_here(v) { "0" } else { "-1" }
                        on:click=move |_| { shut_menu(); view::go(v) }>{settings.s(k)}</button>
                }).collect_view()}
            </nav>
            <div class="langs" role="group" aria-label=settings.s(Key::Language)>
                {lang_button(Lang::En, "English", "EN")}{lang_button(Lang::Fr, "Français", "FR")}
            </div>
            <details class="options">
                <summary class="bar-item" tabindex=move || if narrow.get() { "0" } else { "-1" } aria-label=settings.s(Key::Options)><span class="burger" aria-hidden="true"></span></summary>
                <div class="panel">
                    <label><span>{settings.s(Key::PlaceLabel)}</span>
                        <select id="place" on:change=move |ev| { let v = event_target_value(&ev); bench.edit(|s| s.place = v) }>
                            {place_options}</select></label>
                    {move || note().map(|n| view! { <p class="hint">{n}</p> })}
                    <label><span>{settings.s(Key::Units)}</span>
                        <select id="units" on:change=move |ev| settings.units.set(
                            if event_target_value(&ev) == "feet" { Units::FeetPounds } else { Units::Metric })>
                            <option value="metric" prop:selected=move || settings.units.get() == Units::Metric>
                                {settings.s(Key::UnitsMetric)}</option>
                            <option value="feet" prop:selected=move || settings.units.get() == Units::FeetPounds>
                                {settings.s(Key::UnitsFeet)}</option></select></label>
                    <label><span>{settings.s(Key::Theme)}</span>
                        <select id="theme" on:change=move |ev| settings.theme.set(match event_target_value(&ev).as_str() {
                            "light" => Theme::Light, "dark" => Theme::Dark, _ => Theme::Auto })>
                            {[(Theme::Auto, Key::ThemeAuto), (Theme::Light, Key::ThemeLight), (Theme::Dark, Key::ThemeDark)]
                                .map(|(t, k)| view! {
                                    <option value=t.name() prop:selected=move || settings.theme.get() == t>
                                        {settings.s(k)}</option>
                                }).collect_view()}</select></label>
                    <label><span>{settings.s(Key::Lettering)}</span>
                        <select id="lettering" on:change=move |ev| settings.large.set(event_target_value(&ev) == "large")>
                            <option value="page" prop:selected=move || !settings.large.get()>{settings.s(Key::LetteringPage)}</option>
                            <option value="large" prop:selected=move || settings.large.get()>{settings.s(Key::LetteringRoom)}</option>
                        </select></label>
                </div>
            </details>
        </header>
    }
}

/// Picture, what lies over it, and what takes its place.
#[component]
pub fn Picture() -> impl IntoView {
    let stage = stage();
    let pane = NodeRef::<Div>::new();
    Effect::new(move |_| {
        if let Some(e) = pane.get() {
            view::watch_size(&e, stage.size);
        }
    });
    view! {
        <div class="pane" node_ref=pane prop:inert=move || stage.is_covered()>
            <Drawing />
            <Overlay />
        </div>
        <Layers />
    }
}
