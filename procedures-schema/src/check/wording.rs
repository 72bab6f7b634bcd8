//! How findings speak: verbs in the third person, lists, test names.

use crate::model::{TestKind, Verb};

/// "undoes" for *undo*.
pub(super) fn does(verb: &Verb) -> &str {
    match verb {
        Verb::Start => "starts",
        Verb::ShutDown => "shuts down",
        Verb::Finish => "finishes",
        Verb::Isolate => "isolates",
        Verb::Lock => "locks",
        Verb::Restore => "restores",
        Verb::Release => "releases",
        Verb::Prove => "proves",
        Verb::Charge => "charges",
        Verb::Purge => "purges",
        Verb::Test => "tests",
        Verb::Slacken => "slackens",
        Verb::Undo => "undoes",
        Verb::Make => "makes",
        Verb::Tighten => "tightens",
        Verb::Remove => "removes",
        Verb::MoveAside => "moves aside",
        Verb::Fit => "fits",
        Verb::Discard => "discards",
        Verb::Clean => "cleans",
        Verb::Inspect => "inspects",
        Verb::Place => "places",
        Verb::TakeAway => "takes away",
        Verb::RecordSetting => "records",
        Verb::Set => "sets",
        Verb::Read => "reads",
        Verb::Wait => "waits",
        Verb::Photograph => "photographs",
        Verb::Tell => "tells",
        Verb::Hold => "holds",
        Verb::Ask => "asks",
        Verb::Other(word) => word,
    }
}

/// "a", "a and b", "a, b and c".
pub(super) fn listed(names: &[String]) -> String {
    match names {
        [] => String::new(),
        [one] => one.clone(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}

/// The text with a capital first letter.
pub(super) fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// "a cold leak check", for any of the tests that satisfy a demand.
pub(super) fn test_name(any_of: &[TestKind]) -> String {
    let names: Vec<&str> = any_of.iter().map(one_test).collect();
    names.join(" or ")
}

fn one_test(kind: &TestKind) -> &str {
    match kind {
        TestKind::EarthContinuity => "an earth continuity test",
        TestKind::Insulation => "an insulation test",
        TestKind::Polarity => "a polarity test",
        TestKind::Tightness => "a gas tightness test",
        TestKind::LeakFluid => "a check with leak detection fluid",
        TestKind::WorkingPressure => "a working pressure reading",
        TestKind::GasRate => "a gas rate",
        TestKind::Combustion => "a combustion reading",
        TestKind::FlueIntegrity => "a flue integrity reading",
        TestKind::FillPressure => "a fill pressure reading",
        TestKind::LeakCold => "a cold leak check",
        TestKind::LeakHot => "a hot leak check",
        TestKind::TrapFilled => "a look at the filled trap",
        TestKind::ReliefLever => "a lift of the relief lever",
        TestKind::PressureHold => "a pressure hold",
        TestKind::VacuumHold => "a vacuum hold",
        TestKind::Function => "a function test",
        TestKind::Other(word) => word,
    }
}

#[cfg(test)]
mod tests {
    use super::listed;

    #[test]
    fn lists_read_as_a_person_says_them() {
        let names = |n: usize| ["a", "b", "c"].iter().take(n).map(ToString::to_string).collect::<Vec<_>>();
        assert_eq!(listed(&names(1)), "a");
        assert_eq!(listed(&names(2)), "a and b");
        assert_eq!(listed(&names(3)), "a, b and c");
    }
}
