//! The engine's worker: reads a question from the page, answers it, nothing else.

use js_sys::Uint8Array;
use shortfall::worker::wire::{number, unpack};
use shortfall::worker::{Ask, reply};
use wasm_bindgen::prelude::*;
use web_sys::{DedicatedWorkerGlobalScope, MessageEvent};

fn main() {
    console_error_panic_hook::set_once();
    let scope: DedicatedWorkerGlobalScope = js_sys::global().unchecked_into();
    let out = scope.clone();
    let hear = Closure::<dyn Fn(MessageEvent)>::new(move |ev: MessageEvent| {
        let bytes = Uint8Array::new(&ev.data()).to_vec();
        let said = number(&bytes).and_then(|(id, rest)| reply(id, unpack::<Ask>(rest)?));
        // What cannot be read or written counts as a worker that is lost: the page tells it.
        let _ = match said {
            Ok(bytes) => out.post_message(&Uint8Array::from(bytes.as_slice())),
            Err(_) => out.post_message(&JsValue::FALSE),
        };
    });
    scope.set_onmessage(Some(hear.as_ref().unchecked_ref()));
    hear.forget();
    // Ready: the page holds its questions until now.
    let _ = scope.post_message(&JsValue::TRUE);
}
