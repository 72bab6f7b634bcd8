//! `gas/no-bond`: metal gas pipe is parted, or its bond taken off, without continuity.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "gas/no-bond",
    level: Level::Reject,
    summary: "metal gas pipe is parted, or its bond taken off, without continuity",
    documentation: documentation!("no_bond.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} without a bond across the gap", w.step_does),
        because: |_| "nothing bonds the two sides of the joint".to_owned(),
        remedy: |_| "Clip the bond on before the joint opens, and take it off when it is made".to_owned(),
    }),
};
