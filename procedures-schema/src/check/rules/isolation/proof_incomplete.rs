//! `isolation/proof-incomplete`: a proof lacks a reading of its kind, or has them out of order.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "isolation/proof-incomplete",
    level: Level::Reject,
    summary: "a proof lacks a reading of its kind, or has them out of order",
    documentation: documentation!("proof_incomplete.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} without every reading of its kind, in order", w.step_does),
        because: |w| format!("the readings of {} are not complete", w.thing),
        remedy: |w| format!("Add the missing readings of {} in their order", w.thing),
    }),
};
