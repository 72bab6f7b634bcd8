//! `putback/fit-not-removed`: something is fitted that is in its place.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/fit-not-removed",
    level: Level::Reject,
    summary: "something is fitted that is in its place",
    documentation: documentation!("fit_not_removed.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{}, which is in its place", w.step_does),
        because: |w| format!("{} was not taken off", w.thing),
        remedy: |_| "Take it off where that was forgotten, or take this out".to_owned(),
    }),
};
