//! `putback/made-not-opened`: something is made that was not open.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/made-not-opened",
    level: Level::Reject,
    summary: "something is made that was not open",
    documentation: documentation!("made_not_opened.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{}, which was not open", w.step_does),
        because: |w| format!("{} was not undone", w.thing),
        remedy: |_| "Undo it where that was forgotten, or take this out".to_owned(),
    }),
};
