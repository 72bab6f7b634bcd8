//! `isolation/proved-elsewhere`: an electrical proof is taken where the terminals cannot be reached yet.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "isolation/proved-elsewhere",
    level: Level::Warn,
    summary: "an electrical proof is taken where the terminals cannot be reached yet",
    documentation: documentation!("proved_elsewhere.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} at {}, which is still covered", w.step_does, w.thing),
        because: |w| format!("{} cannot be reached yet", w.thing),
        remedy: |w| format!("Prove at {} after the cover is off", w.thing),
    }),
};
