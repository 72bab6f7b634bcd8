//! `isolation/already-open`: an isolator is opened that is open.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "isolation/already-open",
    level: Level::Reject,
    summary: "an isolator is opened that is open",
    documentation: documentation!("already_open.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{}, which is not off", w.step_does),
        because: |w| format!("{} was not shut or switched off", w.thing),
        remedy: |w| format!("Take this out, or shut {} off where it was forgotten", w.thing),
    }),
};
