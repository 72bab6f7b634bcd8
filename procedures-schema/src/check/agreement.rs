//! Verbs that agree with the things they speak of: "the lid is", "the lid screws are".
//!
//! Names are the writer's, so whether one is a plural is told by its last letters. The words of rules are
//! written for one thing; here they are made to fit several.

/// The verbs that follow a thing in the words of rules: for one, for several.
const VERBS: &[(&str, &str)] =
    &[(" is ", " are "), (" was ", " were "), (" gets ", " get "), (" has ", " have "), (" does ", " do ")];

/// A text with the verb right behind a thing's name made to agree with it.
pub(super) fn agreeing(text: String, thing: &str) -> String {
    if !is_plural(thing) {
        return text;
    }
    let lower = text.to_lowercase();
    let Some(from) = lower.find(&thing.to_lowercase()) else { return text };
    let end = from + thing.len();
    let Some((before, behind)) = text.split_at_checked(end) else { return text };
    let verb = VERBS.iter().find_map(|(one, several)| Some((behind.strip_prefix(one)?, several)));
    match verb {
        Some((rest, several)) => format!("{before}{several}{rest}"),
        None => text,
    }
}

/// Whether a name is a plural: its last word ends in one s, and is none of the endings of single things.
fn is_plural(name: &str) -> bool {
    let last = name.rsplit(' ').next().unwrap_or_default();
    last.len() > 2
        && last.ends_with('s')
        && !["ss", "us", "is", "gas", "mains", "lens"].iter().any(|ending| last.ends_with(ending))
}

#[cfg(test)]
mod tests {
    use super::agreeing;

    #[test]
    fn several_take_the_verb_of_several() {
        let of = |text: &str, thing: &str| agreeing(text.to_owned(), thing);
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
        assert_eq!(of("The lid is off", "the lid"), "The lid is off");
        for one in ["the gas", "the mains", "the chassis", "the boss"] {
            assert_eq!(of(&format!("{one} is on"), one), format!("{one} is on"));
        }
    }
}
