//! `gas/fired-case-open`: the burner starts with its air or flue side open.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "gas/fired-case-open",
    level: Level::Reject,
    summary: "the burner starts with its air or flue side open",
    documentation: documentation!("fired_case_open.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while {} {} open", w.step_does, w.others, w.others_are),
        because: |w| format!("{} is not made", w.others),
        remedy: |w| format!("Make {} before the start", w.others),
    }),
};
