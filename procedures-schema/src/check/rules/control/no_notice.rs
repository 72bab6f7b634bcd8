//! `control/no-notice`: an appliance is left out of service without a notice.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "control/no-notice",
    level: Level::Reject,
    summary: "an appliance is left out of service without a notice",
    documentation: documentation!("no_notice.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} without a notice", w.step_does),
        because: |_| "no notice hangs on the appliance".to_owned(),
        remedy: |_| "Hang a notice before leaving".to_owned(),
    }),
};
