//! `seal/reused-unsound`: a seal goes back that was found not sound.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "seal/reused-unsound",
    level: Level::Reject,
    summary: "a seal goes back that was found not sound",
    documentation: documentation!("reused_unsound.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} with {}, which was found not sound", w.step_does, w.others),
        because: |w| format!("the answer says that {} is not sound", w.others),
        remedy: |w| format!("Renew {} on this answer", w.others),
    }),
};
