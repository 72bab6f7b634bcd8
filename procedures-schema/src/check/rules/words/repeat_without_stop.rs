//! `words/repeat-without-stop`: a sentence repeats without saying until when.

use crate::check::context::Context;
use crate::check::document::steps_holding;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "words/repeat-without-stop",
    level: Level::Warn,
    summary: "a sentence repeats without saying until when",
    documentation: documentation!("repeat_without_stop.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for (at, words) in steps_holding(context, &["repeat"]) {
        if !words.has_any(&["until", "times", "once"]) {
            let title = format!("Step {} repeats and does not say until when", at.number);
            findings.push(at.finding(rule, title, "Say until what is seen, and at most how often"));
        }
    }
}
