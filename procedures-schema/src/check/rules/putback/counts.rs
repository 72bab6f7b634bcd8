//! `putback/counts`: more is made than is open.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/counts",
    level: Level::Reject,
    summary: "more is made than is open",
    documentation: documentation!("counts.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} in a number that does not fit", w.step_does),
        because: |w| format!("fewer of {} are open", w.thing),
        remedy: |_| "Correct the number".to_owned(),
    }),
};
