//! `torque/pattern-missing`: several fasteners of one joint get a torque and no pattern.

use crate::check::context::Context;
use crate::check::document::actions;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::model::{Grouping, Known, Verb};

pub(in crate::check) static RULE: Rule = Rule {
    code: "torque/pattern-missing",
    level: Level::Warn,
    summary: "several fasteners of one joint get a torque and no pattern",
    documentation: documentation!("pattern_missing.md"),
    looks: Looks::AtDocument(check),
};

/// From so many fasteners on a joint can tilt.
const SEVERAL: u32 = 4;

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for (at, action) in actions(context).filter(|(_, action)| action.verb == Verb::Make) {
        for joint in action.on.iter().filter_map(|id| context.connection(id)) {
            let tight = joint.tight.as_ref().and_then(Known::value);
            let torque = action.torque.is_some() || tight.is_some_and(|tight| tight.torque.is_some());
            let pattern = action.pattern.is_some() || tight.is_some_and(|tight| !tight.pattern.is_empty());
            if joint.count >= SEVERAL && joint.grouping == Grouping::Together && torque && !pattern {
                let the = context.the_id(&joint.id);
                let title = format!("Step {} makes {the} to a torque without a pattern", at.number);
                findings.push(at.finding(
                    rule,
                    title,
                    "Say in which order: crosswise, from the middle outwards, in passes",
                ));
            }
        }
    }
}
