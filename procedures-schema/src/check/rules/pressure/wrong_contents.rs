//! `pressure/wrong-contents`: a section is opened or charged with the wrong contents.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "pressure/wrong-contents",
    level: Level::Reject,
    summary: "a section is opened or charged with the wrong contents",
    documentation: documentation!("wrong_contents.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while {} is not fit for it inside", w.step_does, w.thing),
        because: |w| format!("{} is {}", w.thing, w.detail),
        remedy: |w| {
            format!(
                "Bring {} to what this needs: for a flammable refrigerant recover, purge inert, evacuate, purge inert",
                w.thing
            )
        },
    }),
};
