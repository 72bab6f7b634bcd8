//! `words/avoidance-vague`: a safety message says to be careful instead of what to do.

use crate::check::context::Context;
use crate::check::document::steps;
use crate::check::finding::{Finding, Level};
use crate::check::lower::Lower;
use crate::check::rule::{Looks, Rule, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "words/avoidance-vague",
    level: Level::Warn,
    summary: "a safety message says to be careful instead of what to do",
    documentation: documentation!("avoidance_vague.md"),
    looks: Looks::AtDocument(check),
};

/// What stands for an avoidance and is none.
const PHRASES: &[&str] = &["be careful", "take care", "use caution", "caution must", "as appropriate"];

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    let held = context.heard.held(PHRASES);
    if held.is_empty() {
        return;
    }
    for at in steps(context) {
        for message in &at.step.messages {
            if Lower(&message.avoidance.to_lowercase()).has_any(&held) {
                let title = format!("Step {} has a {} that says only to be careful", at.number, message.word);
                findings.push(at.finding(rule, title, "Say what to do: wear, wait, keep away, close"));
            }
        }
    }
}
