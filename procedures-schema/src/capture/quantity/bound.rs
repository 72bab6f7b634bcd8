//! Words beside a figure that make it one end of a range.

use super::Finder;
use crate::lexicon::Break;

/// Which end of a range a figure is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Bound {
    Most,
    Least,
    None,
}

impl Bound {
    fn other(self) -> Self {
        match self {
            Self::Most => Self::Least,
            Self::Least => Self::Most,
            Self::None => Self::None,
        }
    }
}

impl Finder<'_> {
    /// Words before a figure: "at most", "not under", "no higher than", and the token behind them.
    pub(super) fn bound(&self, i: usize) -> (usize, Bound) {
        match (self.text(i), self.text(i + 1)) {
            ("up", "to") if (self.is_verb)(i) => (i, Bound::None),
            ("at", "most") | ("up", "to") | ("not", "above" | "over") => (i + 2, Bound::Most),
            ("at", "least") | ("not", "below" | "under") => (i + 2, Bound::Least),
            ("no" | "not", word) if self.text(i + 2) == "than" => match end_of(word) {
                Bound::Most => (i + 3, Bound::Least),
                Bound::Least => (i + 3, Bound::Most),
                Bound::None => (i, Bound::None),
            },
            (word, "than") => match end_of(word) {
                Bound::None => (i, Bound::None),
                bound if self.is_denied(i) => (i + 2, bound.other()),
                bound => (i + 2, bound),
            },
            ("below" | "under" | "max" | "maximum", _) => (i + 1, Bound::Most),
            ("min" | "minimum", figure) if figure.starts_with(|c: char| c.is_ascii_digit()) => {
                (i + 1, Bound::Least)
            }
            ("above" | "over", _) => (i + 1, Bound::Least),
            _ => (i, Bound::None),
        }
    }

    /// "It must *not* rise by more than 0.2 bar": whether what stands before a bound in its part of the sentence turns it
    /// round.
    fn is_denied(&self, i: usize) -> bool {
        const NEAR: usize = 6;
        let joined = |at: &usize| self.tokens.get(at + 1).is_some_and(|next| next.before == Break::None);
        let mut before = (i.saturating_sub(NEAR)..i).rev().take_while(joined).map(|at| self.text(at));
        before.any(|text| matches!(text, "cannot" | "never" | "no" | "not") || text.ends_with("n't"))
    }

    /// Words behind a figure: "20.6 % or better", "4 bar or less".
    pub(super) fn bound_behind(&self, i: usize) -> (usize, Bound) {
        let bound = match (self.text(i), self.text(i + 1)) {
            ("or", "above" | "better" | "over") => Bound::Least,
            ("or", "below" | "under") => Bound::Most,
            ("or", word) => end_of(word),
            _ => Bound::None,
        };
        if bound == Bound::None { (i, bound) } else { (i + 2, bound) }
    }
}

/// The end of the range that "less than" or "more than" a figure makes of it.
fn end_of(word: &str) -> Bound {
    match word {
        "fewer" | "less" | "lower" | "smaller" => Bound::Most,
        "greater" | "higher" | "larger" | "longer" | "more" => Bound::Least,
        _ => Bound::None,
    }
}
