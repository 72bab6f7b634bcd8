//! `pressure/no-vent`: a closed section is drained without a vent.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "pressure/no-vent",
    level: Level::Warn,
    summary: "a closed section is drained without a vent",
    documentation: documentation!("no_vent.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} without a vent", w.step_does),
        because: |w| format!("nothing lets air into {}", w.thing),
        remedy: |_| "Name the vent or tap that is opened high up".to_owned(),
    }),
};
