//! `isolation/restored-guard-off`: a supply comes back while a guard is off.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "isolation/restored-guard-off",
    level: Level::Reject,
    summary: "a supply comes back while a guard is off",
    documentation: documentation!("restored_guard_off.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while {} {} off or not held", w.step_does, w.others, w.others_are),
        because: |w| format!("{} would lie bare and live", w.thing),
        remedy: |w| {
            format!(
                "Put {} back and make what holds it first, or mark the step as justified live work",
                w.others
            )
        },
    }),
};
