//! `putback/left-off`: a component is still off or aside at the end.

use crate::check::context::Context;
use crate::check::ending::{Omission, omissions};
use crate::check::finding::{Finding, Level};
use crate::check::rule::Rule;
use crate::simulate::{Reason, Thing};

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/left-off",
    level: Level::Reject,
    summary: "a component is still off or aside at the end",
    documentation: include_str!("left_off.md"),
    check,
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    let wanted = |reason: &Reason| match reason {
        Reason::LeftOff { component } => Some(Thing::Component(*component)),
        _ => None,
    };
    let omission = Omission {
        title: "not back in place at the end",
        because: "taken off or moved aside and not fitted again",
        remedy: |the| format!("Fit {the} and make what holds it"),
    };
    omissions(rule, context, wanted, &omission, findings);
}
