//! `isolation/guard-off-live`: an electrical guard comes off while what it covers is fed.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "isolation/guard-off-live",
    level: Level::Reject,
    summary: "an electrical guard comes off while what it covers is fed",
    documentation: documentation!("guard_off_live.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while {} behind it is still fed", w.step_does, w.thing),
        because: |w| format!("{} {} open", w.others, w.others_are),
        remedy: |w| format!("Isolate and lock {} before the guard comes off", w.thing),
    }),
};
