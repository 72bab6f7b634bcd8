//! `putback/left-off`: a component is still off or aside at the end.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};
use crate::check::wording::capital;

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/left-off",
    level: Level::Reject,
    summary: "a component is still off or aside at the end",
    documentation: documentation!("left_off.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} is not back in place at the end, since {}", capital(&w.thing), w.since),
        because: |w| format!("{} was taken off or moved aside and not fitted again", w.thing),
        remedy: |w| format!("Fit {} and make what holds it", w.thing),
    }),
};
