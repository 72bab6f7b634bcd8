//! What a rule is.

use super::context::Context;
use super::finding::{Finding, Level};
use super::wording::Words;

/// One rule of the checker.
pub struct Rule {
    /// Its code `family/what-is-wrong`, stable for ever.
    pub code: &'static str,
    /// The most serious level of its findings.
    pub level: Level,
    /// What it finds, in one clause.
    pub summary: &'static str,
    /// Its documentation in Markdown: what it finds, why it matters, an example that fires, one that does
    /// not, the source. Empty without the feature `documentation`.
    pub documentation: &'static str,
    pub(super) looks: Looks,
}

/// The text of a file beside the rule; the page does without, for its weight.
macro_rules! documentation {
    ($file:literal) => {
        if cfg!(feature = "documentation") { include_str!($file) } else { "" }
    };
}
pub(super) use documentation;

/// Where a rule looks.
pub(super) enum Looks {
    /// At demands that the simulator found unmet; the rule only words them.
    AtUnmet(Wording),
    /// At the document and its trace.
    AtDocument(fn(&Rule, &Context<'_>, &mut Vec<Finding>)),
}

/// How a rule words an unmet demand.
pub(super) struct Wording {
    /// What is wrong: one clause that names step and thing.
    pub(super) title: fn(&Words) -> String,
    /// The state that led to it; "since step 4" is added.
    pub(super) because: fn(&Words) -> String,
    /// What to do.
    pub(super) remedy: fn(&Words) -> String,
}

impl Rule {
    /// The family, the part of the code before the stroke.
    pub fn family(&self) -> &'static str {
        self.code.split_once('/').map_or(self.code, |(family, _)| family)
    }

    /// An empty finding of this rule.
    pub(super) fn finding(&self, title: String) -> Finding {
        Finding {
            code: self.code,
            level: self.level,
            step: None,
            action: None,
            span: None,
            circuit: None,
            title,
            because: Vec::new(),
            remedy: Vec::new(),
            also: Vec::new(),
            again: Vec::new(),
            answers: Vec::new(),
        }
    }
}

impl std::fmt::Debug for Rule {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Rule").field("code", &self.code).field("level", &self.level).finish_non_exhaustive()
    }
}
