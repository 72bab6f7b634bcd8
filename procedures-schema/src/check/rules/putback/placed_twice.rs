//! `putback/placed-twice`: a temporary item is placed that is there.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/placed-twice",
    level: Level::Reject,
    summary: "a temporary item is placed that is there",
    documentation: documentation!("placed_twice.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{}, which is there already", w.step_does),
        because: |w| format!("{} was placed", w.thing),
        remedy: |_| "Take this out, or name the other one".to_owned(),
    }),
};
