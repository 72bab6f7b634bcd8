//! `putback/left-slack`: a connection is still slack at the end.

use crate::check::context::Context;
use crate::check::ending::{Omission, omissions};
use crate::check::finding::{Finding, Level};
use crate::check::rule::Rule;
use crate::simulate::{Reason, Thing};

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/left-slack",
    level: Level::Reject,
    summary: "a connection is still slack at the end",
    documentation: include_str!("left_slack.md"),
    check,
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    let wanted = |reason: &Reason| match reason {
        Reason::LeftSlack { connection } => Some(Thing::Connection(*connection)),
        _ => None,
    };
    let omission = Omission {
        title: "left slack at the end",
        because: "slackened and not tightened again",
        remedy: |the| format!("Tighten {the}"),
    };
    omissions(rule, context, wanted, &omission, findings);
}
