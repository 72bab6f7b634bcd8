//! `retest/trap-dry`: the appliance starts with a dry condensate trap.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "retest/trap-dry",
    level: Level::Reject,
    summary: "the appliance starts with a dry condensate trap",
    documentation: documentation!("trap_dry.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while {} is dry", w.step_does, w.thing),
        because: |w| format!("{} was opened and not filled", w.thing),
        remedy: |w| format!("Fill {} and look at it before the start", w.thing),
    }),
};
