//! Fixes within a step: a new seal, a lock behind an isolation, a reading of the words declined. What is
//! added as an action is added to the words too, and the action knows its words.

use super::Fix;
use crate::check::context::Context;
use crate::check::finding::Finding;
use crate::edit::{Edit, insert, say_behind};
use crate::model::{Action, Id, Renewal, Span, Step, Verb, a_new, listed};
use crate::simulate::{IsolatorCell, Place, Reason, Thing, Unmet};
use std::collections::BTreeMap;
use std::sync::Arc;

/// Steps as they shall be, by position.
pub(super) type Changed = BTreeMap<usize, Step>;

/// Makes the joints with new seals, and says so where the words do not yet.
pub(super) fn new_seal(context: &Context<'_>, met: &[&Unmet]) -> Option<Fix> {
    let mut seals: BTreeMap<(usize, usize), Vec<&str>> = BTreeMap::new();
    for unmet in met {
        let Reason::SealNotRenewed { seal, .. } = unmet.reason else { return None };
        let name = context.procedure.map.seals.get(seal)?.name.as_str();
        let place = (unmet.place.execution()?, unmet.place.action()?);
        let names = seals.entry(place).or_default();
        if !names.contains(&name) {
            names.push(name);
        }
    }
    let mut changed = Changed::new();
    for ((at, action), names) in &seals {
        let step = step_of(context, &mut changed, *at)?;
        let made = step.actions.get_mut(*action).filter(|action| action.verb == Verb::Make)?;
        made.seal = Some(Renewal::New);
        let says_new = context.lexicon.is_some_and(|lexicon| lexicon.says_new_of(&step.words, names));
        if !says_new {
            say_behind(step, *action, &format!(" with {}", new_ones(names)))?;
        }
    }
    let names: Vec<&str> = seals.values().flatten().copied().collect();
    let numbers: Vec<String> = changed.keys().map(|at| format!("step {}", at + 1)).collect();
    let label = format!("renew in {}: {}", listed(&numbers), new_ones(&names));
    Some(Fix { label, edits: edits(changed) })
}

/// "a new washer and new screws".
fn new_ones(names: &[&str]) -> String {
    let mut all: Vec<String> = Vec::new();
    for name in names {
        let new = a_new(name);
        if !all.contains(&new) {
            all.push(new);
        }
    }
    listed(&all)
}

/// Locks the isolators in the steps that close them.
pub(super) fn lock(context: &Context<'_>, met: &[&Unmet]) -> Option<Fix> {
    let mut isolators: Vec<IsolatorCell> = Vec::new();
    for unmet in met {
        let Reason::NotLocked { isolators: unlocked, .. } = &unmet.reason else { return None };
        isolators.extend(unlocked.iter().filter(|one| !isolators.contains(one)).collect::<Vec<_>>());
    }
    let first = met.iter().map(|unmet| unmet.place).min()?;
    let mut by_action: BTreeMap<(usize, usize), Vec<Id>> = BTreeMap::new();
    for isolator in &isolators {
        let id = context.trace.plant().id_of(Thing::Isolator(*isolator))?;
        by_action.entry(isolating(context, id, first)?).or_default().push(id.clone());
    }
    let names: Vec<String> = isolators.iter().map(|i| context.the(Thing::Isolator(*i))).collect();
    let mut changed = Changed::new();
    // From behind, so that an action that is added moves none that is still looked for.
    for ((at, action), locked) in by_action.into_iter().rev() {
        add_lock(step_of(context, &mut changed, at)?, action, locked)?;
    }
    let numbers: Vec<String> = changed.keys().map(|at| format!("step {}", at + 1)).collect();
    let label = format!("lock {} in {}", listed(&names), listed(&numbers));
    Some(Fix { label, edits: edits(changed) })
}

/// The last action before a place that closes an isolator, as positions of step and action.
fn isolating(context: &Context<'_>, isolator: &Id, before: Place) -> Option<(usize, usize)> {
    let steps = context.procedure.steps.iter().enumerate();
    let mut closing = steps.flat_map(|(at, step)| {
        let actions = step.actions.iter().enumerate();
        let closes =
            actions.filter(|(_, action)| action.verb == Verb::Isolate && action.on.contains(isolator));
        closes.map(move |(k, _)| (at, k))
    });
    closing.rfind(|(at, k)| Place::of_action(*at, *k) < before)
}

fn add_lock(step: &mut Step, action: usize, isolators: Vec<Id>) -> Option<()> {
    const AND: &str = " and ";
    let it = if isolators.len() == 1 { "lock it off" } else { "lock them off" };
    let end = step.actions.get(action)?.says.iter().map(|span| span.1).max()?;
    insert(step, end, &format!("{AND}{it}"))?;
    let from = end + length(AND);
    let mut lock = Action::new(Verb::Lock, isolators);
    lock.says = vec![Span(from, from + length(it))];
    step.actions.insert(action + 1, lock);
    Some(())
}

/// Declines to read a word of a step as an action.
pub(super) fn decline(context: &Context<'_>, finding: &Finding) -> Option<Fix> {
    let at = context.procedure.position(finding.step.as_ref()?)?;
    let mut changed = Changed::new();
    let step = step_of(context, &mut changed, at)?;
    let text = finding.span?.of(&step.words).to_owned();
    step.declined.push(text.clone());
    let label = format!("leave \"{text}\" in step {} without an action", at + 1);
    (!text.is_empty()).then(|| Fix { label, edits: edits(changed) })
}

pub(super) fn step_of<'c>(
    context: &Context<'_>,
    changed: &'c mut Changed,
    at: usize,
) -> Option<&'c mut Step> {
    let step = context.procedure.steps.get(at)?;
    Some(changed.entry(at).or_insert_with(|| (**step).clone()))
}

pub(super) fn edits(changed: Changed) -> Vec<Edit> {
    changed.into_values().map(|step| Edit::SetStep { step: Arc::new(step) }).collect()
}

fn length(text: &str) -> u32 {
    u32::try_from(text.chars().count()).unwrap_or(0)
}
