//! What a person can want in Write, as one list: keys, buttons and tests all send these.
//!
//! Each command becomes edits with a name for undo, and says where to look afterwards. Whether the result
//! is right is the checker's business, not ours.

use super::attention::Focus;
use super::doubts::{AskedFrom, Open};
use super::editor_store::EditorStore;
use super::ids::RandomIds;
use super::last_read::LastRead;
use super::links::LinkOffer;
use super::readings::AskedAt;
use super::rereading;
use super::retyped::Retyped;
use leptos::prelude::{Set, SetValue, UpdateValue, WithValue};
use procedures_schema::capture::{Differing, follow_words, question_with_answers};
use procedures_schema::derive::carry::Back;
use procedures_schema::derive::ladder;
use procedures_schema::edit::Edit;
use procedures_schema::model::{Id, Span, Step, typed_over};
use procedures_schema::simulate::kind_row;
use std::sync::Arc;

/// One intent.
#[derive(Clone, Debug, PartialEq)]
pub enum Command {
    /// The title is typed.
    SetTitle(String),
    /// The words of a step are typed, as people read them.
    SetWords {
        /// Which step.
        step: Id,
        /// All its words.
        words: String,
    },
    /// A new step is kept, after another or at the end.
    AddStep {
        /// The step before it; at the end, if none.
        after: Option<Id>,
        /// Its words.
        words: String,
    },
    /// The selected steps are taken out.
    RemoveSelection,
    /// The selected steps go one place up.
    MoveUp,
    /// The selected steps go one place down.
    MoveDown,
    /// The selected steps go to a position.
    MoveTo(usize),
    /// The selected steps are held one place further up.
    HoldUp,
    /// The selected steps are held one place further down.
    HoldDown,
    /// A step is dragged: it, or the selection that it is in, is held at a position.
    HoldAt(Id, usize),
    /// What is held stays where it is.
    Drop,
    /// What is held goes back to where it was.
    PutHeldBack,
    /// The selected steps are written once more, below them.
    Duplicate,
    /// The steps that were copied are put below the selected one.
    PasteCopied,
    /// The selection grows or shrinks by the next step.
    ExtendDown,
    /// The selection grows or shrinks by the step before.
    ExtendUp,
    /// The selection reaches to a step.
    ExtendTo(Id),
    /// Every step is selected.
    SelectAll,
    /// The stage in which a step stands is selected.
    SelectStage(Id),
    /// The steps that make a circuit safe are written after a step, or at the end.
    AddLadder {
        /// The step before them; at the end, if none.
        after: Option<Id>,
        /// The circuit.
        circuit: Id,
    },
    /// A question about words of a step is answered; with none of its choices, if there is none.
    Settle {
        /// Which step.
        step: Id,
        /// The question.
        doubt: Open,
        /// The answer.
        choice: Option<usize>,
        /// Further steps that ask the same and get the same answer.
        also: Vec<Id>,
    },
    /// The open questions of a step are left open.
    LeaveDoubts(Id),
    /// Other readings of words of a step are asked for.
    AskReadings(Id, AskedAt),
    /// A line is kept as a step, and other readings of its words are asked for.
    KeepAndAsk {
        /// The step before it; at the end, if none.
        after: Option<Id>,
        /// Its words.
        words: String,
        /// Where they are asked for.
        at: AskedAt,
    },
    /// One of the readings of words of a step is taken.
    ReadAs {
        /// Which step.
        step: Id,
        /// Which of those that are shown.
        choice: usize,
    },
    /// The words of the meaning that was picked last are read so in the whole procedure.
    KeepPhrase(Id),
    /// They are read so where they stand and nowhere else.
    LeavePhrase,
    /// The readings go away, and nothing changes.
    CloseReadings,
    /// A number in the words of a step is to point at the step that has it now.
    LinkStep {
        /// Which step.
        step: Id,
        /// What was offered.
        offer: LinkOffer,
    },
    /// The map takes a figure that the words of a step state.
    TakeFigure {
        /// Which step.
        step: Id,
        /// The figure.
        figure: Differing,
    },
    /// The words of a step take the figure that the map holds.
    WriteFigure {
        /// Which step.
        step: Id,
        /// The figure.
        figure: Differing,
    },
    /// Words of a step stay text.
    LeaveAsText {
        /// Which step.
        step: Id,
        /// The words.
        span: Span,
    },
    /// An action of a step is none; its words stay text.
    Decline {
        /// Which step.
        step: Id,
        /// The position of the action in it.
        action: usize,
    },
    /// The first remedy that is ready for a step is applied.
    Mend(Id),
    /// The first remedy that is ready for the step before a line is applied: a step, or the last one.
    MendBefore(Option<Id>),
    /// The next step of a pasted text that wants a look is selected.
    NextOfReview,
    /// A pasted text is taken back, with what has been done since.
    UndoReview,
    /// A pasted text is to stand as rows of words, read or not.
    PlainReview,
    /// The long text that is asked about is read.
    ReadLongText,
    /// The long text becomes rows of words.
    LongTextPlain,
    /// The long text is left; nothing of it is put anywhere.
    LeaveLongText,
    /// The first line of a pasted text is no title but a step.
    TitleIsStep,
    /// The step that the demonstration lacks comes back.
    PutBack,
    /// The last edit is taken back.
    Undo,
    /// What was undone is done again.
    Redo,
    /// A step is selected, or none.
    Select(Option<Id>),
    /// Selects the step that is so many places below a step; the first and the last stay.
    SelectBeside(Id, isize),
    /// The last step is selected.
    SelectLast,
    /// The selection goes to the next step with a finding, round the end.
    NextFinding,
    /// Goes to the next finding that does not reject.
    NextDoubt,
    /// Go to the first of them.
    FirstDoubt,
    /// The selection goes to the step with a finding before.
    PreviousFinding,
    /// The keyboard goes to the list of the warnings that were accepted.
    LookAtAccepted,
    /// The words of a step are to be typed; from a place on, in UTF-16 units, if it was pressed there.
    EditWords(Id, Option<u32>),
    /// The words of a step are as they are to be; what they leave open is asked, and else the next line opens below.
    KeepWords(Id),
    /// The words of a step are left as they were before the keyboard went into them.
    TakeBackTyping(Id),
    /// A step is made two, where its words as people read them have begun with these.
    CutStep {
        /// Which step.
        step: Id,
        /// The words that stay.
        head: String,
    },
    /// A step becomes one with the step before it.
    JoinToStepBefore(Id),
    /// Lines become steps as they are, without a reading of their words.
    AddPlain {
        /// The step before them; at the end, if none.
        after: Option<Id>,
        /// The lines.
        text: String,
    },
    /// A line for a new step opens below a step.
    DraftBelow(Id),
    /// That line closes.
    CloseDraft,
}

impl Command {
    /// Whether what is held stays in hand.
    fn is_of_holding(&self) -> bool {
        matches!(self, Self::HoldUp | Self::HoldDown | Self::HoldAt(..) | Self::Drop | Self::PutHeldBack)
    }
}

impl EditorStore {
    /// Does what a person wants.
    pub fn run(self, command: Command) {
        if !command.is_of_holding() {
            self.drop_held();
        }
        match command {
            Command::SetTitle(title) => self.set_title(title),
            Command::SetWords { step, words } => self.set_words(&step, &words),
            Command::AddStep { after, words } => self.add_step(after, &words),
            Command::RemoveSelection => self.remove_selection(),
            Command::MoveUp => self.move_selection(-1),
            Command::MoveDown => self.move_selection(1),
            Command::MoveTo(position) => self.move_selection_to(position),
            Command::HoldUp => self.hold_by(-1),
            Command::HoldDown => self.hold_by(1),
            Command::HoldAt(step, position) => self.hold_at(&step, position),
            Command::Drop => self.drop_held(),
            Command::PutHeldBack => self.put_held_back(),
            Command::Duplicate => self.duplicate(),
            Command::PasteCopied => self.paste_copied(),
            Command::ExtendDown => self.extend(1),
            Command::ExtendUp => self.extend(-1),
            Command::ExtendTo(step) => self.extend_to(step),
            Command::SelectAll => self.select_all(),
            Command::SelectStage(step) => self.select_stage(&step),
            Command::AddLadder { after, circuit } => self.add_ladder(after.as_ref(), &circuit),
            Command::Settle { step, doubt, choice, also } => self.settle_doubt(&step, &doubt, choice, &also),
            Command::LeaveDoubts(step) => self.leave_doubts(&step),
            Command::AskReadings(step, at) => self.ask_readings(&step, &at),
            Command::KeepAndAsk { after, words, at } => self.keep_and_ask(after.as_ref(), &words, &at),
            Command::ReadAs { step, choice } => self.read_as(&step, choice),
            Command::KeepPhrase(step) => self.keep_phrase(&step),
            Command::LeavePhrase => self.leave_phrase(),
            Command::CloseReadings => self.close_readings(),
            Command::LinkStep { step, offer } => self.link_step(&step, &offer),
            Command::TakeFigure { step, figure } => self.take_figure(&step, &figure),
            Command::WriteFigure { step, figure } => self.write_figure(&step, &figure),
            Command::LeaveAsText { step, span } => self.leave_as_text(&step, span),
            Command::Decline { step, action } => self.decline_action(&step, action),
            Command::Mend(step) => self.mend(&step),
            Command::MendBefore(step) => self.mend_before(step),
            Command::NextOfReview => self.next_of_review(),
            Command::UndoReview => self.undo_review(),
            Command::PlainReview => self.plain_review(),
            Command::ReadLongText => self.read_long_text(),
            Command::LongTextPlain => self.long_text_plain(),
            Command::LeaveLongText => self.leave_long_text(),
            Command::TitleIsStep => self.title_is_step(),
            Command::PutBack => self.put_back(),
            Command::Undo => self.undo(),
            Command::Redo => self.redo(),
            Command::Select(step) => self.select(step),
            Command::SelectBeside(step, by) => self.select_beside(&step, by),
            Command::SelectLast => self.select(self.document_now().steps.last().map(|step| step.id.clone())),
            Command::NextFinding => self.select_finding(true),
            Command::NextDoubt => self.select_doubt(),
            Command::FirstDoubt => self.select_first_doubt(),
            Command::PreviousFinding => self.select_finding(false),
            Command::LookAtAccepted => self.look_at_accepted(),
            Command::EditWords(step, at) => self.edit_words(step, at),
            Command::KeepWords(step) => self.keep_words(step),
            Command::TakeBackTyping(step) => self.take_back_typing(&step),
            Command::CutStep { step, head } => self.cut_step(&step, &head),
            Command::JoinToStepBefore(step) => self.join_to_step_before(&step),
            Command::AddPlain { after, text } => self.add_plain(after.as_ref(), &text),
            Command::DraftBelow(step) => self.open_draft(step),
            Command::CloseDraft => self.close_draft(),
        }
    }

    fn set_title(self, title: String) {
        self.edit(&[Edit::SetTitle(title)], "change the title", Some("title"));
    }

    fn set_words(self, step: &Id, words: &str) {
        let judged = self.judged_now();
        let Some(position) = judged.document.position(step) else { return };
        let Some(before) = judged.document.steps.get(position) else { return };
        let words = typed_over(&before.words, words, |step| judged.document.link_name(step));
        let typed = self.retyped().with_value(|typed| typed.clone().filter(|typed| typed.step.id == *step));
        let is_first_key = typed.is_none();
        let map = &judged.document.map;
        let Retyped { step: first, map: at_first } =
            typed.unwrap_or_else(|| Retyped { step: before.clone(), map: map.clone() });
        let followed = follow_words(&judged.document, position, &first, &at_first, &words);
        let last = self.last_read().try_update_value(Option::take).flatten();
        let known = last.as_ref().filter(|last| last.of(&judged, position, before).is_some());
        let map = followed.as_ref().unwrap_or(map);
        let reread = rereading::reread_knowing(&judged, position, map, &first, before, &words, known);
        let changed = Arc::new(reread.step);
        let read = LastRead::new(&judged, position, changed.clone(), reread.read);
        self.last_read().set_value(Some(read.with_first(first, reread.read_first)));
        let group = format!("words of {step}");
        let label = format!("change the words of step {}", position + 1);
        if is_first_key {
            self.retyped().set_value(Some(Retyped { step: before.clone(), map: at_first }));
        }
        let edits: Vec<Edit> =
            followed.map(Edit::SetMap).into_iter().chain([Edit::SetStep { step: changed }]).collect();
        self.edit(&edits, &label, Some(&group));
        self.parts().outdated.update_value(|outdated| outdated.push(judged));
    }

    fn add_step(self, after: Option<Id>, words: &str) {
        if let Some(id) = self.keep_line(after.as_ref(), words) {
            // Answers that stand beside their question are whole.
            if question_with_answers(words).is_none() {
                self.go_into_branch(&id);
            }
            // The line stays open and moves on, so that one line after the other can be written.
            let from = if after.is_some() { AskedFrom::LineBelow } else { AskedFrom::LastLine };
            if !self.ask(&id, from) {
                match after {
                    Some(_) => self.open_draft(id),
                    None => self.look_at(Focus::LastLine),
                }
            }
        }
    }

    fn add_ladder(self, after: Option<&Id>, circuit: &Id) {
        let document = self.document_now();
        let at = rereading::place_after(&document, after);
        let steps = ladder::ladder(&document, circuit, at, &mut RandomIds);
        let name = document.map.name_of(circuit).to_owned();
        if steps.is_empty() {
            let kind = document.map.circuits.iter().find(|one| one.id == *circuit).map(|one| &one.kind);
            let why = if kind.is_some_and(|kind| kind_row(kind).is_some()) {
                "is cut off and proved there already"
            } else {
                "is of a kind of which no steps are known"
            };
            self.notice().set(Some(format!("Nothing was added: {name} {why}.")));
            return;
        }
        let first = steps.first().map(|step| step.id.clone());
        let inserts: Vec<Edit> = steps
            .into_iter()
            .enumerate()
            .map(|(offset, step)| Edit::InsertStep { at: at + offset, step: Arc::new(step) })
            .collect();
        if self.edit(&inserts, &format!("make {name} safe"), None) {
            self.select(first);
        }
    }

    fn put_back(self) {
        let Some(taken_out) = self.taken_out_now() else { return };
        if self.undo_label_now().as_deref() == Some(taken_out.label().as_str()) {
            self.undo();
            return;
        }
        let document = self.document_now();
        let at = taken_out.at.min(document.steps.len());
        let back = Back::of(&document, &taken_out.map, std::slice::from_ref(&taken_out.step));
        let mut step = Step::clone(&taken_out.step);
        back.lead(&mut step);
        let insert = Edit::InsertStep { at, step: Arc::new(step) };
        let edits: Vec<Edit> = back.map.map(Edit::SetMap).into_iter().chain([insert]).collect();
        if self.edit(&edits, &format!("put back step {}", at + 1), None) {
            self.select(Some(taken_out.step.id.clone()));
        }
    }

    fn select_beside(self, step: &Id, by: isize) {
        let document = self.document_now();
        let next = document.position(step).and_then(|at| at.checked_add_signed(by));
        if let Some(step) = next.and_then(|next| document.steps.get(next)) {
            self.select(Some(step.id.clone()));
        }
    }
}
