//! `isolation/locked-open`: an isolator is locked while it is open.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "isolation/locked-open",
    level: Level::Reject,
    summary: "an isolator is locked while it is open",
    documentation: documentation!("locked_open.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while it is open", w.step_does),
        because: |w| format!("{} was not closed", w.thing),
        remedy: |w| format!("Close {} before locking it", w.thing),
    }),
};
