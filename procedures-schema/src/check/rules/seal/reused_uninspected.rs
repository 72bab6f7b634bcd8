//! `seal/reused-uninspected`: a seal goes back that was not looked at.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "seal/reused-uninspected",
    level: Level::Reject,
    summary: "a seal goes back that was not looked at",
    documentation: documentation!("reused_uninspected.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} with the old {}, and nobody looked at it", w.step_does, w.others),
        because: |w| format!("{} was not inspected since its joint was opened", w.others),
        remedy: |w| format!("Inspect {} against a criterion while the joint is open, or renew it", w.others),
    }),
};
