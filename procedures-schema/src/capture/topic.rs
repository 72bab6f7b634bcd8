//! Whose the things of a sentence are, where that is said once at its beginning: "*Boiler 1*: shut the gas cock", "*on the left
//! pump* undo the plug".

use super::coin::{
    CONDITIONS, ENDS, Noun, PREPOSITIONS, is_adverb, is_appliance, is_label, is_numbered_place, is_particle,
    noun,
};
use super::mention::singular;
use super::twins::is_side;
use crate::lexicon::{Break, Token};
use crate::model::Span;
use std::ops::Range;

/// What leads to the place of all that follows: "*on* boiler 1 shut the gas cock".
const LEADS: &[&str] = &["at", "for", "in", "on"];
/// What says whose a thing is, or that it comes away from something.
const OWNERS: &[&str] = &["from", "of", "off"];
/// Of the words in the name of an owner at most so many stand before its noun.
const MOST_WORDS: usize = 3;

/// The one of several that a sentence is about.
struct Topic {
    /// The tokens of its name.
    name: Range<usize>,
    /// The first token behind it.
    behind: usize,
    /// The first token of the next sentence.
    end: usize,
}

/// The tokens with "of boiler 1" behind what is named in a sentence that begins with "boiler 1:" or "on boiler 1".
pub(super) fn with_topics<'w>(words: &str, mut tokens: Vec<Token<'w>>) -> Vec<Token<'w>> {
    let mut at = 0;
    while at < tokens.len() {
        let end = end_of_sentence(&tokens, at);
        at = match topic(words, &tokens, at..end) {
            Some(topic) => {
                let n_before = tokens.len();
                let end = topic.end;
                tokens = with_topic(tokens, &topic);
                end + tokens.len() - n_before
            }
            None => end,
        };
    }
    tokens
}

fn end_of_sentence(tokens: &[Token<'_>], from: usize) -> usize {
    let begins = |i: &usize| tokens.get(*i).is_some_and(|token| token.before == Break::Sentence);
    (from + 1..tokens.len()).find(begins).unwrap_or(tokens.len())
}

fn topic(words: &str, tokens: &[Token<'_>], sentence: Range<usize>) -> Option<Topic> {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let is_led = LEADS.contains(&text(sentence.start));
    let from = sentence.start + usize::from(is_led);
    let name = name_of_one(tokens, from..sentence.end)?;
    if is_led {
        let goes_on = name.end < sentence.end && !matches!(text(name.end), "and" | "or" | "to");
        return (goes_on && !PREPOSITIONS.contains(&text(name.end))).then_some(Topic {
            behind: name.end,
            end: sentence.end,
            name,
        });
    }
    let between = Span(tokens.get(sentence.end - 1)?.span.1, tokens.get(sentence.end)?.span.0);
    let is_heading = name.end == sentence.end && between.of(words).contains(':');
    is_heading.then(|| Topic { behind: sentence.end, end: end_of_sentence(tokens, sentence.end), name })
}

/// "Boiler 1", "*the left pump*", "zone 2": one of several, without its article.
fn name_of_one(tokens: &[Token<'_>], within: Range<usize>) -> Option<Range<usize>> {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let joined = |i: usize| within.contains(&i) && tokens.get(i).is_some_and(|t| t.before == Break::None);
    let from = within.start + usize::from(text(within.start) == "the");
    let is_owner = |i: usize| {
        let word = [singular(text(i))];
        word.iter().any(|word| is_numbered_place(word)) || is_appliance(&word) || noun(&word) == Noun::Part
    };
    let is_name = |i: usize| i == from || (joined(i) && is_word(text(i)));
    let head = (from..from + MOST_WORDS).take_while(|i| is_name(*i)).find(|i| is_owner(*i))?;
    let has_label = joined(head + 1) && tokens.get(head + 1).is_some_and(|token| is_label(token.raw));
    let is_told = has_label || (from..head).any(|i| is_side(text(i)));
    is_told.then(|| from..head + 1 + usize::from(has_label))
}

/// The tokens with whose they are behind the names of a sentence.
fn with_topic<'w>(tokens: Vec<Token<'w>>, topic: &Topic) -> Vec<Token<'w>> {
    let owner: Vec<Token<'w>> = tokens.get(topic.name.clone()).unwrap_or_default().to_vec();
    let ends = ends_of_names(&tokens, topic);
    let mut all = Vec::with_capacity(tokens.len() + ends.len() * (owner.len() + 1));
    for (i, token) in tokens.into_iter().enumerate() {
        let is_its = (topic.behind..topic.end).contains(&i) && token.text == "its";
        let at = token.span.1;
        let is_own = is_its && ends.iter().any(|end| (i + 1..=i + MOST_WORDS + 2).contains(end));
        all.push(if is_own { token.taken_for("the") } else { token });
        if ends.contains(&i) {
            all.push(Token::without_width("of", at, Break::None));
            all.extend(owner.iter().map(|word| word.lent_to(at)));
        }
    }
    all
}

/// The last tokens of the names in a sentence that get whose they are: of what is worked on, and not said to be of anything.
fn ends_of_names(tokens: &[Token<'_>], topic: &Topic) -> Vec<usize> {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let joined = |i: usize| i < topic.end && tokens.get(i).is_some_and(|token| token.before == Break::None);
    let own_noun = topic.name.clone().rev().map(text).find(|word| !is_label(&word.to_uppercase()));
    let is_end = |i: &usize| {
        let goes_on = joined(i + 1) && is_word(text(i + 1)) && !is_state(text(i + 1));
        let has_label = joined(i + 1) && tokens.get(i + 1).is_some_and(|token| is_label(token.raw));
        is_word(text(*i))
            && !goes_on
            && !has_label
            && Some(text(*i)) != own_noun
            && noun(&[singular(text(*i))]).is_worked_on()
    };
    // "Take the cover *off* and clean it", "lift it off *its hooks*" say of nothing else that it is off it.
    let is_name = |i: usize| joined(i) && (is_word(text(i)) || matches!(text(i), "a" | "an" | "the"));
    let is_placed = |i: usize| joined(i + 1) && OWNERS.contains(&text(i + 1)) && is_name(i + 2);
    let is_led = |i: usize| {
        let is_lead = |i: usize| PREPOSITIONS.contains(&text(i));
        let goes_on = |i: &usize| joined(*i) && !is_lead(*i) && !matches!(text(*i), "and" | "then");
        let first = (topic.behind..=i).rev().take_while(goes_on).last().unwrap_or(i);
        let is_own = text(first) == "its" && matches!(text(first - 1), "at" | "by" | "with");
        first > topic.behind && joined(first) && is_lead(first - 1) && !is_own
    };
    (topic.behind..topic.end).filter(|i| is_end(i) && !is_placed(*i) && !is_led(*i)).collect()
}

/// "The gas cock *shut*."
fn is_state(word: &str) -> bool {
    is_particle(word) || is_adverb(word)
}

/// Whether a word may belong to a name.
fn is_word(word: &str) -> bool {
    word.starts_with(char::is_alphabetic)
        && ![PREPOSITIONS, ENDS, CONDITIONS].iter().any(|list| list.contains(&word))
        && !matches!(word, "a" | "an" | "and" | "its" | "the")
}
