//! `pressure/not-proved`: a joint is touched that was not proved at zero.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "pressure/not-proved",
    level: Level::Reject,
    summary: "a joint is touched that was not proved at zero",
    documentation: documentation!("not_proved.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while nothing shows {} to be at zero", w.step_does, w.thing),
        because: |w| format!("{} was never proved at zero", w.thing),
        remedy: |w| {
            format!(
                "Prove {} at zero before this: gauge, no flow at an open vent or drain, temperature",
                w.thing
            )
        },
    }),
};
