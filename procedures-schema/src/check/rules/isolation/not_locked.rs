//! `isolation/not-locked`: something is touched while its supply is off but not locked.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "isolation/not-locked",
    level: Level::Reject,
    summary: "something is touched while its supply is off but not locked",
    documentation: documentation!("not_locked.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while {} is off but not locked", w.step_does, w.thing),
        because: |w| format!("{} {} closed without a lock", w.others, w.others_are),
        remedy: |w| format!("Lock {} right after closing, and keep the key", w.others),
    }),
};
