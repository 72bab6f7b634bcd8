//! `isolation/restored-open`: a supply comes back to a plug or terminal that is not made.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "isolation/restored-open",
    level: Level::Reject,
    summary: "a supply comes back to a plug or terminal that is not made",
    documentation: documentation!("restored_open.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while {} {} not made", w.step_does, w.others, w.others_are),
        because: |w| format!("{} is not made", w.others),
        remedy: |w| format!("Make {} first, or mark the step as justified live work", w.others),
    }),
};
