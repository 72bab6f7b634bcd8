//! `pressure/not-locked`: a joint under steam, compressed air or a heat network is touched while its valves are shut but not locked.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "pressure/not-locked",
    level: Level::Reject,
    summary: "a joint under steam, compressed air or a heat network is touched while its valves are shut but not locked",
    documentation: documentation!("not_locked.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while {} is shut off but not locked", w.step_does, w.thing),
        because: |w| format!("{} {} closed without a lock", w.others, w.others_are),
        remedy: |w| format!("Lock or tag {} right after closing", w.others),
    }),
};
