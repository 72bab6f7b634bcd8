//! `isolation/left-unsafe`: the job is left with bare parts that can become live, or with the appliance running.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "isolation/left-unsafe",
    level: Level::Reject,
    summary: "the job is left with bare parts that can become live, or with the appliance running",
    documentation: documentation!("left_unsafe.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} with {} not safe to leave", w.step_does, w.thing),
        because: |w| format!("{} off or bare, and not dead and locked", w.others),
        remedy: |w| format!("Lock {} or cover it before leaving", w.thing),
    }),
};
