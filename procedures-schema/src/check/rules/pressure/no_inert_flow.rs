//! `pressure/no-inert-flow`: a refrigerant joint is brazed without inert gas flowing.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "pressure/no-inert-flow",
    level: Level::Reject,
    summary: "a refrigerant joint is brazed without inert gas flowing",
    documentation: documentation!("no_inert_flow.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} without inert gas flowing through it", w.step_does),
        because: |w| format!("{} is not purged, or nothing keeps inert gas flowing", w.thing),
        remedy: |_| "Purge with nitrogen, and let it flow while brazing".to_owned(),
    }),
};
