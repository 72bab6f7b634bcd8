//! `putback/supply-off`: an isolator that is normally open is closed at the end.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};
use crate::check::wording::capital;

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/supply-off",
    level: Level::Reject,
    summary: "an isolator that is normally open is closed at the end",
    documentation: documentation!("supply_off.md"),
    looks: Looks::AtUnmet(Wording {
        // To whoever thinks of a switch, "closed" means on.
        title: |w| format!("{} is still off at the end, since {}", capital(&w.thing), w.since),
        because: |w| format!("{} was shut or switched off and not put on again", w.thing),
        remedy: |w| format!("Restore {} before hand-over", w.thing),
    }),
};
