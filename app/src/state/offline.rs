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
    is_registered: StoredValue<bool>,
}

/// So long a worker may fetch before the page tells what is missing.
const FETCHING: Duration = Duration::from_secs(5);
/// So often a newer version is asked for.
const NEWER: Duration = Duration::from_secs(600);

impl OfflineLine {
    /// Registers the service worker and begins to look.
    pub fn start() -> Self {
        let words = RwSignal::new("Works offline: looking …".to_owned());
        let line = Self { words, is_registered: StoredValue::new(false) };
        spawn_local(async move {
            // What is missing is told at once, not only once the worker has fetched everything.
            set_timeout(move || spawn_local(line.look_while_fetching()), FETCHING);
            // A browser without service workers shows in the look that follows.
            let _ = offline::register().await;
            line.is_registered.set_value(true);
            line.look().await;
            line.look_for_newer();
        });
        line
    }

    /// `Works offline: checked 10:42`, or what is missing.
    pub fn words(self) -> ReadSignal<String> {
        self.words.read_only()
    }

    async fn look_while_fetching(self) {
        if !self.is_registered.get_value() {
            self.look().await;
        }
    }

    /// Tells of a newer version once it waits; it starts when no tab is open any more, never in the middle of work.
    fn look_for_newer(self) {
        spawn_local(async move {
            if offline::is_newer_waiting().await {
                let words = "A newer version is ready: close all tabs of Putback to start with it";
                self.words.set(words.to_owned());
            } else {
                set_timeout(move || self.look_for_newer(), NEWER);
            }
        });
    }

    async fn look(self) {
        let found = offline::look().await;
        self.words.set(match found {
            Offline::Ready => format!("Works offline: checked {}", clock::to_the_minute(clock::now_ms())),
            Offline::Missing(1) => "Works offline: not yet: 1 file missing".to_owned(),
            Offline::Missing(files) => format!("Works offline: not yet: {files} files missing"),
            Offline::Unable => "Works offline: no, from this address".to_owned(),
        });
        if let Offline::Missing(_) = found
            && self.is_registered.get_value()
        {
            set_timeout(move || spawn_local(self.look()), Duration::from_secs(5));
        }
    }
}
