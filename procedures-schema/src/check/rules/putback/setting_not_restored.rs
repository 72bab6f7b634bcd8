//! `putback/setting-not-restored`: a setting was lost with its part and not set again.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};
use crate::check::wording::capital;

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/setting-not-restored",
    level: Level::Reject,
    summary: "a setting was lost with its part and not set again",
    documentation: documentation!("setting_not_restored.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} is lost since {}", capital(&w.thing), w.since),
        because: |w| format!("{} went with the old part", w.thing),
        remedy: |w| format!("Set {} as recorded", w.thing),
    }),
};
