//! `putback/covers-unfinished`: a part goes on over what is unfinished.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/covers-unfinished",
    level: Level::Reject,
    summary: "a part goes on over what is unfinished",
    documentation: documentation!("covers_unfinished.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} over {}, which {} unfinished", w.step_does, w.others, w.others_are),
        because: |w| format!("{} is off, open or slack", w.others),
        remedy: |w| format!("Finish {} first", w.others),
    }),
};
