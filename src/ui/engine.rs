//! The page's end of the engine: starts the worker, sends questions, hands on the answers.
//!
//! The worker says one plain `true` when it is ready; questions asked before wait for it. A worker
//! that cannot start or fails is reported once and every open question is dropped.

use crate::engine::{Answer, Ask, pack, unpack};
use js_sys::Uint8Array;
use std::cell::RefCell;
use std::collections::HashMap;
use wasm_bindgen::prelude::*;
use web_sys::{MessageEvent, Worker};

type Then = Box<dyn FnOnce(Option<Answer>)>;

#[derive(Default)]
struct Line {
    worker: Option<Worker>,
    ready: bool,
    next: u32,
    waiting: Vec<Vec<u8>>,
    open: HashMap<u32, Then>,
}

thread_local! {
    static LINE: RefCell<Line> = RefCell::default();
}

/// Starts the worker, so that it is ready when the first fall is asked for.
pub fn start() {
    // A question asked while the page mounts has started it already.
    if LINE.with_borrow(|l| l.worker.is_some()) {
        return;
    }
    let Ok(worker) = Worker::new("./engine-start.js") else { return };
    let hear = Closure::<dyn Fn(MessageEvent)>::new(|ev: MessageEvent| {
        if ev.data().is_truthy() && !ev.data().is_object() {
            let waiting = LINE.with_borrow_mut(|l| {
                l.ready = true;
                std::mem::take(&mut l.waiting)
            });
            waiting.iter().for_each(|bytes| post(bytes));
            return;
        }
        if let Ok((id, answer)) = unpack::<Answer>(&Uint8Array::new(&ev.data()).to_vec()) {
            let then = LINE.with_borrow_mut(|l| l.open.remove(&id));
            if let Some(then) = then {
                then(Some(answer));
            }
        }
    });
    worker.set_onmessage(Some(hear.as_ref().unchecked_ref()));
    hear.forget();
    let fail = Closure::<dyn Fn()>::new(|| {
        let open = LINE.with_borrow_mut(|l| {
            l.worker = None;
            l.ready = false;
            l.waiting.clear();
            std::mem::take(&mut l.open)
        });
        open.into_values().for_each(|then| then(None));
    });
    worker.set_onerror(Some(fail.as_ref().unchecked_ref()));
    fail.forget();
    LINE.with_borrow_mut(|l| l.worker = Some(worker));
}

fn post(bytes: &[u8]) {
    let sent = LINE.with_borrow(|l| l.worker.clone()).map(|w| w.post_message(&Uint8Array::from(bytes)));
    debug_assert!(!matches!(sent, Some(Err(_))));
}

/// Asks; `then` hears the answer, or `None` when the engine cannot run.
pub fn ask(ask: &Ask, then: impl FnOnce(Option<Answer>) + 'static) {
    if LINE.with_borrow(|l| l.worker.is_none()) {
        start();
    }
    let id = LINE.with_borrow_mut(|l| {
        l.next += 1;
        l.next
    });
    let bytes = pack(id, ask).ok().filter(|_| LINE.with_borrow(|l| l.worker.is_some()));
    let Some(bytes) = bytes else { return then(None) };
    let ready = LINE.with_borrow_mut(|l| {
        l.open.insert(id, Box::new(then));
        if !l.ready {
            l.waiting.push(bytes.clone());
        }
        l.ready
    });
    if ready {
        post(&bytes);
    }
}
