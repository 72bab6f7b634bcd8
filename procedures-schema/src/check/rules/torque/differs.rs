//! `torque/differs`: a torque of a step differs from that of the appliance map.

use crate::check::context::Context;
use crate::check::document::actions;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::model::Known;

pub(in crate::check) static RULE: Rule = Rule {
    code: "torque/differs",
    level: Level::Warn,
    summary: "a torque of a step differs from that of the appliance map",
    documentation: documentation!("differs.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for (at, action) in actions(context) {
        let Some(torque) = &action.torque else { continue };
        for joint in action.on.iter().filter_map(|id| context.connection(id)) {
            let known = joint.tight.as_ref().and_then(Known::value).and_then(|tight| tight.torque.as_ref());
            if let Some(known) = known.filter(|known| *known != torque) {
                let the = context.the_id(&joint.id);
                let title = format!("Step {} makes {the} to {torque}, and the map says {known}", at.number);
                findings.push(at.finding(rule, title, "Make both say the same"));
            }
        }
    }
}
