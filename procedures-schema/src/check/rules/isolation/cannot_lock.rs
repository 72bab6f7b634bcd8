//! `isolation/cannot-lock`: a lock is asked for where none can be put on.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "isolation/cannot-lock",
    level: Level::Warn,
    summary: "a lock is asked for where none can be put on",
    documentation: documentation!("cannot_lock.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{}, on which no lock fits", w.step_does),
        because: |w| format!("{} is said not to be lockable", w.thing),
        remedy: |w| {
            format!(
                "Say how {} is kept shut instead: plug in the pocket, fuse in the pocket, handle off",
                w.thing
            )
        },
    }),
};
