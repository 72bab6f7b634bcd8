//! `putback/not-renewed`: the goal of the job is not reached on every way.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/not-renewed",
    level: Level::Reject,
    summary: "the goal of the job is not reached on every way",
    documentation: documentation!("not_renewed.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} is not done to {}, the goal of the job", "What the job is for", w.thing),
        because: |w| format!("nothing in the steps does it to {}", w.thing),
        remedy: |_| "Add the step that does it, or correct the goal".to_owned(),
    }),
};
