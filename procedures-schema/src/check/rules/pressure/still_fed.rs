//! `pressure/still-fed`: a joint is touched while a supply or a neighbouring section still presses on it.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "pressure/still-fed",
    level: Level::Reject,
    summary: "a joint is touched while a supply or a neighbouring section still presses on it",
    documentation: documentation!("still_fed.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while {} is still fed", w.step_does, w.thing),
        because: |w| format!("{} {} open", w.others, w.others_are),
        remedy: |w| format!("Isolate {} at {} before this", w.thing, w.others),
    }),
};
