//! `torque/retorque-missing`: a joint that is tightened again after the first warm run was not.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};
use crate::check::wording::capital;

pub(in crate::check) static RULE: Rule = Rule {
    code: "torque/retorque-missing",
    level: Level::Reject,
    summary: "a joint that is tightened again after the first warm run was not",
    documentation: documentation!("retorque_missing.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} is not tightened again after {}", capital(&w.thing), w.since),
        because: |w| format!("{} was made anew", w.thing),
        remedy: |w| format!("Tighten {} again dead and proved, and check it for leaks", w.thing),
    }),
};
