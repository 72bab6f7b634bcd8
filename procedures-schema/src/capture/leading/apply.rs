//! A line with a leading word applied to its step.
//!
//! What becomes an action is said by the step's words too: a sentence is added to them, and the action is
//! anchored to it. What belongs to the document and not to a step is given [`Beside`] it.

use super::english::ENDS_THE_JOB;
use super::{Gap, Leading};
use crate::model::{
    Action, Answer, Consumable, Id, IdSource, Instrument, Kit, KitList, Later, OnFail, Protection, Question,
    Reading, Span, Spare, Step, Tool, Verb,
};
use crate::units::Rest;

/// A step with a line applied.
#[derive(Clone, Debug, PartialEq)]
pub struct Applied {
    /// The step.
    pub step: Step,
    /// Steps that follow it: what is done on an answer, or after a reading. Their words are not read yet.
    pub further: Vec<Step>,
    /// What the document gets beside the step.
    pub beside: Vec<Beside>,
}

/// What a line gives to the document and not to its step.
#[derive(Clone, Debug, PartialEq)]
pub enum Beside {
    /// A question, which an action of the step puts.
    Question(Question),
    /// An entry of the kit: one list of it has one entry.
    Kit(Box<Kit>),
    /// A value that somebody still has to find out.
    Later(Later),
}

/// A line that cannot become part of the step; its text has to stay where it is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NotHeld {
    /// Why, for people.
    pub reason: String,
    /// The part that would be needed, if one is.
    pub gap: Option<Gap>,
}

/// Applies a line with a leading word to a step.
///
/// # Errors
/// If a step cannot hold it, or a part is missing without which it would say something else.
pub fn apply_leading(step: &Step, leading: &Leading, ids: &mut dyn IdSource) -> Result<Applied, NotHeld> {
    let mut applied = Applied { step: step.clone(), further: Vec::new(), beside: Vec::new() };
    let step = &mut applied.step;
    match leading {
        Leading::Message(message) => step.messages.push(message.clone()),
        Leading::Read { then, .. } => {
            read(step, leading)?;
            if !then.is_empty() {
                applied.further.push(behind(step, then, ids));
            }
        }
        Leading::Wait { duration: None, at_most: None, .. } | Leading::Start { duration: None, .. } => {
            return Err(missing(Gap::Duration));
        }
        Leading::Wait { duration, at_most, .. } => {
            let sentence = wait_sentence(leading);
            let says = vec![say(step, "Wait", &sentence)];
            let (duration, at_most) = (duration.clone(), at_most.clone());
            step.actions.push(Action { duration, at_most, says, ..Action::new(Verb::Wait, Vec::new()) });
        }
        Leading::Start { until: None, .. } => return Err(missing(Gap::Before)),
        Leading::Start { duration, until, .. } => {
            let says = vec![say(step, "Wait", &wait_sentence(leading))];
            let (duration, until) = (duration.clone(), until.clone());
            step.actions.push(Action { duration, until, says, ..Action::new(Verb::Wait, Vec::new()) });
        }
        Leading::Ask { question } => {
            let id = ids.next_id("question");
            let says = vec![say(step, "Ask", &format!(": {}", required(question, Gap::Question)?))];
            step.actions.push(Action { ask: Some(id.clone()), says, ..Action::new(Verb::Ask, Vec::new()) });
            let answers = vec!["yes".to_owned(), "no".to_owned()];
            applied.beside.push(Beside::Question(Question {
                id,
                words: question.clone(),
                answers,
                rest: Rest::default(),
            }));
        }
        Leading::If { answer, words } => {
            let Some(question) = question_of(step) else {
                return Err(not_held("no question stands before it"));
            };
            let mut further = behind(step, required(words, Gap::Words)?, ids);
            further.when.retain(|when| when.question != question);
            further.when.push(Answer::new(question, answer));
            applied.further.push(further);
        }
        Leading::Hold { role, what } => hold(step, required(role, Gap::Role)?, what),
        Leading::Photo { of } => {
            let says = vec![say(step, "Photograph", &format!(" {}", required(of, Gap::What)?))];
            let text = Some(of.clone());
            step.actions.push(Action { text, says, ..Action::new(Verb::Photograph, Vec::new()) });
        }
        Leading::Why { reason } => add_sentence(&mut step.why, required(reason, Gap::Reason)?),
        Leading::Later { what, who } => {
            let what = required(what, Gap::What)?.to_owned();
            applied.beside.push(Beside::Later(later(&step.id, what, who)));
        }
        Leading::Bring { list, quantity, name } => {
            let name = required(name, Gap::What)?;
            let list = list.as_ref().ok_or_else(|| missing(Gap::List))?;
            applied.beside.push(Beside::Kit(Box::new(kit(list, *quantity, name, ids)?)));
        }
        Leading::Back { what } => add_sentence(&mut step.back, required(what, Gap::What)?),
    }
    Ok(applied)
}

/// The question that an answer behind a step belongs to: its own, or the one on another answer of which it is done.
pub fn question_of(step: &Step) -> Option<Id> {
    let own = step.actions.iter().rev().find_map(|action| action.ask.clone());
    own.or_else(|| step.when.last().map(|when| when.question.clone()))
}

/// A value of a step that somebody still has to find out.
fn later(step: &Id, what: String, who: &str) -> Later {
    Later { what, who: who.to_owned(), thing: None, step: Some(step.clone()), rest: Rest::default() }
}

/// A step behind another, on the same answers.
fn behind(step: &Step, words: &str, ids: &mut dyn IdSource) -> Step {
    let mut further = Step::new(ids.next_id("step"), step.stage.clone(), words);
    further.when.clone_from(&step.when);
    further
}

/// A reading joins the last read that has none; otherwise a sentence says it.
fn read(step: &mut Step, leading: &Leading) -> Result<(), NotHeld> {
    let Leading::Read { what, limits, out, .. } = leading else { return Ok(()) };
    let what = required(what, Gap::What)?;
    let reading = Reading { what: what.to_owned(), limits: limits.clone(), ..Reading::default() };
    let lower = out.to_lowercase();
    let on_fail = (!out.is_empty()).then(|| OnFail {
        again: out.clone(),
        steps: Vec::new(),
        leave_safe: ENDS_THE_JOB.iter().any(|words| lower.contains(words)),
        rest: Rest::default(),
    });
    let open = step.actions.iter_mut().rev().find(|action| action.verb == Verb::Read);
    if let Some(action) = open.filter(|action| action.readings.is_empty() && action.on_fail.is_none()) {
        action.readings.push(reading);
        action.on_fail = on_fail;
        return Ok(());
    }
    let range = limits.as_ref().map(|range| format!(": {range}")).unwrap_or_default();
    let says = vec![say(step, "Read", &format!(" {what}{range}"))];
    let readings = vec![reading];
    step.actions.push(Action { readings, on_fail, says, ..Action::new(Verb::Read, Vec::new()) });
    Ok(())
}

fn hold(step: &mut Step, role: &str, what: &str) {
    let criterion = Some(what.to_owned()).filter(|what| !what.is_empty());
    let looks_at = criterion.as_ref().map(|what| format!(": {what}")).unwrap_or_default();
    let says = vec![say(step, "Hold", &format!(" for {role}{looks_at}"))];
    let text = Some(role.to_owned());
    step.actions.push(Action { criterion, text, says, ..Action::new(Verb::Hold, Vec::new()) });
}

fn wait_sentence(leading: &Leading) -> String {
    let (time, more) = match leading {
        Leading::Wait { duration: Some(min), at_most: Some(max), words } => {
            (format!("{min} to {max}"), words)
        }
        Leading::Wait { duration: None, at_most: Some(max), words } => (format!("at most {max}"), words),
        Leading::Wait { duration: Some(min), words, .. } => (min.to_string(), words),
        Leading::Start { duration: Some(min), before, .. } => (format!("{min}, over before"), before),
        _ => return String::new(),
    };
    [" ", &time, " ", more].concat().trim_end().to_owned()
}

/// Adds a sentence to the words of a step; the span of its verb.
fn say(step: &mut Step, verb: &str, rest: &str) -> Span {
    add_sentence(&mut step.words, &format!("{verb}{rest}"));
    let point = |n: usize| u32::try_from(n).unwrap_or(u32::MAX);
    let sentence = verb.chars().count() + rest.chars().count();
    let end = step.words.chars().count() - usize::from(!rest.ends_with(ENDS));
    let from = end.saturating_sub(sentence);
    Span(point(from), point(from + verb.chars().count()))
}

const ENDS: [char; 3] = ['.', '?', '!'];

fn add_sentence(text: &mut String, sentence: &str) {
    if !text.is_empty() {
        if !text.ends_with(ENDS) {
            text.push('.');
        }
        text.push(' ');
    }
    text.push_str(sentence);
    if !sentence.ends_with(ENDS) {
        text.push('.');
    }
}

fn kit(list: &KitList, quantity: u32, name: &str, ids: &mut dyn IdSource) -> Result<Kit, NotHeld> {
    let id: Id = ids.next_id("kit");
    let mut kit = Kit::default();
    let rest = Rest::default;
    // Only spares are counted; elsewhere the number stays in the name.
    let several = if quantity == 1 { name.to_owned() } else { format!("{quantity} {name}") };
    match list {
        KitList::Tools => {
            kit.tools.push(Tool { id, name: several, size: String::new(), range: None, rest: rest() });
        }
        KitList::Instruments => {
            let demand = String::new();
            kit.instruments.push(Instrument {
                id,
                name: several,
                range: None,
                resolution: None,
                demand,
                rest: rest(),
            });
        }
        KitList::Consumables => {
            kit.consumables.push(Consumable { id, name: several, amount: None, rest: rest() });
        }
        KitList::Protection => {
            kit.protection.push(Protection { id, name: several, demand: String::new(), rest: rest() });
        }
        KitList::Spares => {
            let name = name.to_owned();
            kit.spares.push(Spare { id, name, number: None, quantity, thing: None, rest: rest() });
        }
        KitList::Other(_) => return Err(missing(Gap::List)),
    }
    Ok(kit)
}

fn required(text: &str, gap: Gap) -> Result<&str, NotHeld> {
    if text.is_empty() { Err(missing(gap)) } else { Ok(text) }
}

fn missing(gap: Gap) -> NotHeld {
    let reason = match gap {
        Gap::Duration => "say how long",
        Gap::Before => "say before which step the wait must be over",
        Gap::List => "say whether it is a tool, an instrument, used up, worn or a spare",
        Gap::Role => "say who lifts the hold",
        Gap::Question => "put the question",
        Gap::Words => "say what is done on this answer",
        Gap::Reason => "give the reason",
        _ => "say what",
    };
    NotHeld { reason: reason.to_owned(), gap: Some(gap) }
}

fn not_held(reason: &str) -> NotHeld {
    NotHeld { reason: reason.to_owned(), gap: None }
}
