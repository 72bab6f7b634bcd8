//! The editor's signals: one session in, memos out.
//!
//! `EditorStore::edit` is the only write to a document. Trace, verdict and lanes follow every key;
//! the texts of findings settle 300 ms after the last one, so that the margin does not flicker.

use super::attention::{Attention, Focus};
use super::clock;
use super::doubts::AskedFrom;
use super::judged::{Frame, Judged};
use super::keeping::Keeper;
use super::making::{Fresh, making_new};
use super::pasting::Review;
use super::seat::Seat;
use super::taken_out::TakenOut;
use super::{rereading, selection};
use leptos::leptos_dom::helpers::{TimeoutHandle, set_timeout_with_handle};
use leptos::prelude::*;
use procedures_schema::capture::Making;
use procedures_schema::check::Finding;
use procedures_schema::derive::carry::Carried;
use procedures_schema::derive::lanes::LaneRow;
use procedures_schema::edit::{Edit, Session, Undone};
use procedures_schema::model::{ApplianceMap, Id, NumberedIds, Procedure, Stage, Step};
use std::sync::Arc;
use std::time::Duration;

/// After which the texts of findings follow the document.
const SETTLE: Duration = Duration::from_millis(300);

/// Above so many steps remedies are looked for when somebody asks.
const MOST_UNASKED: usize = 120;

/// The state of Write. A handle of one word, since every view and every closure of it holds one.
#[derive(Clone, Copy)]
pub struct EditorStore {
    parts: StoredValue<Parts>,
}

/// The signals behind the handle.
#[derive(Clone, Copy)]
struct Parts {
    session: RwSignal<Session>,
    document: Memo<Arc<Procedure>>,
    map: Memo<Arc<ApplianceMap>>,
    places: Memo<Arc<Vec<Id>>>,
    stages: Memo<Arc<Vec<Option<Stage>>>>,
    judged: Memo<Arc<Judged>>,
    frame: Memo<Frame>,
    settled: RwSignal<Arc<Judged>>,
    settling: StoredValue<Option<TimeoutHandle>>,
    name: RwSignal<String>,
    selected: RwSignal<Option<Id>>,
    anchor: RwSignal<Option<Id>>,
    selection: Memo<Vec<Id>>,
    copied: RwSignal<Option<Carried>>,
    is_editing: RwSignal<bool>,
    draft_after: RwSignal<Option<Id>>,
    focus: RwSignal<Option<Focus>>,
    notice: RwSignal<Option<String>>,
    taken_out: RwSignal<Option<TakenOut>>,
    is_slow_to_mend: StoredValue<bool>,
    asked_from: StoredValue<Option<AskedFrom>>,
    retyped: StoredValue<Option<Id>>,
    fresh: RwSignal<Option<Fresh>>,
    review: RwSignal<Option<Review>>,
    keeper: Keeper,
    seat: Seat,
}

impl EditorStore {
    /// The state of a freshly opened document; `name` is that of its file, without ending.
    pub fn new(session: Session, name: &str) -> Self {
        let session = RwSignal::new(session);
        let document = Memo::new_with_compare(
            move |_| session.with(|session| session.document().clone()),
            |before, now| !same(before, now),
        );
        let judged = Memo::new_with_compare(
            move |_| Arc::new(Judged::of(document.get())),
            |before, now| !same(before, now),
        );
        let map = Memo::new_with_compare(
            move |_| document.with(|document| document.map.clone()),
            |before, now| !same(before, now),
        );
        let places = Memo::new(move |_| {
            document.with(|document| Arc::new(document.steps.iter().map(|step| step.id.clone()).collect()))
        });
        let stages = Memo::new(move |_| document.with(|document| Arc::new(begun_stages(document))));
        let frame = Memo::new(move |_| judged.with(|judged| Frame::of(judged)));
        let (selected, anchor) = (RwSignal::new(None), RwSignal::new(None));
        let parts = Parts {
            session,
            document,
            map,
            places,
            stages,
            judged,
            frame,
            settled: RwSignal::new(judged.get_untracked()),
            settling: StoredValue::new(None),
            name: RwSignal::new(name.to_owned()),
            selected,
            anchor,
            selection: selection::memo(document, selected, anchor),
            copied: RwSignal::new(None),
            is_editing: RwSignal::new(false),
            draft_after: RwSignal::new(None),
            focus: RwSignal::new(None),
            notice: RwSignal::new(None),
            taken_out: RwSignal::new(None),
            is_slow_to_mend: StoredValue::new(false),
            asked_from: StoredValue::new(None),
            retyped: StoredValue::new(None),
            fresh: RwSignal::new(None),
            review: RwSignal::new(None),
            keeper: Keeper::default(),
            seat: Seat::default(),
        };
        Self { parts: StoredValue::new(parts) }
    }

    fn parts(self) -> Parts {
        self.parts.get_value()
    }

    // What views read.

    /// The document, compared by pointer.
    pub fn document(self) -> Memo<Arc<Procedure>> {
        self.parts().document
    }

    /// The appliance map, compared by pointer.
    pub fn map(self) -> Memo<Arc<ApplianceMap>> {
        self.parts().map
    }

    /// The ids of the steps in order.
    pub fn order(self) -> Memo<Arc<Vec<Id>>> {
        self.parts().places
    }

    /// One step; none once it is gone.
    pub fn step(self, id: Id) -> Memo<Option<Arc<Step>>> {
        let (document, position) = (self.parts().document, self.position(id));
        Memo::new_with_compare(
            move |_| {
                let position = position.get()?;
                document.with(|document| document.steps.get(position).cloned())
            },
            |before, now| match (before.and_then(Option::as_ref), now.and_then(Option::as_ref)) {
                (Some(before), Some(now)) => !Arc::ptr_eq(before, now),
                (None, None) => false,
                _ => true,
            },
        )
    }

    /// The position of a step, from 0. Looked up only when the order of the steps changes.
    pub fn position(self, id: Id) -> Memo<Option<usize>> {
        let places = self.parts().places;
        Memo::new(move |_| places.with(|places| places.iter().position(|known| *known == id)))
    }

    /// By position the stage that begins with a step; none where the one before goes on.
    pub fn stages(self) -> Memo<Arc<Vec<Option<Stage>>>> {
        self.parts().stages
    }

    /// What all rows of lanes share.
    pub fn frame(self) -> Memo<Frame> {
        self.parts().frame
    }

    /// What the core says, after every key.
    pub fn judged(self) -> Memo<Arc<Judged>> {
        self.parts().judged
    }

    /// What the core says, once typing has paused.
    pub fn settled(self) -> ReadSignal<Arc<Judged>> {
        self.parts().settled.read_only()
    }

    /// Whether looking for a remedy was slow last time, or will be.
    pub(super) fn is_slow_to_mend(self) -> bool {
        let is_large = self.parts().places.with_untracked(|places| places.len() > MOST_UNASKED);
        is_large || self.parts().is_slow_to_mend.get_value()
    }

    /// The step whose words have been typed since the keyboard went into them.
    pub(super) fn retyped(self) -> StoredValue<Option<Id>> {
        self.parts().retyped
    }

    /// What was made last from words.
    pub fn fresh(self) -> RwSignal<Option<Fresh>> {
        self.parts().fresh
    }

    /// What came of the text that was pasted last.
    pub fn review(self) -> RwSignal<Option<Review>> {
        self.parts().review
    }

    /// Where a question that is being asked came from.
    pub(super) fn asked_from(self) -> StoredValue<Option<AskedFrom>> {
        self.parts().asked_from
    }

    pub(super) fn took_to_mend(self, is_slow: bool) {
        self.parts().is_slow_to_mend.set_value(is_slow);
    }

    /// The lanes beside a step, after every key.
    pub fn lane_row(self, id: Id) -> Memo<Option<LaneRow>> {
        let (judged, position) = (self.parts().judged, self.position(id));
        Memo::new(move |_| {
            let position = position.get()?;
            judged.with(|judged| judged.row(position).cloned())
        })
    }

    /// The findings at a step, or at the end, once typing has paused.
    pub fn findings(self, step: Option<Id>) -> Memo<Vec<Finding>> {
        let settled = self.parts().settled;
        Memo::new(move |_| settled.with(|judged| judged.findings_at(step.as_ref())))
    }

    /// The name of the file, without ending.
    pub fn name(self) -> ReadSignal<String> {
        self.parts().name.read_only()
    }

    /// The selected step.
    pub fn selected(self) -> ReadSignal<Option<Id>> {
        self.parts().selected.read_only()
    }

    /// The selected steps in order.
    pub fn selection(self) -> Memo<Vec<Id>> {
        self.parts().selection
    }

    /// The other end of the selection, if it is more than the selected step.
    pub(super) fn anchor(self) -> RwSignal<Option<Id>> {
        self.parts().anchor
    }

    /// The steps that were copied last.
    pub fn copied(self) -> RwSignal<Option<Carried>> {
        self.parts().copied
    }

    /// Whether the words of the selected step are being typed.
    pub fn is_editing(self) -> ReadSignal<bool> {
        self.parts().is_editing.read_only()
    }

    /// The step below which a line for a new one is open.
    pub fn draft_after(self) -> ReadSignal<Option<Id>> {
        self.parts().draft_after.read_only()
    }

    /// Where the keyboard goes next.
    pub fn focus(self) -> ReadSignal<Option<Focus>> {
        self.parts().focus.read_only()
    }

    /// Something to tell, such as why a file was not opened.
    pub fn notice(self) -> RwSignal<Option<String>> {
        self.parts().notice
    }

    /// The step that the demonstration lacks, while it lacks it.
    pub fn taken_out(self) -> Memo<Option<TakenOut>> {
        let (taken_out, document) = (self.parts().taken_out, self.parts().document);
        Memo::new(move |_| taken_out.get().filter(|step| document.with(|document| step.is_out_of(document))))
    }

    /// The names of what undo and redo would do.
    pub fn undo_labels(self) -> Memo<(Option<String>, Option<String>)> {
        let session = self.parts().session;
        Memo::new(move |_| {
            session.with(|session| {
                (session.undo_label().map(str::to_owned), session.redo_label().map(str::to_owned))
            })
        })
    }

    /// What keeps the work.
    pub fn keeper(self) -> Keeper {
        self.parts().keeper
    }

    /// What knows of the other tabs.
    pub fn seat(self) -> Seat {
        self.parts().seat
    }

    /// What the line reads from words that are to go below a step, or at the end, and what it would make.
    pub fn read_line(self, after: Option<&Id>, words: &str) -> Making {
        let judged = self.parts().judged.get();
        let at = rereading::place_after(&judged.document, after);
        making_new(&judged, at, words, &mut NumberedIds::default()).0
    }

    /// The signals of where the keyboard and the selection are.
    pub(super) fn attention(self) -> Attention {
        let Parts { selected, anchor, is_editing, draft_after, focus, .. } = self.parts();
        Attention { selected, anchor, is_editing, draft_after, focus }
    }

    // What commands read.

    pub(super) fn document_now(self) -> Arc<Procedure> {
        self.parts().document.get_untracked()
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

    /// Changes the document; the only write. Says whether it was done; a refusal is shown as a notice.
    pub(super) fn edit(self, edits: &[Edit], label: &str, group: Option<&str>) -> bool {
        if self.refuses() {
            return false;
        }
        let mut next = self.parts().session.get_untracked();
        match next.edit(edits, label, group, clock::now_ms()) {
            Ok(()) => {
                self.parts().session.set(next);
                self.follow_up(group.is_some());
                true
            }
            Err(error) => {
                self.parts().notice.set(Some(error.to_string()));
                false
            }
        }
    }

    /// Whether nothing can be changed here, because another tab writes; says so then.
    fn refuses(self) -> bool {
        let only_shows = self.seat().only_shows().get_untracked();
        if only_shows {
            let words = "Nothing was changed: another tab writes this procedure. Take over to write here.";
            self.notice().set(Some(words.to_owned()));
        }
        only_shows
    }

    /// Takes the last edit back and goes where it was.
    pub fn undo(self) {
        self.travel(Session::undo);
    }

    /// Does again what was undone.
    pub fn redo(self) {
        self.travel(Session::redo);
    }

    fn travel(self, way: fn(&mut Session) -> Option<Undone>) {
        if self.refuses() {
            return;
        }
        let before = self.document_now();
        let mut next = self.parts().session.get_untracked();
        let Some(undone) = way(&mut next) else { return };
        self.parts().session.set(next);
        self.follow_up(false);
        let is_typing_there = self.parts().is_editing.get_untracked() && undone.step == self.selected_now();
        if let Some(step) = undone.step.filter(|_| !is_typing_there) {
            self.select(heir(&step, &before, &self.document_now()));
        }
    }

    /// Ends a group of typing, so that the next key is an undo entry of its own.
    pub fn close_group(self) {
        self.parts().session.update_untracked(Session::close_group);
    }

    /// Puts another document with its undo in place of this one.
    pub(super) fn open(self, session: Session, name: &str) {
        self.parts().selected.set(None);
        self.parts().anchor.set(None);
        self.parts().is_editing.set(false);
        self.parts().draft_after.set(None);
        self.parts().review.set(None);
        self.parts().name.set(name.to_owned());
        self.seat().opened(&session.document().id);
        self.parts().session.set(session);
        self.settle_now();
    }

    /// Shows the open document as another tab has kept it.
    pub(super) fn show_again(self, session: Session, name: &str) {
        self.parts().name.set(name.to_owned());
        self.parts().session.set(session);
        self.settle_now();
    }

    /// Says that a step is out, for the banner.
    pub(super) fn set_taken_out(self, taken_out: Option<TakenOut>) {
        self.parts().taken_out.set(taken_out);
    }

    /// Keeps the document as it is now, as after opening a file.
    pub(super) fn keep_now(self) {
        self.parts().keeper.changed(
            self.parts().session.get_untracked(),
            self.parts().name.get_untracked(),
            false,
        );
    }

    fn follow_up(self, is_typing: bool) {
        self.parts().keeper.changed(
            self.parts().session.get_untracked(),
            self.parts().name.get_untracked(),
            is_typing,
        );
        if let Some(timer) = self.parts().settling.try_update_value(Option::take).flatten() {
            timer.clear();
        }
        if is_typing {
            let timer = set_timeout_with_handle(move || self.settle_now(), SETTLE);
            self.parts().settling.set_value(timer.ok());
        } else {
            self.settle_now();
        }
    }

    fn settle_now(self) {
        self.parts().settled.set(self.parts().judged.get_untracked());
    }
}

fn begun_stages(document: &Procedure) -> Vec<Option<Stage>> {
    let mut before: Option<&Stage> = None;
    let begins =
        |step: &Arc<Step>, before: Option<&Stage>| (before != Some(&step.stage)).then(|| step.stage.clone());
    let mut stages = Vec::with_capacity(document.steps.len());
    for step in &document.steps {
        stages.push(begins(step, before));
        before = Some(&step.stage);
    }
    stages
}

/// A step, or if it has gone, the one that now stands in its place.
fn heir(step: &Id, before: &Procedure, now: &Procedure) -> Option<Id> {
    if now.position(step).is_some() {
        return Some(step.clone());
    }
    let place = before.position(step)?.min(now.steps.len().checked_sub(1)?);
    now.steps.get(place).map(|step| step.id.clone())
}

/// Whether two shared values are the very same one.
fn same<T>(before: Option<&Arc<T>>, now: Option<&Arc<T>>) -> bool {
    match (before, now) {
        (Some(before), Some(now)) => Arc::ptr_eq(before, now),
        _ => false,
    }
}
