//! The screen. The only folder that knows Leptos and web-sys; nothing else sees it.
//!
//! Signals live in `state`; a fall is computed whole, graded, and then played back by `player`, a
//! clock over the finished trace. `drawing` and `plot` only read.

mod drawing;
mod forms;
mod page;
mod player;
mod plot;
mod setup;
mod state;
mod storage;
mod verdict;

use wasm_bindgen::prelude::wasm_bindgen;

/// Mounts the app over the static shell.
pub fn mount() {
    if let Some(shell) = leptos::prelude::document().get_element_by_id("shell") {
        shell.remove();
    }
    leptos::mount::mount_to_body(page::App);
    storage::work_offline();
}

/// The headless program's answer, in the browser: a scenario file in, the outcome as JSON out.
/// Tests use it to prove that both compute the same bits.
///
/// # Errors
/// One line that names the field.
#[wasm_bindgen]
pub fn fall_json(scenario: &str) -> Result<String, String> {
    let s = crate::report::read_scenario(scenario)?;
    serde_json::to_string(&crate::report::outcome_json(&s)).map_err(|e| e.to_string())
}
