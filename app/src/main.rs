//! Mounts the application; nothing else.

fn main() {
    putback_app::panic_notice::install();
    putback_app::app::mount();
}
