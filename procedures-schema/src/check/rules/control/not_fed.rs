//! `control/not-fed`: a step works on a circuit that nothing on the map feeds.

use crate::check::context::Context;
use crate::check::document::all_actions;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::model::{Action, Circuit, CircuitKind, Id};

pub(in crate::check) static RULE: Rule = Rule {
    code: "control/not-fed",
    level: Level::Reject,
    summary: "a step works on a circuit that nothing on the map feeds",
    documentation: documentation!("not_fed.md"),
    looks: Looks::AtDocument(check),
};

/// What comes from outside the appliance, and so has a way in.
const FED_FROM_OUTSIDE: &[CircuitKind] = &[
    CircuitKind::MainsElectricity,
    CircuitKind::FuelGas,
    CircuitKind::DomesticWater,
    CircuitKind::CompressedAir,
    CircuitKind::Steam,
    CircuitKind::Oil,
    CircuitKind::NetworkPrimary,
];

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    let map = &context.procedure.map;
    let is_cut_off = |circuit: &&Circuit| {
        FED_FROM_OUTSIDE.contains(&circuit.kind)
            && circuit.fed_by.is_empty()
            && !map
                .isolators
                .iter()
                .any(|way| is_of(circuit, &way.between.0) || is_of(circuit, &way.between.1))
    };
    for circuit in map.circuits.iter().filter(is_cut_off) {
        let first = all_actions(context).find(|(_, action)| works_on(context, action, circuit));
        let Some((at, _)) = first else { continue };
        let the = context.the_id(&circuit.id);
        let title = format!(
            "Step {} works on {the}, and nothing on the map feeds it: it counts as off from the start",
            at.number
        );
        let mut finding =
            at.finding(rule, title, "Add the isolator that shuts it off, between its supply and it");
        finding.remedy.push("Or, if nothing shuts it off, an isolator there that no hand works".to_owned());
        finding.circuit = Some(circuit.id.clone());
        findings.push(finding.of_thing(&circuit.id));
    }
}

/// Whether an action is done to a circuit, to a section of it, or to a joint in it.
fn works_on(context: &Context<'_>, action: &Action, circuit: &Circuit) -> bool {
    let ports = action.through.iter().chain(&action.vent);
    action.on.iter().chain(ports).any(|id| {
        let joint = context.connection(id).and_then(|connection| connection.section.as_ref());
        is_of(circuit, id) || joint.is_some_and(|id| is_of(circuit, id))
    })
}

fn is_of(circuit: &Circuit, id: &Id) -> bool {
    *id == circuit.id || circuit.sections.iter().any(|section| section.id == *id)
}
