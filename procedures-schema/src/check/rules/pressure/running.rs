//! `pressure/running`: a condensate joint is opened while the appliance runs.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "pressure/running",
    level: Level::Reject,
    summary: "a condensate joint is opened while the appliance runs",
    documentation: documentation!("running.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while the appliance runs", w.step_does),
        because: |_| "the appliance was not shut down".to_owned(),
        remedy: |_| "Shut down the appliance before this".to_owned(),
    }),
};
