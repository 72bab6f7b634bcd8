//! `putback/removed-twice`: something is removed that is off.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/removed-twice",
    level: Level::Reject,
    summary: "something is removed that is off",
    documentation: documentation!("removed_twice.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{}, which is off already", w.step_does),
        because: |w| format!("{} was taken off", w.thing),
        remedy: |_| "Take this out".to_owned(),
    }),
};
