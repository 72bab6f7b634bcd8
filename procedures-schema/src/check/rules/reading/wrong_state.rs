//! `reading/wrong-state`: a test or reading is taken in a state that cannot show it.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "reading/wrong-state",
    level: Level::Reject,
    summary: "a test or reading is taken in a state that cannot show it",
    documentation: documentation!("wrong_state.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} while nothing is in the state for it", w.step_does),
        because: |w| format!("what it needs of {} is not there", w.thing),
        remedy: |_| "Bring the appliance into the state first".to_owned(),
    }),
};
