//! `pressure/energised-dry`: an electric element comes on while its store is not full.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "pressure/energised-dry",
    level: Level::Reject,
    summary: "an electric element comes on while its store is not full",
    documentation: documentation!("energised_dry.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while {} is not in full water", w.step_does, w.thing),
        because: |w| format!("{} is not full", w.others),
        remedy: |w| format!("Fill {} and let the air out first", w.others),
    }),
};
