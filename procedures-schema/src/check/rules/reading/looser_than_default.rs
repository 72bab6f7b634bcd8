//! `reading/looser-than-default`: a limit of a proof is wider than that of its kind.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "reading/looser-than-default",
    level: Level::Reject,
    summary: "a limit of a proof is wider than that of its kind",
    documentation: documentation!("looser_than_default.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{} with a limit wider than that of its kind", w.step_does),
        because: |w| format!("a limit for {} is wider than the default", w.thing),
        remedy: |w| {
            format!(
                "Use the default limit for {} or a tighter one, or give the source of another demand",
                w.thing
            )
        },
    }),
};
