//! `putback/still-held`: a part is taken off while something still holds it.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "putback/still-held",
    level: Level::Reject,
    summary: "a part is taken off while something still holds it",
    documentation: documentation!("still_held.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| {
            format!(
                "{} while {} still {} it",
                w.step_does,
                w.others,
                if w.others_are == "is" { "holds" } else { "hold" }
            )
        },
        because: |w| format!("{} did not let go", w.others),
        remedy: |w| format!("Undo {} first", w.others),
    }),
};
