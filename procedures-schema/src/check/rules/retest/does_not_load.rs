//! `retest/does-not-load`: a test claims a thing that it does not load.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "retest/does-not-load",
    level: Level::Reject,
    summary: "a test claims a thing that it does not load",
    documentation: documentation!("does_not_load.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{}, and does not load {}", w.step_does, w.thing),
        because: |w| format!("{} is not joined to where the test is taken", w.thing),
        remedy: |w| format!("Open the valve to {}, or test where it is", w.thing),
    }),
};
