//! `pressure/restored-open`: water is let into a section that is not shut.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "pressure/restored-open",
    level: Level::Reject,
    summary: "water is let into a section that is not shut",
    documentation: documentation!("restored_open.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while {} {} open", w.step_does, w.others, w.others_are),
        because: |w| format!("{} is not closed", w.others),
        remedy: |w| format!("Make or cap {} before this", w.others),
    }),
};
