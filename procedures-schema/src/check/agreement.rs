//! Verbs that agree with the things they speak of: "the lid is", "the lid screws are".
//!
//! The words of rules are written for one thing; here they are made to fit several.

use crate::model::is_plural;

/// What follows a thing in the words of rules: for one, for several.
const VERBS: &[(&str, &str)] = &[
    (" is ", " are "),
    (" was ", " were "),
    (" gets ", " get "),
    (" has ", " have "),
    (" does ", " do "),
    (" stays ", " stay "),
    (" stands ", " stand "),
    (" still closes ", " still close "),
    (", which is ", ", which are "),
    (", which was ", ", which were "),
    (" while it is ", " while they are "),
];

/// A text with the verb right behind the name of a thing made to agree with it, wherever the name stands.
/// `several` says that the name is a list.
pub(super) fn agreeing(text: String, thing: &str, several: bool) -> String {
    if thing.is_empty() || !(several || is_plural(thing)) {
        return text;
    }
    let name = thing.to_lowercase();
    let mut done = String::new();
    let mut rest = text.as_str();
    while let Some(from) = rest.to_lowercase().find(&name) {
        let Some((before, behind)) = rest.split_at_checked(from + thing.len()) else { break };
        done.push_str(before);
        let verb = VERBS.iter().find_map(|(one, several)| Some((behind.strip_prefix(one)?, several)));
        rest = match verb {
            Some((rest, several)) => {
                done.push_str(several);
                rest
            }
            None => behind,
        };
    }
    done + rest
}

#[cfg(test)]
mod tests {
    use super::agreeing;

    #[test]
    fn several_take_the_verb_of_several() {
        let of = |text: &str, thing: &str| agreeing(text.to_owned(), thing, false);
        assert_eq!(
            of("The lid screws is left open at the end", "the lid screws"),
            "The lid screws are left open at the end"
        );
        assert_eq!(
            of("the unions was opened and not made", "the unions"),
            "the unions were opened and not made"
        );
        assert_eq!(
            of("The terminals gets no test, which is due", "the terminals"),
            "The terminals get no test, which is due"
        );
        assert_eq!(
            of("Step 5 undoes the lid screws, which is not made any more", "the lid screws"),
            "Step 5 undoes the lid screws, which are not made any more"
        );
        assert_eq!(
            of("Step 5 locks the switches while it is open, and the switches is free", "the switches"),
            "Step 5 locks the switches while they are open, and the switches are free"
        );
        assert_eq!(
            agreeing("the lid and the box is off".to_owned(), "the lid and the box", true),
            "the lid and the box are off"
        );
        assert_eq!(of("The lid is off", "the lid"), "The lid is off");
        for one in ["the gas", "the mains", "the chassis", "the boss"] {
            assert_eq!(of(&format!("{one} is on"), one), format!("{one} is on"));
        }
    }
}
