//! `isolation/can-start`: something is touched that can start or be driven.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "isolation/can-start",
    level: Level::Reject,
    summary: "something is touched that can start or be driven",
    documentation: documentation!("can_start.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while {} can still start", w.step_does, w.thing),
        because: |w| format!("what drives {} is not off, locked or shown to be still", w.thing),
        remedy: |w| format!("Switch off and lock what drives {}, and show that it stands still", w.thing),
    }),
};
