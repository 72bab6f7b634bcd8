//! `pressure/not-filled`: a section is bled that has nothing in it.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "pressure/not-filled",
    level: Level::Reject,
    summary: "a section is bled that has nothing in it",
    documentation: documentation!("not_filled.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while nothing is in it", w.step_does),
        because: |w| format!("{} holds air and is not filled", w.thing),
        remedy: |w| format!("Open a valve into {} or fill it first", w.thing),
    }),
};
