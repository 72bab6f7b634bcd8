//! `isolation/drained-live`: a section is drained while a part in it is still electrified.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "isolation/drained-live",
    level: Level::Reject,
    summary: "a section is drained while a part in it is still electrified",
    documentation: documentation!("drained_live.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while {} is still electrified", w.step_does, w.thing),
        because: |w| format!("{} {} open", w.others, w.others_are),
        remedy: |w| format!("Isolate and lock every feed of {} before draining", w.thing),
    }),
};
