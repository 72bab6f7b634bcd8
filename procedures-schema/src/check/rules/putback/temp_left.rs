//! `putback/temp-left`: a temporary item is still in place at the end.

use crate::check::context::Context;
use crate::check::ending::{Omission, omissions};
use crate::check::finding::{Finding, Level};
use crate::check::rule::Rule;
use crate::simulate::{Reason, Thing};

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/temp-left",
    level: Level::Reject,
    summary: "a temporary item is still in place at the end",
    documentation: include_str!("temp_left.md"),
    check,
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    let wanted = |reason: &Reason| match reason {
        Reason::TemporaryLeft { temporary } => Some(Thing::Temporary(*temporary)),
        _ => None,
    };
    let omission = Omission {
        title: "still in place at the end",
        because: "placed and not taken away",
        remedy: |the| format!("Take away {the}, or say in the appliance map why it stays"),
    };
    omissions(rule, context, wanted, &omission, findings);
}
