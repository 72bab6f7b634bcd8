//! `putback/carried-left`: a new part goes on while what the old one carried stays on the old one.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/carried-left",
    level: Level::Reject,
    summary: "a new part goes on while what the old one carried stays on the old one",
    documentation: documentation!("carried_left.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while {} stays on the old one", w.step_does, w.others),
        because: |w| format!("{} came off with the old part", w.others),
        remedy: |w| {
            format!("Take {} off the old part and put it on the new one, or say that it comes new", w.others)
        },
    }),
};
