//! Mounts the app, nothing else.

fn main() {
    // In a task of its own: a phone that has just made the module ready first answers a finger.
    leptos::prelude::set_timeout(shortfall::ui::mount, core::time::Duration::ZERO);
}
