//! `torque/missing`: a joint is made and nothing says how tight.

use crate::check::context::Context;
use crate::check::document::actions;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::model::{Family, Verb};

pub(in crate::check) static RULE: Rule = Rule {
    code: "torque/missing",
    level: Level::Warn,
    summary: "a joint is made and nothing says how tight",
    documentation: documentation!("missing.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for (at, action) in actions(context).filter(|(_, action)| action.verb == Verb::Make) {
        let named = action.on.iter().filter_map(|id| context.connection(id));
        let carries = named.filter(|k| k.family == Family::Joint && k.port.is_none() && k.section.is_some());
        let open = carries.filter(|joint| joint.tight.is_none() && action.torque.is_none());
        for joint in open.filter(|_| !says_a_method(&at.step.words)) {
            let title =
                format!("Step {} makes {} and nothing says how tight", at.number, context.the_id(&joint.id));
            let remedy = "Give a torque range, or a method such as hand tight and a quarter turn";
            findings.push(at.finding(rule, title, remedy).of_thing(&joint.id));
        }
    }
}

/// Whether words say by another method than a torque how tight.
fn says_a_method(words: &str) -> bool {
    const METHODS: &[&str] = &[
        "finger tight",
        "finger-tight",
        "hand tight",
        "hand-tight",
        "to its stop",
        "to the stop",
        "turn past",
    ];
    let words = words.to_lowercase();
    METHODS.iter().any(|method| words.contains(method))
}
