//! `words/reminder-waits`: a reminder for the way back has no step at which it would come up.

use crate::check::context::Context;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::derive::reminders::reminders;

pub(in crate::check) static RULE: Rule = Rule {
    code: "words/reminder-waits",
    level: Level::Advise,
    summary: "a reminder for the way back has no step at which it would come up",
    documentation: documentation!("reminder_waits.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for reminder in reminders(context.procedure).into_iter().filter(|reminder| reminder.at.is_empty()) {
        let number = reminder.from_position + 1;
        let title = format!("Step {number} has a reminder for the way back, and no step takes it back yet");
        let mut finding = rule.finding(title);
        finding.step = Some(reminder.from);
        finding.remedy.push("Write the step that puts it back; the reminder comes up there".to_owned());
        findings.push(finding);
    }
}
