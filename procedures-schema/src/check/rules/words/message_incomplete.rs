//! `words/message-incomplete`: a safety message lacks its hazard, its consequence or how to avoid it.

use crate::check::context::Context;
use crate::check::document::steps;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::model::{SignalWord, listed};

pub(in crate::check) static RULE: Rule = Rule {
    code: "words/message-incomplete",
    level: Level::Warn,
    summary: "a safety message lacks its hazard, its consequence or how to avoid it",
    documentation: documentation!("message_incomplete.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for at in steps(context) {
        for message in &at.step.messages {
            let notice = message.word == SignalWord::Notice;
            let parts = [
                ("hazard", &message.hazard),
                ("consequence", &message.consequence),
                ("avoidance", &message.avoidance),
            ];
            let missing: Vec<String> = parts
                .into_iter()
                .filter(|(name, text)| text.trim().is_empty() && !(notice && *name == "consequence"))
                .map(|(name, _)| name.to_owned())
                .collect();
            if !missing.is_empty() {
                let what = listed(&missing);
                let title = format!("Step {} has a {} without its {what}", at.number, message.word);
                findings.push(at.finding(
                    rule,
                    title,
                    "Say what is dangerous, what it does, and how to avoid it",
                ));
            }
        }
    }
}
