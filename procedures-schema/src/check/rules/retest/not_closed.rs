//! `retest/not-closed`: a tightness or leak test is taken while the section is open.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "retest/not-closed",
    level: Level::Reject,
    summary: "a tightness or leak test is taken while the section is open",
    documentation: documentation!("not_closed.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while {} {} open", w.step_does, w.others, w.others_are),
        because: |w| format!("{} is not closed", w.others),
        remedy: |w| format!("Make {} before the test", w.others),
    }),
};
