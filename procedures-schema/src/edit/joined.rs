//! Making one step of two that stand one after the other.

use crate::model::{Span, Step};

/// One step with the words of both, the second's behind a blank, and all that belongs to either. None where the two are
/// done on different answers or for different variants, since one step could not be both.
pub fn joined(first: &Step, second: &Step) -> Option<Step> {
    if first.when != second.when || first.variants != second.variants {
        return None;
    }
    let mut step = first.clone();
    let gap = if first.words.is_empty() || second.words.is_empty() { "" } else { " " };
    step.words = format!("{}{gap}{}", first.words, second.words);
    let shift = u32::try_from(first.words.chars().count() + gap.len()).unwrap_or(u32::MAX);
    step.actions.extend(second.actions.iter().cloned().map(|mut action| {
        for span in &mut action.says {
            *span = Span(span.0.saturating_add(shift), span.1.saturating_add(shift));
        }
        action
    }));
    step.messages.extend(second.messages.iter().cloned());
    step.images.extend(second.images.iter().filter(|image| !first.images.contains(image)).cloned());
    step.declined.extend(second.declined.iter().filter(|words| !first.declined.contains(words)).cloned());
    step.people = first.people.max(second.people);
    if !second.why.is_empty() {
        let gap = if first.why.is_empty() { "" } else { " " };
        step.why = format!("{}{gap}{}", first.why, second.why);
    }
    if !second.back.is_empty() {
        let gap = if first.back.is_empty() { "" } else { " " };
        step.back = format!("{}{gap}{}", first.back, second.back);
    }
    let is_new = |(key, _): &&(String, _)| first.rest.0.iter().all(|(known, _)| known != key);
    step.rest.0.extend(second.rest.0.iter().filter(is_new).cloned());
    Some(step)
}

#[cfg(test)]
mod tests {
    use super::joined;
    use crate::edit::part;
    use crate::model::{Action, Answer, Span, Stage, Step, Verb};

    fn step(id: &str, words: &str) -> Step {
        let mut step = Step::new(id.into(), Stage::Strip, words);
        step.actions = vec![Action::new(Verb::Undo, vec!["cap".into()])];
        step.actions[0].says = vec![Span(0, 4)];
        step
    }

    #[test]
    fn what_is_cut_comes_together_again() {
        let mut whole = step("s", "Löse the cap, then pull it.");
        whole.why = "It is in the way".to_owned();
        let mut pull = Action::new(Verb::Remove, vec!["cap".into()]);
        pull.says = vec![Span(19, 23)];
        whole.actions.push(pull);
        let (one, two) = part(&whole, 14, "t".into()).expect("two steps");
        assert_eq!(joined(&one, &two), Some(whole));
    }

    #[test]
    fn all_of_both_is_kept() {
        let (mut one, mut two) = (step("a", "Lift the lid."), step("b", "Hold it."));
        (one.people, two.people) = (None, Some(2));
        (one.why, two.why) = ("Heavy.".to_owned(), "Sharp.".to_owned());
        (one.back, two.back) = ("Arrow down.".to_owned(), "Clip first.".to_owned());
        (one.declined, two.declined) = (vec!["lid".to_owned()], vec!["lid".to_owned(), "hold".to_owned()]);
        let both = joined(&one, &two).expect("one step");
        assert_eq!((both.words.as_str(), both.why.as_str()), ("Lift the lid. Hold it.", "Heavy. Sharp."));
        assert_eq!(both.back, "Arrow down. Clip first.");
        assert_eq!((both.people, both.declined.len(), both.actions.len()), (Some(2), 2, 2));
        assert_eq!(both.actions[1].says, [Span(14, 18)]);
    }

    #[test]
    fn steps_of_different_answers_stay_two() {
        let (one, mut two) = (step("a", "Lift."), step("b", "Hold."));
        two.when = vec![Answer::new("q".into(), "yes")];
        assert_eq!(joined(&one, &two), None);
        assert!(joined(&two, &two).is_some());
    }
}
