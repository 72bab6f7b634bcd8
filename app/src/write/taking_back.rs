//! What is typed in the line at the end since the keyboard came into it, to be taken back and brought again.

use leptos::prelude::*;

/// The line as it was, and what was taken back of it last.
#[derive(Clone, Copy, Debug)]
pub(super) struct TakingBack {
    entered: StoredValue<String>,
    taken: StoredValue<Option<String>>,
}

impl Default for TakingBack {
    fn default() -> Self {
        Self { entered: StoredValue::new(String::new()), taken: StoredValue::new(None) }
    }
}

impl TakingBack {
    /// Takes note of the line as the keyboard finds it.
    pub(super) fn enters(self, words: String) {
        self.entered.set_value(words);
        self.taken.set_value(None);
    }

    /// What the line says instead of these words once Esc is pressed; none, if there is nothing to take back or to bring
    /// again.
    pub(super) fn instead_of(self, words: String) -> Option<String> {
        let entered = self.entered.get_value();
        if words == entered {
            return self.taken.try_update_value(Option::take).flatten();
        }
        self.taken.set_value(Some(words));
        Some(entered)
    }
}

#[cfg(test)]
mod tests {
    use super::TakingBack;
    use leptos::prelude::Owner;
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test]
    fn what_was_taken_back_comes_again_and_what_was_there_stays() {
        Owner::new().with(|| {
            let back = TakingBack::default();
            back.enters("Undo".into());
            assert_eq!(back.instead_of("Undo".into()), None);
            assert_eq!(back.instead_of("Undo the cap".into()).as_deref(), Some("Undo"));
            assert_eq!(back.instead_of("Undo".into()).as_deref(), Some("Undo the cap"));
            assert_eq!(back.instead_of("Undo the cap".into()).as_deref(), Some("Undo"));
        });
    }
}
