//! What is open about the words of a step: where more than one thing can be meant and nobody has said which,
//! and to which circuit a new thing belongs.
//!
//! The line asks and never guesses. An answer is kept as an action of the step, with the words that say it;
//! a doubt that is declined stays text for good.

use super::attention::Focus;
use super::editor_store::EditorStore;
use super::heard::Heard;
use super::judged::Judged;
use super::lines::Line;
use super::making::Act;
use super::rereading;
use leptos::prelude::*;
use procedures_schema::capture::{Answer, Doubt, Meaning, Question};
use procedures_schema::derive::stands::how_it_stands_apart;
use procedures_schema::edit::Edit;
use procedures_schema::model::{Action, Id, Procedure, Span, Step};
use std::sync::Arc;

/// Where the keyboard goes once nothing is open any more.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AskedFrom {
    /// To the line at the end.
    LastLine,
    /// To a line below the step.
    LineBelow,
    /// To the next question of a pasted text, and after the last to the row of the step.
    Review,
}

/// Something that is open.
#[derive(Clone, Debug, PartialEq)]
pub enum Open {
    /// Which of several things is meant.
    Thing(Doubt),
    /// To which circuit a new thing belongs, whether a name is another one of a known thing, or something that only
    /// other words can say.
    Making(Question),
}

impl Open {
    pub(super) fn span(&self) -> Span {
        match self {
            Self::Thing(doubt) => doubt.span,
            Self::Making(question) => question.span,
        }
    }

    /// What is asked.
    pub fn question(&self) -> &str {
        match self {
            Self::Thing(doubt) => &doubt.question,
            Self::Making(question) => &question.question,
        }
    }

    /// The answers there are.
    pub fn choices(&self) -> Vec<String> {
        match self {
            Self::Thing(doubt) => doubt.choices.iter().map(|choice| choice.name.clone()).collect(),
            Self::Making(question) => question.choices.iter().map(ToString::to_string).collect(),
        }
    }
}

impl EditorStore {
    /// How the things of the answers stand at a step, in the order of the answers; none for what is no thing yet.
    pub fn how_answers_stand(self, step: &Id, open: &Open) -> Vec<Option<String>> {
        let judged = self.judged_now();
        let Some(position) = judged.document.position(step) else { return Vec::new() };
        let place = rereading::place_before(position);
        let stands = |thing: &Id| how_it_stands_apart(&judged.document.map, &judged.trace, place, thing);
        match open {
            Open::Thing(doubt) => doubt.choices.iter().map(|choice| stands(&choice.thing)).collect(),
            Open::Making(question) => {
                let of = |meaning: &Meaning| match meaning {
                    Meaning::Known { thing, .. } => stands(thing),
                    _ => None,
                };
                question.choices.iter().map(of).collect()
            }
        }
    }

    /// Goes to the first open question of a step that has answers, if there is one.
    pub(super) fn ask(self, step: &Id, from: AskedFrom) -> bool {
        let is_open = can_be_asked(&self.judged_now(), step);
        if is_open {
            self.select(Some(step.clone()));
            self.asked_from().set_value(Some(from));
            self.look_at(Focus::Choice(step.clone()));
        }
        is_open
    }

    /// Whether what is asked in a step comes from a pasted text that is being looked through.
    pub fn is_reviewing(self, step: &Id) -> bool {
        self.is_in_review(step)
    }

    /// Takes an answer to what is open: one of its choices, or none of them; in further steps too that ask the same.
    pub(super) fn settle_doubt(self, id: &Id, open: &Open, choice: Option<usize>, also: &[Id]) {
        let done = match (open, choice) {
            _ if !also.is_empty() || self.is_in_review(id) => {
                let steps: Vec<&Id> = std::iter::once(id).chain(also).collect();
                self.settle_alike(&steps, open, choice)
            }
            (Open::Thing(doubt), Some(choice)) => self.say_which(id, doubt, choice),
            (Open::Making(question), Some(choice)) => self.say_what(id, question, choice),
            (_, None) => self.decline(id, open.span()),
        };
        if done {
            self.ask_on(id);
        }
    }

    fn say_which(self, id: &Id, doubt: &Doubt, choice: usize) -> bool {
        let document = self.document_now();
        let Some(choice) = doubt.choices.get(choice) else {
            return self.say_another(id, doubt, choice - doubt.choices.len());
        };
        let Some((position, step)) = step_of(&document, id) else { return false };
        let mut step = Step::clone(step);
        choice.actions().for_each(|action| add_in_order(&mut step.actions, action.clone()));
        // A single answer names what is done, and no thing.
        let means = if doubt.choices.len() == 1 { String::new() } else { "the ".to_owned() };
        let label = format!("say that step {} means {means}{}", position + 1, choice.name);
        self.edit(&[Edit::SetStep { step: Arc::new(step) }], &label, None)
    }

    fn say_what(self, id: &Id, question: &Question, choice: usize) -> bool {
        let Some(means) = question.choices.get(choice) else { return false };
        let answer = Answer { span: question.span, means: means.clone() };
        let act = Act::alone(format!("say that it is {}", told(means)));
        self.make_things(id, &[answer], Some(&act))
    }

    pub(super) fn decline(self, id: &Id, span: Span) -> bool {
        let document = self.document_now();
        let Some((position, step)) = step_of(&document, id) else { return false };
        let mut step = Step::clone(step);
        step.declined.push(span.of(&step.words).to_owned());
        let label = format!("leave words of step {} as text", position + 1);
        self.edit(&[Edit::SetStep { step: Arc::new(step) }], &label, None)
    }

    /// Leaves words of a step as text; the key that does it goes, and the keyboard stays at the step.
    pub(super) fn leave_as_text(self, id: &Id, span: Span) {
        if self.decline(id, span) {
            self.look_at(Focus::Row(id.clone()));
        }
    }

    /// Takes an action out of a step for good: its words are text from now on.
    pub(super) fn decline_action(self, id: &Id, at: usize) {
        let document = self.document_now();
        let Some((position, step)) = step_of(&document, id).filter(|(_, step)| at < step.actions.len())
        else {
            return;
        };
        let mut step = Step::clone(step);
        let action = step.actions.remove(at);
        step.declined.extend(action.says.first().map(|said| said.of(&step.words).to_owned()));
        let label = format!("leave words of step {} as text", position + 1);
        if self.edit(&[Edit::SetStep { step: Arc::new(step) }], &label, None) {
            self.look_at(Focus::Words(id.clone(), None));
        }
    }

    /// Goes to the next question, or back to where the first came from.
    fn ask_on(self, step: &Id) {
        if can_be_asked(&self.judged_now(), step) {
            self.look_at(Focus::Choice(step.clone()));
        } else if self.asked_from().get_value() == Some(AskedFrom::Review) {
            if !self.ask_next_of_review(step) {
                self.leave_doubts(step);
            }
        } else {
            self.leave_doubts(step);
        }
    }

    /// Leaves what is open as it is: whoever types letters at a question has not seen it and writes the next step. Says
    /// in which line, if the question came from one.
    pub fn write_on(self, step: &Id) -> Option<Line> {
        let line = match self.asked_from().get_value()? {
            AskedFrom::LastLine => Line::Last,
            AskedFrom::LineBelow => Line::Below,
            AskedFrom::Review => return None,
        };
        self.leave_doubts(step);
        Some(line)
    }

    /// Leaves what is open as it is.
    pub(super) fn leave_doubts(self, step: &Id) {
        match self.asked_from().try_update_value(Option::take).flatten() {
            Some(AskedFrom::LastLine) => self.look_at(Focus::LastLine),
            Some(AskedFrom::LineBelow) => self.open_draft(step.clone()),
            Some(AskedFrom::Review) | None => self.look_at(Focus::Row(step.clone())),
        }
    }
}

/// What an answer says of a thing.
pub(super) fn told(means: &Meaning) -> String {
    match means {
        Meaning::Circuit(kind) => format!("of the {kind}"),
        Meaning::Known { .. } | Meaning::New { .. } => means.to_string(),
    }
}

fn can_be_asked(judged: &Judged, step: &Id) -> bool {
    open_doubts(judged, step).first().is_some_and(|open| !open.choices().is_empty())
}

pub(super) fn step_of<'p>(document: &'p Procedure, id: &Id) -> Option<(usize, &'p Arc<Step>)> {
    let position = document.position(id)?;
    document.steps.get(position).map(|step| (position, step))
}

/// What is open about the words of a step.
pub(super) fn open_doubts(judged: &Judged, id: &Id) -> Vec<Open> {
    let found = step_of(&judged.document, id);
    found.map(|(position, step)| Heard::of(judged, position, step).open).unwrap_or_default()
}

/// What is open about the words, that no action says and nobody has declined; first what has answers.
pub(super) fn still_open(step: &Step, doubts: Vec<Doubt>, asked: Vec<Question>) -> Vec<Open> {
    let is_said =
        |span: Span| step.actions.iter().flat_map(|action| &action.says).any(|said| meet(*said, span));
    let is_declined = |span: Span| {
        let text = span.of(&step.words);
        step.declined.iter().any(|known| known.eq_ignore_ascii_case(text))
    };
    let doubts = doubts.into_iter().filter(|doubt| !is_said(doubt.span)).map(Open::Thing);
    let mut open: Vec<Open> = doubts.chain(asked.into_iter().map(Open::Making)).collect();
    open.retain(|open| !is_declined(open.span()));
    open.sort_by_key(|open| open.choices().is_empty());
    open
}

pub(super) fn meet(one: Span, other: Span) -> bool {
    one.0 < other.1 && other.0 < one.1
}

/// Puts an action among the others by where its words stand.
pub(super) fn add_in_order(actions: &mut Vec<Action>, action: Action) {
    let from = |action: &Action| action.says.iter().map(|span| span.0).min();
    let at = actions.iter().position(|other| from(other) > from(&action)).unwrap_or(actions.len());
    actions.insert(at, action);
}
