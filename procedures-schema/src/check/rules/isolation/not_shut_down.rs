//! `isolation/not-shut-down`: the appliance still runs when a supply is cut or a circuit is emptied.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "isolation/not-shut-down",
    level: Level::Reject,
    summary: "the appliance still runs when a supply is cut or a circuit is emptied",
    documentation: documentation!("not_shut_down.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while the appliance still runs", w.step_does),
        because: |_| "the appliance was not shut down".to_owned(),
        remedy: |_| "Shut down the appliance at its own control first".to_owned(),
    }),
};
