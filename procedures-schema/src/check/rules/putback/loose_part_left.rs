//! `putback/loose-part-left`: a loose part that came out is not in when its joint is made.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/loose-part-left",
    level: Level::Reject,
    summary: "a loose part that came out is not in when its joint is made",
    documentation: documentation!("loose_part_left.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} without {}", w.step_does, w.others),
        because: |w| format!("{} came out when the joint was opened", w.others),
        remedy: |w| format!("Put {} in first", w.others),
    }),
};
