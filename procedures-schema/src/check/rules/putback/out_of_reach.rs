//! `putback/out-of-reach`: something is touched that cannot be reached.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/out-of-reach",
    level: Level::Reject,
    summary: "something is touched that cannot be reached",
    documentation: documentation!("out_of_reach.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} behind {}", w.step_does, w.others),
        because: |w| format!("{} {} still in place", w.others, w.others_are),
        remedy: |w| {
            format!("Take off {} first, or say in the appliance map that it can be reached", w.others)
        },
    }),
};
