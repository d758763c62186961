//! Mounts the rooms beside the bench, nothing else.

fn main() {
    console_error_panic_hook::set_once();
    shortfall::ui::mount_rooms();
}
