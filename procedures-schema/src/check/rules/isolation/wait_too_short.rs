//! `isolation/wait-too-short`: stored charge has not had the time of its label to go.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "isolation/wait-too-short",
    level: Level::Reject,
    summary: "stored charge has not had the time of its label to go",
    documentation: documentation!("wait_too_short.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} before {} has had the time of its label", w.step_does, w.thing),
        because: |w| format!("{} is off for less than its label says", w.thing),
        remedy: |w| format!("Wait as long as the label of {} says before the cover comes off", w.thing),
    }),
};
