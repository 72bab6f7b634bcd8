//! `putback/temp-gone`: something that was in place at the start is gone at the end.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};
use crate::check::wording::capital;

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/temp-gone",
    level: Level::Reject,
    summary: "something that was in place at the start is gone at the end",
    documentation: documentation!("temp_gone.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} is gone at the end, since {}", capital(&w.thing), w.since),
        because: |w| format!("{} was there when the job began", w.thing),
        remedy: |w| format!("Put {} back", w.thing),
    }),
};
