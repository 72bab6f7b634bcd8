//! `retest/no-baseline`: gas is opened without a tightness test before.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};
use crate::check::wording::capital;

pub(in crate::check) static RULE: Rule = Rule {
    code: "retest/no-baseline",
    level: Level::Warn,
    summary: "gas is opened without a tightness test before",
    documentation: documentation!("no_baseline.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} was opened at {} with no tightness test before", capital(&w.thing), w.since),
        because: |w| format!("{} was opened first", w.thing),
        remedy: |_| "Test for tightness before the first gas joint opens".to_owned(),
    }),
};
