//! Who writes, if a procedure is open in several tabs: one writes, the others show it and may take over.
//!
//! The tab that opened it first writes. Another that opens it is told so, follows what is kept, and refuses
//! edits. If it wants to write, the first keeps what is pending and only shows it from then on; a tab that
//! does not answer is gone, and one that says that it goes is followed by itself.

use super::editor_store::EditorStore;
use super::ids::RandomIds;
use super::{clock, records};
use crate::state::keeping::Kept;
use crate::storage::tabs::{self, Says, Word};
use leptos::prelude::*;
use leptos::task::spawn_local;
use procedures_schema::model::{Id, IdSource};
use std::time::Duration;

/// How long another tab has to answer before it counts as gone.
const ANSWER: Duration = Duration::from_millis(1_500);

/// How long a tab that goes may take to come back.
const BACK: Duration = Duration::from_secs(4);

/// The part of the state that knows of the other tabs.
#[derive(Clone, Copy)]
pub struct Seat {
    tab: StoredValue<String>,
    opened_ms: StoredValue<u64>,
    only_shows: RwSignal<bool>,
    is_asking: RwSignal<bool>,
    /// Whether the tab that writes has said that it goes.
    is_left: StoredValue<bool>,
}

impl Default for Seat {
    fn default() -> Self {
        Self {
            tab: StoredValue::new(RandomIds.next_id("tab").to_string()),
            opened_ms: StoredValue::new(0),
            only_shows: RwSignal::new(false),
            is_asking: RwSignal::new(false),
            is_left: StoredValue::new(false),
        }
    }
}

impl Seat {
    /// Whether this tab only shows the procedure, because another writes it.
    pub fn only_shows(self) -> ReadSignal<bool> {
        self.only_shows.read_only()
    }

    /// Whether this tab has asked to write and waits.
    pub fn is_asking(self) -> ReadSignal<bool> {
        self.is_asking.read_only()
    }

    /// Tells the other tabs that a procedure was opened here; this one writes it unless another says so.
    pub(super) fn opened(self, document: &Id) {
        self.opened_ms.set_value(clock::now_ms());
        self.only_shows.set(false);
        self.is_asking.set(false);
        self.tell(document, Says::Opened(self.opened_ms.get_value()));
    }

    /// Tells the other tabs that something new is kept.
    pub(super) fn kept(self, document: &Id) {
        if !self.only_shows.get_untracked() {
            self.tell(document, Says::Kept);
        }
    }

    fn tell(self, document: &Id, says: Says) {
        let word = Word { from: self.tab.get_value(), document: document.to_string(), says };
        tabs::tell(&word);
    }

    /// Whether a tab that opened it at the same moment goes before this one.
    fn yields_to(self, other: &Word, at: u64) -> bool {
        (at, &other.from) < (self.opened_ms.get_value(), &self.tab.get_value())
    }
}

impl EditorStore {
    /// Begins to listen to the other tabs.
    pub fn join_tabs(self) {
        tabs::join(move |word| self.hear(&word));
        self.seat().opened(&self.document_now().id);
        let kept = self.keeper().state();
        Effect::new(move |_| {
            if matches!(kept.get(), Kept::At(_)) {
                self.seat().kept(&self.document_now().id);
            }
        });
    }

    /// Tells the other tabs that this one goes, if it is the one that writes.
    pub fn leave_tabs(self) {
        if !self.seat().only_shows.get_untracked() {
            self.seat().tell(&self.document_now().id, Says::Gone);
        }
    }

    /// Asks to write here what another tab writes.
    pub fn take_over(self) {
        let seat = self.seat();
        seat.is_asking.set(true);
        seat.tell(&self.document_now().id, Says::Wanted);
        set_timeout(
            move || {
                if seat.is_asking.get_untracked() {
                    self.begin_to_write();
                }
            },
            ANSWER,
        );
    }

    fn hear(self, word: &Word) {
        let seat = self.seat();
        let document = self.document_now().id.clone();
        if word.document != document.as_str() {
            return;
        }
        let writes = !seat.only_shows.get_untracked();
        if matches!(word.says, Says::Opened(_) | Says::Writing) {
            seat.is_left.set_value(false);
        }
        match word.says {
            Says::Opened(at) if writes && !seat.yields_to(word, at) => seat.tell(&document, Says::Writing),
            Says::Opened(_) | Says::Writing if writes => self.begin_to_show(),
            Says::Writing => seat.is_asking.set(false),
            Says::Wanted if writes => {
                self.close_group();
                self.begin_to_show();
                self.keeper().flush_then(Callback::new(move |is_kept| {
                    // What could not be kept must not be lost, so this tab goes on writing then.
                    seat.only_shows.set(is_kept);
                    seat.tell(&document, if is_kept { Says::Yielded } else { Says::Writing });
                }));
            }
            Says::Yielded if seat.is_asking.get_untracked() => self.begin_to_write(),
            Says::Kept if !writes => self.show_what_is_kept(),
            Says::Gone if !writes => self.take_over_unless_back(),
            _ => {}
        }
    }

    /// Takes over from a tab that goes, unless it was only loaded again.
    fn take_over_unless_back(self) {
        let seat = self.seat();
        seat.is_left.set_value(true);
        set_timeout(
            move || {
                let waits = !seat.is_asking.get_untracked() && seat.only_shows.get_untracked();
                if seat.is_left.get_value() && waits {
                    self.take_over();
                }
            },
            BACK,
        );
    }

    fn begin_to_show(self) {
        self.select(None);
        self.seat().only_shows.set(true);
    }

    fn begin_to_write(self) {
        let seat = self.seat();
        spawn_local(async move {
            self.keeper().forget_written();
            self.reopen_kept().await;
            seat.is_asking.set(false);
            seat.only_shows.set(false);
            self.notice().set(None);
            seat.tell(&self.document_now().id, Says::Writing);
        });
    }

    fn show_what_is_kept(self) {
        spawn_local(self.reopen_kept());
    }

    /// Shows what is kept of the open procedure; if it cannot be read, what is shown stays.
    async fn reopen_kept(self) {
        let id = self.document_now().id.clone();
        if let Ok(Some((kept, session))) = records::kept_session(&id).await
            && self.document_now().id == id
        {
            self.show_again(session, &kept.name);
        }
    }
}
