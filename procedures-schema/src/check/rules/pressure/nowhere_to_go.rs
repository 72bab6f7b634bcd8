//! `pressure/nowhere-to-go`: a section is let out with nowhere for the medium to go.

use crate::check::finding::Level;
use crate::check::rule::{Looks, Rule, Wording, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "pressure/nowhere-to-go",
    level: Level::Reject,
    summary: "a section is let out with nowhere for the medium to go",
    documentation: documentation!("nowhere_to_go.md"),
    looks: Looks::AtUnmet(Wording {
        title: |w| format!("{}, and nothing says where it goes", w.step_does),
        because: |w| format!("nothing catches or leads away what comes out of {}", w.thing),
        remedy: |_| "Say where it goes: a bucket, a gully, a tray".to_owned(),
    }),
};
