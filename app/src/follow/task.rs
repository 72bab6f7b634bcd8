//! What a step asks of a person before it can be ticked, one thing after the other.
//!
//! Messages first, then the actions in order: their readings, waits and holds.

use super::job::{Acknowledged, Progress, Taken};
use procedures_schema::model::{Action, Procedure, Question, Reading, SignalWord, Step, Verb};
use procedures_schema::simulate::default_readings;
use procedures_schema::units::{Measured, Unit, convert};

/// What stands between a person and the tick.
#[derive(Clone, Debug, PartialEq)]
pub enum Task {
    /// A DANGER or WARNING to acknowledge: its position and its hazard.
    Message(usize, String),
    /// A reading to take.
    Reading(Wanted),
    /// A reading that is out of its limits: what was read.
    Out(Wanted, Taken),
    /// A wait to begin: the action, how long.
    Wait(usize, u64),
    /// A wait that runs: when it ends.
    Waiting(u64),
    /// Somebody must lift this stop: the action, who and what.
    Hold(usize, String),
    /// A question to answer.
    Ask(Question),
    /// Nothing.
    Ready,
}

/// A reading that an action asks for.
#[derive(Clone, Debug, PartialEq)]
pub struct Wanted {
    /// The action, by position.
    pub action: usize,
    /// Its reading, by position.
    pub index: usize,
    /// The reading.
    pub reading: Reading,
}

/// The next thing to do for a step.
pub fn next_task(procedure: &Procedure, step: &Step, progress: &Progress, now_ms: u64) -> Task {
    unread_message(step, progress)
        .or_else(|| {
            let actions = step.actions.iter().enumerate();
            actions
                .flat_map(|(position, action)| tasks_of(procedure, position, action))
                .find_map(|task| outstanding(task, progress, now_ms))
        })
        .unwrap_or(Task::Ready)
}

/// Every reading of a step, in order.
pub fn readings_of(procedure: &Procedure, step: &Step) -> Vec<Wanted> {
    let of = |(action, position)| -> Vec<Wanted> {
        default_readings(procedure, action)
            .into_iter()
            .enumerate()
            .map(|(index, reading)| Wanted { action: position, index, reading })
            .collect()
    };
    step.actions.iter().zip(0..).flat_map(of).collect()
}

fn unread_message(step: &Step, progress: &Progress) -> Option<Task> {
    let is_grave = |word: &SignalWord| !matches!(word, SignalWord::Caution | SignalWord::Notice);
    let messages = step.messages.iter().enumerate();
    messages
        .filter(|(_, message)| is_grave(&message.word))
        .find(|(position, _)| !progress.acknowledged.contains(&Acknowledged::Message(*position)))
        .map(|(position, message)| Task::Message(position, message.hazard.clone()))
}

/// What one action asks for, as if nothing had been done.
fn tasks_of(procedure: &Procedure, position: usize, action: &Action) -> Vec<Task> {
    let readings = default_readings(procedure, action).into_iter().enumerate();
    let mut tasks: Vec<Task> = match action.verb {
        Verb::Wait => {
            let ms = action.duration.as_ref().and_then(milliseconds);
            ms.map(|ms| Task::Wait(position, ms)).into_iter().collect()
        }
        Verb::Hold => vec![Task::Hold(position, action.text.clone().unwrap_or_default())],
        _ => readings
            .map(|(index, reading)| Task::Reading(Wanted { action: position, index, reading }))
            .collect(),
    };
    let question = procedure.questions.iter().find(|question| action.ask.as_ref() == Some(&question.id));
    tasks.extend(question.filter(|question| !question.answers.is_empty()).cloned().map(Task::Ask));
    tasks
}

/// The task as it stands after what has been done; none if it is done.
fn outstanding(task: Task, progress: &Progress, now_ms: u64) -> Option<Task> {
    match task {
        Task::Reading(wanted) => match last_taken(progress, &wanted) {
            Some(taken) if taken.is_inside => None,
            Some(taken) => Some(Task::Out(wanted, taken.clone())),
            None => Some(Task::Reading(wanted)),
        },
        Task::Wait(position, ms) => match progress.waits.iter().rfind(|wait| wait.action == position) {
            Some(wait) if wait.from_ms + ms <= now_ms => None,
            Some(wait) => Some(Task::Waiting(wait.from_ms + ms)),
            None => Some(Task::Wait(position, ms)),
        },
        Task::Ask(question) if progress.answers.iter().any(|given| given.question == question.id) => None,
        Task::Hold(position, _) if progress.acknowledged.contains(&Acknowledged::Hold(position)) => None,
        other => Some(other),
    }
}

/// The last value taken for a reading, unless it is being read again.
pub fn last_taken<'a>(progress: &'a Progress, wanted: &Wanted) -> Option<&'a Taken> {
    let is_its = |taken: &&Taken| taken.action == wanted.action && taken.reading == wanted.index;
    progress.taken.iter().rfind(is_its).filter(|taken| !taken.is_read_again)
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "clamped to a day before the cast"
)]
fn milliseconds(duration: &Measured) -> Option<u64> {
    const DAY_S: f64 = 86_400.0;
    let seconds = convert(duration.value.value(), &duration.unit, &Unit::Second).ok()?;
    Some((seconds.clamp(0.0, DAY_S) * 1000.0) as u64)
}

#[cfg(test)]
mod tests {
    use super::{Acknowledged, Progress, Task, next_task};
    use crate::follow::job::{Answered, Waiting};
    use procedures_schema::format;
    use procedures_schema::model::{Id, Procedure};
    use wasm_bindgen_test::wasm_bindgen_test;

    fn procedure() -> Procedure {
        let text = r#"{"putback":0,"id":"p","title":"t","map":{},"steps":[
            {"id":"s","stage":"strip","words":"Wait 10 min.",
             "messages":[{"word":"WARNING","hazard":"hot water","consequence":"burns","avoidance":"wait"}],
             "actions":[{"do":"wait","duration":{"value":"10","unit":"min"}},
                        {"do":"read","readings":[{"what":"gauge","limits":{"min":"0","max":"0.1","unit":"bar"}}]}]}]}"#;
        format::read(text.as_bytes()).expect("a procedure")
    }

    #[wasm_bindgen_test]
    fn messages_then_waits_then_readings() {
        let procedure = procedure();
        let step = procedure.steps.first().expect("a step");
        let mut progress = Progress::default();
        assert_eq!(next_task(&procedure, step, &progress, 0), Task::Message(0, "hot water".to_owned()));
        progress.acknowledged.push(Acknowledged::Message(0));
        assert_eq!(next_task(&procedure, step, &progress, 0), Task::Wait(0, 600_000));
        progress.waits.push(Waiting { action: 0, from_ms: 1_000 });
        assert_eq!(next_task(&procedure, step, &progress, 2_000), Task::Waiting(601_000));
        assert!(matches!(next_task(&procedure, step, &progress, 601_000), Task::Reading(_)));
    }

    #[wasm_bindgen_test]
    fn a_question_is_asked_until_it_is_answered() {
        let text = r#"{"putback":0,"id":"p","title":"t","map":{},"questions":[{"id":"q","words":"Is it blocked?"}],
            "steps":[{"id":"s","stage":"strip","words":"Ask.","actions":[{"do":"ask","ask":"q"}]}]}"#;
        let procedure: Procedure = format::read(text.as_bytes()).expect("a procedure");
        let step = procedure.steps.first().expect("a step");
        let mut progress = Progress::default();
        assert!(matches!(next_task(&procedure, step, &progress, 0), Task::Ask(_)));
        progress.answers.push(Answered { question: Id::new("q"), answer: "no".to_owned(), at_ms: 1 });
        assert_eq!(next_task(&procedure, step, &progress, 0), Task::Ready);
    }
}
