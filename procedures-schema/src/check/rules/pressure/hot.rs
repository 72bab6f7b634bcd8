//! `pressure/hot`: a joint is cracked to let water out while it is or may be hot.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "pressure/hot",
    level: Level::Reject,
    summary: "a joint is cracked to let water out while it is or may be hot",
    documentation: documentation!("hot.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} through a joint, and nothing shows that it is cool", w.step_does),
        because: |w| format!("no temperature of at most 43 °C was read for {}", w.thing),
        remedy: |w| format!("Read the temperature of {} first; at most 43 °C", w.thing),
    }),
};
