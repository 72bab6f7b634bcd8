//! When the texts of findings follow the document: once nobody has typed for a moment, so that the margin does not
//! flicker.

use super::clock;
use super::editor_store::{EditorStore, Parts};
use leptos::leptos_dom::helpers::set_timeout_with_handle;
use leptos::prelude::*;
use std::time::Duration;

/// After so many milliseconds the texts of findings follow the document.
const SETTLE_MS: u64 = 300;

impl EditorStore {
    /// Lets the texts of findings follow: at once, or after a pause. A key moves the end of the pause and leaves the timer
    /// as it is, which then looks again.
    pub(super) fn settle_soon(self, is_typing: bool) {
        let Parts { settling, settles_ms, .. } = self.parts();
        if !is_typing {
            self.settle_now();
            return;
        }
        settles_ms.set_value(clock::now_ms() + SETTLE_MS);
        if settling.with_value(Option::is_none) {
            self.settle_after(SETTLE_MS);
        }
    }

    fn settle_after(self, wait_ms: u64) {
        let timer = set_timeout_with_handle(move || self.settle_once_calm(), Duration::from_millis(wait_ms));
        self.parts().settling.set_value(timer.ok());
    }

    fn settle_once_calm(self) {
        self.parts().outdated.update_value(Vec::clear);
        let left_ms = self.parts().settles_ms.get_value().saturating_sub(clock::now_ms());
        if left_ms > 0 {
            // Never more than the pause, whatever is done to the clock of the device.
            self.settle_after(left_ms.min(SETTLE_MS));
        } else {
            self.settle_now();
        }
    }

    pub(super) fn settle_now(self) {
        if let Some(timer) = self.parts().settling.try_update_value(Option::take).flatten() {
            timer.clear();
        }
        self.parts().outdated.update_value(Vec::clear);
        self.parts().settled.set(self.parts().judged.get_untracked());
        self.parts().spread.lane_rows.follow_up();
    }
}
