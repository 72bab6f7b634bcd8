//! `isolation/still-fed`: something is touched while electricity still reaches it.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "isolation/still-fed",
    level: Level::Reject,
    summary: "something is touched while electricity still reaches it",
    documentation: documentation!("still_fed.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while {} is still fed", w.step_does, w.thing),
        because: |w| format!("{} {} open", w.others, w.others_are),
        remedy: |w| format!("Isolate {} at {} before this", w.thing, w.others),
    }),
};
