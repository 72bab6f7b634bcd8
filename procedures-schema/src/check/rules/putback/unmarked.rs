//! `putback/unmarked`: connections that look alike are parted without a mark.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/unmarked",
    level: Level::Warn,
    summary: "connections that look alike are parted without a mark",
    documentation: documentation!("unmarked.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{}, which looks like {}, unmarked", w.step_does, w.others),
        because: |w| format!("{} was not marked or photographed", w.thing),
        remedy: |_| "Mark or photograph them before they are parted".to_owned(),
    }),
};
