//! Mounts the app, nothing else.

fn main() {
    console_error_panic_hook::set_once();
    shortfall::ui::mount();
}
