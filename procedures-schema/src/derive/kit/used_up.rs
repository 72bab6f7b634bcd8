//! What is used up: leak detection fluid, what goes on a thread, what a circuit is filled or purged with.

use super::{Done, Needed};
use crate::model::{KitList, Known, Procedure, TestKind, Verb};

/// What is there without being brought.
const THERE: &[&str] = &["water", "mains water", "air", "cold water", "gas", "fuel gas", "supply"];

pub(super) fn used_up(procedure: &Procedure, done: &[Done<'_>]) -> Vec<Needed> {
    let mut all: Vec<Needed> = Vec::new();
    for one in done {
        for name in names(procedure, one) {
            if let Some(known) = all.iter_mut().find(|known| known.name.eq_ignore_ascii_case(&name)) {
                known.at(one.number);
                continue;
            }
            let mut needed = Needed::new(KitList::Consumables, &name);
            needed.at(one.number);
            all.push(needed);
        }
    }
    all
}

fn names(procedure: &Procedure, one: &Done<'_>) -> Vec<String> {
    let mut names = Vec::new();
    if one.action.test == Some(TestKind::LeakFluid) {
        names.push("leak detection fluid".to_owned());
    }
    if one.action.verb == Verb::Make {
        let made = one.action.on.iter().filter_map(|id| procedure.map.connection(id));
        let tight = made.filter_map(|made| made.tight.as_ref().and_then(Known::value));
        names.extend(tight.map(|tight| tight.lubrication.clone()).filter(|on| !on.is_empty() && on != "dry"));
    }
    if matches!(one.action.verb, Verb::Charge | Verb::Purge) {
        let is_brought = |with: &&String| !THERE.contains(&with.to_lowercase().as_str());
        names.extend(one.action.with.as_ref().filter(is_brought).cloned());
    }
    names
}
