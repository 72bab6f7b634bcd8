//! `gas/fired-before-tested`: the burner starts before the gas joints that were touched were tested.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "gas/fired-before-tested",
    level: Level::Reject,
    summary: "the burner starts before the gas joints that were touched were tested",
    documentation: documentation!("fired_before_tested.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| {
            format!(
                "{} before {} {} tested",
                w.step_does,
                w.thing,
                if w.thing_is_one { "was" } else { "were" }
            )
        },
        because: |w| {
            format!("{} {} touched and not tested", w.thing, if w.thing_is_one { "was" } else { "were" })
        },
        remedy: |w| format!("Test {} for tightness before the start", w.thing),
    }),
};
