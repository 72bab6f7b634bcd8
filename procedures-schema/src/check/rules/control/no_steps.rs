//! `control/no-steps`: the document holds no action to judge.

use crate::check::context::Context;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "control/no-steps",
    level: Level::Reject,
    summary: "the document holds no action to judge",
    documentation: documentation!("no_steps.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    if context.procedure.steps.iter().all(|step| step.actions.is_empty()) {
        let mut finding = rule.finding("No step says anything that can be judged".to_owned());
        finding.step = context.procedure.steps.first().map(|step| step.id.clone());
        finding.remedy.push("Write the steps; what they say is checked as it is written".to_owned());
        findings.push(finding);
    }
}
