//! `putback/left-slack`: a connection is still slack at the end.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};
use crate::check::wording::capital;

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/left-slack",
    level: Level::Reject,
    summary: "a connection is still slack at the end",
    documentation: documentation!("left_slack.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} is left slack at the end, since {}", capital(&w.thing), w.since),
        because: |w| format!("{} was slackened and not tightened again", w.thing),
        remedy: |w| format!("Tighten {}", w.thing),
    }),
};
