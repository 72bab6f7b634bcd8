//! The pieces of a text as steps of a document, each read in the state that the steps before it leave.
//!
//! Messages join the step that follows, other leading words the step before. What is not understood, and
//! what a step cannot hold, becomes a step with words alone and is listed.

use super::{Block, Piece, PieceKind};
use crate::capture::leading::question_of;
use crate::capture::{
    Beside, Doubt, Given, Leading, LineReading, Made, Making, Question, Unknown, apply_leading, line_making,
    stage_between, told_together,
};
use crate::model::{ApplianceMap, Id, IdSource, Procedure, Stage, Step};
use crate::simulate::{Place, Run, Trace, simulate};
use std::sync::Arc;

/// What a pasted text becomes. Nothing is in the document yet.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Pasted {
    /// The steps, in the order of the text.
    pub steps: Vec<Step>,
    /// What the document gets beside them.
    pub beside: Vec<Beside>,
    /// The map with the things that the text names for the first time; none, if there are none.
    pub map: Option<Arc<ApplianceMap>>,
    /// Those things.
    pub made: Vec<Made>,
    /// Where more than one thing can be meant.
    pub decisions: Vec<LineDoubt>,
    /// What is open about new things, with the step that names them.
    pub asked: Vec<(Id, Question)>,
    /// Steps that are words alone.
    pub not_understood: Vec<NotUnderstood>,
    /// The line of each step, in their order.
    pub sources: Vec<SourceLine>,
    /// How many there are of each.
    pub counts: Counts,
}

/// Where a step comes from.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SourceLine {
    /// The step.
    pub step: Id,
    /// The line of the pasted text.
    pub line: usize,
    /// The text of that line as it was pasted.
    pub source: String,
}

/// A doubt and where it comes from.
#[derive(Clone, Debug, PartialEq)]
pub struct LineDoubt {
    /// The step whose words are in doubt.
    pub step: Id,
    /// The line of the pasted text.
    pub line: usize,
    /// The text of that line as it was pasted.
    pub source: String,
    /// The doubt; its span is in the words of the step.
    pub doubt: Doubt,
}

/// A step that stays words, and why.
#[derive(Clone, Debug, PartialEq)]
pub struct NotUnderstood {
    /// The step.
    pub step: Id,
    /// The line of the pasted text.
    pub line: usize,
    /// The text of that line as it was pasted.
    pub source: String,
    /// Why, for people.
    pub reason: String,
    /// Verbs whose things the map does not know.
    pub unknown: Vec<Unknown>,
}

/// The head of a pasted block: "30 lines, 34 steps, 5 to decide, 3 not understood, 2 later".
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Counts {
    /// Lines with text.
    pub lines: usize,
    /// Steps.
    pub steps: usize,
    /// Places to decide.
    pub to_decide: usize,
    /// Steps that are words alone.
    pub not_understood: usize,
    /// Values that somebody still has to find out.
    pub later: usize,
    /// Pieces that say nothing to do: rules, lone marks, heads of columns, headings that name a stage.
    pub without_step: usize,
}

/// Makes steps of a block, to stand in a procedure from a position on.
pub fn steps_of_block(block: &Block, procedure: &Procedure, at: usize, ids: &mut dyn IdSource) -> Pasted {
    let mut reading = BlockReading::new(block.clone(), procedure, at);
    while reading.read_next(ids).is_some() {}
    reading.finish(ids)
}

/// A block that is read a piece at a time, for a long one takes a while.
#[derive(Clone, Debug)]
pub struct BlockReading {
    block: Block,
    /// How many of its pieces have been read.
    n_read: usize,
    pasting: Pasting,
}

impl BlockReading {
    /// Before its first piece, to stand in a procedure from a position on.
    pub fn new(block: Block, procedure: &Procedure, at: usize) -> Self {
        Self { block, n_read: 0, pasting: Pasting::new(procedure, at) }
    }

    /// How many pieces there are.
    pub fn n_pieces(&self) -> usize {
        self.block.pieces.len()
    }

    /// Reads one piece and says how many have been read; none, if there is no further one.
    pub fn read_next(&mut self, ids: &mut dyn IdSource) -> Option<usize> {
        let piece = self.block.pieces.get(self.n_read)?;
        self.pasting.piece(piece, ids);
        self.n_read += 1;
        Some(self.n_read)
    }

    /// What the block becomes as far as it has been read.
    pub fn finish(mut self, ids: &mut dyn IdSource) -> Pasted {
        self.pasting.settle_messages(ids);
        self.pasting.finish(&self.block)
    }
}

/// A step that is being made, and its line.
#[derive(Clone, Debug)]
struct Pasting {
    /// The document up to the step that is being made.
    so_far: Procedure,
    /// How many steps stood there before.
    n_before: usize,
    /// The line of each new step.
    lines: Vec<usize>,
    /// And the text of it.
    sources: Vec<SourceLine>,
    stage: Stage,
    /// The stage of what stands behind.
    behind: Option<Stage>,
    /// Messages that wait for their step.
    messages: Vec<Piece>,
    /// Where the step stands that the last question is in.
    asked: Option<usize>,
    /// The trace of `so_far`, until an action is added.
    trace: Option<Trace>,
    pasted: Pasted,
}

impl Pasting {
    fn new(procedure: &Procedure, at: usize) -> Self {
        let n_before = at.min(procedure.steps.len());
        let mut so_far = procedure.clone();
        so_far.steps.truncate(n_before);
        let stage = so_far.steps.last().or_else(|| procedure.steps.first());
        let stage = stage.map_or(Stage::Prepare, |step| step.stage.clone());
        let behind = procedure.steps.get(n_before).map(|step| step.stage.clone());
        let (lines, sources, messages, asked, trace) = (Vec::new(), Vec::new(), Vec::new(), None, None);
        let pasted = Pasted::default();
        Self { so_far, n_before, lines, sources, stage, behind, messages, asked, trace, pasted }
    }

    fn piece(&mut self, piece: &Piece, ids: &mut dyn IdSource) {
        match &piece.kind {
            PieceKind::Ornament => self.pasted.counts.without_step += 1,
            PieceKind::Heading(Some(stage)) => {
                self.settle_messages(ids);
                self.stage = stage.clone();
                self.asked = None;
                self.pasted.counts.without_step += 1;
            }
            PieceKind::Heading(None) => {
                self.text_alone(piece, "a heading that names no part of the job", ids);
            }
            PieceKind::Step => self.sentence(piece, ids),
            PieceKind::Leading(leading) => self.leading(piece, leading, ids),
        }
    }

    fn leading(&mut self, piece: &Piece, leading: &Leading, ids: &mut dyn IdSource) {
        match leading {
            // Behind a sentence of the same line, or in a cell of its row, it belongs to that step.
            Leading::Message(_) if self.lines.last() != Some(&piece.line) => {
                self.messages.push(piece.clone());
            }
            Leading::Wait { .. } => self.sentence(piece, ids),
            Leading::If { .. } => match self.asked.or_else(|| self.asked_before()) {
                Some(asked) => self.apply(asked, piece, leading, ids),
                None => self.text_alone(piece, "no question stands before it", ids),
            },
            Leading::Ask { .. } => {
                let at = self.add(piece, "", ids);
                self.apply(at, piece, leading, ids);
                self.asked = Some(at);
            }
            _ => {
                let last = self.lines.len().checked_sub(1).map(|last| self.n_before + last);
                let at = last.unwrap_or_else(|| self.add(piece, "", ids));
                self.apply(at, piece, leading, ids);
            }
        }
    }

    /// The last step, if it puts a question or is done on an answer to one.
    fn asked_before(&self) -> Option<usize> {
        let last = self.so_far.steps.last()?;
        question_of(last).map(|_| self.so_far.steps.len() - 1)
    }

    /// A sentence, as a step with what is read from it.
    fn sentence(&mut self, piece: &Piece, ids: &mut dyn IdSource) {
        let at = self.add(piece, &piece.words, ids);
        self.read(at, piece, ids);
    }

    /// Adds a step with the messages that waited for it; its position.
    fn add(&mut self, piece: &Piece, words: &str, ids: &mut dyn IdSource) -> usize {
        let mut step = Step::new(ids.next_id("step"), self.stage.clone(), words);
        for message in std::mem::take(&mut self.messages) {
            if let PieceKind::Leading(Leading::Message(message)) = message.kind {
                step.messages.push(message);
            }
        }
        self.came_from(piece, &step.id);
        self.so_far.steps.push(Arc::new(step));
        self.so_far.steps.len() - 1
    }

    fn came_from(&mut self, piece: &Piece, step: &Id) {
        let (step, line, source) = (step.clone(), piece.line, piece.source.clone());
        self.lines.push(line);
        self.sources.push(SourceLine { step, line, source });
    }

    /// Reads the words of the last step where it stands and makes what they name. The one place where words
    /// become actions.
    fn read(&mut self, at: usize, piece: &Piece, ids: &mut dyn IdSource) {
        let Some(step) = self.so_far.steps.get(at).cloned() else { return };
        let mut making = self.making(at, &step, ids);
        // What a step does tells its part of the job, and what it does is read in its part.
        let stage = stage_between(&making.reading.actions, Some(&step.stage), self.behind.as_ref());
        let step = Step { stage: stage.clone(), ..(*step).clone() };
        if stage != self.stage {
            self.stage = stage;
            making = self.making(at, &step, ids);
        }
        let changes_map = making.changes_map();
        let LineReading { actions, doubts, unknown, .. } = making.reading;
        if actions.is_empty() && doubts.is_empty() && making.asked.is_empty() {
            let reason = if unknown.is_empty() {
                "no action is read from it"
            } else {
                "nobody has said yet what it is done to"
            };
            self.note(&step.id, piece, reason, unknown);
            return;
        }
        let (line, source) = (piece.line, &piece.source);
        self.pasted.decisions.extend(doubts.into_iter().map(|doubt| LineDoubt {
            step: step.id.clone(),
            line,
            source: source.clone(),
            doubt,
        }));
        self.pasted.asked.extend(making.asked.into_iter().map(|question| (step.id.clone(), question)));
        if changes_map {
            self.so_far.map = making.map;
            self.pasted.map = Some(self.so_far.map.clone());
            self.pasted.made.extend(making.made);
            self.trace = None;
        }
        if !actions.is_empty() {
            self.put(at, Step { actions, ..step });
        }
        self.tell_together();
    }

    /// What the last step and its neighbours tell together; a step that stood there before stays as it is.
    fn tell_together(&mut self) {
        let Some(last) = self.so_far.steps.len().checked_sub(1) else { return };
        for step in told_together(&self.so_far, last) {
            let at = self.so_far.position(&step.id).filter(|at| *at >= self.n_before);
            if let Some(at) = at {
                self.put(at, step);
            }
        }
    }

    fn making(&mut self, at: usize, step: &Step, ids: &mut dyn IdSource) -> Making {
        let so_far = &self.so_far;
        let trace = self.trace.get_or_insert_with(|| simulate(so_far, &Run::of(so_far)));
        let place = at.checked_sub(1).map_or(Place::START, Place::after);
        let before = so_far.steps.get(..at).unwrap_or_default();
        let given = Given { census: &so_far.census, answers: &[], before };
        line_making(&step.words, &so_far.map, trace, place, &step.stage, given, ids)
    }

    /// Applies a leading word to a step; what it cannot hold becomes a step with its words.
    fn apply(&mut self, at: usize, piece: &Piece, leading: &Leading, ids: &mut dyn IdSource) {
        let Some(step) = self.so_far.steps.get(at).cloned() else { return };
        match apply_leading(&step, leading, ids) {
            Ok(applied) => {
                for beside in &applied.beside {
                    if let Beside::Question(question) = beside {
                        self.so_far.questions.push(question.clone());
                    }
                }
                self.pasted.beside.extend(applied.beside);
                self.put(at, applied.step);
                self.tell_together();
                for further in applied.further {
                    self.came_from(piece, &further.id);
                    self.so_far.steps.push(Arc::new(further));
                    self.read(self.so_far.steps.len() - 1, piece, ids);
                }
            }
            // A step that was only made to hold it holds its words.
            Err(refused) if step.words.is_empty() => {
                self.put(at, Step { words: piece.words.clone(), ..(*step).clone() });
                self.note(&step.id, piece, &refused.reason, Vec::new());
            }
            Err(refused) => self.text_alone(piece, &refused.reason, ids),
        }
    }

    fn put(&mut self, at: usize, step: Step) {
        if let Some(place) = self.so_far.steps.get_mut(at) {
            if place.actions != step.actions {
                self.trace = None;
            }
            *place = Arc::new(step);
        }
    }

    fn text_alone(&mut self, piece: &Piece, reason: &str, ids: &mut dyn IdSource) {
        let at = self.add(piece, &piece.words, ids);
        if let Some(id) = self.so_far.steps.get(at).map(|step| step.id.clone()) {
            self.note(&id, piece, reason, Vec::new());
        }
    }

    fn note(&mut self, step: &Id, piece: &Piece, reason: &str, unknown: Vec<Unknown>) {
        let (line, source) = (piece.line, piece.source.clone());
        let (step, reason) = (step.clone(), reason.to_owned());
        self.pasted.not_understood.push(NotUnderstood { step, line, source, reason, unknown });
    }

    /// Messages that no step followed belong to the step before; without one they stay text.
    fn settle_messages(&mut self, ids: &mut dyn IdSource) {
        let last = self.lines.len().checked_sub(1).map(|last| self.n_before + last);
        for piece in std::mem::take(&mut self.messages) {
            match (last, &piece.kind) {
                (Some(at), PieceKind::Leading(leading)) => self.apply(at, &piece, leading, ids),
                _ => self.text_alone(&piece, "no step stands with it", ids),
            }
        }
    }

    fn finish(mut self, block: &Block) -> Pasted {
        let new = self.so_far.steps.split_off(self.n_before.min(self.so_far.steps.len()));
        self.pasted.sources = self.sources;
        self.pasted.steps = new.into_iter().map(Arc::unwrap_or_clone).collect();
        let later = self.pasted.beside.iter().filter(|beside| matches!(beside, Beside::Later(_))).count();
        self.pasted.counts = Counts {
            lines: block.n_lines,
            steps: self.pasted.steps.len(),
            to_decide: self.pasted.decisions.len() + self.pasted.asked.len(),
            not_understood: self.pasted.not_understood.len(),
            later,
            ..self.pasted.counts
        };
        self.pasted
    }
}
