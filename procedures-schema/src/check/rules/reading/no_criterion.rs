//! `reading/no-criterion`: an inspection has nothing to decide by.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "reading/no-criterion",
    level: Level::Reject,
    summary: "an inspection has nothing to decide by",
    documentation: documentation!("no_criterion.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} without a criterion", w.step_does),
        because: |w| format!("nothing says when {} is sound", w.thing),
        remedy: |_| "Say what decides: no crack, springs back, no scratch across the face".to_owned(),
    }),
};
