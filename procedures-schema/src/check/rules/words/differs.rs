//! `words/differs`: words say another figure, count, size or thing than the action.

use crate::check::context::Context;
use crate::check::document::steps;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::check::stated::differences;

pub(in crate::check) static RULE: Rule = Rule {
    code: "words/differs",
    level: Level::Warn,
    summary: "words say another figure, count, size or thing than the action",
    documentation: documentation!("differs.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for at in steps(context) {
        for difference in differences(context, at.number - 1, at.step) {
            let title = format!("Step {} says \"{}\", and {}", at.number, difference.stated, difference.held);
            let mut finding = at.finding(rule, title, "Make both say the same");
            finding.span = Some(difference.span);
            findings.push(finding);
        }
    }
}
