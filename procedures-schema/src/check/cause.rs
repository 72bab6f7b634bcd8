//! Gathering unmet demands of one cause, so that one forgotten valve is one finding.

use super::context::Context;
use crate::model::Id;
use crate::simulate::{Reason, Unmet};
use std::collections::BTreeMap;

/// One cause and every place that met it.
pub(super) struct Cause<'t> {
    /// Where it was met first.
    pub(super) first: &'t Unmet,
    /// Where it was met again.
    pub(super) again: Vec<&'t Unmet>,
}

impl Cause<'_> {
    /// The later steps, each once.
    pub(super) fn later_steps(&self, context: &Context<'_>) -> Vec<Id> {
        let first = context.step_id_at(self.first.place);
        let mut steps = Vec::new();
        for unmet in &self.again {
            if let Some(step) = context.step_id_at(unmet.place)
                && Some(&step) != first.as_ref()
                && !steps.contains(&step)
            {
                steps.push(step);
            }
        }
        steps
    }
}

/// The causes among the unmet demands for which `key` gives a value; equal keys are one cause.
pub(super) fn causes<'t, K: Ord>(
    context: &Context<'t>,
    key: impl Fn(&'t Unmet) -> Option<K>,
) -> Vec<Cause<'t>> {
    let mut position: BTreeMap<K, usize> = BTreeMap::new();
    let mut causes: Vec<Cause<'t>> = Vec::new();
    for unmet in context.trace.unmet() {
        let Some(key) = key(unmet) else { continue };
        if let Some(cause) = position.get(&key).and_then(|at| causes.get_mut(*at)) {
            cause.again.push(unmet);
        } else {
            position.insert(key, causes.len());
            causes.push(Cause { first: unmet, again: Vec::new() });
        }
    }
    causes
}

/// The section that a ladder demand speaks of.
pub(super) fn section_of(reason: &Reason) -> Option<crate::simulate::SectionCell> {
    match reason {
        Reason::StillFed { section, .. }
        | Reason::NotLocked { section, .. }
        | Reason::NotReleased { section }
        | Reason::NotProved { section }
        | Reason::SectionNotTested { section, .. } => Some(*section),
        _ => None,
    }
}
