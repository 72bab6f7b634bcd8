//! How findings speak: verbs in the third person, lists, test names, and the words of an unmet demand.

use super::agreement::agreeing;
use super::cause::thing_of;
use super::context::Context;
use super::finding::Because;
use crate::model::{TestKind, Verb, is_plural, listed};
use crate::simulate::{Contents, Lapse, Place, Reason, TestDemand, Thing, Unmet};

/// The words of an unmet demand, for the rule that tells it.
pub(super) struct Words {
    /// "Step 9 undoes the pump unions"; at the end of the job "At the end".
    pub(super) step_does: String,
    /// "step 4" since which it is so.
    pub(super) since: String,
    /// What the demand speaks of, with its article; "the appliance" if nothing in particular.
    pub(super) thing: String,
    /// Whether the thing is one, not a list.
    pub(super) thing_is_one: bool,
    /// Other things concerned, as a list.
    pub(super) others: String,
    /// "is" or "are", as the others are one or several.
    pub(super) others_are: &'static str,
    /// Whether the others are a list.
    others_are_listed: bool,
    /// The missing test, without its article.
    pub(super) test: String,
    /// Why a proof lapsed, or what is inside.
    pub(super) detail: &'static str,
}

impl Words {
    /// The words of an unmet demand; `alike` are those of the same cause and rule, itself among them.
    pub(super) fn of(context: &Context<'_>, unmet: &Unmet, alike: &[&Unmet]) -> Self {
        let thing = thing_of(unmet);
        let mut things: Vec<String> = Vec::new();
        for one in alike.iter().filter_map(|unmet| thing_of(unmet)).map(|thing| context.the(thing)) {
            if !things.contains(&one) {
                things.push(one);
            }
        }
        let of_tests = matches!(unmet.reason, Reason::NotTested { .. } | Reason::TestLate { .. });
        let others = others_of(unmet);
        let names: Vec<String> = others.iter().map(|other| context.the(*other)).collect();
        let seal = match &unmet.reason {
            Reason::SealNotRenewed { seal, .. } => context.procedure.map.seals.get(*seal),
            _ => None,
        };
        Self {
            step_does: step_does(context, unmet),
            since: context.step_name(unmet.since),
            thing: match thing {
                Some(_) if of_tests => listed(&things),
                Some(thing) => context.the(thing),
                None => "the appliance".to_owned(),
            },
            thing_is_one: !of_tests || things.len() < 2,
            others: seal.map_or_else(|| listed(&names), |seal| seal.name.clone()),
            others_are: if names.len() > 1 || names.iter().any(|name| is_plural(name)) {
                "are"
            } else {
                "is"
            },
            others_are_listed: names.len() > 1,
            test: missing_test(&unmet.reason),
            detail: detail(&unmet.reason),
        }
    }
}

impl Words {
    /// A text of a rule with its verbs as the things are one or several.
    pub(super) fn agreeing(&self, text: String) -> String {
        let text = agreeing(text, &self.thing, !self.thing_is_one);
        agreeing(text, &self.others, self.others_are_listed)
    }
}

fn others_of(unmet: &Unmet) -> Vec<Thing> {
    match &unmet.reason {
        Reason::StillFed { through, .. } => through.iter().map(|i| Thing::Isolator(*i)).collect(),
        Reason::NotLocked { isolators, .. } => isolators.iter().map(|i| Thing::Isolator(*i)).collect(),
        Reason::Demand { others, .. } => others.clone(),
        _ => Vec::new(),
    }
}

fn step_does(context: &Context<'_>, unmet: &Unmet) -> String {
    let Some(verb) = &unmet.verb else { return "At the end".to_owned() };
    let thing = match (verb, &unmet.thing) {
        (Verb::ShutDown | Verb::Start, _) => " the appliance".to_owned(),
        (_, Some(id)) => format!(" {}", context.the_id(id)),
        (_, None) => String::new(),
    };
    format!("{} {}{thing}", capital(&context.step_name(unmet.place)), does(verb))
}

fn missing_test(reason: &Reason) -> String {
    match reason {
        Reason::NotTested { any_of, .. } | Reason::TestLate { any_of, .. } => {
            without_article(&test_name(any_of)).to_owned()
        }
        Reason::FunctionNotShown => "function test".to_owned(),
        _ => String::new(),
    }
}

fn without_article(test: &str) -> &str {
    test.strip_prefix("a ").or_else(|| test.strip_prefix("an ")).unwrap_or(test)
}

fn detail(reason: &Reason) -> &'static str {
    match reason {
        Reason::ProofLapsed { why, .. } => match why {
            Lapse::Restored => "its supply was opened again",
            Lapse::Started => "the appliance was started",
            Lapse::Filled => "it was filled or purged",
            Lapse::LeftAlone => "it was left alone",
            Lapse::Old => "that is longer ago than such a proof holds",
        },
        Reason::WrongContents { contents, .. } => match contents {
            Contents::Medium => "full of its medium",
            Contents::Mixed => "holding a mixture with air",
            Contents::Air => "holding air",
            Contents::Residual => "still holding what boils out of its oil",
            Contents::Inert => "holding inert gas",
            Contents::Vacuum => "under vacuum",
        },
        _ => "",
    }
}

/// A state with the step since which it holds.
pub(super) fn since(context: &Context<'_>, place: Place, text: &str) -> Because {
    let step = context.step_id_at(place);
    let text = match place {
        Place::END => text.to_owned(),
        _ if step.is_some() => format!("{text}, since {}", context.step_name(place)),
        // What was never done has no beginning; what stands open has.
        _ if text.ends_with(" open") => format!("{text}, from the start"),
        _ => text.to_owned(),
    };
    Because { text, step }
}

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

/// The text with a capital first letter.
pub(super) fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// "a cold leak check", for any of the tests that satisfy a demand.
fn test_name(any_of: TestDemand) -> String {
    let names: Vec<String> = any_of
        .iter()
        .map(|wanted| match &wanted.mode {
            Some(mode) => format!("{} at {mode}", one_test(&wanted.kind)),
            None => one_test(&wanted.kind).to_owned(),
        })
        .collect();
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
