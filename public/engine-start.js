// The engine's worker: loads the module beside it.
importScripts("./engine.js");
wasm_bindgen({ module_or_path: "./engine_bg.wasm" });
