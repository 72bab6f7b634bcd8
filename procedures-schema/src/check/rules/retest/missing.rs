//! `retest/missing`: something was touched, released or restored and not tested after that.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};
use crate::check::wording::capital;

pub(in crate::check) static RULE: Rule = Rule {
    code: "retest/missing",
    level: Level::Reject,
    summary: "something was touched, released or restored and not tested after that",
    documentation: documentation!("missing.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| {
            format!(
                "{} {} no {} after {}",
                capital(&w.thing),
                if w.thing_is_one { "gets" } else { "get" },
                w.test,
                w.since
            )
        },
        because: |w| {
            format!("{} {} touched or changed", w.thing, if w.thing_is_one { "was" } else { "were" })
        },
        remedy: |w| {
            format!(
                "Add a {} after {} while it loads {}; a test covers only what it loads and, by sight, what can be seen",
                w.test, w.since, w.thing
            )
        },
    }),
};
