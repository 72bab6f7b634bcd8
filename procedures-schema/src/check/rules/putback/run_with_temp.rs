//! `putback/run-with-temp`: the appliance starts with a restraint or transport protection in place.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/run-with-temp",
    level: Level::Reject,
    summary: "the appliance starts with a restraint or transport protection in place",
    documentation: documentation!("run_with_temp.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} with {} still in place", w.step_does, w.thing),
        because: |w| format!("{} was placed or came with the new part", w.thing),
        remedy: |w| format!("Take {} away before the start", w.thing),
    }),
};
