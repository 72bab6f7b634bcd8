//! `putback/setting-not-recorded`: a setting is put back that was never recorded.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/setting-not-recorded",
    level: Level::Reject,
    summary: "a setting is put back that was never recorded",
    documentation: documentation!("setting_not_recorded.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} as found, and nobody wrote down what was found", w.step_does),
        because: |w| format!("{} was not recorded", w.thing),
        remedy: |w| format!("Record {} before the part comes off", w.thing),
    }),
};
