//! `isolation/no-handle`: an isolator is closed that cannot be shut here.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "isolation/no-handle",
    level: Level::Reject,
    summary: "an isolator is closed that cannot be shut here",
    documentation: documentation!("no_handle.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{}, which cannot be shut here", w.step_does),
        because: |w| format!("{} has no handle", w.thing),
        remedy: |_| {
            "Isolate at a valve or switch that can be shut, or name one in the appliance map".to_owned()
        },
    }),
};
