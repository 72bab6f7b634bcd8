//! `gas/open-end`: an open end is left without a closure.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "gas/open-end",
    level: Level::Reject,
    summary: "an open end is left without a closure",
    documentation: documentation!("open_end.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| {
            format!("{} while {} {} open and not closed by a cap", w.step_does, w.others, w.others_are)
        },
        because: |w| format!("{} is open", w.others),
        remedy: |w| format!("Close {} with a proper cap, plug or gauge before leaving", w.others),
    }),
};
