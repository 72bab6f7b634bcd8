//! `putback/run-with-lost-setting`: the appliance starts while a setting is lost.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/run-with-lost-setting",
    level: Level::Reject,
    summary: "the appliance starts while a setting is lost",
    documentation: documentation!("run_with_lost_setting.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while {} is not set", w.step_does, w.thing),
        because: |w| format!("{} was lost with the old part", w.thing),
        remedy: |w| format!("Set {} before the start", w.thing),
    }),
};
