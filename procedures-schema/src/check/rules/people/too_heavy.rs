//! `people/too-heavy`: a part is lifted that is too heavy for the people named.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "people/too-heavy",
    level: Level::Reject,
    summary: "a part is lifted that is too heavy for the people named",
    documentation: documentation!("too_heavy.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} with too few people", w.step_does),
        because: |w| format!("{} weighs more than 25 kg a person", w.thing),
        remedy: |_| "Say how many people, or which lifting gear".to_owned(),
    }),
};
