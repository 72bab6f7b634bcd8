//! `control/no-reason`: a part is discarded without a reason.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "control/no-reason",
    level: Level::Reject,
    summary: "a part is discarded without a reason",
    documentation: documentation!("no_reason.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} without a reason", w.step_does),
        because: |w| format!("nothing says why {} is no longer needed", w.thing),
        remedy: |_| "Say why".to_owned(),
    }),
};
