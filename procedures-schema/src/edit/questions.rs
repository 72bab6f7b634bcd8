//! Changing a question and its answers, together with the steps that are done on them.
//!
//! Each function gives the edits of one change, to be applied as one entry of the undo. An answer on which a
//! step is done, and a question that is put, never go silently: the refusal names the steps.

use super::{Edit, EditError, Scope};
use crate::model::{Answer, Id, Procedure, Question, Step};
use std::sync::Arc;

/// A question has at least so many answers.
pub const FEWEST_ANSWERS: usize = 2;
/// A question has at most so many answers.
pub const MOST_ANSWERS: usize = 5;

/// The numbers of the steps that put a question or are done on any of its answers.
pub fn steps_of_question(document: &Procedure, question: &Id) -> Vec<usize> {
    numbers(document, &|step| {
        step.actions.iter().any(|action| action.ask.as_ref() == Some(question))
            || step.when.iter().any(|answer| answer.question == *question)
    })
}

/// The numbers of the steps that are done on an answer, those after a failed test among them.
pub fn steps_of_answer(document: &Procedure, question: &Id, answer: &str) -> Vec<usize> {
    numbers(document, &|step| step.when.iter().any(|given| is(given, question, answer)))
}

/// Gives an answer another name, in every step that is done on it too.
///
/// # Errors
/// If the name is empty or that of another answer, or there is no such answer.
pub fn rename_answer(
    document: &Procedure,
    question: &Id,
    at: usize,
    name: &str,
) -> Result<Vec<Edit>, EditError> {
    let name = name.trim();
    if name.is_empty() {
        return Err(EditError::NameEmpty);
    }
    let known = find(document, question)?;
    let old = answer_at(known, at)?;
    let mut others = known.answers.iter().enumerate().filter(|(other, _)| *other != at);
    if let Some((_, other)) = others.find(|(_, other)| other.to_lowercase() == name.to_lowercase()) {
        return cannot(format!("\"{other}\" is an answer already: choose a name that tells them apart."));
    }
    let mut edits = vec![with_question(document, question, |known| {
        if let Some(place) = known.answers.get_mut(at) {
            name.clone_into(place);
        }
    })];
    for step in &document.steps {
        let mut renamed = Step::clone(step);
        each_step(&mut renamed, &mut |step| {
            for given in step.when.iter_mut().filter(|given| is(given, question, old)) {
                name.clone_into(&mut given.answer);
            }
        });
        if renamed != **step {
            edits.push(Edit::SetStep { step: Arc::new(renamed) });
        }
    }
    Ok(edits)
}

/// Adds an answer.
///
/// # Errors
/// If there are as many as a question can have.
pub fn add_answer(document: &Procedure, question: &Id) -> Result<Vec<Edit>, EditError> {
    let known = find(document, question)?;
    if known.answers.len() >= MOST_ANSWERS {
        return cannot(format!("A question has at most {MOST_ANSWERS} answers."));
    }
    let is_free = |name: &String| !known.answers.contains(name);
    // Of one more name than there are answers, one is free.
    let name = (0..=known.answers.len()).map(|n| format!("answer {}", known.answers.len() + 1 + n));
    let name = name.into_iter().find(is_free).unwrap_or_default();
    Ok(vec![with_question(document, question, |known| known.answers.push(name))])
}

/// Takes an answer away on which nothing is done.
///
/// # Errors
/// If steps are done on it, or a question needs the answers that it has.
pub fn remove_answer(document: &Procedure, question: &Id, at: usize) -> Result<Vec<Edit>, EditError> {
    let known = find(document, question)?;
    let answer = answer_at(known, at)?;
    let steps = steps_of_answer(document, question, answer);
    if !steps.is_empty() {
        let steps = listed(&steps);
        return cannot(format!("The answer \"{answer}\" stays: {steps} done on it. Take them off it first."));
    }
    if known.answers.len() <= FEWEST_ANSWERS {
        return cannot(format!("A question has at least {FEWEST_ANSWERS} answers."));
    }
    Ok(vec![with_question(document, question, |known| drop(known.answers.remove(at)))])
}

/// Takes a question away that no step puts or waits for.
///
/// # Errors
/// If a step does.
pub fn remove_question(document: &Procedure, question: &Id) -> Result<Vec<Edit>, EditError> {
    let known = find(document, question)?;
    let steps = steps_of_question(document, question);
    if !steps.is_empty() {
        let steps = listed(&steps);
        return cannot(format!("The question \"{}\" stays: {steps} tied to it.", known.words));
    }
    let mut scope = Scope::of(document);
    scope.questions.retain(|known| known.id != *question);
    Ok(vec![Edit::SetScope(Box::new(scope))])
}

/// Lets a step be done on an answer, and on no other of that question; on none, always.
///
/// # Errors
/// If there is no such step, question or answer, or the step puts the question itself.
pub fn do_on_answer(
    document: &Procedure,
    question: &Id,
    step: &Id,
    answer: Option<&str>,
) -> Result<Vec<Edit>, EditError> {
    let known = find(document, question)?;
    let at = document.position(step).ok_or_else(|| EditError::NoSuchStep(step.clone()))?;
    let Some(before) = document.steps.get(at) else { return Err(EditError::NoSuchStep(step.clone())) };
    let mut changed = Step::clone(before);
    changed.when.retain(|given| given.question != *question);
    if let Some(answer) = answer {
        if before.actions.iter().any(|action| action.ask.as_ref() == Some(question)) {
            return cannot(format!("Step {} puts the question: it comes before every answer.", at + 1));
        }
        if !known.answers.iter().any(|known| known == answer) {
            return Err(no_such_answer());
        }
        changed.when.push(Answer::new(question.clone(), answer));
    }
    Ok(vec![Edit::SetStep { step: Arc::new(changed) }])
}

fn find<'d>(document: &'d Procedure, question: &Id) -> Result<&'d Question, EditError> {
    let found = document.questions.iter().find(|known| known.id == *question);
    found.ok_or_else(|| EditError::CannotBe("The question has gone.".to_owned()))
}

fn answer_at(question: &Question, at: usize) -> Result<&str, EditError> {
    question.answers.get(at).map(String::as_str).ok_or_else(no_such_answer)
}

fn no_such_answer() -> EditError {
    EditError::CannotBe("The answer has gone.".to_owned())
}

fn cannot<T>(reason: String) -> Result<T, EditError> {
    Err(EditError::CannotBe(reason))
}

fn with_question(document: &Procedure, question: &Id, change: impl FnOnce(&mut Question)) -> Edit {
    let mut scope = Scope::of(document);
    if let Some(known) = scope.questions.iter_mut().find(|known| known.id == *question) {
        change(known);
    }
    Edit::SetScope(Box::new(scope))
}

fn is(given: &Answer, question: &Id, answer: &str) -> bool {
    given.question == *question && given.answer == answer
}

fn numbers(document: &Procedure, is_one: &dyn Fn(&Step) -> bool) -> Vec<usize> {
    let any = |step: &Step| step.with_after_failures().into_iter().any(is_one);
    document.steps.iter().enumerate().filter(|(_, step)| any(step)).map(|(at, _)| at + 1).collect()
}

/// A step, and the steps that follow its failed tests.
fn each_step(step: &mut Step, visit: &mut dyn FnMut(&mut Step)) {
    visit(step);
    step.after_failures_mut().for_each(|inner| each_step(inner, visit));
}

/// Steps as the begin of a sentence about them.
fn listed(steps: &[usize]) -> String {
    match steps {
        [one] => format!("step {one} is"),
        several => {
            let numbers: Vec<String> = several.iter().map(ToString::to_string).collect();
            format!("steps {} are", numbers.join(", "))
        }
    }
}

#[cfg(test)]
mod tests;
