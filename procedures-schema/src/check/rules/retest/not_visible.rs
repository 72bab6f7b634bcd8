//! `retest/not-visible`: a test by sight claims what cannot be seen.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "retest/not-visible",
    level: Level::Reject,
    summary: "a test by sight claims what cannot be seen",
    documentation: documentation!("not_visible.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{}, and {} cannot be seen", w.step_does, w.thing),
        because: |w| format!("something still stands before {}", w.thing),
        remedy: |w| format!("Take off what stands before {} first", w.thing),
    }),
};
