//! `putback/left-open`: a connection is still open at the end.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};
use crate::check::wording::capital;

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/left-open",
    level: Level::Reject,
    summary: "a connection is still open at the end",
    documentation: documentation!("left_open.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} is left open at the end, since {}", capital(&w.thing), w.since),
        because: |w| format!("{} was opened and not made again", w.thing),
        remedy: |w| format!("Make {} after everything that goes in before it", w.thing),
    }),
};
