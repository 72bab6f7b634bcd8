//! `isolation/not-shut-down`: a supply is cut under load: the appliance was not shut down first.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording};

pub(in crate::check) static RULE: Rule = Rule {
    code: "isolation/not-shut-down",
    level: Level::Warn,
    summary: "a supply is cut under load: the appliance was not shut down first",
    documentation: include_str!("not_shut_down.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while the appliance still runs", w.step_does),
        because: |_| "the appliance was not shut down".to_owned(),
        remedy: |_| "Shut down the appliance at its own control first".to_owned(),
    }),
};
