// The rooms beside the bench: starts the module that was just loaded.
wasm_bindgen({ module_or_path: "./rooms_bg.wasm" }).catch(() => dispatchEvent(new Event("shortfall-rooms-lost")));
