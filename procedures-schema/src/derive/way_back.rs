//! The way back of one connection, and the tests that are still missing, as ready steps.
//!
//! Together with the ladders these are most steps of a real job. They come as ordinary steps, to be edited
//! like any other.

use super::sentence::Sentence;
use crate::model::{
    Action, Connection, Family, Handle, Id, IdSource, Known, Procedure, Renewal, SealPolicy, Stage, Step,
    TestKind, Verb, a_new,
};
use crate::simulate::{Place, Reason, Trace, Wanted};

/// The step that makes a connection again: seals by their policy, torque and pattern from the map; none if
/// the map does not know it.
pub fn way_back(procedure: &Procedure, connection: &Id, ids: &mut dyn IdSource) -> Option<Step> {
    let known = procedure.map.connection(connection)?;
    let mut action = Action::new(Verb::Make, vec![connection.clone()]);
    let new_seals = renewed_seals(procedure, known);
    if !new_seals.is_empty() {
        action.seal = Some(Renewal::New);
    }
    let tight = known.tight.as_ref().and_then(Known::value);
    action.torque = tight.and_then(|tight| tight.torque.clone());
    action.pattern = tight.map(|tight| tight.pattern.clone()).filter(|pattern| !pattern.is_empty());
    let verb = match (&known.port, &known.family) {
        (Some(_), _) => "Close",
        (None, Family::Connector) => "Plug in",
        (None, Family::Fixing) => "Tighten",
        (None, _) => "Make",
    };
    let new_ones: Vec<String> = new_seals.iter().map(|name| a_new(name)).collect();
    let seals = if new_ones.is_empty() { String::new() } else { format!(" with {}", new_ones.join(" and ")) };
    let mut how: Vec<String> = action.torque.iter().map(ToString::to_string).collect();
    how.extend(action.pattern.iter().map(|pattern| format!("{pattern} pattern")));
    how.extend(tight.map(|tight| tight.method.clone()).filter(|method| !method.is_empty()));
    let how = if how.is_empty() { String::new() } else { format!(": {}", how.join(", ")) };
    let sentence =
        Sentence::new().say(&format!("{verb} the {}{seals}", known.name), action).add(&format!("{how}."));
    Some(sentence.step(ids.next_id("step"), Stage::Refit))
}

/// The names of the seals of a connection that are always renewed.
fn renewed_seals(procedure: &Procedure, connection: &Connection) -> Vec<String> {
    let used = connection.seals.iter();
    used.filter_map(|used| procedure.map.seals.iter().find(|seal| seal.id == used.seal))
        .filter(|seal| seal.policy == SealPolicy::AlwaysRenew)
        .map(|seal| seal.name.clone())
        .collect()
}

/// The tests that a whole run leaves missing, a step each, in the order in which they are due.
pub fn missing_tests(trace: &Trace, ids: &mut dyn IdSource) -> Vec<Step> {
    let mut wanted: Vec<&Wanted> = Vec::new();
    for unmet in trace.unmet().iter().filter(|unmet| unmet.place == Place::END) {
        wanted.extend(wanted_of(&unmet.reason).filter(|first| !wanted.contains(first)));
    }
    wanted.sort_by_key(|wanted| crate::simulate::test_row(&wanted.kind).map(|row| row.due));
    wanted.into_iter().map(|wanted| test_step(wanted, ids)).collect()
}

/// The step of the test that a reason says is missing; none if it says nothing of the kind.
pub fn missing_test(reason: &Reason, ids: &mut dyn IdSource) -> Option<Step> {
    wanted_of(reason).map(|wanted| test_step(wanted, ids))
}

/// The first of the tests of which one is missing.
fn wanted_of(reason: &Reason) -> Option<&Wanted> {
    match reason {
        Reason::NotTested { any_of, .. } | Reason::TestLate { any_of, .. } => any_of.first(),
        Reason::FunctionNotShown => Some(&FUNCTION),
        _ => None,
    }
}

/// The step that takes a temporary item away; none if the map does not know it.
pub fn taking_away(procedure: &Procedure, item: &Id, ids: &mut dyn IdSource) -> Option<Step> {
    let known = procedure.map.temporary.iter().find(|known| known.id == *item)?;
    let words = format!("Take the {} away", known.name);
    let sentence = Sentence::new().say(&words, Action::new(Verb::TakeAway, vec![item.clone()])).add(".");
    Some(sentence.step(ids.next_id("step"), Stage::Recommission))
}

/// The step that opens an isolator again, its lock taken off where it has one; none if the map does not know
/// it or nobody works it by hand.
pub fn restoring(
    procedure: &Procedure,
    isolator: &Id,
    is_locked: bool,
    ids: &mut dyn IdSource,
) -> Option<Step> {
    let known = procedure.map.isolators.iter().find(|known| known.id == *isolator)?;
    let opens = match known.handle {
        Handle::Valve => format!("open the {}", known.name),
        Handle::Switch | Handle::Fuse => format!("switch on at the {}", known.name),
        Handle::Plug => format!("plug in the {}", known.name),
        _ => return None,
    };
    let words = if is_locked { format!("Take the lock off and {opens}") } else { capital(&opens) };
    let sentence = Sentence::new().say(&words, Action::new(Verb::Restore, vec![isolator.clone()])).add(".");
    Some(sentence.step(ids.next_id("step"), Stage::Recommission))
}

fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

const FUNCTION: Wanted = Wanted { kind: TestKind::Function, mode: None };

fn test_step(wanted: &Wanted, ids: &mut dyn IdSource) -> Step {
    let mut action = Action::new(Verb::Test, Vec::new());
    action.test = Some(wanted.kind.clone());
    action.mode.clone_from(&wanted.mode);
    let at = wanted.mode.as_ref().map_or_else(String::new, |mode| format!(" at {mode}"));
    let words = match wanted.kind {
        TestKind::LeakCold => "Check for leaks cold".to_owned(),
        TestKind::LeakHot => "Check for leaks hot".to_owned(),
        TestKind::LeakFluid => "Check the joints with leak detection fluid".to_owned(),
        TestKind::Tightness => "Test the gas for tightness".to_owned(),
        TestKind::Function => "Check that it works".to_owned(),
        ref kind => format!("Test the {kind}{at}"),
    };
    Sentence::new().say(&words, action).add(".").step(ids.next_id("step"), Stage::Recommission)
}
