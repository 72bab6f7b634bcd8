//! `putback/temp-left`: a temporary item is still in place at the end.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};
use crate::check::wording::capital;

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/temp-left",
    level: Level::Reject,
    summary: "a temporary item is still in place at the end",
    documentation: documentation!("temp_left.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} is still in place at the end, since {}", capital(&w.thing), w.since),
        because: |w| format!("{} was placed and not taken away", w.thing),
        remedy: |w| format!("Take away {}, or say in the appliance map why it stays", w.thing),
    }),
};
