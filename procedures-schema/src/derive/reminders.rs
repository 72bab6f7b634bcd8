//! Reminders for the way back, and the steps at which they come up: those that undo what the step of the reminder
//! does, up to the first that undoes it whatever is answered.

use crate::model::{Action, Id, Procedure, Step, Verb};
use std::sync::Arc;

/// A reminder, the step that it was written at, and the step at which it comes up.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reminder {
    /// The step that it was written at.
    pub from: Id,
    /// The position of that step.
    pub from_position: usize,
    /// The steps of the way back, by their positions; none as long as there is none.
    pub at: Vec<usize>,
    /// What to remember.
    pub text: String,
}

/// The reminders of a procedure, in the order of its steps. Cheap where there are none.
pub fn reminders(procedure: &Procedure) -> Vec<Reminder> {
    let of_step = |(from_position, step): (usize, &Arc<Step>)| Reminder {
        from: step.id.clone(),
        from_position,
        at: way_back_of(procedure, from_position, step),
        text: step.back.clone(),
    };
    let steps = procedure.steps.iter().enumerate();
    steps.filter(|(_, step)| !step.back.is_empty()).map(of_step).collect()
}

fn way_back_of(procedure: &Procedure, from: usize, step: &Step) -> Vec<usize> {
    let mut found = Vec::new();
    for (at, later) in procedure.steps.iter().enumerate().skip(from + 1) {
        let undoes = |action: &Action| step.actions.iter().any(|done| undoes(done, action));
        if !later.actions.iter().any(undoes) {
            continue;
        }
        found.push(at);
        // On another answer the thing may go back in another step.
        if later.when.iter().all(|answer| step.when.contains(answer)) {
            break;
        }
    }
    found
}

/// Whether an action takes back what another one did to one of its things.
fn undoes(done: &Action, action: &Action) -> bool {
    let is_back = match done.verb {
        Verb::ShutDown => return action.verb == Verb::Start,
        Verb::Isolate | Verb::Lock => action.verb == Verb::Restore,
        Verb::Slacken => matches!(action.verb, Verb::Tighten | Verb::Make),
        Verb::Undo => action.verb == Verb::Make,
        Verb::Remove | Verb::MoveAside => action.verb == Verb::Fit,
        Verb::Place => action.verb == Verb::TakeAway,
        Verb::TakeAway => action.verb == Verb::Place,
        Verb::RecordSetting | Verb::Set => action.verb == Verb::Set,
        _ => false,
    };
    is_back && action.on.iter().any(|thing| done.on.contains(thing))
}

#[cfg(test)]
mod tests {
    use super::reminders;
    use crate::model::{Answer, Id, Procedure, Stage, Step};
    use crate::notation::parse_written;
    use std::sync::Arc;

    /// Steps in notation; `yes` and `no` before it put a step on that answer, and a reminder stands behind a stroke.
    fn at(lines: &[&str]) -> Vec<(usize, Vec<usize>)> {
        let mut procedure = Procedure::new(Id::new("p"), "P");
        for (n, line) in lines.iter().enumerate() {
            let (line, back) = line.split_once(" | ").unwrap_or((line, ""));
            let answer = ["yes ", "no "].into_iter().find(|answer| line.starts_with(answer));
            let written = line.trim_start_matches(answer.unwrap_or_default());
            let mut step = Step::new(Id::new(&format!("s{n}")), Stage::Strip, "");
            step.actions = parse_written(written).expect(line).into_iter().map(|one| one.action).collect();
            step.when = answer.map(|answer| Answer::new(Id::new("q"), answer.trim())).into_iter().collect();
            back.clone_into(&mut step.back);
            procedure.steps.push(Arc::new(step));
        }
        reminders(&procedure).into_iter().map(|one| (one.from_position, one.at)).collect()
    }

    #[test]
    fn a_reminder_comes_up_where_its_thing_goes_back() {
        let fan = ["undo screws", "remove fan | arrow down", "fit fan", "make screws", "fit fan"];
        assert_eq!(at(&fan), [(1, vec![2])], "the first time");
        assert_eq!(
            at(&["isolate v · lock v | a quarter turn only", "restore w", "restore v"]),
            [(0, vec![2])]
        );
        assert_eq!(at(&["place hose | not before it is dry", "take away hose"]), [(0, vec![1])]);
        assert_eq!(
            at(&["remove fan | arrow down", "clean fan", "undo fan_screws"]),
            [(0, vec![])],
            "not yet"
        );
        assert_eq!(at(&["fit fan", "remove fan | arrow down"]), [(1, vec![])], "never before");
    }

    #[test]
    fn on_answers_it_comes_up_on_each() {
        let both = ["remove fan | arrow down", "yes fit fan", "no fit fan", "make screws"];
        assert_eq!(at(&both), [(0, vec![1, 2])]);
        let own = ["yes remove fan | arrow down", "yes fit fan", "fit fan"];
        assert_eq!(at(&own), [(0, vec![1])]);
    }
}
