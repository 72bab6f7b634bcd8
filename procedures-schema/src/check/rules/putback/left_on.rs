//! `putback/left-on`: an isolator that is normally closed is open at the end.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};
use crate::check::wording::capital;

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/left-on",
    level: Level::Reject,
    summary: "an isolator that is normally closed is open at the end",
    documentation: documentation!("left_on.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} is open at the end, since {}", capital(&w.thing), w.since),
        because: |w| format!("{} was opened and not closed again", w.thing),
        remedy: |w| format!("Close {} before hand-over", w.thing),
    }),
};
