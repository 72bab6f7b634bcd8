//! `putback/supply-off`: an isolator is not in its normal position at the end.

use crate::check::context::Context;
use crate::check::ending::{Omission, omissions};
use crate::check::finding::{Finding, Level};
use crate::check::rule::Rule;
use crate::simulate::{Reason, Thing};

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/supply-off",
    level: Level::Reject,
    summary: "an isolator is not in its normal position at the end",
    documentation: include_str!("supply_off.md"),
    check,
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    let wanted = |reason: &Reason| match reason {
        Reason::NotNormal { isolator } => Some(Thing::Isolator(*isolator)),
        _ => None,
    };
    let omission = Omission {
        title: "not as in service at the end",
        because: "worked and not set back",
        remedy: |the| format!("Restore {the} before hand-over, or isolate it if it is normally closed"),
    };
    omissions(rule, context, wanted, &omission, findings);
}
