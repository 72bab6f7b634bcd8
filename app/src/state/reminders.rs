//! Reminders for the way back, and the steps at which they come up, once typing has paused.

use super::judged::Judged;
use leptos::prelude::*;
use procedures_schema::derive::reminders::reminders;
use procedures_schema::model::Id;
use std::sync::Arc;

/// A reminder at a step of the way back.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct AtStep {
    /// The step at which it comes up.
    pub at: Id,
    /// The step that it was written at.
    pub from: Id,
    /// What to remember.
    pub text: String,
}

/// All of them.
pub(super) fn shown(settled: RwSignal<Arc<Judged>>) -> Memo<Vec<AtStep>> {
    Memo::new(move |_| settled.with(|judged| of(judged)))
}

fn of(judged: &Judged) -> Vec<AtStep> {
    let steps = &judged.document.steps;
    let id = |at: &usize| steps.get(*at).map(|step| step.id.clone());
    let all = reminders(&judged.document).into_iter();
    all.flat_map(|one| {
        let at = one.at.iter().filter_map(id).collect::<Vec<_>>();
        at.into_iter().map(move |at| AtStep { at, from: one.from.clone(), text: one.text.clone() })
    })
    .collect()
}
