//! The checker: looks at a document and its trace, and says what is wrong.
//!
//! [`check`] is total and deterministic: every document gets a [`Report`]. Rules look; they never
//! simulate. One finding stands for one cause: the same open valve met at four steps is one finding with
//! four places, even if several rules speak of it. A finding at level *reject* rejects the document.
//!
//! What would mend a finding is worked out and tried on demand by [`fixes()`], as ordinary edits.
//!
//! Every rule is one file under `rules/<family>/` with its documentation beside it; the list of all stands
//! in [`catalogue`]. Most rules word a demand that the simulator found unmet ([`code_of`] says which rule
//! owns which); the others look at the document.

mod agreement;
mod catalogue;
mod cause;
mod code;
mod context;
mod document;
mod finding;
mod fixes;
mod lower;
mod report;
mod rule;
mod rules;
mod sayings;
mod stated;
mod untyped;
mod wording;

pub use catalogue::rule_set;
pub use catalogue::{catalogue, rule_named};
pub use code::code_of;
pub use finding::{Because, Finding, Level};
pub use fixes::{Fix, fixes};
pub use report::{Report, Standing, Verdict, Waived, check, check_after, check_trace, check_with};
pub use rule::{Documentation, Rule};
pub use sayings::Sayings;
