//! `putback/left-open`: a connection is still open at the end.

use crate::check::context::Context;
use crate::check::ending::{Omission, omissions};
use crate::check::finding::{Finding, Level};
use crate::check::rule::Rule;
use crate::simulate::{Reason, Thing};

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/left-open",
    level: Level::Reject,
    summary: "a connection is still open at the end",
    documentation: include_str!("left_open.md"),
    check,
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    let wanted = |reason: &Reason| match reason {
        Reason::LeftOpen { connection } => Some(Thing::Connection(*connection)),
        _ => None,
    };
    let omission = Omission {
        title: "left open at the end",
        because: "opened and not made again",
        remedy: |the| format!("Make {the} after everything that goes in before it"),
    };
    omissions(rule, context, wanted, &omission, findings);
}
