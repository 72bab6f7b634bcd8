//! `control/census-contradicts`: the census of circuits says something else than the appliance map.

use crate::check::context::Context;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::model::CensusAnswer;

pub(in crate::check) static RULE: Rule = Rule {
    code: "control/census-contradicts",
    level: Level::Reject,
    summary: "the census of circuits says something else than the appliance map",
    documentation: documentation!("census_contradicts.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for entry in &context.procedure.census {
        let circuit = context.procedure.map.circuits.iter().find(|circuit| circuit.kind == entry.kind);
        let title = match (&entry.answer, circuit) {
            (CensusAnswer::Absent, Some(circuit)) => format!(
                "The census says that there is no {}, and the map has {}, at every step",
                entry.kind,
                context.the_id(&circuit.id)
            ),
            (CensusAnswer::Touched, None) => {
                format!("The census says that {} is touched, and the map has none, at every step", entry.kind)
            }
            _ => continue,
        };
        let mut finding = rule.finding(title);
        finding.circuit = circuit.map(|circuit| circuit.id.clone());
        finding.thing.clone_from(&finding.circuit);
        finding.remedy.push("Correct the census, or the appliance map".to_owned());
        findings.push(finding);
    }
}
