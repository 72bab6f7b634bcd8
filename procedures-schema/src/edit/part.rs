//! Making two steps of one where its words are cut.

use crate::model::{Action, Id, Span, Step};

/// The two steps that come of cutting a step's words before code point `at`; none if nothing would stand on one
/// side. What the words say goes with them: an action goes to the second step if all its words do. Messages,
/// reasons and pictures stay with the first, answers and variants hold for both.
pub fn part(step: &Step, at: u32, id: Id) -> Option<(Step, Step)> {
    let cut = usize::try_from(at).ok()?;
    let byte = step.words.char_indices().nth(cut).map(|(byte, _)| byte)?;
    let (before, after) = step.words.split_at_checked(byte)?;
    let (before, after) = (before.trim_end(), after.trim_start());
    if before.is_empty() || after.is_empty() {
        return None;
    }
    let length = |text: &str| u32::try_from(text.chars().count()).unwrap_or(u32::MAX);
    let (end, from) = (length(before), length(&step.words) - length(after));
    let goes = |action: &Action| !action.says.is_empty() && action.says.iter().all(|span| span.0 >= at);
    let (second, first): (Vec<Action>, Vec<Action>) = step.actions.iter().cloned().partition(goes);
    let mut one = Step { words: before.to_owned(), actions: first, ..step.clone() };
    let mut two = Step { words: after.to_owned(), actions: second, ..Step::new(id, step.stage.clone(), "") };
    two.when.clone_from(&step.when);
    two.variants.clone_from(&step.variants);
    two.declined.clone_from(&step.declined);
    for action in &mut one.actions {
        action.says = action.says.iter().filter_map(|s| within(Span(s.0, s.1.min(end)))).collect();
    }
    for action in &mut two.actions {
        let moved = |s: &Span| Span(s.0.saturating_sub(from), s.1.saturating_sub(from));
        action.says = action.says.iter().map(moved).filter_map(within).collect();
    }
    Some((one, two))
}

fn within(span: Span) -> Option<Span> {
    (span.0 < span.1).then_some(span)
}

#[cfg(test)]
mod tests {
    use super::part;
    use crate::model::{Action, Answer, Span, Stage, Step, Verb};

    fn step() -> Step {
        let mut step = Step::new("s".into(), Stage::Strip, "Löse the cap,  then unplug the fan.");
        let mut undo = Action::new(Verb::Undo, vec!["cap".into()]);
        undo.says = vec![Span(0, 4), Span(9, 12)];
        let mut unplug = Action::new(Verb::Undo, vec!["plug".into()]);
        unplug.says = vec![Span(20, 26), Span(31, 34)];
        step.actions = vec![undo, unplug];
        step.when = vec![Answer::new("q".into(), "yes")];
        step.why = "It is in the way".to_owned();
        step
    }

    #[test]
    fn each_action_goes_with_its_words() {
        let (one, two) = part(&step(), 14, "t".into()).expect("two steps");
        assert_eq!((one.words.as_str(), two.words.as_str()), ("Löse the cap,", "then unplug the fan."));
        let said = |step: &Step| -> Vec<String> {
            let letters: Vec<char> = step.words.chars().collect();
            let text = |s: &Span| letters[s.0 as usize..s.1 as usize].iter().collect::<String>();
            step.actions.iter().flat_map(|action| action.says.iter().map(text)).collect()
        };
        assert_eq!(said(&one), ["Löse", "cap"]);
        assert_eq!(said(&two), ["unplug", "fan"]);
        assert_eq!((one.when.len(), two.when.len()), (1, 1));
        assert_eq!((one.why.as_str(), two.why.as_str()), ("It is in the way", ""));
    }

    #[test]
    fn an_action_that_is_cut_stays_with_the_words_that_are_left() {
        let (one, two) = part(&step(), 28, "t".into()).expect("two steps");
        assert_eq!((one.actions.len(), two.actions.len()), (2, 0));
        assert_eq!(one.actions[1].says, [Span(20, 26)]);
    }

    #[test]
    fn there_is_no_step_without_words() {
        for at in [0, 35, 90] {
            assert!(part(&step(), at, "t".into()).is_none(), "{at}");
        }
    }
}
