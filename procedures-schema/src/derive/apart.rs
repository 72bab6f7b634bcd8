//! What is still apart at a place of a run, and what is made but not tested.

use crate::model::{Id, Procedure};
use crate::simulate::{
    ComponentCell, ComponentState, ConnectionCell, ConnectionState, Place, TemporaryCell, Trace, Whereabouts,
};

/// One thing that is not as it was.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ApartItem {
    /// The thing.
    pub thing: Id,
    /// What is with it, with its name: "3 of 4 pump screws open".
    pub words: String,
    /// How much it counts: fasteners each, everything else once.
    pub count: u32,
}

/// Everything that is not as it was.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct StillApart {
    /// Fasteners and joints not fully made, parts not fitted, ports open, temporary items not as at the
    /// start.
    pub items: Vec<ApartItem>,
    /// Joints made and not yet tested.
    pub untested: Vec<ApartItem>,
}

impl StillApart {
    /// How much is apart.
    pub fn count(&self) -> u32 {
        self.items.iter().map(|item| item.count).sum()
    }
}

/// What is apart at a place.
pub fn still_apart(procedure: &Procedure, trace: &Trace, place: Place) -> StillApart {
    let mut apart = StillApart::default();
    let name = |id: &Id| procedure.map.name_of(id).to_owned();
    for (cell, plan) in trace.plant().connections() {
        let Some(state) = trace.at(&cell, place) else { continue };
        if !state.is_made() {
            let words = connection_words(state, &name(&plan.id));
            let count = state.open + state.slack;
            apart.items.push(ApartItem { thing: plan.id.clone(), words, count });
        } else if !trace.tests_lacking(cell, place).is_empty() {
            let words = format!("{} not tested yet", name(&plan.id));
            apart.untested.push(ApartItem { thing: plan.id.clone(), words, count: 1 });
        }
    }
    for (cell, plan) in trace.plant().components() {
        let words = match trace.at(&cell, place).map(|state| state.whereabouts) {
            Some(Whereabouts::Off) => "off",
            Some(Whereabouts::Aside) => "moved aside",
            _ => continue,
        };
        let words = format!("{} {words}", name(&plan.id));
        apart.items.push(ApartItem { thing: plan.id.clone(), words, count: 1 });
    }
    for (cell, plan) in trace.plant().temporaries() {
        let in_place = trace.at(&cell, place).is_some_and(|state| state.in_place);
        if in_place != plan.initially {
            let words = format!("{} {}", name(&plan.id), if in_place { "in place" } else { "away" });
            apart.items.push(ApartItem { thing: plan.id.clone(), words, count: 1 });
        }
    }
    apart
}

/// How much is apart at a place, as [`StillApart::count`].
pub fn n_apart(trace: &Trace, place: Place) -> u32 {
    let plant = trace.plant();
    let fasteners = plant.connections().map(|(cell, _)| connection_count(trace, cell, place));
    let parts = plant.components().map(|(cell, _)| component_count(trace, cell, place));
    let items = plant.temporaries().map(|(cell, plan)| temporary_count(trace, cell, plan.initially, place));
    fasteners.chain(parts).chain(items).fold(0, u32::saturating_add)
}

/// How many fasteners of a connection are open or slack.
pub(super) fn connection_count(trace: &Trace, cell: ConnectionCell, place: Place) -> u32 {
    trace.at(&cell, place).map_or(0, |state| state.open + state.slack)
}

/// One for a component that is off or aside.
pub(super) fn component_count(trace: &Trace, cell: ComponentCell, place: Place) -> u32 {
    let is_away = |state: &ComponentState| matches!(state.whereabouts, Whereabouts::Off | Whereabouts::Aside);
    trace.at(&cell, place).is_some_and(is_away).into()
}

/// One for a temporary item that is not as at the start.
pub(super) fn temporary_count(trace: &Trace, cell: TemporaryCell, initially: bool, place: Place) -> u32 {
    (trace.at(&cell, place).is_some_and(|state| state.in_place) != initially).into()
}

fn connection_words(state: &ConnectionState, name: &str) -> String {
    let total = state.made + state.slack + state.open;
    let part = |n: u32, what: &str| match (n, total) {
        (0, _) => None,
        (_, 1) => Some(what.to_owned()),
        _ => Some(format!("{n} of {total} {what}")),
    };
    let parts: Vec<String> = part(state.open, "open").into_iter().chain(part(state.slack, "slack")).collect();
    format!("{name} {}", parts.join(", "))
}
