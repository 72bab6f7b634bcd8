//! Preferences of this device: how the page looks. Never work: this store can lose the last seconds.

use gloo_storage::{LocalStorage, Storage};

const LOOK: &str = "putback.look";

/// Light, dark or high contrast.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Look {
    /// As the device says.
    #[default]
    System,
    /// Dark ink on paper.
    Light,
    /// For dark plant rooms.
    Dark,
    /// For bright sun and weak eyes.
    High,
}

impl Look {
    /// All of them, in the order in which they are offered.
    pub const ALL: [Self; 4] = [Self::System, Self::Light, Self::Dark, Self::High];

    /// The word that is kept and set on the page.
    pub fn word(self) -> &'static str {
        match self {
            Self::System => "system",
            Self::Light => "light",
            Self::Dark => "dark",
            Self::High => "high",
        }
    }

    /// The look with this word; what the device says, if there is none.
    pub fn from_word(word: &str) -> Self {
        Self::ALL.into_iter().find(|look| look.word() == word).unwrap_or_default()
    }
}

/// The look chosen on this device.
pub fn look() -> Look {
    LocalStorage::get::<String>(LOOK).map(|word| Look::from_word(&word)).unwrap_or_default()
}

/// Keeps the look; without a place to keep it, it holds until the page is closed.
pub fn keep_look(look: Look) {
    let _ = LocalStorage::set(LOOK, look.word());
}
