//! `pressure/not-released`: a joint is touched while its section is cut off but under pressure.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "pressure/not-released",
    level: Level::Reject,
    summary: "a joint is touched while its section is cut off but under pressure",
    documentation: documentation!("not_released.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while {} is under pressure", w.step_does, w.thing),
        because: |w| format!("{} is cut off, but its pressure was not released", w.thing),
        remedy: |w| format!("Release {} through a drain or vent before this", w.thing),
    }),
};
