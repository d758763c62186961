//! The engine's worker: reads a question from the page, answers it, nothing else.

use js_sys::Uint8Array;
use shortfall::worker::{Ask, answer, pack, unpack};
use wasm_bindgen::prelude::*;
use web_sys::{DedicatedWorkerGlobalScope, MessageEvent};

fn main() {
    console_error_panic_hook::set_once();
    let scope: DedicatedWorkerGlobalScope = js_sys::global().unchecked_into();
    let out = scope.clone();
    let hear = Closure::<dyn Fn(MessageEvent)>::new(move |ev: MessageEvent| {
        let bytes = Uint8Array::new(&ev.data()).to_vec();
        let Ok((id, ask)) = unpack::<Ask>(&bytes) else { return };
        if let Ok(bytes) = pack(id, &answer(ask)) {
            let _ = out.post_message(&Uint8Array::from(bytes.as_slice()));
        }
    });
    scope.set_onmessage(Some(hear.as_ref().unchecked_ref()));
    hear.forget();
    // Ready: the page holds its questions until now.
    let _ = scope.post_message(&JsValue::TRUE);
}
