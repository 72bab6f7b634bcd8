//! Whether the site works without a server, in words.

use super::clock;
use crate::storage::offline::{self, Offline};
use leptos::prelude::*;
use leptos::task::spawn_local;
use std::time::Duration;

/// The line about working offline, looked at again now and then until it is good.
#[derive(Clone, Copy)]
pub struct OfflineLine {
    words: RwSignal<String>,
}

impl OfflineLine {
    /// Registers the service worker and begins to look.
    pub fn start() -> Self {
        let line = Self { words: RwSignal::new("Works offline: looking …".to_owned()) };
        spawn_local(async move {
            // A browser without service workers shows in the look that follows.
            let _ = offline::register().await;
            line.look().await;
        });
        line
    }

    /// `Works offline: checked 10:42`, or what is missing.
    pub fn words(self) -> ReadSignal<String> {
        self.words.read_only()
    }

    async fn look(self) {
        let found = offline::look().await;
        self.words.set(match found {
            Offline::Ready => format!("Works offline: checked {}", clock::to_the_minute(clock::now_ms())),
            Offline::Missing(1) => "Works offline: not yet: 1 file missing".to_owned(),
            Offline::Missing(files) => format!("Works offline: not yet: {files} files missing"),
            Offline::Unable => "Works offline: no, from this address".to_owned(),
        });
        if let Offline::Missing(_) = found {
            set_timeout(move || spawn_local(self.look()), Duration::from_secs(5));
        }
    }
}
