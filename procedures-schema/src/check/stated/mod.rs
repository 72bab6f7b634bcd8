//! What words state beside what is done: figures with units, sizes, counts and names, held against what the
//! actions of the step and the appliance map say.
//!
//! Words speak of more than one action holds: a spanner has a size, a valve a pressure, and a sentence may tell
//! how long something else takes. So words and actions differ here only where one of each is left over when all
//! that agree have been put together; where more is open, nothing is said.

mod counts;
mod figures;
mod names;
mod reading;
mod sizes;

use super::context::Context;
use crate::lexicon::{Token, tokens_into};
use crate::model::{Action, Span, Step};

/// Words that state something else than the action or the map.
#[derive(Debug, PartialEq, Eq)]
pub(super) struct Difference {
    /// The words.
    pub(super) span: Span,
    /// What they state: "90 N·m", "two bolts", "the discharge flange".
    pub(super) stated: String,
    /// What holds instead: "its action makes the suction flange to 40 N·m to 45 N·m".
    pub(super) held: String,
}

/// What the words of a step state otherwise than its actions, at the position of a step.
pub(super) fn differences(context: &Context<'_>, position: usize, step: &Step) -> Vec<Difference> {
    let mut found = Vec::new();
    if step.actions.is_empty() {
        return found;
    }
    let Some(lower) = context.heard.lower_at(position) else { return found };
    names::differ(context, &lower, step, &mut found);
    // What states no figure needs no closer look, and most words state none.
    let has_figure = step.words.bytes().any(|byte| byte.is_ascii_digit());
    let has_number =
        |action: &Action| action.duration.is_some() || counts::count_of(context, action).is_some();
    if !has_figure && !step.actions.iter().any(has_number) {
        return found;
    }
    let holds_figures = step.actions.iter().any(figures::may_hold);
    let names_joints =
        step.actions.iter().flat_map(|action| &action.on).any(|id| context.connection(id).is_some());
    if !holds_figures && !names_joints {
        return found;
    }
    let mut tokens = Vec::new();
    tokens_into(&step.words, lower.0, &mut tokens);
    if holds_figures {
        figures::differ(context, step, &tokens, &mut found);
    }
    sizes::differ(context, step, &tokens, &mut found);
    counts::differ(context, step, &tokens, &mut found);
    found
}

/// The word at a position, in lower case.
fn word<'t>(tokens: &'t [Token<'_>], at: usize) -> &'t str {
    tokens.get(at).map_or("", |token| token.text.as_ref())
}

/// Whether a token ends its clause.
fn ends_a_clause(tokens: &[Token<'_>], at: usize) -> bool {
    tokens.get(at + 1).is_none_or(|next| next.before != crate::lexicon::Break::None)
}

/// The words from one token to another, that one included, and where they stand.
fn stretch(words: &str, tokens: &[Token<'_>], from: usize, last: usize) -> (Span, String) {
    let at = |at: usize| tokens.get(at).map_or(Span(0, 0), |token| token.span);
    let span = Span(at(from).0, at(last).1);
    (span, span.of(words).to_owned())
}
