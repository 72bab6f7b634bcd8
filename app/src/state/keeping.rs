//! Keeps every edit on this device, and says so only once it is true.
//!
//! Typing is written a moment after the first key that is not kept, however long somebody goes on; every other edit
//! at once; everything pending when the page is hidden. Nothing is written in the turn of the key itself, which has
//! the screen to change. A failed write is tried again every three seconds; meanwhile nothing says "kept", whatever
//! else is typed, and its reason is shown.

use super::clock;
use super::records::{self, ToKeep};
use super::written::{Texts, Written};
use crate::storage::database;
use leptos::leptos_dom::helpers::{TimeoutHandle, set_timeout_with_handle};
use leptos::prelude::*;
use leptos::task::spawn_local;
use std::time::Duration;

/// How long what is typed waits to be written. With the write itself it must not be more than half a second.
pub(super) const AFTER_TYPING: Duration = Duration::from_millis(250);
/// How long nothing must have been typed before it is called kept, so that the line does not flicker between two words.
const CALM: Duration = Duration::from_millis(200);
/// After which a write counts as slow and is said not to be kept.
const SLOW: Duration = Duration::from_millis(300);
/// After which a write that gives no sign counts as refused until it does.
const SILENT: Duration = Duration::from_secs(8);
/// After which a failed write is tried again.
const AGAIN: Duration = Duration::from_secs(3);
/// How long it is told that it is kept again, if somebody goes on writing.
const LONG_ENOUGH_MS: u64 = 10_000;

/// Whether the work is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Kept {
    /// Nothing has been changed yet.
    Untouched,
    /// A write is under way.
    Keeping,
    /// Kept at this time.
    At(u64),
    /// A write is under way and takes long.
    Slow,
    /// Not kept, and tried again and again.
    Not(Refusal),
}

/// That the device does not keep what is written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refusal {
    /// Since when nothing could be kept.
    pub since_ms: u64,
    /// Why, for people.
    pub reason: String,
}

/// A state that is to be written.
struct Pending {
    state: ToKeep,
    /// Whether it came from elsewhere, and what is kept of the same procedure is not what it grew from.
    is_opened: bool,
}

impl Pending {
    fn is_of(&self, other: &Self) -> bool {
        self.state.session.document().id == other.state.session.document().id
    }
}

/// The part of the state that keeps the document.
#[derive(Clone, Copy)]
pub struct Keeper {
    state: RwSignal<Kept>,
    /// When it was kept again after a refusal; for a while, so that it is read.
    again: RwSignal<Option<u64>>,
    /// What is to be written: the last state of each procedure that was changed.
    latest: StoredValue<Vec<Pending>>,
    timer: StoredValue<Option<TimeoutHandle>>,
    /// Whether what came last was typed, and until when it is not called kept although it is.
    is_typing: StoredValue<bool>,
    calm: StoredValue<Option<TimeoutHandle>>,
    writing: StoredValue<bool>,
    /// Whether what came during a write is to be written as soon as it is through.
    has_more: StoredValue<bool>,
    written: StoredValue<Written>,
    has_asked: StoredValue<bool>,
    /// Who waits to hear whether everything is kept.
    waiting: StoredValue<Vec<Callback<bool>>>,
}

impl Default for Keeper {
    fn default() -> Self {
        Self {
            state: RwSignal::new(Kept::Untouched),
            again: RwSignal::new(None),
            latest: StoredValue::new(Vec::new()),
            timer: StoredValue::new(None),
            is_typing: StoredValue::new(false),
            calm: StoredValue::new(None),
            writing: StoredValue::new(false),
            has_more: StoredValue::new(false),
            written: StoredValue::new(Written::default()),
            has_asked: StoredValue::new(false),
            waiting: StoredValue::new(Vec::new()),
        }
    }
}

impl Keeper {
    /// Whether the work is kept.
    pub fn state(self) -> ReadSignal<Kept> {
        self.state.read_only()
    }

    /// Why nothing is kept, as long as that is so.
    pub fn refusal(self) -> Memo<Option<Refusal>> {
        Memo::new(move |_| {
            self.state.with(|state| match state {
                Kept::Not(refusal) => Some(refusal.clone()),
                _ => None,
            })
        })
    }

    /// When it was kept again after a refusal, until that has been read.
    pub fn kept_again(self) -> RwSignal<Option<u64>> {
        self.again
    }

    /// Whether closing the page now would lose work.
    pub fn would_lose(self) -> bool {
        self.state.with_untracked(|state| matches!(state, Kept::Slow | Kept::Not(_)))
    }

    /// Says that the document that was opened is kept since some time.
    pub fn was_kept(self, at_ms: u64) {
        self.state.set(Kept::At(at_ms));
    }

    /// Takes note of a new document; writes it at once or, while somebody types, a moment later.
    pub(super) fn changed(self, state: ToKeep, is_typing: bool) {
        self.note(Pending { state, is_opened: false }, is_typing);
    }

    /// Writes a procedure that was opened or begun; what was kept under its identity becomes a version.
    pub(super) fn opened(self, state: ToKeep) {
        self.note(Pending { state, is_opened: true }, false);
    }

    fn note(self, mut pending: Pending, is_typing: bool) {
        self.latest.update_value(|latest| {
            pending.is_opened |= latest.iter().any(|other| other.is_of(&pending) && other.is_opened);
            latest.retain(|other| !other.is_of(&pending));
            latest.push(pending);
        });
        if !self.is_refused() && self.state.with_untracked(|state| *state != Kept::Keeping) {
            self.state.set(Kept::Keeping);
        }
        stop(self.calm);
        self.is_typing.set_value(is_typing);
        if !is_typing {
            self.flush_after(Duration::ZERO);
        } else if self.timer.with_value(Option::is_none) {
            self.flush_after(AFTER_TYPING);
        }
    }

    fn flush_after(self, wait: Duration) {
        stop(self.timer);
        match set_timeout_with_handle(move || self.flush(), wait) {
            Ok(timer) => self.timer.set_value(Some(timer)),
            Err(_) => self.flush(),
        }
    }

    /// Writes what is pending now.
    pub fn flush(self) {
        stop(self.timer);
        if self.latest.with_value(Vec::is_empty) {
            return;
        }
        if self.writing.get_value() {
            self.has_more.set_value(true);
            return;
        }
        self.writing.set_value(true);
        spawn_local(self.write());
    }

    /// Writes what is pending, then says whether everything is kept.
    pub(super) fn flush_then(self, then: Callback<bool>) {
        if !self.writing.get_value() && self.latest.with_value(Vec::is_empty) {
            then.run(true);
            return;
        }
        self.waiting.update_value(|waiting| waiting.push(then));
        self.flush();
    }

    /// Another tab may have written what is kept.
    pub(super) fn forget_written(self) {
        self.written.update_value(Written::forget);
    }

    fn is_refused(self) -> bool {
        self.state.with_untracked(|state| matches!(state, Kept::Not(_)))
    }

    async fn write(self) {
        let mut outcome = Ok(());
        while outcome.is_ok() {
            self.has_more.set_value(false);
            let batch = self.latest.try_update_value(std::mem::take).unwrap_or_default();
            outcome = self.write_all(batch).await;
            if !self.has_more.get_value() {
                break;
            }
        }
        self.writing.set_value(false);
        for waiting in self.waiting.try_update_value(std::mem::take).unwrap_or_default() {
            waiting.run(outcome.is_ok());
        }
        self.report(outcome);
    }

    /// Writes some states; what could not be written is pending again.
    async fn write_all(self, batch: Vec<Pending>) -> Result<(), database::StoreError> {
        let mut batch = batch.into_iter();
        while let Some(pending) = batch.next() {
            let slow = set_timeout_with_handle(move || self.is_slow(), SLOW).ok();
            let silent = set_timeout_with_handle(move || self.is_silent(), SILENT).ok();
            let session = &pending.state.session;
            if pending.is_opened {
                self.forget_written();
            }
            let texts = self.written.try_update_value(|written| written.texts(session));
            let texts = texts.unwrap_or_else(|| Texts::of(session));
            let outcome = records::keep(&pending.state, &texts, pending.is_opened).await;
            if outcome.is_ok() {
                self.written.update_value(|written| written.are_kept(session, texts));
            } else {
                self.forget_written();
            }
            for timer in [slow, silent].into_iter().flatten() {
                timer.clear();
            }
            if outcome.is_err() {
                std::iter::once(pending).chain(batch).for_each(|unwritten| self.is_pending_again(unwritten));
                return outcome;
            }
        }
        Ok(())
    }

    /// Unless something newer of it waits already, this is what has to be tried again.
    fn is_pending_again(self, pending: Pending) {
        self.latest.update_value(|latest| match latest.iter_mut().find(|other| other.is_of(&pending)) {
            Some(newer) => newer.is_opened |= pending.is_opened,
            None => latest.push(pending),
        });
    }

    /// Says so, unless the write has been completed meanwhile.
    fn is_slow(self) {
        if self.writing.get_value() && self.state.with_untracked(|state| *state == Kept::Keeping) {
            self.state.set(Kept::Slow);
        }
    }

    fn report(self, outcome: Result<(), database::StoreError>) {
        match outcome {
            // What came during the write is still to be written, and nothing is called kept before it is.
            Ok(()) if self.latest.with_value(|latest| !latest.is_empty()) => {}
            Ok(()) => self.is_kept_once_calm(clock::now_ms()),
            Err(error) => {
                self.is_not_kept(error.to_string());
                stop(self.timer);
                self.timer.set_value(set_timeout_with_handle(move || self.flush(), AGAIN).ok());
            }
        }
    }

    /// Says so, unless somebody goes on typing.
    fn is_kept_once_calm(self, now_ms: u64) {
        let wait = || set_timeout_with_handle(move || self.is_kept(now_ms), CALM).ok();
        match self.is_typing.get_value().then(wait).flatten() {
            Some(timer) => self.calm.set_value(Some(timer)),
            None => self.is_kept(now_ms),
        }
    }

    /// Says so, unless the write has been completed meanwhile; the write goes on.
    fn is_silent(self) {
        if self.writing.get_value() {
            self.is_not_kept(
                "this browser does not answer; close other tabs of Putback, if there are any".to_owned(),
            );
        }
    }

    fn is_not_kept(self, reason: String) {
        let before = self.state.with_untracked(|state| match state {
            Kept::Not(refusal) => Some(refusal.since_ms),
            _ => None,
        });
        self.again.set(None);
        self.state.set(Kept::Not(Refusal { since_ms: before.unwrap_or_else(clock::now_ms), reason }));
    }

    fn is_kept(self, now_ms: u64) {
        if self.is_refused() {
            self.again.set(Some(now_ms));
        } else if self.again.get_untracked().is_some_and(|at| now_ms.saturating_sub(at) > LONG_ENOUGH_MS) {
            self.again.set(None);
        }
        self.state.set(Kept::At(now_ms));
        if !self.has_asked.get_value() {
            self.has_asked.set_value(true);
            database::ask_to_persist();
        }
    }
}

fn stop(timer: StoredValue<Option<TimeoutHandle>>) {
    if let Some(timer) = timer.try_update_value(Option::take).flatten() {
        timer.clear();
    }
}
