//! Which steps are done on the answers that were given so far, for whoever follows a procedure.
//!
//! Several answers to one question stand beside each other ("if yes or no"); answers to different questions must all
//! have been given. Of two answers to one question the later counts.

use crate::model::{Answer, Id, Procedure, Step};
use std::sync::Arc;

/// How the answers given stand to the answers that a step asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Condition {
    /// It is done.
    Met,
    /// A question that it depends on has not been answered.
    Open,
    /// It belongs to another answer.
    Missed,
}

/// How the answers given stand to a step.
pub fn condition(step: &Step, given: &[Answer]) -> Condition {
    let asked = || step.when.iter().map(|when| &when.question);
    let misses = |question: &Id| answer_to(question, given).is_some_and(|answer| !allows(step, answer));
    if asked().any(misses) {
        Condition::Missed
    } else if asked().any(|question| answer_to(question, given).is_none()) {
        Condition::Open
    } else {
        Condition::Met
    }
}

/// The first question that has to be answered before anybody knows whether a step is done; none if that is known.
pub fn open_question<'a>(step: &'a Step, given: &[Answer]) -> Option<&'a Id> {
    let mut asked = step.when.iter().map(|when| &when.question);
    asked
        .find(|question| answer_to(question, given).is_none())
        .filter(|_| condition(step, given) == Condition::Open)
}

/// What is still open about a step, in words: `if yes`, `if yes or no`, `if worn and yes`.
pub fn open_words(step: &Step, given: &[Answer]) -> Option<String> {
    if condition(step, given) != Condition::Open {
        return None;
    }
    let mut asked: Vec<(&Id, String)> = Vec::new();
    for when in step.when.iter().filter(|when| answer_to(&when.question, given).is_none()) {
        match asked.iter_mut().find(|(question, _)| **question == when.question) {
            Some((_, words)) => *words = format!("{words} or {}", when.answer),
            None => asked.push((&when.question, when.answer.clone())),
        }
    }
    let words: Vec<String> = asked.into_iter().map(|(_, words)| words).collect();
    Some(format!("if {}", words.join(" and ")))
}

/// The first step from a position on that is not of another answer.
pub fn next_position(procedure: &Procedure, from: usize, given: &[Answer]) -> Option<usize> {
    let mut steps = procedure.steps.iter().enumerate().skip(from);
    steps.find(|(_, step)| condition(step, given) != Condition::Missed).map(|(position, _)| position)
}

/// The procedure with these steps freed of what they depend on: what was done was done, whatever was answered.
#[must_use]
pub fn as_done(procedure: &Procedure, done: &[usize]) -> Procedure {
    let mut procedure = procedure.clone();
    for position in done {
        if let Some(step) = procedure.steps.get_mut(*position).filter(|step| !step.when.is_empty()) {
            Arc::make_mut(step).when.clear();
        }
    }
    procedure
}

fn answer_to<'a>(question: &Id, given: &'a [Answer]) -> Option<&'a Answer> {
    given.iter().rfind(|answer| answer.question == *question)
}

fn allows(step: &Step, given: &Answer) -> bool {
    step.when.iter().any(|when| when.question == given.question && when.answer == given.answer)
}

#[cfg(test)]
mod tests {
    use super::{Condition, as_done, condition, next_position, open_question, open_words};
    use crate::derive::apart::still_apart;
    use crate::format;
    use crate::model::{Answer, Id, Procedure};
    use crate::simulate::{Place, Run, simulate};

    fn procedure() -> Procedure {
        let text = r#"{"putback":0,"id":"p","title":"t",
            "map":{"connections":[{"id":"a","name":"a","family":"fixing","count":2},{"id":"b","name":"b","family":"fixing"}]},
            "questions":[{"id":"q","words":"Is it blocked?"},{"id":"r","words":"How worn?","answers":["new","worn","out"]}],
            "steps":[
                {"id":"1","stage":"strip","words":"Ask.","actions":[{"do":"ask","ask":"q"}]},
                {"id":"2","stage":"strip","words":"Undo a.","when":[{"question":"q","answer":"yes"}],
                 "actions":[{"do":"undo","on":["a"]}]},
                {"id":"3","stage":"strip","words":"Undo b.","when":[{"question":"q","answer":"no"}],
                 "actions":[{"do":"undo","on":["b"]}]},
                {"id":"4","stage":"strip","words":"Look.","when":[{"question":"q","answer":"yes"},
                    {"question":"r","answer":"worn"},{"question":"r","answer":"out"}]}]}"#;
        format::read(text.as_bytes()).expect("a procedure")
    }

    fn answer(question: &str, answer: &str) -> Answer {
        Answer::new(Id::new(question), answer)
    }

    #[test]
    fn steps_of_other_answers_are_passed_over() {
        let procedure = procedure();
        let next = |given: &[Answer]| next_position(&procedure, 1, given);
        assert_eq!(next(&[]), Some(1));
        assert_eq!(next(&[answer("q", "yes")]), Some(1));
        assert_eq!(next(&[answer("q", "no")]), Some(2));
        assert_eq!(next(&[answer("q", "maybe")]), None);
        assert_eq!(next(&[answer("q", "no"), answer("q", "yes")]), Some(1), "the later answer counts");
    }

    #[test]
    fn a_condition_is_open_until_all_of_it_is_answered() {
        let procedure = procedure();
        let last = &procedure.steps[3];
        let says = |given: &[Answer]| (condition(last, given), open_words(last, given));
        assert_eq!(says(&[]), (Condition::Open, Some("if yes and worn or out".to_owned())));
        let yes = answer("q", "yes");
        assert_eq!(says(std::slice::from_ref(&yes)), (Condition::Open, Some("if worn or out".to_owned())));
        assert_eq!(open_question(last, std::slice::from_ref(&yes)), Some(&Id::new("r")));
        assert_eq!(says(&[yes.clone(), answer("r", "out")]), (Condition::Met, None));
        assert_eq!(says(&[yes, answer("r", "new")]), (Condition::Missed, None));
        // What is missed already need not be asked.
        assert_eq!(open_question(last, &[answer("q", "no")]), None);
    }

    #[test]
    fn only_what_was_done_is_so() {
        let procedure = procedure();
        let apart = |done: &[usize], given: &[Answer]| {
            let freed = as_done(&procedure, done);
            let trace = simulate(&freed, &Run::of_steps(done).answered(&freed, given));
            let items = still_apart(&freed, &trace, Place::before(done.len())).items;
            items.into_iter().map(|item| item.thing.as_str().to_owned()).collect::<Vec<_>>()
        };
        assert_eq!(apart(&[0, 1], &[answer("q", "yes")]), ["a"]);
        assert_eq!(apart(&[0, 2], &[answer("q", "no")]), ["b"]);
        // A job of which nobody wrote the answers down, and one in which the question was answered anew.
        assert_eq!(apart(&[0, 1, 2], &[]), ["a", "b"]);
        assert_eq!(apart(&[0, 1], &[answer("q", "no")]), ["a"]);
    }
}
