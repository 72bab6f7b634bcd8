//! `putback/taken-not-placed`: a temporary item is taken away that is not there.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/taken-not-placed",
    level: Level::Reject,
    summary: "a temporary item is taken away that is not there",
    documentation: documentation!("taken_not_placed.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{}, which is not there", w.step_does),
        because: |w| format!("{} was not placed", w.thing),
        remedy: |_| "Place it where that was forgotten, or take this out".to_owned(),
    }),
};
