//! What somebody has set beside the words stays; what the words said and say otherwise now follows them.

use crate::model::Action;

/// Lets an action follow its words: where it is what the words were read as, it becomes what they are read as now.
/// Where it was set otherwise it stays, and so does what belongs to no words.
pub fn follow(kept: &mut Action, was: &Action, is: &Action) {
    value(&mut kept.on, &was.on, &is.on);
    value(&mut kept.count, &was.count, &is.count);
    value(&mut kept.test, &was.test, &is.test);
    value(&mut kept.part, &was.part, &is.part);
    value(&mut kept.seal, &was.seal, &is.seal);
    value(&mut kept.torque, &was.torque, &is.torque);
    value(&mut kept.pattern, &was.pattern, &is.pattern);
    value(&mut kept.what, &was.what, &is.what);
    value(&mut kept.by, &was.by, &is.by);
    value(&mut kept.through, &was.through, &is.through);
    value(&mut kept.vent, &was.vent, &is.vent);
    value(&mut kept.at, &was.at, &is.at);
    value(&mut kept.with, &was.with, &is.with);
    value(&mut kept.to, &was.to, &is.to);
    value(&mut kept.mode, &was.mode, &is.mode);
    value(&mut kept.temperature, &was.temperature, &is.temperature);
    value(&mut kept.duration, &was.duration, &is.duration);
    value(&mut kept.at_most, &was.at_most, &is.at_most);
    value(&mut kept.unattended, &was.unattended, &is.unattended);
    value(&mut kept.criterion, &was.criterion, &is.criterion);
    value(&mut kept.reason, &was.reason, &is.reason);
    value(&mut kept.text, &was.text, &is.text);
    value(&mut kept.readings, &was.readings, &is.readings);
}

fn value<T: PartialEq + Clone>(kept: &mut T, was: &T, is: &T) {
    if kept == was && was != is {
        kept.clone_from(is);
    }
}

#[cfg(test)]
mod tests {
    use super::follow;
    use crate::model::{Action, Verb};

    fn action(count: Option<u32>, to: &str) -> Action {
        Action { count, to: Some(to.to_owned()), ..Action::new(Verb::Undo, vec!["bolts".into()]) }
    }

    #[test]
    fn what_was_read_follows_and_what_was_set_stays() {
        let (was, is) = (action(Some(4), "slack"), action(Some(2), "open"));
        let mut kept = Action { on: vec!["cap".into()], ..action(Some(4), "by a turn") };
        follow(&mut kept, &was, &is);
        assert_eq!((kept.count, kept.to.as_deref()), (Some(2), Some("by a turn")));
        assert_eq!(kept.on, ["cap".into()], "the things were set by hand");
    }

    #[test]
    fn what_the_words_still_say_does_not_move() {
        let (was, is) = (action(None, "slack"), action(None, "slack"));
        let mut kept = action(Some(4), "slack");
        follow(&mut kept, &was, &is);
        assert_eq!(kept, action(Some(4), "slack"));
    }
}
