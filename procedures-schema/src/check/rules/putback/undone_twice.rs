//! `putback/undone-twice`: more is undone than is made.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/undone-twice",
    level: Level::Reject,
    summary: "more is undone than is made",
    documentation: documentation!("undone_twice.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{}, which is not made any more", w.step_does),
        because: |w| format!("{} is open already", w.thing),
        remedy: |_| "Take this out, or say how many".to_owned(),
    }),
};
