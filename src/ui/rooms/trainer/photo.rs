//! A photo of the house, laid under its points. It is held in memory alone: never kept, linked, exported or printed.

use crate::practice::photo::{Mark, Marks, Read, read};
use crate::texts::Trainer as T;
use crate::ui::shared::settings::settings;
use crate::units::{Quantity, Rounding, read_length};
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// What the six points are.
const NAMES: [T; 6] = [T::PhotoA, T::PhotoB, T::PhotoGround, T::PhotoWall, T::PhotoEave, T::PhotoRidge];
/// Where they stand at first, as shares of the photo.
const FIRST: [(f64, f64); 6] =
    [(0.25, 0.6), (0.25, 0.8), (0.7, 0.85), (0.7, 0.4), (0.75, 0.38), (0.35, 0.15)];
/// A key moves a point so far, and with shift, as shares of the photo's longer side.
const KEY_SHARE: f64 = 0.004;
const FAR_SHARE: f64 = 0.02;
/// A door, m: what is mostly measured.
const DOOR_M: f64 = 2.03;

/// The photo, its size, and its points.
#[derive(Clone, Copy)]
struct Photo {
    url: RwSignal<Option<String>>,
    size: RwSignal<(f64, f64)>,
    marks: RwSignal<[(f64, f64); 6]>,
    known_m: RwSignal<f64>,
    bad: RwSignal<bool>,
}

impl Photo {
    fn long_px(self) -> f64 {
        let (w, h) = self.size.get();
        w.max(h).max(1.0)
    }

    fn put(self, i: usize, (x, y): (f64, f64)) {
        let (w, h) = self.size.get_untracked();
        self.marks.update(|m| m[i] = (x.clamp(0.0, w.max(1.0)), y.clamp(0.0, h.max(1.0))));
    }

    fn read(self) -> Option<Read> {
        let [a, b, ground, wall, eave, ridge] = self.marks.get().map(|(x_px, y_px)| Mark { x_px, y_px });
        read(&Marks { known: [a, b], ground, wall, eave, ridge }, self.known_m.get(), self.long_px())
    }

    fn drop_url(self) {
        if let Some(Some(url)) = self.url.try_get_untracked() {
            let _ = web_sys::Url::revoke_object_url(&url);
        }
    }
}

/// The fold of the sheet's room: a photo, six points, what they read, and a button that takes it.
#[component]
pub fn PhotoRead(take: Callback<Read>) -> impl IntoView {
    let settings = settings();
    let photo = Photo {
        url: RwSignal::new(None),
        size: RwSignal::new((0.0, 0.0)),
        marks: RwSignal::new([(0.0, 0.0); 6]),
        known_m: RwSignal::new(DOOR_M),
        bad: RwSignal::new(false),
    };
    on_cleanup(move || photo.drop_url());
    let taken = RwSignal::new(false);
    let pick = move |ev: web_sys::Event| {
        let Some(input) = ev.target().and_then(|t| t.dyn_into::<web_sys::HtmlInputElement>().ok()) else {
            return;
        };
        let Some(file) = input.files().and_then(|f| f.get(0)) else { return };
        photo.drop_url();
        photo.bad.set(false);
        taken.set(false);
        photo.url.set(web_sys::Url::create_object_url_with_blob(&file).ok());
        input.set_value("");
    };
    let loaded = move |ev: web_sys::Event| {
        let of = |k: &str| {
            ev.target().and_then(|t| js_sys::Reflect::get(&t, &k.into()).ok()).and_then(|v| v.as_f64())
        };
        let (w, h) = (of("naturalWidth").unwrap_or(0.0), of("naturalHeight").unwrap_or(0.0));
        photo.size.set((w, h));
        photo.marks.set(FIRST.map(|(x, y)| (x * w, y * h)));
    };
    let held = StoredValue::new(None::<usize>);
    let at = move |ev: &web_sys::PointerEvent| {
        let e = ev.current_target()?.dyn_into::<web_sys::Element>().ok()?;
        let b = e.closest(".photo").ok()??.get_bounding_client_rect();
        let (w, h) = photo.size.get_untracked();
        Some((
            (f64::from(ev.client_x()) - b.left()) / b.width().max(1.0) * w,
            (f64::from(ev.client_y()) - b.top()) / b.height().max(1.0) * h,
        ))
    };
    let words = move || {
        let r = settings.reader();
        let Some(q) = photo.read() else { return r.t(T::PhotoNone).to_owned() };
        let len = |m: f64, how| r.q(Quantity::Length, m, how);
        let near = |m: f64| len(m, Rounding::Nearest);
        let pitch = crate::texts::number(r.lang, libm::tan(q.pitch_rad) * 12.0, 1);
        let told = r.f(
            T::PhotoReads,
            &[
                ("eave", &near(q.eave_m)),
                ("span", &near(q.span_m)),
                ("over", &near(q.overhang_m)),
                ("pitch", &pitch),
                ("doubt", &len(q.doubt_m, Rounding::Up)),
            ],
        );
        if q.leans { format!("{told} {}", r.t(T::PhotoLeans)) } else { told }
    };
    let points = move || {
        let (w, h) = photo.size.get();
        (w > 0.0 && h > 0.0).then(|| {
            (0..6)
                .map(|i| {
                    let place = move || {
                        let (x, y) = photo.marks.with(|m| m[i]);
                        format!("left:{:.2}%;top:{:.2}%", 100.0 * x / w, 100.0 * y / h)
                    };
                    let label = move || {
                        let (x, y) = photo.marks.with(|m| m[i]);
                        let r = settings.reader();
                        let share = |v: f64, of: f64| r.percent((v / of * 1e3).round() / 1e3);
                        r.f(T::PhotoAt, &[("name", r.t(NAMES[i])), ("x", &share(x, w)), ("y", &share(y, h))])
                    };
                    let key = move |ev: web_sys::KeyboardEvent| {
                        let by = photo.long_px() * if ev.shift_key() { FAR_SHARE } else { KEY_SHARE };
                        let (dx, dy) = match ev.key().as_str() {
                            "ArrowLeft" => (-by, 0.0),
                            "ArrowRight" => (by, 0.0),
                            "ArrowUp" => (0.0, -by),
                            "ArrowDown" => (0.0, by),
                            _ => return,
                        };
                        ev.prevent_default();
                        let (x, y) = photo.marks.with_untracked(|m| m[i]);
                        photo.put(i, (x + dx, y + dy));
                    };
                    let down = move |ev: web_sys::PointerEvent| {
                        held.set_value(Some(i));
                        if let Some(e) = ev.current_target().and_then(|t| t.dyn_into::<web_sys::Element>().ok()) {
                            let _ = e.set_pointer_capture(ev.pointer_id());
                        }
                    };
                    view! {
                        <button type="button" class="photo-point" class:known=i < 2 data-point=i.to_string() aria-label=label prop:style=place on:keydown=key on:pointerdown=down
                            on:pointermove=move |ev| if let (true, Some(q)) = (held.get_value() == Some(i), at(&ev)) { photo.put(i, q) }
                            on:pointerup=move |_| held.set_value(None) on:pointercancel=move |_| held.set_value(None)><span>{i + 1}</span></button>
                    }
                })
                .collect_view()
        })
    };
    // What is read, drawn over the photo.
    let lines = move || {
        let (w, h) = photo.size.get();
        let [a, b, ground, wall, eave, ridge] = photo.marks.get();
        let seg = |p: (f64, f64), q: (f64, f64)| format!("M{:.1} {:.1}L{:.1} {:.1}", p.0, p.1, q.0, q.1);
        view! { <svg viewBox=format!("0 0 {w} {h}") aria-hidden="true"><path class="known" d=seg(a, b) /><path d=seg(ground, wall) + &seg(wall, eave) + &seg(eave, ridge) /></svg> }
    };
    let known = move || settings.reader().q(Quantity::Length, photo.known_m.get(), Rounding::Nearest);
    let set_known =
        move |ev: web_sys::Event| match read_length(&event_target_value(&ev), settings.reader_now().units) {
            Some(m) if m > 0.05 && m < 50.0 => photo.known_m.set(m),
            // The field shows again what stands.
            _ => photo.known_m.update(|_| ()),
        };
    view! {
        <details class="guide photo-read"><summary>{settings.s(T::PhotoName)}</summary>
            <p><strong>{settings.s(T::PhotoStays)}</strong></p>
            <label class="file">{settings.s(T::PhotoPick)}<input type="file" id="photo-file" accept="image/*" on:change=pick /></label>
            <p class="problems" role="alert" class:away=move || !photo.bad.get()>{settings.s(T::PhotoBad)}</p>
            {move || photo.url.get().map(|url| view! {
                <p class="hint">{settings.s(T::PhotoHow)}</p>
                <ol class="photo-names">{NAMES.map(|n| view! { <li>{settings.s(n)}</li> }).into_iter().collect_view()}</ol>
                <div class="photo"><img src=url alt="" on:load=loaded on:error=move |_| { photo.bad.set(true); photo.url.set(None) } />{lines}{points}</div>
                <label class="line"><span>{settings.s(T::PhotoKnown)}</span><input type="text" id="photo-known" prop:value=known on:change=set_known /></label>
                <p class="figure-line" role="status" id="photo-words">{words}</p>
                <button type="button" class="main" id="photo-take" aria-disabled=move || photo.read().is_none().to_string() on:click=move |_| if let Some(q) = untrack(|| photo.read()) { take.run(q); taken.set(true) }>{settings.s(T::PhotoTake)}</button>
                <p class="hint" role="status">{move || taken.get().then(|| settings.t(T::PhotoTaken))}</p>
            })}
        </details>
    }
}
