//! `putback/made-to-nothing`: a rigid connection is made while the part is not there.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/made-to-nothing",
    level: Level::Reject,
    summary: "a rigid connection is made while the part is not there",
    documentation: documentation!("made_to_nothing.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while {} {} off", w.step_does, w.others, w.others_are),
        because: |w| format!("{} was taken off", w.others),
        remedy: |w| format!("Fit {} first", w.others),
    }),
};
