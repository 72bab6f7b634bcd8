//! "The lever of the safety valve *and of the relief valve*": who says twice whose it is, means two.

use super::coin::noun as sort;
use super::mention::is_plural;
use crate::lexicon::{Break, Token};

/// What leads from a thing to its owner.
const LEADS: &[&str] = &["from", "of", "off"];
/// At most so many words stand between an article and the noun.
const MOST_WORDS: usize = 4;

/// The tokens with "both levers of the safety valve and the relief valve".
pub(super) fn with_one_of_each(tokens: Vec<Token<'_>>) -> Vec<Token<'_>> {
    let is_led = |at: usize| tokens.get(at).is_some_and(|token| LEADS.contains(&&*token.text));
    if !(1..tokens.len()).any(|i| tokens[i - 1].text == "and" && is_led(i)) {
        return tokens;
    }
    let twice: Vec<Twice> = (0..tokens.len()).filter_map(|at| Twice::at(&tokens, at)).collect();
    let mut all = Vec::with_capacity(tokens.len());
    for (i, token) in tokens.into_iter().enumerate() {
        if twice.iter().any(|one| one.noun == i) {
            all.push(token.in_plural());
        } else if twice.iter().any(|one| one.article == i) {
            all.push(token.taken_for("both"));
        } else if twice.iter().all(|one| one.again != i) {
            all.push(token);
        }
    }
    all
}

/// A noun in the singular of which two owners are said.
struct Twice {
    article: usize,
    noun: usize,
    /// The preposition before the second owner.
    again: usize,
}

impl Twice {
    /// The noun at a token, if two owners stand behind it, each behind the same preposition.
    fn at(tokens: &[Token<'_>], noun: usize) -> Option<Self> {
        let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
        let joined = |i: &usize| tokens.get(*i).is_some_and(|token| token.before == Break::None);
        let lead = text(noun + 1);
        let is_led = |i: usize| text(i) == lead && text(i + 1) == "the";
        let is_thing = || sort(&[text(noun).to_owned()]).is_worked_on();
        if !LEADS.contains(&lead)
            || !joined(&(noun + 1))
            || !is_led(noun + 1)
            || is_plural(text(noun))
            || !is_thing()
        {
            return None;
        }
        let mut before = (noun.saturating_sub(MOST_WORDS)..noun).rev().take_while(|i| joined(&(i + 1)));
        let article = before.find(|i| text(*i) == "the")?;
        let mut behind = (noun + 3..=noun + 3 + MOST_WORDS).take_while(joined);
        let and = behind.find(|i| text(*i) == "and" && is_led(i + 1))?;
        Some(Self { article, noun, again: and + 1 })
    }
}
