//! What unsays a verb: "do not", "never", "without", "before", as far as they reach.
//!
//! When in doubt a verb counts as unsaid: a warning too many is an annoyance, an order that was never
//! given is a danger.

use super::phrase::Few;
use super::text::{Break, Token};
use super::word_set::WordSet;

/// Words that unsay what follows.
static UNSAY: WordSet = WordSet::of(&[
    "aren't",
    "avoid",
    "before",
    "can't",
    "cannot",
    "couldn't",
    "didn't",
    "doesn't",
    "don't",
    "forbidden",
    "hasn't",
    "haven't",
    "isn't",
    "mustn't",
    "needn't",
    "neither",
    "never",
    "nobody",
    "none",
    "nor",
    "not",
    "prohibited",
    "rather",
    "shouldn't",
    "unless",
    "wasn't",
    "without",
    "won't",
]);

/// Words that unsay what follows on a condition: "no need", "instead of", and those that leave something out
/// unless they are unsaid themselves, "skip the leak test".
static OTHERS: WordSet = WordSet::of(&["forget", "instead", "no", "omit", "omitting", "skip", "skipping"]);

/// Words that, after "not", unsay what came before: "locking is not needed".
const NOT_WANTED: &[&str] = &["allowed", "necessary", "needed", "permitted", "required", "wanted"];

/// Words after which an unsaying word does not count: "do not forget to lock it off", "not only".
const KEEP_SAYING: &[&str] = &["fail", "forget", "omit", "only"];

/// Words that end the reach.
const ENDS: &[&str] = &["but", "instead", "otherwise", "then"];

/// The words of a text that unsay others; most texts have none.
pub(super) struct Unsaying<'t, 'w> {
    tokens: &'t [Token<'w>],
    /// Where a word stands that unsays what follows.
    following: Few<usize>,
    /// Where "not needed" or the like stands, which unsays what came before.
    preceding: Few<usize>,
}

impl<'t, 'w> Unsaying<'t, 'w> {
    /// Those of a text.
    pub(super) fn of(tokens: &'t [Token<'w>]) -> Self {
        let is = |i: usize, words: &[&str]| tokens.get(i).is_some_and(|token| words.contains(&&*token.text));
        let (mut following, mut preceding) = (Few::new(), Few::new());
        for (i, token) in tokens.iter().enumerate() {
            let unsaid_itself = || i.checked_sub(1).and_then(|i| tokens.get(i)).is_some_and(|t| UNSAY.has(t));
            let unsays = if UNSAY.has(token) {
                !is(i + 1, KEEP_SAYING)
            } else if OTHERS.has(token) {
                match &*token.text {
                    "no" => is(i + 1, &["need"]),
                    "instead" => is(i + 1, &["of"]),
                    _ => !unsaid_itself(),
                }
            } else {
                continue;
            };
            if unsays {
                following.push(i);
            }
            if token.text == "not" && is(i + 1, NOT_WANTED) {
                preceding.push(i);
            }
        }
        Self { tokens, following, preceding }
    }

    /// Whether what begins at a token is unsaid.
    pub(super) fn reaches(&self, begin: usize) -> bool {
        let in_one_part = |i: usize| {
            let part = self.tokens.iter().take(i + 2).skip(begin + 1);
            part.into_iter().all(|token| token.before == Break::None)
        };
        self.preceding.iter().any(|i| *i > begin && in_one_part(*i))
            || (!self.following.is_empty() && self.is_unsaid_before(begin))
    }

    /// Whether a word before it in the same sentence unsays it.
    fn is_unsaid_before(&self, begin: usize) -> bool {
        let mut upto = self.tokens.iter().take(begin + 1);
        let sentence = upto.rposition(|token| token.before == Break::Sentence).unwrap_or(0);
        self.following.iter().any(|i| (sentence..begin).contains(i) && reaches(self.tokens, *i, begin))
    }
}

/// Whether what an unsaying word says reaches up to a token of the same sentence.
///
/// A comma ends it, unless the sentence goes on with "or": "do not open, close or lock it".
fn reaches(tokens: &[Token<'_>], from: usize, to: usize) -> bool {
    let mut between = tokens.iter().take(to + 1).skip(from + 1);
    let ended = between.clone().any(|token| ENDS.contains(&&*token.text));
    let comma = between.position(|token| token.before == Break::Comma);
    let goes_on_with_or = |comma: usize| {
        let rest = tokens.iter().skip(from + 1 + comma);
        let mut sentence = rest.take_while(|token| token.before != Break::Sentence);
        sentence.any(|token| token.text == "or" || token.text == "nor")
    };
    !ended && comma.is_none_or(goes_on_with_or)
}
