//! The library: scenarios by family and by search, the plan beside it, and the one that is chosen.

use super::code::Code;
use super::falls::Falls;
use super::store;
use super::wall::verdict;
use super::{card, facts};
use crate::practice::demos::{Demo, Ends, Family, demos};
use crate::practice::plan::{self as plan_file, NoPlan, OWN_FROM, Own, Plan};
use crate::rules::Bilingual;
use crate::texts::{Key, Lang, Trainer as T};
use crate::ui::rooms::sheet::download;
use crate::ui::rooms::visit;
use crate::ui::shared::settings::settings;
use crate::ui::shared::signs::mark;
use crate::ui::shared::view::{self, View};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::{JsFuture, spawn_local};

/// The signals of the library.
#[derive(Clone, Copy)]
struct Shelf {
    mine: RwSignal<Vec<Own>>,
    plan: RwSignal<Plan>,
    chosen: RwSignal<u32>,
    /// Only one's own.
    only_mine: RwSignal<bool>,
    search: RwSignal<String>,
    /// The one that was deleted last, and the plan it stood in, to bring back.
    gone: RwSignal<Option<(Own, Plan)>>,
    /// What is told, as long as it matters.
    told: RwSignal<String>,
    coded: RwSignal<Option<Demo>>,
    falls: Falls,
}

/// Letters without their accents, small: what is searched by.
fn folded(text: &str) -> String {
    text.to_lowercase()
        .chars()
        .map(|c| match c {
            'é' | 'è' | 'ê' | 'ë' => 'e',
            'à' | 'â' => 'a',
            'î' | 'ï' => 'i',
            'ô' => 'o',
            'ù' | 'û' | 'ü' => 'u',
            'ç' => 'c',
            '’' => '\'',
            c => c,
        })
        .collect()
}

impl Shelf {
    fn all(self) -> Vec<Demo> {
        let mut all: Vec<Demo> = if self.only_mine.get() { vec![] } else { demos().to_vec() };
        self.mine.with(|m| all.extend(m.iter().map(|o| o.demo.clone())));
        all
    }

    fn one(self) -> Option<Demo> {
        self.mine.with(|m| store::found(self.chosen.get(), m))
    }

    /// Keeps one's own, and says so when the device would not.
    fn keep(self, not_kept: &'static str) {
        if !self.mine.with_untracked(|m| store::keep_mine(m)) {
            self.told.set(not_kept.to_owned());
        }
    }

    /// Changes the chosen one, which is one's own.
    fn edit(self, id: u32, not_kept: &'static str, how: impl FnOnce(&mut Own)) {
        self.mine.update(|m| {
            if let Some(o) = m.iter_mut().find(|o| o.demo.id == id) {
                how(o);
            }
        });
        self.keep(not_kept);
    }
}

/// The room.
#[component]
pub fn Trainer() -> impl IntoView {
    let (visit, settings) = (visit(), settings());
    let shelf = Shelf {
        mine: RwSignal::new(store::load_mine()),
        plan: RwSignal::new(store::load_plan()),
        chosen: RwSignal::new(1),
        only_mine: RwSignal::new(false),
        search: RwSignal::new(String::new()),
        gone: RwSignal::new(None::<(Own, Plan)>),
        told: RwSignal::new(String::new()),
        coded: RwSignal::new(None),
        falls: Falls::new(),
    };
    Effect::new(move |old: Option<()>| {
        let kept = shelf.plan.with(store::keep_plan);
        if old.is_some() && !kept {
            shelf.told.set(settings.reader_now().t(T::NotKept).to_owned());
        }
    });
    // The chosen one is played, so that what it claims stands beside what it does.
    Effect::new(move |_| {
        if let Some(d) = shelf.one() {
            shelf.falls.ask(&d, &visit.set_up.with(|s| s.place.clone()));
        }
    });
    let go_present = move || {
        let law = visit.set_up.with_untracked(|s| s.place.clone());
        present(shelf, (settings.lang.get_untracked(), &law), settings.t(T::NotKept));
    };
    provide_context(Present(Callback::new(move |()| go_present())));
    let family = move |f: Family| {
        let cards = move || {
            let words = folded(&shelf.search.get());
            let lang = settings.lang.get();
            let hit = |d: &Demo| {
                let texts = [lang.of(&d.name), lang.of(&d.point), settings.t(d.family.label())];
                words.split_whitespace().all(|w| texts.iter().any(|t| folded(t).contains(w)))
            };
            shelf.all().into_iter().filter(|d| d.family == f && hit(d)).collect::<Vec<_>>()
        };
        let cards = Memo::new(move |_| cards());
        view! {
            <Show when=move || cards.with(|c| !c.is_empty())>
                <section class="family"><h3>{settings.s(f.label())}</h3>
                    <ul class="demo-cards">{move || cards.get().into_iter().map(|d| card::card(d, shelf.chosen, shelf.plan)).collect_view()}</ul></section>
            </Show>
        }
    };
    let none = move || {
        let hit = shelf.all().into_iter().any(|d| {
            let words = folded(&shelf.search.get());
            let lang = settings.lang.get();
            let texts = [lang.of(&d.name), lang.of(&d.point), settings.t(d.family.label())];
            words.split_whitespace().all(|w| texts.iter().any(|t| folded(t).contains(w)))
        });
        let r = settings.reader();
        match (hit, shelf.search.with(|s| s.trim().is_empty())) {
            (true, _) => None,
            (false, true) => Some(view! { <p class="hint">{r.t(T::EmptyMine)}</p> }.into_any()),
            (false, false) => Some(
                view! { <p class="hint" role="status">{r.f(T::NoHit, &[("text", shelf.search.get().trim())])}" "
                    <button type="button" on:click=move |_| { shelf.search.set(String::new()); view::to_view("demo-search") }>{r.t(T::ClearSearch)}</button></p> }
                .into_any(),
            ),
        }
    };
    let filter = move |only: bool, key: T, n: Signal<usize>| {
        view! { <button type="button" class="seg" aria-pressed=move || (shelf.only_mine.get() == only).to_string() on:click=move |_| shelf.only_mine.set(only)>
        {move || settings.reader().f(key, &[("n", &n.get().to_string())])}</button> }
    };
    let count_all = Signal::derive(move || demos().len() + shelf.mine.with(Vec::len));
    let count_mine = Signal::derive(move || shelf.mine.with(Vec::len));
    view! {
        <main class="page trainer">
            <div class="library" prop:inert=move || shelf.coded.with(Option::is_some)>
                <h2 id="trainer-h" tabindex="-1">{settings.s(T::Name)}</h2><p class="lead">{settings.s(T::Lead)}</p>
                <div class="find"><input type="search" id="demo-search" aria-label=settings.s(T::Search) placeholder=settings.s(T::Search) prop:value=move || shelf.search.get()
                    on:input=move |ev| shelf.search.set(event_target_value(&ev)) />
                    {filter(false, T::All, count_all)}{filter(true, T::Mine, count_mine)}</div>
                {none}
                <div class="families">{Family::ALL.map(family).into_iter().collect_view()}</div>
            </div>
            <div class="beside" prop:inert=move || shelf.coded.with(Option::is_some)>
                <div role="status">{move || (!shelf.told.with(String::is_empty)).then(|| view! { <p class="bar">{shelf.told.get()}
                    {shelf.gone.get().map(|(o, old)| view! { " "<button type="button" id="bring-back" on:click=move |_| {
                        shelf.mine.update(|m| m.push(o.clone())); shelf.plan.set(old.clone()); shelf.chosen.set(o.demo.id); view::to_view("chosen-h"); shelf.gone.set(None); shelf.told.set(String::new()); shelf.keep(settings.t(T::NotKept));
                    }>{settings.t(T::BringBack)}</button> })}</p> })}</div>
                <PlanOf shelf=shelf /><Chosen shelf=shelf />
                <section class="to-print"><h3>{settings.s(T::HandPages)}</h3><div class="row buttons">
                    <button type="button" id="to-house" on:click=move |_| view::go(View::House)>{settings.s(T::HandSheet)}</button>
                    <button type="button" id="to-handout" on:click=move |_| view::go(View::Handout)>{settings.s(T::HandName)}</button>
                    <button type="button" id="to-gear" on:click=move |_| view::go(View::GearList)>{settings.s(crate::texts::Gear::ListName)}</button>
                    <button type="button" id="to-note" on:click=move |_| view::go(View::Incident)>{settings.s(crate::texts::Gear::NoteName)}</button>
                    <button type="button" id="to-held" on:click=move |_| view::go(View::Held)>{settings.s(T::HeldName)}</button></div></section>
            </div>
            <div class="plan-foot" prop:inert=move || shelf.coded.with(Option::is_some)><a href="#plan-h" on:click=move |ev| { ev.prevent_default(); view::to_view("plan-h") }>{settings.s(T::Plan)}" "{move || shelf.plan.with(|p| p.ids.len())}</a>
                <button type="button" class="main" id="present-foot" aria-disabled=move || shelf.plan.with(|p| p.ids.is_empty()).to_string() on:click=move |_| go_present()>{settings.s(T::PresentIt)}</button></div>
            {move || shelf.coded.get().map(|d| view! { <Code demo=d shut=Callback::new(move |()| { shelf.coded.set(None); view::to_view("link-it") }) /> })}
        </main>
    }
}

/// Begins the session, from either of its buttons.
#[derive(Clone, Copy)]
struct Present(Callback<()>);

/// Begins the session of the plan, on the wall.
fn present(shelf: Shelf, (lang, law): (Lang, &str), not_kept: &'static str) {
    let s = shelf.mine.with_untracked(|m| shelf.plan.with_untracked(|p| store::session_of(p, m)));
    if s.turns.is_empty() {
        return;
    }
    // What the last one came to becomes a record of its own first.
    super::held::keep_session(lang, law);
    if store::keep_session(&s) {
        view::go(View::Wall);
    } else {
        shelf.told.set(not_kept.to_owned());
    }
}

/// The plan: what is shown in which order, against the time there is.
#[component]
fn PlanOf(shelf: Shelf) -> impl IntoView {
    let settings = settings();
    let Present(begin) = expect_context();
    // The plan that a file took the place of.
    let before = RwSignal::new(None::<Plan>);
    let plan = shelf.plan;
    let unfinished = RwSignal::new(store::load_session().is_some_and(|s| !s.is_over()));
    let move_by = move |at: usize, by: isize| {
        let to = at as isize + by;
        plan.update(|p| {
            if to >= 0 && (to as usize) < p.ids.len() {
                p.ids.swap(at, to as usize);
            }
        });
        if to >= 0 {
            view::focus_on(format!("plan-{to}"), "plan-h");
        }
    };
    let rows = move || {
        let r = settings.reader();
        let mut at_min = 0;
        let p = plan.get();
        let last = p.ids.len();
        shelf.mine.with(|mine| {
            p.ids
                .iter()
                .enumerate()
                .filter_map(|(i, id)| {
                    let d = store::found(*id, mine)?;
                    let name = r.lang.of(&d.name).to_owned();
                    let time = format!("{}:{:02}", at_min / 60, at_min % 60);
                    at_min += d.minutes;
                    let beside = store::found(d.partner, mine).map(|q| r.f(T::Beside, &[("name", r.lang.of(&q.name))]));
                    let id = *id;
                    Some(view! {
                        <li tabindex="-1" id=format!("plan-{i}") on:keydown=move |ev| if ev.alt_key() {
                            match ev.key().as_str() { "ArrowUp" => { ev.prevent_default(); move_by(i, -1) } "ArrowDown" => { ev.prevent_default(); move_by(i, 1) } _ => {} }
                        }>
                            <button type="button" class="plan-name" on:click=move |_| shelf.chosen.set(id)><strong>{name.clone()}</strong><small>{beside}</small></button>
                            <span class="plan-min">{r.f(T::Minutes, &[("n", &d.minutes.to_string())])}<small>{r.f(T::At, &[("time", &time)])}</small></span>
                            <button type="button" class="step" prop:disabled=i == 0 aria-label=r.f(T::PlanUp, &[("name", &name)]) on:click=move |_| move_by(i, -1)>"↑"</button>
                            <button type="button" class="step" prop:disabled=i + 1 == last aria-label=r.f(T::PlanDown, &[("name", &name)]) on:click=move |_| move_by(i, 1)>"↓"</button>
                            <button type="button" class="step" aria-label=r.f(T::PlanOut, &[("name", &name)]) on:click=move |_| { plan.update(|p| { p.ids.remove(i); }); view::to_view("plan-h") }>"✕"</button></li>
                    })
                })
                .collect_view()
        })
    };
    let total = move || {
        let r = settings.reader();
        let p = plan.get();
        let n: u32 =
            shelf.mine.with(|m| p.ids.iter().filter_map(|id| store::found(*id, m)).map(|d| d.minutes).sum());
        let over = (n > p.slot_min).then(|| r.f(T::PlanOver, &[("n", &(n - p.slot_min).to_string())]));
        let told = r.f(T::PlanTotal, &[("n", &n.to_string()), ("slot", &p.slot_min.to_string())]);
        let share =
            format!("width:{:.0}%", 100.0 * f64::from(n.min(p.slot_min)) / f64::from(p.slot_min.max(1)));
        view! { <p class="plan-total"><b>{told}</b>" "{over}</p><div class="plan-bar" aria-hidden="true"><i prop:style=share></i></div> }
    };
    let save = move |_| {
        let text = shelf.mine.with_untracked(|m| plan.with_untracked(|p| plan_file::write(p, m)));
        download("shortfall-plan.json", "application/json", &text);
    };
    let open = move |ev: web_sys::Event| {
        let Some(input) = ev.target().and_then(|t| t.dyn_into::<web_sys::HtmlInputElement>().ok()) else {
            return;
        };
        let Some(file) = input.files().and_then(|f| f.get(0)) else { return };
        input.set_value("");
        spawn_local(async move {
            let text = JsFuture::from(file.text()).await.ok().and_then(|t| t.as_string());
            let r = settings.reader_now();
            let read = text
                .ok_or(NoPlan::Broken)
                .and_then(|t| shelf.mine.with_untracked(|m| plan_file::read(&t, m)));
            shelf.gone.set(None);
            match read {
                Ok(read) => {
                    let (fresh, own, left_out) = (read.plan, read.own, read.left_out);
                    let n = fresh.ids.len().to_string();
                    let old = plan.get_untracked();
                    before.set((!old.ids.is_empty() && old != fresh).then_some(old));
                    shelf.mine.update(|m| m.extend(own));
                    let mut told = r.f(T::PlanOpened, &[("n", &n)]);
                    if left_out > 0 {
                        told = format!("{told} {}", r.f(T::PlanLeftOut, &[("n", &left_out.to_string())]));
                    }
                    shelf.told.set(told);
                    shelf.keep(r.t(T::NotKept));
                    plan.set(fresh);
                }
                Err(NoPlan::Newer) => shelf.told.set(r.t(T::PlanNewer).to_owned()),
                Err(NoPlan::Broken) => shelf.told.set(r.t(T::PlanBroken).to_owned()),
            }
        });
    };
    let empty = move || plan.with(|p| p.ids.is_empty());
    view! {
        <section class="plan" aria-labelledby="plan-h">
            <h3 id="plan-h" tabindex="-1">{settings.s(T::Plan)}</h3>
            <div class="plan-head"><label class="line"><span>{settings.s(T::PlanName)}</span><input type="text" id="plan-name" maxlength="80" prop:value=move || plan.with(|p| p.name.clone())
                on:change=move |ev| plan.update(|p| p.name = event_target_value(&ev)) /></label>
                <label class="line"><span>{settings.s(T::PlanSlot)}</span><input type="text" inputmode="numeric" id="plan-slot" prop:value=move || plan.with(|p| p.slot_min.to_string())
                on:change=move |ev| plan.update(|p| p.slot_min = event_target_value(&ev).trim().parse().ok().filter(|n| (1..=480).contains(n)).unwrap_or(p.slot_min)) /></label></div>
            {total}
            <Show when=empty><p class="hint">{settings.s(T::PlanEmpty)}</p></Show>
            <ol class="plan-rows">{rows}</ol>
            <div class="row buttons">
                <button type="button" class="main" id="present" aria-disabled=move || empty().to_string() on:click=move |_| begin.run(())>{settings.s(T::PresentIt)}</button>
                <Show when=move || unfinished.get()><button type="button" id="go-on" on:click=move |_| view::go(View::Wall)>{settings.s(T::GoOn)}</button></Show>
                <button type="button" id="save-plan" on:click=save>{settings.s(T::SavePlan)}</button>
                <Show when=move || before.with(Option::is_some)><button type="button" id="plan-before" on:click=move |_| if let Some(old) = before.get_untracked() { before.set(None); plan.set(old); view::to_view("plan-h") }>{settings.s(T::PlanBefore)}</button></Show>
                <label class="file">{settings.s(T::OpenPlan)}<input type="file" id="open-plan" accept=".json,application/json" on:change=open /></label>
            </div>
        </section>
    }
}

/// The chosen one: what it asks, how it ends, and one's own words for it.
#[component]
fn Chosen(shelf: Shelf) -> impl IntoView {
    let (visit, settings) = (visit(), settings());
    let id = Memo::new(move |_| shelf.chosen.get());
    let is_own = Memo::new(move |_| id.get() >= OWN_FROM);
    let one = Memo::new(move |_| shelf.one());
    let played = move || {
        let d = one.get()?;
        let r = settings.reader();
        if shelf.falls.is_bad(d.id) {
            return Some(
                view! { <p class="played other"><b aria-hidden="true">"△ "</b>{r.t(T::HandNone)}</p> }
                    .into_any(),
            );
        }
        let f = shelf.falls.of(d.id)?;
        let Some(e) = f.ended() else {
            return Some(view! { <p class="hint">{r.t(T::NotShown)}</p> }.into_any());
        };
        let (severity, sentence) = verdict(r, &f);
        let same = e == d.expected;
        let told =
            r.f(if same { T::Played } else { T::PlayedOther }, &[("what", &r.t(e.label()).to_lowercase())]);
        let id = d.id;
        let take = (!same && id >= OWN_FROM).then(|| {
            view! { " "<button type="button" id="take-over" on:click=move |_| { shelf.edit(id, settings.t(T::NotKept), |o| o.demo.expected = e); view::to_view("chosen-h") }>{r.t(T::TakeOver)}</button> }
        });
        Some(view! { <p class="played" class:other=!same><b aria-hidden="true">{if same { "✓ " } else { "△ " }}</b>{told}{take}</p><p class="hint">{mark(severity)}" "{sentence}</p> }.into_any())
    };
    let copy = move |_| {
        let Some(d) = untrack(|| shelf.one()) else { return };
        let next = shelf
            .mine
            .with_untracked(|m| m.iter().map(|o| o.demo.id + 1).max().unwrap_or(OWN_FROM).max(OWN_FROM));
        let name = |lang: Lang, of: &str| {
            crate::texts::say::Reader { lang, ..settings.reader_now() }.f(T::CopyName, &[("name", of)])
        };
        let name = Bilingual { en: name(Lang::En, &d.name.en), fr: name(Lang::Fr, &d.name.fr) };
        // Beside a copy stands what it was made from, until another is chosen.
        let own = Own { demo: Demo { id: next, name, partner: d.id, ..d }, note: String::new() };
        shelf.mine.update(|m| m.push(own));
        shelf.chosen.set(next);
        shelf.keep(settings.t(T::NotKept));
        view::to_view("own-name");
    };
    let drop_it = move |_| {
        let id = id.get_untracked();
        let gone = shelf.mine.with_untracked(|m| m.iter().find(|o| o.demo.id == id).cloned());
        let Some(o) = gone else { return };
        let old = shelf.plan.get_untracked();
        shelf.mine.update(|m| m.retain(|x| x.demo.id != id));
        shelf.plan.update(|p| p.ids.retain(|x| *x != id));
        let r = settings.reader_now();
        shelf.told.set(r.f(T::Deleted, &[("name", r.lang.of(&o.demo.name))]));
        shelf.gone.set(Some((o, old)));
        view::to_view("bring-back");
        shelf.chosen.set(1);
        shelf.keep(r.t(T::NotKept));
    };
    let words = move || {
        let d = one.get()?;
        let r = settings.reader();
        let l = r.lang;
        let fact = facts::fact(r, &d, &d.set_up);
        let partner = shelf
            .mine
            .with(|m| store::found(d.partner, m))
            .map_or(r.t(T::NoPartner).to_owned(), |p| l.of(&p.name).to_owned());
        let row = |k: T, v: String| view! { <div><dt>{r.t(k)}</dt><dd>{v}</dd></div> };
        Some(view! {
            <h3 id="chosen-h" tabindex="-1">{l.of(&d.name).to_owned()}</h3><p class="hint">{r.t(d.family.label())}" · "{fact}</p>
            <dl class="told-of">{row(T::Say, l.of(&d.say).to_owned())}{row(T::Teaches, l.of(&d.point).to_owned())}{row(T::AfterAsk, l.of(&d.after).to_owned())}
                {row(T::Partner, partner)}{row(T::Expected, r.t(d.expected.label()).to_owned())}</dl>
        })
    };
    view! {
        <section class="chosen" aria-labelledby="chosen-h">
            {words}{played}
            {move || is_own.get().then(|| view! { <Mine shelf=shelf id=id.get() /> })}
            <div class="row buttons">
                <button type="button" class="main" id="add-to-plan" on:click=move |_| shelf.plan.update(|p| p.ids.push(id.get_untracked()))>{settings.s(T::AddToPlan)}</button>
                <button type="button" id="link-it" on:click=move |_| shelf.coded.set(untrack(|| shelf.one()))>{settings.s(T::LinkIt)}</button>
                <button type="button" id="make-mine" on:click=copy>{settings.s(T::MakeMine)}</button>
                <button type="button" id="open-it" on:click=move |_| if let Some(d) = untrack(|| shelf.one()) {
                    crate::ui::shared::store::note_aside(d.along_m);
                    view::to_bench(&d.under(&visit.set_up.with_untracked(|s| s.place.clone())));
                }>{settings.s(T::OpenIt)}</button>
                <Show when=move || is_own.get()>
                    <button type="button" id="take-set-up" on:click=move |_| {
                        let now = visit.set_up.get_untracked();
                        shelf.edit(id.get_untracked(), settings.t(T::NotKept), |o| o.demo.set_up = now);
                        shelf.gone.set(None);
                        shelf.told.set(settings.reader_now().t(T::TookSetUp).to_owned());
                    }>{settings.s(T::TakeSetUp)}</button>
                    <button type="button" class="plain" id="delete-mine" on:click=drop_it>{settings.s(T::DeleteMine)}</button>
                </Show>
            </div>
        </section>
    }
}

/// One's own words: name, what is said, the partner, how it is said to end, minutes, a note.
#[component]
fn Mine(shelf: Shelf, id: u32) -> impl IntoView {
    let settings = settings();
    let own = move || shelf.mine.with(|m| m.iter().find(|o| o.demo.id == id).cloned());
    let not_kept = move || settings.t(T::NotKept);
    // What is typed stands for both languages: a translation of what it was before would say something else.
    let put = move |b: &mut Bilingual, text: String| {
        *b = Bilingual { en: text.clone(), fr: text };
    };
    let text = move |key: T,
                     html_id: &'static str,
                     get: fn(&Demo) -> &Bilingual,
                     get_mut: fn(&mut Demo) -> &mut Bilingual| {
        view! { <label class="line"><span>{settings.s(key)}</span><input type="text" id=html_id maxlength="200"
        prop:value=move || own().map_or(String::new(), |o| settings.lang.get().of(get(&o.demo)).to_owned())
        on:change=move |ev| { let t = event_target_value(&ev); shelf.edit(id, not_kept(), |o| put(get_mut(&mut o.demo), t)) } /></label> }
    };
    let partners = move || {
        let r = settings.reader();
        let me = own()?;
        let all = demos()
            .to_vec()
            .into_iter()
            .chain(shelf.mine.get().into_iter().map(|o| o.demo))
            .filter(|d| d.id != id && d.is_along() == me.demo.is_along());
        let mut options = vec![(0, r.t(T::NoPartner).to_owned())];
        options.extend(all.map(|d| (d.id, r.lang.of(&d.name).to_owned())));
        Some(options.into_iter().map(|(n, name)| view! { <option value=n.to_string() prop:selected=me.demo.partner == n>{name}</option> }).collect_view())
    };
    let ends = move || {
        let r = settings.reader();
        let me = own()?;
        Some(me.demo.answers().into_iter().enumerate().map(|(i, e)| view! { <option value=i.to_string() prop:selected=me.demo.expected == e>{r.t(e.label())}</option> }).collect_view())
    };
    let set_end = move |ev: web_sys::Event| {
        let n = event_target_value(&ev).parse::<usize>().unwrap_or(0);
        shelf.edit(id, not_kept(), |o| {
            o.demo.expected = o.demo.answers().get(n).copied().unwrap_or(Ends::Holds)
        });
    };
    view! {
        <div class="mine">
            {text(T::NameLabel, "own-name", |d| &d.name, |d| &mut d.name)}
            {text(T::Say, "own-say", |d| &d.say, |d| &mut d.say)}
            {text(T::Teaches, "own-point", |d| &d.point, |d| &mut d.point)}
            {text(T::AfterAsk, "own-after", |d| &d.after, |d| &mut d.after)}
            <label class="line"><span>{settings.s(T::Partner)}</span><select id="own-partner" on:change=move |ev| { let n = event_target_value(&ev).parse().unwrap_or(0); shelf.edit(id, not_kept(), |o| o.demo.partner = n) }>{partners}</select></label>
            <label class="line"><span>{settings.s(T::Expected)}</span><select id="own-end" on:change=set_end>{ends}</select></label>
            <label class="line"><span>{settings.s(T::PlanMinutes)}</span><input type="text" inputmode="numeric" id="own-minutes" prop:value=move || own().map_or(String::new(), |o| o.demo.minutes.to_string())
                on:change=move |ev| { match event_target_value(&ev).trim().parse().ok().filter(|n| (1..=240).contains(n)) { Some(n) => shelf.edit(id, not_kept(), |o| o.demo.minutes = n), None => shelf.mine.update(|_| ()) } } /></label>
            <label class="line"><span>{settings.s(T::MyNote)}</span><textarea id="own-note" rows="2" maxlength="2000" prop:value=move || own().map_or(String::new(), |o| o.note)
                on:input=move |ev| { let t = event_target_value(&ev); shelf.edit(id, not_kept(), |o| o.note = t) }></textarea></label>
            <p class="hint">{settings.s(T::NoteWhere)}</p>
        </div>
    }
}

/// A scenario's number in the address: its set-up is opened, a guess first.
#[component]
pub fn Numbered(id: u32) -> impl IntoView {
    let (visit, settings) = (visit(), settings());
    let found = store::found(id, &[]);
    if let Some(d) = found.clone() {
        crate::ui::shared::store::note_aside(d.along_m);
        view::to_bench(&d.under(&visit.set_up.with_untracked(|s| s.place.clone())));
    }
    view! {
        <main class="page"><p role="alert">{move || if found.is_some() { settings.t(Key::RoomsComing).to_owned() } else {
            settings.reader().f(T::LinkGone, &[("n", &id.to_string())]) }}</p></main>
    }
}
