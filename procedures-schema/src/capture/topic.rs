//! Whose the things of a sentence are, where that is said once at its beginning: "*Boiler 1*: shut the gas cock", "*on the left
//! pump* undo the plug".

use super::coin::{
    CONDITIONS, ENDS, Noun, PREPOSITIONS, counts, is_adverb, is_appliance, is_label, is_numbered_place,
    is_particle, noun,
};
use super::mention::singular;
use super::twins::{WHERE, is_side};
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
    /// The token of its noun.
    head: usize,
    /// The first token behind it.
    behind: usize,
    /// The first token that it is not said of.
    end: usize,
}

/// The tokens with "of boiler 1" behind what is named in a sentence that begins with "boiler 1:" or "on boiler 1".
pub(super) fn with_topics<'w>(words: &str, mut tokens: Vec<Token<'w>>) -> Vec<Token<'w>> {
    let mut at = 0;
    while at < tokens.len() {
        let end = end_of_sentence(&tokens, at);
        at = match topic(words, &tokens, at..end) {
            Some(topic) => {
                let (n_before, end) = (tokens.len(), topic.end);
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
    let Beginning { name, head, is_led } = beginning(words, tokens, sentence.clone())?;
    let behind = name.end;
    let end = if is_led { sentence.end } else { end_of_topic(words, tokens, behind) };
    Some(Topic { name, head, behind, end })
}

/// How a sentence begins that has a topic.
struct Beginning {
    name: Range<usize>,
    head: usize,
    /// "*On* boiler 1", and no heading.
    is_led: bool,
}

fn beginning(words: &str, tokens: &[Token<'_>], sentence: Range<usize>) -> Option<Beginning> {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let is_led = LEADS.contains(&text(sentence.start));
    let (name, head) = name_of_one(tokens, sentence.start + usize::from(is_led)..sentence.end)?;
    let next = text(name.end);
    if is_led {
        let ends = matches!(next, "and" | "or" | "to") || PREPOSITIONS.contains(&next);
        return (name.end < sentence.end && !ends).then_some(Beginning { name, head, is_led });
    }
    // "Boiler 1 - shut the gas cock."
    let is_dash = || between(words, tokens, name.end).trim().starts_with(['-', '\u{2013}']);
    let is_heading =
        if name.end == sentence.end { ends_at_colon(words, tokens, name.end) } else { is_dash() };
    is_heading.then_some(Beginning { name, head, is_led })
}

/// What stands in the words before a token, behind the one before it.
fn between<'w>(words: &'w str, tokens: &[Token<'_>], at: usize) -> &'w str {
    let end = |i: usize| tokens.get(i).map(|token| token.span);
    let both = at.checked_sub(1).and_then(end).zip(end(at));
    both.map_or("", |(last, next)| Span(last.1, next.0).of(words))
}

fn ends_at_colon(words: &str, tokens: &[Token<'_>], end: usize) -> bool {
    between(words, tokens, end).contains(':')
}

/// Where a sentence begins that has a topic or a heading of its own; a heading is said of all before that.
fn end_of_topic(words: &str, tokens: &[Token<'_>], behind: usize) -> usize {
    let mut at = end_of_sentence(tokens, behind);
    while at < tokens.len() {
        let end = end_of_sentence(tokens, at);
        if ends_at_colon(words, tokens, end) || beginning(words, tokens, at..end).is_some() {
            break;
        }
        at = end;
    }
    at
}

/// "Boiler 1", "*the left pump*", "zone 2": one of several, without its article; and its noun.
fn name_of_one(tokens: &[Token<'_>], within: Range<usize>) -> Option<(Range<usize>, usize)> {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let joined = |i: usize| within.contains(&i) && tokens.get(i).is_some_and(|t| t.before == Break::None);
    let is_label = |i: usize| joined(i) && tokens.get(i).is_some_and(|token| is_label(token.raw));
    let from = within.start + usize::from(text(within.start) == "the");
    let is_part = |i: usize| noun(&[singular(text(i))]) == Noun::Part;
    let is_owner = |i: usize| {
        let word = [singular(text(i))];
        let is_place = word.iter().any(|word| is_numbered_place(word));
        // "*Fryer* 1": what nobody knows is one of several by its number, if it counts nothing.
        let is_told = || noun(&word) == Noun::Unknown && is_label(i + 1) && !counts(&word[0]);
        is_place || is_appliance(&word) || is_part(i) || is_told()
    };
    let is_name = |i: usize| i == from || (joined(i) && is_word(text(i)));
    let mut head = (from..from + MOST_WORDS).take_while(|i| is_name(*i)).find(|i| is_owner(*i))?;
    let mut is_told = (from..head).any(|i| is_side(text(i)));
    let mut end = head + 1;
    // "On the left burner *door*", "pump 2 *motor*": the last of its nouns.
    loop {
        if is_label(end) {
            (is_told, end) = (true, end + 1);
        } else if joined(end) && is_part(end) && is_word(text(end)) {
            (head, end) = (end, end + 1);
        } else {
            break;
        }
    }
    is_told.then_some((from..end, head))
}

/// How a token of a sentence is said of its topic.
enum Place {
    /// The last of a name: "of boiler 1" stands behind it.
    End,
    /// The first of a name behind "of": "the screws of the *boiler 1* head".
    Within,
    /// The noun of the topic: "take *the pump* out".
    Own,
    /// What stands for it.
    Pronoun,
}

/// The tokens with whose they are at the names of a sentence.
fn with_topic<'w>(tokens: Vec<Token<'w>>, topic: &Topic) -> Vec<Token<'w>> {
    let owner: Vec<Token<'w>> = tokens.get(topic.name.clone()).unwrap_or_default().to_vec();
    let places = places(&tokens, topic);
    let n_before = topic.head - topic.name.start;
    let named = |at: u32, words: &[Token<'w>]| -> Vec<Token<'w>> {
        words.iter().map(|word| word.lent_to(at)).collect()
    };
    let mut all = Vec::with_capacity(tokens.len() + places.len() * (owner.len() + 1));
    for (i, token) in tokens.into_iter().enumerate() {
        let (begin, end) = (token.span.0, token.span.1);
        let place = places.iter().find(|(at, _)| *at == i).map(|(_, place)| place);
        let is_its = token.text == "its" && places.iter().any(|(at, _)| (i + 1..=i + 5).contains(at));
        match place {
            Some(Place::Pronoun) => all.extend(owner.iter().map(|word| word.in_place_of(&token))),
            Some(Place::Own) => {
                all.extend(named(begin, owner.get(..n_before).unwrap_or_default()));
                all.push(token);
                all.extend(named(end, owner.get(n_before + 1..).unwrap_or_default()));
            }
            Some(Place::Within) => {
                all.extend(named(begin, &owner));
                all.push(token);
            }
            Some(Place::End) => {
                all.push(token);
                all.push(Token::without_width("of", end, Break::None));
                all.extend(named(end, &owner));
            }
            None => all.push(if is_its { token.taken_for("the") } else { token }),
        }
    }
    all
}

/// The tokens of a sentence that are said of its topic: of what is worked on, and not said to be of anything else.
fn places(tokens: &[Token<'_>], topic: &Topic) -> Vec<(usize, Place)> {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let (mut all, mut has_part): (Vec<(usize, Place)>, bool) = (Vec::new(), false);
    let mut i = topic.behind;
    while i < topic.end {
        let end = end_of_name(tokens, topic, i);
        if end == i {
            // "Fan 1: take *it* out."
            if text(i) == "it" && all.is_empty() {
                all.push((i, Place::Pronoun));
            }
            i += 1;
            continue;
        }
        all.extend(place_of_name(tokens, topic, i..end, has_part));
        has_part |= noun(&[singular(text(end - 1))]) == Noun::Part;
        i = end;
    }
    all
}

/// The token behind a name that begins at a token; the token itself where none does.
fn end_of_name(tokens: &[Token<'_>], topic: &Topic, from: usize) -> usize {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let joined = |i: usize| i < topic.end && tokens.get(i).is_some_and(|token| token.before == Break::None);
    if !is_word(text(from)) {
        return from;
    }
    let goes_on = |i: &usize| joined(*i) && is_word(text(*i)) && !is_state(text(*i));
    from + 1 + (from + 1..topic.end).take_while(goes_on).count()
}

/// How a name is said of the topic, if it is; with whether a part was named before it.
fn place_of_name(
    tokens: &[Token<'_>],
    topic: &Topic,
    name: Range<usize>,
    has_part: bool,
) -> Option<(usize, Place)> {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let token = |i: usize| tokens.get(i);
    let joined = |i: usize| i < topic.end && token(i).is_some_and(|token| token.before == Break::None);
    let last = name.end - 1;
    let before = (name.start > topic.behind && joined(name.start)).then(|| text(name.start - 1));
    let article = before.filter(|word| matches!(*word, "a" | "an" | "its" | "the"));
    let lead = if article.is_some() { text(name.start - 2) } else { before.unwrap_or_default() };
    let has_label = joined(name.end) && token(name.end).is_some_and(|token| is_label(token.raw));
    let is_mark = token(last).is_some_and(|token| is_label(token.raw) && token.text.len() > 1);
    // "Remove the panel and *its screws*": of the part that was named before.
    if has_label || is_mark || (article == Some("its") && has_part) {
        return None;
    }
    if text(last) == text(topic.head) && (article.is_some() || name.len() == 1) {
        return (name.len() == 1 && article != Some("its")).then_some((last, Place::Own));
    }
    let sort = noun(&[singular(text(last))]);
    let is_thing = sort.is_worked_on() || sort == Noun::Seal || (sort == Noun::Unknown && article.is_some());
    // "Take the cover *off* and clean it", "lift it off *its hooks*" say of nothing else that it is off it.
    let is_name = |i: usize| joined(i) && (is_word(text(i)) || matches!(text(i), "a" | "an" | "the"));
    let leads_on = |i: usize| OWNERS.contains(&text(i)) || WHERE.contains(&text(i));
    let is_placed = joined(name.end) && leads_on(name.end) && is_name(name.end + 1);
    if !is_thing || is_placed {
        return None;
    }
    let is_own_place = article == Some("its") && matches!(lead, "at" | "by" | "with");
    match lead {
        "of" => Some((name.start, Place::Within)),
        lead if PREPOSITIONS.contains(&lead) && !is_state(lead) && !is_own_place => None,
        // "Take *out the fan*" says how, "lift it *off its hooks*" and "with a rag" say where or by what.
        lead if PREPOSITIONS.contains(&lead) && !is_own_place && !is_of_verb(tokens, topic, &name) => None,
        _ => Some((last, Place::End)),
    }
}

/// "Take *out* the fan": whether what stands before a name belongs to the verb right before it.
fn is_of_verb(tokens: &[Token<'_>], topic: &Topic, name: &Range<usize>) -> bool {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let lead = name.start - 1 - usize::from(matches!(text(name.start - 1), "a" | "an" | "its" | "the"));
    let begins = |i: usize| {
        i == topic.behind
            || tokens.get(i).is_some_and(|token| token.before != Break::None)
            || matches!(text(i - 1), "and" | "then")
    };
    lead > topic.behind && begins(lead - 1)
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
