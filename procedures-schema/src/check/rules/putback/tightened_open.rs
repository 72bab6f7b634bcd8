//! `putback/tightened-open`: something open is tightened.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/tightened-open",
    level: Level::Reject,
    summary: "something open is tightened",
    documentation: documentation!("tightened_open.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while part of it is open", w.step_does),
        because: |w| format!("{} is open", w.thing),
        remedy: |w| format!("Make {} instead", w.thing),
    }),
};
