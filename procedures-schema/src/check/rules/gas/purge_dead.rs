//! `gas/purge-dead`: gas is purged while no gas reaches the section.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "gas/purge-dead",
    level: Level::Reject,
    summary: "gas is purged while no gas reaches the section",
    documentation: documentation!("purge_dead.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while no gas reaches it", w.step_does),
        because: |w| format!("{} is shut off", w.thing),
        remedy: |_| "Open the valve first".to_owned(),
    }),
};
