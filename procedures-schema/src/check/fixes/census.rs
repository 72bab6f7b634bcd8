//! The fix of a census that is not answered: the circuits of the map are here, the other kinds are not.
//!
//! That there is no other is the writer's to say: the label names every kind, and nothing is offered where a part
//! of the appliance speaks of a circuit that the map does not have.

use super::Fix;
use crate::check::context::Context;
use crate::check::wording::listed;
use crate::edit::{Edit, Scope};
use crate::model::{CensusAnswer, CensusEntry, CircuitKind, Id, Procedure, Rest, Role, Verb};

/// Answers for every kind of circuit that is open.
pub(super) fn answered(context: &Context<'_>) -> Option<Fix> {
    let procedure = context.procedure;
    let is_open = |kind: &&CircuitKind| procedure.census.iter().all(|entry| entry.kind != **kind);
    let of_map = |kind: &CircuitKind| procedure.map.circuits.iter().any(|circuit| circuit.kind == *kind);
    if procedure.map.circuits.is_empty() || spoken_of(procedure).iter().any(|kind| !of_map(kind)) {
        return None;
    }
    let mut scope = Scope::of(procedure);
    let mut told: [(&str, Vec<String>); 3] =
        [("touched", Vec::new()), ("here, not touched", Vec::new()), ("not on this appliance", Vec::new())];
    for kind in CircuitKind::ALL.iter().filter(is_open) {
        let (answer, at) = match (of_map(kind), is_touched(procedure, kind)) {
            (true, true) => (CensusAnswer::Touched, 0),
            (true, false) => (CensusAnswer::NotTouched, 1),
            (false, _) => (CensusAnswer::Absent, 2),
        };
        if let Some((_, kinds)) = told.get_mut(at) {
            kinds.push(kind.to_string());
        }
        scope.census.push(CensusEntry { kind: kind.clone(), answer, rest: Rest::default() });
    }
    let parts = told.iter().filter(|(_, kinds)| !kinds.is_empty());
    let parts: Vec<String> = parts.map(|(answer, kinds)| format!("{answer}: {}", listed(kinds))).collect();
    let label = format!("answer the census, {}", parts.join("; "));
    Some(Fix { label, edits: vec![Edit::SetScope(Box::new(scope))] })
}

/// The kinds of circuits that the parts of an appliance speak of.
fn spoken_of(procedure: &Procedure) -> Vec<CircuitKind> {
    let roles = procedure.map.components.iter().filter_map(|part| part.role.as_ref());
    let kinds = roles.flat_map(|role| match role {
        Role::Burner => vec![CircuitKind::AirAndFlue],
        Role::GasValve => vec![CircuitKind::FuelGas],
        Role::Element => vec![CircuitKind::MainsElectricity],
        _ => Vec::new(),
    });
    kinds.collect()
}

/// Whether a step does more to a circuit of this kind than to look at it.
fn is_touched(procedure: &Procedure, kind: &CircuitKind) -> bool {
    let map = &procedure.map;
    let circuits = map.circuits.iter().filter(|circuit| circuit.kind == *kind);
    let mut own: Vec<&Id> = Vec::new();
    for circuit in circuits {
        own.push(&circuit.id);
        own.extend(circuit.sections.iter().map(|section| &section.id));
    }
    let of_section = |id: &Id| {
        let isolators = map.isolators.iter().filter(|isolator| isolator.id == *id);
        let isolated = isolators.flat_map(|isolator| [&isolator.between.0, &isolator.between.1]);
        let joint = map.connection(id).and_then(|joint| joint.section.as_ref());
        isolated.chain(joint).any(|section| own.contains(&section))
    };
    let looks = |verb: &Verb| matches!(verb, Verb::Read | Verb::Inspect | Verb::Photograph | Verb::Tell);
    let mut actions =
        procedure.steps.iter().flat_map(|step| &step.actions).filter(|action| !looks(&action.verb));
    actions.any(|action| {
        let places = [&action.through, &action.vent, &action.at].into_iter().flatten();
        action.on.iter().chain(places).any(|id| own.contains(&id) || of_section(id))
    })
}
