// The engine's worker: loads the module beside it; says false when it cannot be had.
try {
  importScripts("./engine.js");
  wasm_bindgen({ module_or_path: "./engine_bg.wasm" }).catch(() => postMessage(false));
} catch {
  postMessage(false);
}
