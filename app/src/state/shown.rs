//! What views read of the editor: memos and read-only signals, each of its part.

use super::attention::{Attention, Focus};
use super::carried::CarriedHere;
use super::doubts::AskedFrom;
use super::editor_store::{EditorStore, Parts};
use super::judged::Judged;
use super::keeping::Keeper;
use super::known_here::KnownHere;
use super::lane_rows::LaneRows;
use super::last_read::LastRead;
use super::lines::Lines;
use super::making::{Fresh, making_new_here};
use super::pasted_text::{LongText, UnderWay};
use super::phrases::PhraseOffer;
use super::readings::Asking;
use super::reminders::AtStep;
use super::rereading;
use super::retyped::Retyped;
use super::review::Review;
use super::same_things::Wanted;
use super::seat::Seat;
use super::spread::UndoLabels;
use super::taken_out::TakenOut;
use super::told::Told;
use leptos::prelude::*;
use procedures_schema::capture::Making;
use procedures_schema::check::Finding;
use procedures_schema::derive::carry::Carried;
use procedures_schema::derive::lanes::{LaneHead, LaneRow, Lanes};
use procedures_schema::model::{ApplianceMap, Id, NumberedIds, Procedure, Question, Stage, Step};
use std::sync::Arc;

/// Above so many steps remedies are looked for when somebody asks.
const MOST_UNASKED: usize = 120;

impl EditorStore {
    /// The document, compared by pointer.
    pub fn document(self) -> Memo<Arc<Procedure>> {
        self.parts().document
    }

    /// What the head of a screen tells of it.
    pub fn told(self) -> ReadSignal<Told> {
        self.parts().spread.told.read_only()
    }

    /// The appliance map, compared by pointer.
    pub fn map(self) -> ReadSignal<Arc<ApplianceMap>> {
        self.parts().spread.map.read_only()
    }

    /// The questions of the job.
    pub fn questions(self) -> ReadSignal<Arc<Vec<Question>>> {
        self.parts().spread.questions.read_only()
    }

    /// The ids of the steps in order.
    pub fn order(self) -> ReadSignal<Arc<Vec<Id>>> {
        self.parts().spread.places.read_only()
    }

    /// One step; none once it is gone.
    pub fn step(self, id: Id) -> Memo<Option<Arc<Step>>> {
        let step = self.parts().spread.step(&id, &self.document_now());
        Memo::new_with_compare(
            move |_| step.get(),
            |before, now| match (before.and_then(Option::as_ref), now.and_then(Option::as_ref)) {
                (Some(before), Some(now)) => !Arc::ptr_eq(before, now),
                (None, None) => false,
                _ => true,
            },
        )
    }

    /// The position of a step, from 0. Looked up only when the order of the steps changes.
    pub fn position(self, id: Id) -> Memo<Option<usize>> {
        let places = self.parts().spread.places;
        Memo::new(move |_| places.with(|places| places.iter().position(|known| *known == id)))
    }

    /// By position the stage that begins with a step; none where the one before goes on.
    pub fn stages(self) -> ReadSignal<Arc<Vec<Option<Stage>>>> {
        self.parts().spread.stages.read_only()
    }

    /// The heads of the lanes, which all rows share.
    pub fn heads(self) -> ReadSignal<Arc<Vec<LaneHead>>> {
        self.parts().spread.heads.read_only()
    }

    /// How many things apart the width of the curve stands for.
    pub fn most_apart(self) -> ReadSignal<u32> {
        self.parts().spread.most_apart.read_only()
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
        let is_large = self.parts().spread.places.with_untracked(|places| places.len() > MOST_UNASKED);
        is_large || self.parts().is_slow_to_mend.get_value()
    }

    /// The step whose words have been typed since the keyboard went into them.
    pub(super) fn retyped(self) -> StoredValue<Option<Retyped>> {
        self.parts().retyped
    }

    /// The step that was read from its words last.
    pub(super) fn last_read(self) -> StoredValue<Option<LastRead>> {
        self.parts().last_read
    }

    /// What was made last from words.
    pub fn fresh(self) -> RwSignal<Option<Fresh>> {
        self.parts().fresh
    }

    /// The reminders for the way back, at the steps at which they come up.
    pub fn reminders(self) -> Memo<Vec<AtStep>> {
        self.parts().reminders
    }

    /// What came of the text that was pasted last.
    pub fn review(self) -> RwSignal<Option<Review>> {
        self.parts().review
    }

    /// The long text that is asked about, or being read.
    pub fn long_text(self) -> RwSignal<Option<LongText>> {
        self.parts().long_text
    }

    /// How many rows are drawn: all, but while a long text is put in place.
    pub fn drawn(self) -> RwSignal<usize> {
        self.parts().drawn
    }

    pub(super) fn under_way(self) -> StoredValue<Option<UnderWay>> {
        self.parts().under_way
    }

    /// The words whose readings are shown.
    pub(super) fn asking(self) -> RwSignal<Option<Asking>> {
        self.parts().asking
    }

    /// The phrase that can be kept.
    pub(super) fn offering(self) -> RwSignal<Option<PhraseOffer>> {
        self.parts().offering
    }

    /// The thing whose sheet is to be open when Appliance is shown next.
    pub(super) fn wanted(self) -> StoredValue<Option<Wanted>> {
        self.parts().wanted
    }

    /// Where a question that is being asked came from.
    pub(super) fn lines(self) -> Lines {
        self.parts().lines
    }

    pub(super) fn asked_from(self) -> StoredValue<Option<AskedFrom>> {
        self.parts().asked_from
    }

    pub(super) fn took_to_mend(self, is_slow: bool) {
        self.parts().is_slow_to_mend.set_value(is_slow);
    }

    /// The lanes beside a step, in sight after every key.
    pub fn lane_row(self, id: &Id) -> ArcRwSignal<Option<LaneRow>> {
        self.parts().spread.lane_rows.row(id)
    }

    /// The rows of lanes, to be told which are in sight.
    pub fn lane_rows(self) -> LaneRows {
        self.parts().spread.lane_rows
    }

    /// The lanes of all steps, compared by pointer.
    pub fn lanes(self) -> ReadSignal<Arc<Lanes>> {
        self.parts().spread.lanes.read_only()
    }

    /// The findings at a step, or at the end, once typing has paused.
    pub fn findings(self, step: Option<Id>) -> Memo<Vec<Finding>> {
        let settled = self.parts().settled;
        Memo::new(move |_| settled.with(|judged| judged.findings_at(step.as_ref())))
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

    pub(super) fn here(self) -> RwSignal<Option<CarriedHere>> {
        self.parts().here
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
    pub fn undo_labels(self) -> ReadSignal<UndoLabels> {
        self.parts().spread.undo_labels.read_only()
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
    pub fn read_line(self, after: Option<&Id>, words: &str, known: KnownHere) -> Making {
        let judged = self.parts().judged.get();
        let at = rereading::place_after(&judged.document, after);
        making_new_here(&judged, &known.at(&judged, at), at, words, &mut NumberedIds::default()).0
    }

    /// The signals of where the keyboard and the selection are.
    pub(super) fn attention(self) -> Attention {
        let Parts { selected, anchor, is_editing, draft_after, focus, is_in_line, .. } = self.parts();
        Attention { selected, anchor, is_editing, draft_after, focus, is_in_line }
    }
}
