//! `seal/not-renewed`: a seal that is always renewed goes back after its joint was disturbed.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};
use crate::model::a_new;

pub(in crate::check) static RULE: Rule = Rule {
    code: "seal/not-renewed",
    level: Level::Reject,
    summary: "a seal that is always renewed goes back after its joint was disturbed",
    documentation: documentation!("not_renewed.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} without {}", w.step_does, a_new(&w.others)),
        because: |w| format!("{} was opened or slackened", w.thing),
        remedy: |w| format!("Say in this step that it is made with {}", a_new(&w.others)),
    }),
};
