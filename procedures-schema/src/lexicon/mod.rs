//! The lexicon: which words of a language say which verb.
//!
//! Used twice: by the checker, which asks whether the words of a step say what its action does, and by
//! capture, which reads actions from words. A phrase may mean several verbs ("close" a valve, a drain, a
//! cover); the lexicon knows words only and leaves the choice to those who know the map. It works from
//! lists: inflected forms are listed, never guessed, and a word outside the lists says nothing.
//!
//! A phrase is unsaid by "do not", "never", "without", "before" and the like, as far as these reach.

mod amount;
mod ascii;
mod english;
mod english_nouns;
mod english_understood;
mod forms;
mod lowered;
mod negation;
mod number;
mod own;
mod phrase;
mod seal;
mod sides;
mod spoken;
mod stage;
#[cfg(test)]
mod tests;
mod text;
mod understood;
mod vocabulary;
mod word_set;

pub use amount::Amount;
pub(crate) use amount::amount;
pub use number::number_like;
pub use phrase::{Few, Said};
pub use text::{Break, Token, tokens};

pub(crate) use lowered::Lowered;
pub(crate) use own::Own;
pub(crate) use spoken::spoken;
pub(crate) use text::{mixed, tokens_into};
pub(crate) use vocabulary::Vocabulary;

use crate::model::{Action, Span, Stage};
use phrase::Phrases;
use std::sync::LazyLock;

/// The words of one language.
#[derive(Debug)]
pub struct Lexicon {
    phrases: Phrases,
}

static ENGLISH: LazyLock<Lexicon> = LazyLock::new(|| Lexicon {
    phrases: Phrases::of(
        english::PHRASES.into_iter().flatten().copied(),
        english_nouns::LOOKALIKES,
        &english_nouns::BEFORE_NOUNS,
    ),
});

impl Lexicon {
    /// The lexicon of a language (BCP 47: `en`, `en-GB`); none if there is none for it.
    pub fn for_language(language: &str) -> Option<&'static Self> {
        let primary = language.split(['-', '_']).next().unwrap_or("");
        primary.eq_ignore_ascii_case("en").then(|| &*ENGLISH)
    }

    /// The verb phrases in the words, in their order, each with whether it is unsaid.
    pub fn phrases(&self, words: &str) -> Vec<Said> {
        self.phrases_of(&tokens(words))
    }

    /// The verb phrases in words that are already cut into tokens.
    pub fn phrases_of(&self, tokens: &[Token<'_>]) -> Vec<Said> {
        self.phrases_with(tokens, &Own::default())
    }

    /// As [`Lexicon::phrases_of`], with those of a procedure.
    pub(crate) fn phrases_with(&self, tokens: &[Token<'_>], own: &Own) -> Vec<Said> {
        let mut said = Vec::new();
        self.phrases_into(tokens, own, &mut said);
        said
    }

    /// The phrases of the language and those of a procedure.
    fn find(&self, tokens: &[Token<'_>], own: &Own, said: &mut Vec<Said>) {
        let n_before = said.len();
        self.phrases.find(tokens, said);
        sides::drop_sides(tokens, said, n_before);
        own.add(tokens, said, n_before);
    }

    /// As [`Lexicon::phrases_with`], behind what is in the list already.
    pub(crate) fn phrases_into(&self, tokens: &[Token<'_>], own: &Own, said: &mut Vec<Said>) {
        let n_before = said.len();
        self.find(tokens, own, said);
        let found = understood::understood(tokens, said.get(n_before..).unwrap_or_default());
        if !found.is_empty() {
            said.truncate(n_before);
            let tokens = understood::with_understood(tokens, &found);
            self.find(&tokens, own, said);
            understood::complete(said, n_before, &tokens, &found);
            understood::without_understood(said.get_mut(n_before..).unwrap_or_default(), &found);
        }
    }

    /// Words with the verbs that are understood among them, and the phrases in them: "isolator off" is "*switch*
    /// isolator off". An understood token has no width.
    pub(crate) fn phrases_understood<'w>(
        &self,
        tokens: Vec<Token<'w>>,
        own: &Own,
    ) -> (Vec<Token<'w>>, Vec<Said>) {
        let mut said = Vec::new();
        self.find(&tokens, own, &mut said);
        let found = understood::understood(&tokens, &said);
        if found.is_empty() {
            return (tokens, said);
        }
        let tokens = understood::with_understood(&tokens, &found);
        said.clear();
        self.find(&tokens, own, &mut said);
        understood::complete(&mut said, 0, &tokens, &found);
        (tokens, said)
    }

    /// Whether a phrase begins with a word, whatever stands behind it.
    pub(crate) fn may_begin(&self, word: &Token<'_>) -> bool {
        self.phrases.may_begin(word)
    }

    /// Whether words that stand alone say the action's verb.
    ///
    /// Where the words are a stretch of a sentence use [`Lexicon::says_at`]: a "do not" may stand before
    /// the stretch.
    pub fn says(&self, spanned_words: &str, action: &Action) -> bool {
        self.phrases(spanned_words).iter().any(|said| said.says(&action.verb))
    }

    /// Whether the words at these spans say the action's verb, seen in the whole of the words.
    pub fn says_at(&self, words: &str, spans: &[Span], action: &Action) -> bool {
        Self::is_said_by(&self.phrases(words), spans, action)
    }

    /// As [`Lexicon::says_at`] for words whose phrases are known already.
    pub fn is_said_by(phrases: &[Said], spans: &[Span], action: &Action) -> bool {
        let within = |span: &Span| spans.iter().any(|wide| wide.0 <= span.0 && span.1 <= wide.1);
        phrases.iter().any(|said| said.says(&action.verb) && said.words.iter().all(within))
    }

    /// Whether the words say that a seal is new: "with a new washer", "renew the rope", "gasket, always
    /// new".
    pub fn says_new_seal(&self, words: &str) -> bool {
        self.says_new_of(words, &[])
    }

    /// As [`Lexicon::says_new_seal`], with further words that name the seal.
    pub fn says_new_of(&self, words: &str, names: &[&str]) -> bool {
        self.says_new_in(&tokens(words), names)
    }

    /// As [`Lexicon::says_new_of`], of words that are already cut into tokens.
    pub fn says_new_in(&self, tokens: &[Token<'_>], names: &[&str]) -> bool {
        seal::says_new(tokens, names)
    }

    /// The amount that a word or figure says: `two`, `both`, `all`, `4`.
    pub fn amount(&self, word: &str) -> Option<Amount> {
        amount::amount(word)
    }

    /// As [`Lexicon::amount`], of a token.
    pub fn amount_of(&self, token: &Token<'_>) -> Option<Amount> {
        amount::amount_of(token)
    }

    /// The positions of those of some tokens that begin with a digit or may be number words.
    pub(crate) fn numbers(tokens: &[Token<'_>]) -> Few<usize> {
        let may_be = |token: &Token<'_>| {
            token.raw.as_bytes().first().is_some_and(u8::is_ascii_digit)
                || amount::may_be_word(token)
                || spoken::may_begin(token)
        };
        tokens.iter().enumerate().filter(|(_, token)| may_be(token)).map(|(at, _)| at).collect()
    }

    /// The stage that a heading names.
    pub fn stage(&self, heading: &str) -> Option<Stage> {
        stage::stage(heading)
    }
}
