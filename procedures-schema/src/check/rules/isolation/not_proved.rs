//! `isolation/not-proved`: something is touched that was not proved dead.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "isolation/not-proved",
    level: Level::Reject,
    summary: "something is touched that was not proved dead",
    documentation: documentation!("not_proved.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while nothing shows {} to be dead", w.step_does, w.thing),
        because: |w| format!("{} was never proved dead", w.thing),
        remedy: |w| format!("Prove {} dead before this, with every reading of its kind", w.thing),
    }),
};
