//! `gas/not-purged`: the burner starts with air in the gas.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "gas/not-purged",
    level: Level::Reject,
    summary: "the burner starts with air in the gas",
    documentation: documentation!("not_purged.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while air is still in {}", w.step_does, w.thing),
        because: |w| format!("{} was opened and not purged", w.thing),
        remedy: |w| format!("Purge {} before the start", w.thing),
    }),
};
