//! `seal/renewed-unopened`: a new seal is claimed for a joint that was not open.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "seal/renewed-unopened",
    level: Level::Reject,
    summary: "a new seal is claimed for a joint that was not open",
    documentation: documentation!("renewed_unopened.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} with a new seal, and the joint was not open", w.step_does),
        because: |w| format!("{} was only slack, or not all of it open", w.thing),
        remedy: |w| format!("Undo {} fully, or tighten it without a new seal", w.thing),
    }),
};
