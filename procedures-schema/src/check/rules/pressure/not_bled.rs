//! `pressure/not-bled`: the appliance starts with air in the water.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "pressure/not-bled",
    level: Level::Reject,
    summary: "the appliance starts with air in the water",
    documentation: documentation!("not_bled.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while air is still in {}", w.step_does, w.thing),
        because: |w| format!("{} was opened or drained and not bled", w.thing),
        remedy: |w| format!("Fill and bleed {} before the start", w.thing),
    }),
};
