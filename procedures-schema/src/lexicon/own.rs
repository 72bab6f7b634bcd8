//! Phrases of one procedure beside those of the language.
//!
//! They are found as the phrases of the language are: in small letters, within a clause, and in the other forms of
//! their words, of which nobody has listed those of a word that somebody made a verb (`forms`). Where a phrase of the language has the same words either may be
//! meant: "knock off" the power, and in this procedure the lid.

use super::forms::{as_noun, as_verb};
use super::negation::Unsaying;
use super::phrase::{Few, Said, WIDEST};
use super::text::{Break, Token, tokens};
use crate::model::{OwnPhrase, Verb};

/// Words before which others may stand, although the phrase does not say so: "knock the pin *out*".
const PARTICLES: &[&str] = &["apart", "away", "back", "down", "in", "off", "on", "out", "up"];

/// The phrases of a procedure, cut into words.
#[derive(Debug, Default)]
pub(crate) struct Own {
    phrases: Vec<Phrase>,
}

#[derive(Debug)]
struct Phrase {
    words: Vec<Word>,
    means: &'static [Verb],
}

/// A word of a phrase.
#[derive(Debug)]
struct Word {
    forms: Vec<String>,
    /// Whether others may stand before it.
    gap: bool,
}

impl Word {
    fn fits(&self, token: &Token<'_>) -> bool {
        self.forms.iter().any(|form| *form == token.text)
    }
}

impl Own {
    /// Those of a procedure. A verb of a later version says nothing.
    pub(crate) fn of(phrases: &[OwnPhrase]) -> Self {
        Self { phrases: phrases.iter().filter_map(Phrase::of).collect() }
    }

    /// Adds those that stand in a text, of which phrases of the language have been found behind the first few.
    pub(super) fn add(&self, cut: &[Token<'_>], said: &mut Vec<Said>, n_before: usize) {
        let mut found: Vec<Said> = Vec::new();
        for phrase in &self.phrases {
            found.extend((0..cut.len()).filter_map(|at| phrase.at(cut, at)));
        }
        if found.is_empty() {
            return;
        }
        let shares = |one: &Said, other: &Said| one.tokens.iter().any(|i| other.tokens.contains(i));
        found.retain(|own| {
            let known = said.get(n_before..).unwrap_or_default();
            !known.iter().any(|known| shares(own, known) && known.tokens.len() > own.tokens.len())
        });
        let mut known = said.split_off(n_before.min(said.len()));
        let hides = |own: &Said, known: &Said| shares(own, known) && own.tokens.len() > known.tokens.len();
        known.retain(|known| !found.iter().any(|own| hides(own, known)));
        let unsaying = Unsaying::of(cut);
        for own in &mut found {
            own.words = own.tokens.iter().filter_map(|i| cut.get(*i)).map(|token| token.span).collect();
            own.unsaid = unsaying.reaches(own.tokens.first().copied().unwrap_or(0));
        }
        // Of two over the same words either may be meant, and what somebody has said before what is usual.
        found.extend(known);
        found.sort_by_key(|said| said.tokens.first().copied());
        said.extend(found);
    }
}

impl Phrase {
    fn of(own: &OwnPhrase) -> Option<Self> {
        let at = Verb::ALL.iter().position(|verb| *verb == own.verb)?;
        let means = Verb::ALL.get(at..=at)?;
        let mut words: Vec<Word> = Vec::new();
        for part in own.words.split('…') {
            for (n, token) in tokens(part).iter().enumerate() {
                let is_first = words.is_empty();
                let forms = if is_first { as_verb(&token.text) } else { as_noun(&token.text) };
                words.push(Word { forms, gap: n == 0 && !is_first });
            }
        }
        let n_words = words.len();
        if let Some(last) = words.last_mut().filter(|_| n_words > 1) {
            last.gap |= last.forms.iter().any(|form| PARTICLES.contains(&form.as_str()));
        }
        (n_words > 0).then_some(Self { words, means })
    }

    /// The phrase where it begins at a token.
    fn at(&self, cut: &[Token<'_>], at: usize) -> Option<Said> {
        let mut tokens: Few<usize> = Few::new();
        for word in &self.words {
            let next = match tokens.last() {
                None => Some(at).filter(|at| cut.get(*at).is_some_and(|token| word.fits(token))),
                Some(last) => Self::next(cut, last + 1, if word.gap { WIDEST } else { 0 }, word),
            };
            tokens.push(next?);
        }
        Some(Said { means: self.means, tokens, words: Few::new(), unsaid: false })
    }

    /// The first token of this text, at most so many from another, in the same clause.
    fn next(cut: &[Token<'_>], from: usize, widest: usize, word: &Word) -> Option<usize> {
        for i in from..=from + widest {
            let token = cut.get(i).filter(|token| token.before == Break::None)?;
            if word.fits(token) {
                return Some(i);
            }
        }
        None
    }
}
