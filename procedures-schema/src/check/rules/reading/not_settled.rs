//! `reading/not-settled`: a figure is taken before the appliance has run steadily.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "reading/not-settled",
    level: Level::Reject,
    summary: "a figure is taken before the appliance has run steadily",
    documentation: documentation!("not_settled.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} too early", w.step_does),
        because: |_| "the appliance took up this rate".to_owned(),
        remedy: |_| "Wait until it has run 10 min at the highest rate, 3 min at the lowest".to_owned(),
    }),
};
