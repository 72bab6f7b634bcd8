//! `control/scope-missing`: the document does not say what it is for or to which appliance it applies.

use crate::check::context::Context;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::model::listed;

pub(in crate::check) static RULE: Rule = Rule {
    code: "control/scope-missing",
    level: Level::Warn,
    summary: "the document does not say what it is for or to which appliance it applies",
    documentation: documentation!("scope_missing.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    let procedure = context.procedure;
    let missing: Vec<String> = [
        ("title", &procedure.title),
        ("purpose", &procedure.purpose),
        ("plate of the right appliance", &procedure.applies_to),
    ]
    .into_iter()
    .filter(|(_, text)| text.trim().is_empty())
    .map(|(name, _)| name.to_owned())
    .collect();
    if !missing.is_empty() {
        let what = listed(&missing);
        let mut finding = rule.finding(format!("The scope lacks its {what}, before the first step"));
        finding
            .remedy
            .push("Say what the job is for and what the rating plate of the right appliance says".to_owned());
        findings.push(finding);
    }
}
