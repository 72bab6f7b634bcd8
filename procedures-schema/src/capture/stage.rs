//! The part of the job that a new step belongs to, by what it does and where it stands.
//!
//! A job only goes forward: a step never belongs to an earlier part than the one before it, nor to a later one
//! than the one behind it. A writer who means otherwise says so.

use crate::model::{Action, Stage, Verb};

/// The stage of a step with these actions between two others.
pub fn stage_between(actions: &[Action], before: Option<&Stage>, behind: Option<&Stage>) -> Stage {
    let order = Stage::ALL;
    let rank = |stage: &Stage| order.iter().position(|known| known == stage);
    let least = before.and_then(rank).unwrap_or(0);
    let most = behind.and_then(rank).unwrap_or(order.len());
    let natural =
        actions.iter().filter_map(|action| natural(action, before)).filter_map(|stage| rank(&stage));
    let at = natural.max().unwrap_or(least).min(most).max(least);
    // A stage that this version does not know has no rank; what follows it belongs to it.
    match before {
        Some(unknown) if rank(unknown).is_none() => unknown.clone(),
        _ => order.get(at).cloned().unwrap_or(Stage::Prepare),
    }
}

/// Where an action belongs by itself; none if it can be anywhere.
fn natural(action: &Action, before: Option<&Stage>) -> Option<Stage> {
    let is_back = matches!(before, Some(Stage::Refit | Stage::Recommission | Stage::HandOver));
    match action.verb {
        Verb::ShutDown | Verb::Isolate | Verb::Lock | Verb::Release | Verb::Prove => Some(Stage::MakeSafe),
        Verb::Undo | Verb::Slacken | Verb::Remove | Verb::MoveAside | Verb::Discard => Some(Stage::Strip),
        // While nothing is apart yet, a run or a test point that is closed again is part of the preparing.
        Verb::Fit | Verb::Make | Verb::Tighten | Verb::Restore | Verb::Charge | Verb::Start
            if before == Some(&Stage::Prepare) =>
        {
            None
        }
        // "Run the hot tap and write down how hot it comes", before anything else.
        Verb::Start if before.is_none() => None,
        Verb::Fit | Verb::Make | Verb::Tighten => Some(Stage::Refit),
        Verb::Restore | Verb::Charge | Verb::Start => Some(Stage::Recommission),
        // Before anything is apart, these find out how things are; afterwards they show that all is well.
        Verb::Test | Verb::Purge if is_back => Some(Stage::Recommission),
        Verb::Finish => Some(Stage::HandOver),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(verb: Verb, before: Option<&Stage>, behind: Option<&Stage>) -> Stage {
        stage_between(&[Action::new(verb, Vec::new())], before, behind)
    }

    #[test]
    fn a_job_goes_forward() {
        assert_eq!(of(Verb::Isolate, None, None), Stage::MakeSafe);
        assert_eq!(of(Verb::Undo, Some(&Stage::MakeSafe), None), Stage::Strip);
        assert_eq!(of(Verb::Isolate, Some(&Stage::Strip), None), Stage::Strip);
        assert_eq!(of(Verb::Make, Some(&Stage::Strip), None), Stage::Refit);
        assert_eq!(of(Verb::Undo, Some(&Stage::Recommission), None), Stage::Recommission);
        assert_eq!(of(Verb::Restore, Some(&Stage::Refit), None), Stage::Recommission);
        assert_eq!(of(Verb::Tell, Some(&Stage::Strip), None), Stage::Strip);
        assert_eq!(of(Verb::Test, Some(&Stage::Prepare), None), Stage::Prepare);
        assert_eq!(of(Verb::Test, Some(&Stage::Refit), None), Stage::Recommission);
        assert_eq!(of(Verb::Start, Some(&Stage::Prepare), None), Stage::Prepare, "a run before the job");
        assert_eq!(of(Verb::Start, None, None), Stage::Prepare, "a run as the first of all");
        assert_eq!(of(Verb::Make, Some(&Stage::Prepare), None), Stage::Prepare, "a test point closed again");
    }

    #[test]
    fn what_is_put_between_stays_between() {
        assert_eq!(of(Verb::Make, Some(&Stage::MakeSafe), Some(&Stage::Strip)), Stage::Strip);
        assert_eq!(of(Verb::Make, Some(&Stage::MakeSafe), Some(&Stage::MakeSafe)), Stage::MakeSafe);
        assert_eq!(of(Verb::Isolate, Some(&Stage::Strip), Some(&Stage::Prepare)), Stage::Strip);
        let other = Stage::from_word("some day");
        assert_eq!(of(Verb::Make, Some(&other), None), other);
    }
}
