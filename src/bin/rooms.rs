//! Mounts the rooms beside the bench, nothing else.

fn main() {
    shortfall::ui::mount_rooms();
}
