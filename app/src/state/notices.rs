//! When a notice goes by itself: once something else has been done, or another screen is shown.
//!
//! A notice of the same act stays, for an act may tell something before it is through.

use super::clock;
use super::editor_store::EditorStore;
use leptos::prelude::*;

/// So long after a notice came, what happens is another act.
const SAME_ACT_MS: u64 = 1_500;

impl EditorStore {
    /// Takes note of when each notice comes.
    pub(super) fn watch_notices(self) {
        let (notice, came_ms) = (self.notice(), self.parts().notice_ms);
        Effect::new(move |_| {
            if notice.with(Option::is_some) {
                came_ms.set_value(clock::now_ms());
            }
        });
    }

    /// Lets go of a notice that was told before what has just been done.
    pub fn let_go_of_notice(self) {
        let is_told = self.notice().with_untracked(Option::is_some);
        if is_told && clock::now_ms().saturating_sub(self.parts().notice_ms.get_value()) > SAME_ACT_MS {
            self.notice().set(None);
        }
    }
}
