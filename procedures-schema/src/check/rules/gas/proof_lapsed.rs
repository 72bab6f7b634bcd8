//! `gas/proof-lapsed`: something is touched whose proof no longer holds.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "gas/proof-lapsed",
    level: Level::Reject,
    summary: "something is touched whose proof no longer holds",
    documentation: documentation!("proof_lapsed.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while the proof of {} no longer holds", w.step_does, w.thing),
        because: |w| format!("{} was proved, and {}", w.thing, w.detail),
        remedy: |w| format!("Prove {} again before this", w.thing),
    }),
};
