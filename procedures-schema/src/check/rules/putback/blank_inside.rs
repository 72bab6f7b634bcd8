//! `putback/blank-inside`: a joint is made or a part fitted while a cap or plug still closes it.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/blank-inside",
    level: Level::Reject,
    summary: "a joint is made or a part fitted while a cap or plug still closes it",
    documentation: documentation!("blank_inside.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while {} still closes it", w.step_does, w.others),
        because: |w| format!("{} was placed and not taken away", w.others),
        remedy: |w| format!("Take {} away first", w.others),
    }),
};
