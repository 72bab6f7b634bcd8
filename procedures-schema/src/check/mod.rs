//! The checker: looks at a document and its trace, and says what is wrong.
//!
//! [`check`] is total and deterministic: every document gets a [`Report`]. Rules look; they never
//! simulate. One finding stands for one cause: the same open valve met at four steps is one finding with
//! four places. A finding at level *reject* rejects the document.
//!
//! Every rule is one file under `rules/<family>/` with its documentation beside it; the list of all stands
//! in [`catalogue`].

mod catalogue;
mod cause;
mod context;
mod ending;
mod finding;
mod ladder;
mod report;
mod rule;
mod rules;
mod wording;

pub use catalogue::{catalogue, rule_named};
pub use finding::{Because, Finding, Level};
pub use report::{Report, Standing, Verdict, check, check_trace};
pub use rule::Rule;
