//! Words that say that a seal is new.

use super::negation::Unsaying;
use super::phrase::Few;
use super::text::{Break, Token};
use super::word_set::WordSet;

/// Words for seals.
static SEALS: WordSet = WordSet::of(&[
    "disc", "discs", "fibre", "gasket", "gaskets", "hemp", "o-ring", "o-rings", "olive", "olives", "packing",
    "paste", "ptfe", "ring", "rings", "rope", "ropes", "seal", "seals", "sealant", "sealing", "tape",
    "washer", "washers",
]);

/// Words that say that something is new.
static NEW: WordSet = WordSet::of(&[
    "fresh",
    "new",
    "renew",
    "renewed",
    "renewing",
    "renews",
    "replace",
    "replaced",
    "replacement",
    "replaces",
    "replacing",
]);

/// Words that take newness to something else, or away.
const OLD: &[&str] = &["and", "existing", "no", "old", "reuse", "reused", "same"];

/// At most this many words stand between "new" and the seal, on either side.
const FURTHEST: usize = 4;

/// Whether a word for a seal, or one of `names`, stands near a word that says it is new.
pub(super) fn says_new(tokens: &[Token<'_>], names: &[&str]) -> bool {
    let mut new = tokens.iter().enumerate().filter(|(_, token)| NEW.has(token)).map(|(at, _)| at).peekable();
    if new.peek().is_none() {
        return false;
    }
    let names: Few<String> = names.iter().map(|name| name.to_lowercase()).collect();
    let is_seal = |token: &Token<'_>| SEALS.has(token) || names.iter().any(|name| *name == token.text);
    let unsaying = Unsaying::of(tokens);
    new.any(|new| {
        let around = new.saturating_sub(FURTHEST + 1)..=new + FURTHEST + 1;
        let seal_at = |at: &usize| tokens.get(*at).is_some_and(is_seal);
        !unsaying.reaches(new)
            && around.into_iter().filter(seal_at).any(|seal| near(tokens, new.min(seal), new.max(seal)))
    })
}

/// Whether two tokens belong together: close by, in one sentence, and nothing old between or before them.
fn near(tokens: &[Token<'_>], first: usize, last: usize) -> bool {
    let between = tokens.iter().take(last + 1).skip(first + 1);
    let is_old = |token: &Token<'_>| OLD.contains(&&*token.text);
    let parted = between.clone().any(|token| token.before == Break::Sentence || is_old(token));
    let denied = first.checked_sub(1).and_then(|i| tokens.get(i)).is_some_and(|token| token.text == "no");
    last - first <= FURTHEST + 1 && !parted && !denied
}
