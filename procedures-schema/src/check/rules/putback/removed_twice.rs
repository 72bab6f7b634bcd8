//! `putback/removed-twice`: something is removed that is off.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording};

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/removed-twice",
    level: Level::Reject,
    summary: "something is removed that is off",
    documentation: include_str!("removed_twice.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{}, which is off already", w.step_does),
        because: |w| format!("{} was taken off", w.thing),
        remedy: |_| "Take this out".to_owned(),
    }),
};
