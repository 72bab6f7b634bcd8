//! Which procedure this tab has open, so that a reload shows it again and not what another tab opened since.

use gloo_storage::{SessionStorage, Storage};

const OPEN: &str = "putback.open";

/// The procedure that was open in this tab.
pub fn open() -> Option<String> {
    SessionStorage::get(OPEN).ok()
}

/// Notes the open procedure; without a place for it a reload shows what was opened last on the device.
pub fn note(document: &str) {
    let _ = SessionStorage::set(OPEN, document);
}
