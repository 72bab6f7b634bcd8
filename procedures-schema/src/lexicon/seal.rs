//! Words that say that a seal is new.

use super::negation::Unsaying;
use super::text::{Break, Token};

/// Words for seals.
const SEALS: &[&str] = &[
    "disc", "discs", "fibre", "gasket", "gaskets", "hemp", "o-ring", "o-rings", "packing", "paste", "ptfe",
    "ring", "rings", "rope", "ropes", "seal", "seals", "sealant", "sealing", "tape", "washer", "washers",
];

/// Words that say that something is new.
const NEW: &[&str] = &[
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
];

/// Words that take newness to something else, or away.
const OLD: &[&str] = &["and", "existing", "no", "old", "reuse", "reused", "same"];

/// At most this many words stand between "new" and the seal, on either side.
const FURTHEST: usize = 4;

/// Whether a word for a seal, or one of `names`, stands near a word that says it is new.
pub(super) fn says_new(tokens: &[Token<'_>], names: &[&str]) -> bool {
    let names: Vec<String> = names.iter().map(|name| name.to_lowercase()).collect();
    let is_seal =
        |token: &Token<'_>| SEALS.contains(&&*token.text) || names.iter().any(|name| *name == token.text);
    let is_new = |token: &Token<'_>| NEW.contains(&&*token.text);
    let positions = |test: &dyn Fn(&Token<'_>) -> bool| -> Vec<usize> {
        tokens.iter().enumerate().filter(|(_, token)| test(token)).map(|(i, _)| i).collect()
    };
    let seals = positions(&is_seal);
    let unsaying = Unsaying::of(tokens);
    positions(&is_new).into_iter().any(|new| {
        !unsaying.reaches(new) && seals.iter().any(|seal| near(tokens, new.min(*seal), new.max(*seal)))
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
