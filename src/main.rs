//! Mounts the app, nothing else.

fn main() {
    shortfall::ui::mount();
}
