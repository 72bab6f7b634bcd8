//! `retest/way-back-differs`: what follows a failed test does not come back to where a pass would be.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "retest/way-back-differs",
    level: Level::Reject,
    summary: "what follows a failed test does not come back to where a pass would be",
    documentation: documentation!("way_back_differs.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| {
            format!("{}, and after a failure {} stands otherwise than after a pass", w.step_does, w.thing)
        },
        because: |w| {
            format!("the steps after a failure leave {} otherwise, or do not test it again", w.thing)
        },
        remedy: |_| {
            "End the steps after a failure with everything as before the test, and with the test itself"
                .to_owned()
        },
    }),
};
