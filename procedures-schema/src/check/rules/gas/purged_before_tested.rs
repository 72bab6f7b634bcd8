//! `gas/purged-before-tested`: gas is let through before the joints that were touched were tested.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "gas/purged-before-tested",
    level: Level::Reject,
    summary: "gas is let through before the joints that were touched were tested",
    documentation: documentation!("purged_before_tested.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| {
            format!(
                "{} before {} {} tested for tightness",
                w.step_does,
                w.thing,
                if w.thing_is_one { "was" } else { "were" }
            )
        },
        because: |w| {
            format!("{} {} touched and not tested", w.thing, if w.thing_is_one { "was" } else { "were" })
        },
        remedy: |w| format!("Test {} for tightness first", w.thing),
    }),
};
