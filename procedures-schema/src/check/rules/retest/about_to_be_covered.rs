//! `retest/about-to-be-covered`: a joint is covered before the cold check that it still needs.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "retest/about-to-be-covered",
    level: Level::Warn,
    summary: "a joint is covered before the cold check that it still needs",
    documentation: documentation!("about_to_be_covered.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} over {} before the {}", w.step_does, w.thing, w.test),
        because: |w| {
            format!("{} {} made and not looked at", w.thing, if w.thing_is_one { "was" } else { "were" })
        },
        remedy: |w| format!("Look at {} before it is covered", w.thing),
    }),
};
