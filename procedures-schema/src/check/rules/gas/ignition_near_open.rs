//! `gas/ignition-near-open`: a flame is used while a flammable section stands open.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "gas/ignition-near-open",
    level: Level::Reject,
    summary: "a flame is used while a flammable section stands open",
    documentation: documentation!("ignition_near_open.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} with a flame while {} {} open", w.step_does, w.others, w.others_are),
        because: |w| format!("{} is open to the room", w.others),
        remedy: |w| format!("Close {} or make its section inert before a flame is lit", w.others),
    }),
};
