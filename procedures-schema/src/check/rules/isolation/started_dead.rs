//! `isolation/started-dead`: the appliance is started while its electricity is still off.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "isolation/started-dead",
    level: Level::Reject,
    summary: "the appliance is started while its electricity is still off",
    documentation: documentation!("started_dead.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while {} is off", w.step_does, w.thing),
        because: |w| format!("{} was not restored", w.others),
        remedy: |w| format!("Restore {} before this, when everything on it is whole", w.others),
    }),
};
