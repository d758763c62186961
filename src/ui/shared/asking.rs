//! The page's end of the engine: starts the worker, sends questions, hands on the answers.
//!
//! The worker says one plain `true` when it is ready, `false` when its module cannot be had; questions
//! asked before wait. A worker that fails, ends or falls silent is started once more with the questions
//! still open. Lost again, the person is told ([`Lost`]); the questions stay open, and another try, the
//! next question or the network coming back asks them again. One that has cost four workers is answered
//! by [`NoAnswer`], and the person is told.

use super::settings::settings;
use super::view;
use crate::texts::Key;
use crate::worker::Question;
use crate::worker::wire::{number, pack, unpack};
use js_sys::Uint8Array;
use leptos::prelude::*;
use std::cell::RefCell;
use std::collections::BTreeMap;
use std::time::Duration;
use wasm_bindgen::prelude::*;
use web_sys::{MessageEvent, Worker};

/// Silence with a question open after which a worker counts as lost, ms. The longest answers take some
/// seconds; a slow phone ten times that.
const SILENCE_MS: f64 = 60_000.0;
/// How often that is looked at.
const LOOK: Duration = Duration::from_secs(5);
/// Before a second worker is started.
const PAUSE: Duration = Duration::from_millis(800);
/// Workers after which the person is told, and after which a question is given up.
const TOLD_LOSSES: u32 = 2;
const MOST_LOSSES: u32 = 4;

/// The engine cannot run: the person was told so, with a way to try again.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NoAnswer;

/// Hears the bytes of an answer, or none.
type Then = Box<dyn FnOnce(Option<&[u8]>)>;

struct Open {
    bytes: Vec<u8>,
    then: Then,
    losses: u32,
}

#[derive(Default)]
struct Line {
    worker: Option<Worker>,
    ready: bool,
    watched: bool,
    next: u32,
    heard_ms: f64,
    open: BTreeMap<u32, Open>,
    /// Told when a worker is there, and when it is lost for good.
    back: Vec<Box<dyn Fn()>>,
    lost: Vec<Box<dyn Fn()>>,
}

thread_local! {
    static LINE: RefCell<Line> = RefCell::default();
}

fn now_ms() -> f64 {
    js_sys::Date::now()
}

/// Starts the worker, so that it is ready when the first fall is asked for.
pub fn start() {
    // A question asked while the page mounts has started it already.
    if LINE.with_borrow(|l| l.worker.is_some()) {
        return;
    }
    let Ok(worker) = Worker::new(&view::part("engine-start.js")) else { return tell() };
    let hear = Closure::<dyn Fn(MessageEvent)>::new(|ev: MessageEvent| {
        LINE.with_borrow_mut(|l| l.heard_ms = now_ms());
        match ev.data().as_bool() {
            Some(true) => return ready(),
            Some(false) => return lost(),
            None => {}
        }
        let bytes = Uint8Array::new(&ev.data()).to_vec();
        if let Ok((id, rest)) = number(&bytes) {
            let open = LINE.with_borrow_mut(|l| l.open.remove(&id));
            if let Some(open) = open {
                (open.then)(Some(rest));
            }
        }
    });
    worker.set_onmessage(Some(hear.as_ref().unchecked_ref()));
    hear.forget();
    let fail = Closure::<dyn Fn()>::new(lost);
    worker.set_onerror(Some(fail.as_ref().unchecked_ref()));
    fail.forget();
    let watched = LINE.with_borrow_mut(|l| {
        l.worker = Some(worker);
        l.ready = false;
        l.heard_ms = now_ms();
        std::mem::replace(&mut l.watched, true)
    });
    if !watched {
        set_interval(
            || {
                let silent = LINE.with_borrow(|l| {
                    l.worker.is_some() && !l.open.is_empty() && now_ms() - l.heard_ms > SILENCE_MS
                });
                if silent {
                    lost();
                }
            },
            LOOK,
        );
        view::on_window("online", start);
    }
}

fn ready() {
    let back = LINE.with_borrow_mut(|l| std::mem::take(&mut l.back));
    back.iter().for_each(|f| f());
    LINE.with_borrow_mut(|l| l.back = back);
    let waiting: Vec<Vec<u8>> = LINE.with_borrow_mut(|l| {
        l.ready = true;
        l.open.values().map(|o| o.bytes.clone()).collect()
    });
    waiting.iter().for_each(|bytes| post(bytes));
}

/// Tells the person that the engine does not answer ([`Lost`]): this download's, since the other has its own.
fn tell() {
    let hears = LINE.with_borrow_mut(|l| std::mem::take(&mut l.lost));
    hears.iter().for_each(|f| f());
    LINE.with_borrow_mut(|l| l.lost.extend(hears));
}

/// The worker is gone: what is open is asked of another.
fn lost() {
    let (gone, most): (Vec<Then>, u32) = LINE.with_borrow_mut(|l| {
        if let Some(w) = l.worker.take() {
            w.terminate();
        }
        l.ready = false;
        l.open.values_mut().for_each(|o| o.losses += 1);
        let ids: Vec<u32> =
            l.open.iter().filter(|(_, o)| o.losses >= MOST_LOSSES).map(|(id, _)| *id).collect();
        let gone = ids.into_iter().filter_map(|id| l.open.remove(&id)).map(|o| o.then).collect();
        (gone, l.open.values().map(|o| o.losses).max().unwrap_or(0))
    });
    if most >= TOLD_LOSSES || !gone.is_empty() {
        tell();
    } else if most > 0 {
        set_timeout(start, PAUSE);
    }
    gone.into_iter().for_each(|then| then(None));
}

/// Says that the engine does not answer, with a way to try again; gone once it does.
#[component]
pub fn Lost() -> impl IntoView {
    let settings = settings();
    let is_lost = RwSignal::new(false);
    LINE.with_borrow_mut(|l| {
        l.lost.push(Box::new(move || {
            is_lost.try_set(true);
        }));
        l.back.push(Box::new(move || {
            is_lost.try_set(false);
        }))
    });
    view! {
        <div role="alert"><Show when=move || is_lost.get()>
            <p class="problems engine-lost">{settings.s(Key::EngineMissing)}" "
                <button type="button" on:click=move |_| { is_lost.set(false); start() }>{settings.s(Key::TryAgain)}</button></p>
        </Show></div>
    }
}

fn post(bytes: &[u8]) {
    let sent = LINE.with_borrow(|l| l.worker.clone()).map(|w| w.post_message(&Uint8Array::from(bytes)));
    debug_assert!(!matches!(sent, Some(Err(_))));
}

/// Asks; `then` hears the answer, or that there is none: the person has then been told so already, and
/// what is left to do is to leave nothing waiting.
pub fn ask<Q: Question + 'static>(question: Q, then: impl FnOnce(Result<Q::Answer, NoAnswer>) + 'static) {
    let bytes = |id| pack(id, &(Q::NUMBER, &question)).ok();
    send(
        bytes,
        Box::new(move |rest| {
            let answer = rest.and_then(|rest| unpack(rest).ok()).ok_or(NoAnswer);
            if answer.is_err() {
                tell();
            }
            then(answer);
        }),
    );
}

fn send(bytes: impl FnOnce(u32) -> Option<Vec<u8>>, then: Then) {
    start();
    let id = LINE.with_borrow_mut(|l| {
        l.next += 1;
        l.next
    });
    let bytes = bytes(id).filter(|_| LINE.with_borrow(|l| l.worker.is_some()));
    let Some(bytes) = bytes else { return then(None) };
    let ready = LINE.with_borrow_mut(|l| {
        if l.open.is_empty() {
            l.heard_ms = now_ms();
        }
        l.open.insert(id, Open { bytes: bytes.clone(), then, losses: 0 });
        l.ready
    });
    if ready {
        post(&bytes);
    }
}
