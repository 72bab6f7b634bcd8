//! `retest/order`: a test that is due comes too late.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "retest/order",
    level: Level::Reject,
    summary: "a test that is due comes too late",
    documentation: documentation!("order.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} before the {} of {}", w.step_does, w.test, w.thing),
        because: |w| {
            format!("{} {} touched and not tested", w.thing, if w.thing_is_one { "was" } else { "were" })
        },
        remedy: |w| format!("Add the {} of {} before this", w.test, w.thing),
    }),
};
