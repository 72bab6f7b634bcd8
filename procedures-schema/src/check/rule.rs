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
    /// not, the source.
    pub documentation: Documentation,
    pub(super) looks: Looks,
}

/// What a rule says of itself.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Documentation {
    /// The text; empty without the feature `documentation`, for the weight of the page.
    pub text: &'static str,
    /// A number made of the text when the program was built, with the feature or without.
    pub print: u64,
}

/// A number that hardly two texts share: FNV-1a, 64 bits, by Fowler, Noll and Vo; a name, no protection.
pub(in crate::check) const fn print_of(text: &str, mut print: u64) -> u64 {
    let mut left = text.as_bytes();
    while let [byte, rest @ ..] = left {
        print = (print ^ *byte as u64).wrapping_mul(0x0100_0000_01b3);
        left = rest;
    }
    print
}

/// Where [`print_of`] begins.
pub(in crate::check) const FIRST_PRINT: u64 = 0xcbf2_9ce4_8422_2325;

/// The documentation in a file beside the rule.
macro_rules! documentation {
    ($file:literal) => {
        $crate::check::rule::Documentation {
            text: if cfg!(feature = "documentation") { include_str!($file) } else { "" },
            print: const {
                $crate::check::rule::print_of(include_str!($file), $crate::check::rule::FIRST_PRINT)
            },
        }
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
            thing: None,
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
