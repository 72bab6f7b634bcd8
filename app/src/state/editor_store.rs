//! The editor's signals: one session in, memos out.
//!
//! `EditorStore::edit` is the only write to a document. Trace, verdict and lanes follow every key;
//! the texts of findings settle 300 ms after the last one, so that the margin does not flicker.

use super::all_findings::AllFindings;
use super::attention::Focus;
use super::carried::CarriedHere;
use super::clock;
use super::doubts::AskedFrom;
use super::filing::{Filed, Files};
use super::found::Brought;
use super::held::Held;
use super::judged::Judged;
use super::keeping::Keeper;
use super::last_read::LastRead;
use super::lines::Lines;
use super::making::Fresh;
use super::next_finding::Spot;
use super::pasted_text::{LongText, UnderWay};
use super::phrases::PhraseOffer;
use super::readings::Asking;
use super::records::ToKeep;
use super::reminders::{self, AtStep};
use super::retyped::Retyped;
use super::review::Review;
use super::same_things::Wanted;
use super::seat::Seat;
use super::selection;
use super::spread::Spread;
use super::taken_out::TakenOut;
use super::versions;
use crate::storage::this_tab;
use leptos::leptos_dom::helpers::TimeoutHandle;
use leptos::prelude::*;
use procedures_schema::compare::Places;
use procedures_schema::derive::carry::Carried;
use procedures_schema::edit::{Edit, Session};
use procedures_schema::format;
use procedures_schema::model::{Id, Procedure};
use std::sync::Arc;

/// The state of Write. A handle of one word, since every view and every closure of it holds one.
#[derive(Clone, Copy)]
pub struct EditorStore {
    parts: StoredValue<Parts>,
}

/// The signals behind the handle.
#[derive(Clone, Copy)]
pub(super) struct Parts {
    pub(super) session: RwSignal<Session>,
    pub(super) held: RwSignal<Option<Held>>,
    pub(super) document: Memo<Arc<Procedure>>,
    pub(super) judged: Memo<Arc<Judged>>,
    pub(super) spread: Spread,
    pub(super) settled: RwSignal<Arc<Judged>>,
    pub(super) settling: StoredValue<Option<TimeoutHandle>>,
    /// What was shown before, until there is time to let go of it: that takes a while, and no key has to wait for it.
    pub(super) outdated: StoredValue<Vec<Arc<Judged>>>,
    /// When typing will have paused for long enough.
    pub(super) settles_ms: StoredValue<u64>,
    pub(super) name: RwSignal<String>,
    pub(super) selected: RwSignal<Option<Id>>,
    pub(super) anchor: RwSignal<Option<Id>>,
    pub(super) selection: Memo<Vec<Id>>,
    pub(super) copied: RwSignal<Option<Carried>>,
    pub(super) here: RwSignal<Option<CarriedHere>>,
    pub(super) is_editing: RwSignal<bool>,
    pub(super) draft_after: RwSignal<Option<Id>>,
    pub(super) focus: RwSignal<Option<Focus>>,
    pub(super) is_in_line: RwSignal<bool>,
    pub(super) notice: RwSignal<Option<String>>,
    pub(super) notice_ms: StoredValue<u64>,
    /// Where what was undone or done again last is seen.
    pub(super) went: RwSignal<Option<Places>>,
    pub(super) taken_out: RwSignal<Option<TakenOut>>,
    pub(super) is_slow_to_mend: StoredValue<bool>,
    pub(super) asked_from: StoredValue<Option<AskedFrom>>,
    pub(super) retyped: StoredValue<Option<Retyped>>,
    pub(super) last_read: StoredValue<Option<LastRead>>,
    pub(super) asking: RwSignal<Option<Asking>>,
    pub(super) offering: RwSignal<Option<PhraseOffer>>,
    pub(super) wanted: StoredValue<Option<Wanted>>,
    pub(super) spot: RwSignal<Option<Spot>>,
    pub(super) all_findings: AllFindings,
    /// The thing at which the keyboard was on Appliance last.
    pub(super) at_thing: StoredValue<Option<Id>>,
    pub(super) fresh: RwSignal<Option<Fresh>>,
    pub(super) reminders: Memo<Vec<AtStep>>,
    /// The step behind which the next one is done on the same answers.
    pub(super) inside: RwSignal<Option<Id>>,
    pub(super) review: RwSignal<Option<Review>>,
    pub(super) long_text: RwSignal<Option<LongText>>,
    pub(super) under_way: StoredValue<Option<UnderWay>>,
    /// How many rows are drawn: all, but while a long text is put in place.
    pub(super) drawn: RwSignal<usize>,
    pub(super) lines: Lines,
    pub(super) brought: Brought,
    pub(super) files: Files,
    pub(super) filed: RwSignal<Option<Filed>>,
    pub(super) keeper: Keeper,
    pub(super) seat: Seat,
}

impl EditorStore {
    /// The state of a freshly opened document; `name` is that of its file, without ending.
    pub fn new(session: Session, name: &str) -> Self {
        let (session, held) = (RwSignal::new(session), RwSignal::new(None::<Held>));
        let document = Memo::new_with_compare(
            move |_| {
                let held = held.with(|held| held.as_ref().map(|held| held.document.clone()));
                held.unwrap_or_else(|| session.with(|session| session.document().clone()))
            },
            |before, now| !same(before, now),
        );
        let judged = Memo::new_with_compare(
            move |before| Arc::new(Judged::after(before, document.get())),
            |before, now| !same(before, now),
        );
        let spread = session.with_untracked(|session| Spread::of(&judged.get_untracked(), session));
        let lines = Lines::of(&document.with_untracked(|document| document.id.clone()));
        let (selected, anchor) = (RwSignal::new(None), RwSignal::new(None));
        let settled = RwSignal::new(judged.get_untracked());
        let parts = Parts {
            session,
            held,
            document,
            judged,
            spread,
            settled,
            settling: StoredValue::new(None),
            outdated: StoredValue::new(Vec::new()),
            settles_ms: StoredValue::new(0),
            name: RwSignal::new(name.to_owned()),
            selected,
            anchor,
            selection: selection::memo(spread.places, selected, anchor),
            copied: RwSignal::new(None),
            here: RwSignal::new(None),
            is_editing: RwSignal::new(false),
            draft_after: RwSignal::new(None),
            focus: RwSignal::new(None),
            is_in_line: RwSignal::new(false),
            notice: RwSignal::new(None),
            notice_ms: StoredValue::new(0),
            went: RwSignal::new(None),
            taken_out: RwSignal::new(None),
            is_slow_to_mend: StoredValue::new(false),
            asked_from: StoredValue::new(None),
            retyped: StoredValue::new(None),
            last_read: StoredValue::new(None),
            asking: RwSignal::new(None),
            offering: RwSignal::new(None),
            wanted: StoredValue::new(None),
            spot: RwSignal::new(None),
            all_findings: AllFindings::default(),
            at_thing: StoredValue::new(None),
            fresh: RwSignal::new(None),
            reminders: reminders::shown(settled),
            inside: RwSignal::new(None),
            review: RwSignal::new(None),
            long_text: RwSignal::new(None),
            under_way: StoredValue::new(None),
            drawn: RwSignal::new(usize::MAX),
            lines,
            brought: Brought::default(),
            files: Files::default(),
            filed: RwSignal::new(None),
            keeper: Keeper::default(),
            seat: Seat::default(),
        };
        let store = Self { parts: StoredValue::new(parts) };
        store.watch_notices();
        store
    }

    pub(super) fn parts(self) -> Parts {
        self.parts.get_value()
    }

    // What commands read.

    pub(super) fn document_now(self) -> Arc<Procedure> {
        self.parts().document.get_untracked()
    }

    /// The document without what is held.
    pub(super) fn session_document(self) -> Arc<Procedure> {
        self.parts().session.with_untracked(|session| session.document().clone())
    }

    pub(super) fn judged_now(self) -> Arc<Judged> {
        self.parts().judged.get_untracked()
    }

    pub(super) fn selected_now(self) -> Option<Id> {
        self.parts().selected.get_untracked()
    }

    pub(super) fn taken_out_now(self) -> Option<TakenOut> {
        self.parts().taken_out.get_untracked()
    }

    pub(super) fn name_now(self) -> String {
        self.parts().name.get_untracked()
    }

    pub(super) fn undo_label_now(self) -> Option<String> {
        self.parts().session.with_untracked(|session| session.undo_label().map(str::to_owned))
    }

    // Writes.

    /// Shows no readings any more: those that were shown are not of this document, or not of this row.
    pub(super) fn ask_nothing(self) {
        if self.asking().with_untracked(Option::is_some) {
            self.asking().set(None);
        }
        if self.offering().with_untracked(Option::is_some) {
            self.offering().set(None);
        }
    }

    /// Changes the document; the only write. Says whether it was done; a refusal is shown as a notice.
    pub(super) fn edit(self, edits: &[Edit], label: &str, group: Option<&str>) -> bool {
        if self.refuses() {
            return false;
        }
        self.drop_held();
        self.ask_nothing();
        let mut next = self.parts().session.get_untracked();
        let before = next.document().clone();
        let done = next.edit(edits, label, group, clock::now_ms()).map_err(|error| error.to_string());
        let room =
            || format::fits(&before, next.document()).map_err(|why| format!("Nothing was changed: {why}."));
        match done.and_then(|()| room()) {
            Ok(()) => {
                self.parts().session.set(next);
                self.spread();
                self.follow_up(group.is_some());
                self.let_go_of_notice();
                true
            }
            Err(error) => {
                self.parts().notice.set(Some(error));
                false
            }
        }
    }

    /// Whether nothing can be changed here, because another tab writes; says so then.
    pub(super) fn refuses(self) -> bool {
        let only_shows = self.seat().only_shows().get_untracked();
        if only_shows {
            let words = "Nothing was changed: another tab writes this procedure. Take over to write here.";
            self.notice().set(Some(words.to_owned()));
        }
        only_shows
    }

    /// Ends a group of typing, so that the next key is an undo entry of its own.
    pub fn close_group(self) {
        self.parts().session.update_untracked(Session::close_group);
    }

    /// Puts another document with its undo in place of this one.
    pub(super) fn open(self, session: Session, name: &str) {
        self.leave_draft();
        let left = self.untouched();
        self.parts().held.set(None);
        self.parts().selected.set(None);
        self.parts().anchor.set(None);
        self.parts().is_editing.set(false);
        self.parts().draft_after.set(None);
        self.parts().review.set(None);
        self.parts().at_thing.set_value(None);
        self.parts().files.changed.set(None);
        self.parts().filed.set(None);
        self.parts().name.set(name.to_owned());
        self.seat().opened(&session.document().id);
        this_tab::note(session.document().id.as_str());
        self.lines_of(&session.document().id);
        versions::learn_soon(&session.document().id);
        self.parts().session.set(session);
        self.spread();
        self.settle_now();
        self.forget_untouched(left);
        self.reopen_line_below();
    }

    /// Shows the open document as another tab has kept it.
    pub(super) fn show_again(self, session: Session, name: &str) {
        self.keeper().forget_written();
        self.parts().held.set(None);
        versions::learn_soon(&session.document().id);
        self.parts().name.set(name.to_owned());
        self.parts().session.set(session);
        self.spread();
        self.settle_now();
    }

    /// Says that a step is out, for the banner.
    pub(super) fn set_taken_out(self, taken_out: Option<TakenOut>) {
        self.parts().taken_out.set(taken_out);
    }

    /// Keeps the document as it is now, as after opening a file.
    pub(super) fn keep_now(self) {
        self.parts().keeper.opened(self.as_it_is());
    }

    /// Keeps once more what is kept already, with what is known of its file.
    pub(super) fn keep_again(self) {
        self.parts().keeper.changed(self.as_it_is(), false);
    }

    fn as_it_is(self) -> ToKeep {
        let Parts { session, name, filed, .. } = self.parts();
        ToKeep { session: session.get_untracked(), name: name.get_untracked(), filed: filed.get_untracked() }
    }

    /// Lets those who show parts of the document see what has changed.
    pub(super) fn spread(self) {
        let parts = self.parts();
        parts.session.with_untracked(|session| {
            parts.judged.with_untracked(|judged| parts.spread.follow(judged, session));
        });
    }

    pub(super) fn follow_up(self, is_typing: bool) {
        self.is_no_longer_filed();
        self.parts().keeper.changed(self.as_it_is(), is_typing);
        self.settle_soon(is_typing);
    }
}

/// Whether two shared values are the very same one.
fn same<T>(before: Option<&Arc<T>>, now: Option<&Arc<T>>) -> bool {
    match (before, now) {
        (Some(before), Some(now)) => Arc::ptr_eq(before, now),
        _ => false,
    }
}
