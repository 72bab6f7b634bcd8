//! `seal/size-missing`: a seal that is renewed has neither size nor number.

use crate::check::context::Context;
use crate::check::document::all_actions;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::model::{Id, Renewal, Verb};

pub(in crate::check) static RULE: Rule = Rule {
    code: "seal/size-missing",
    level: Level::Warn,
    summary: "a seal that is renewed has neither size nor number",
    documentation: documentation!("size_missing.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    let mut told: Vec<&Id> = Vec::new();
    for (at, action) in all_actions(context)
        .filter(|(_, action)| action.verb == Verb::Make && action.seal == Some(Renewal::New))
    {
        let used = action.on.iter().filter_map(|id| context.connection(id)).flat_map(|joint| &joint.seals);
        for seal in used.filter_map(|used| context.seal(&used.seal)) {
            if seal.size.is_none() && seal.number.is_none() && !told.contains(&&seal.id) {
                told.push(&seal.id);
                let the = context.the_id(&seal.id);
                let title =
                    format!("Step {} takes {the}, of which neither size nor number is known", at.number);
                let remedy = "Give its size or number, or say who finds it out";
                findings.push(at.finding(rule, title, remedy).of_thing(&seal.id));
            }
        }
    }
}
