//! On which side of a part a valve sits: "the valve *ahead of* the meter and the valve *behind* it", "the cocks *before and after*
//! the pump".

use super::coin::{CONDITIONS, ENDS, Noun, PREPOSITIONS, noun, opens};
use super::mention::{is_plural, singular};
use crate::lexicon::{Amount, Break, Lexicon, Token, amount};

/// The tokens with "before" and "after" for other words that say on which side of a part a valve sits, and with each of two
/// that are said at once.
pub(super) fn with_before_and_after(tokens: Vec<Token<'_>>) -> Vec<Token<'_>> {
    if !(1..tokens.len()).any(|i| side(&tokens, i).is_some() || is_said(&tokens, i)) {
        return tokens;
    }
    let tokens = with_one_on_each_side(tokens);
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let sides: Vec<usize> =
        (1..tokens.len()).filter(|i| side(&tokens, *i).is_some() || is_said(&tokens, *i)).collect();
    let (Some(first), Some(last)) = (sides.first(), sides.last()) else { return tokens };
    // Only where two are told apart it is said by sides: "*and the* valve after it", beside one at another place.
    let is_listed =
        |i: usize| matches!(text(i), "and" | "then") && matches!(text(i + 1), "a" | "the") && i < *last;
    let is_twin = sides.len() > 1 && (*first..*last).any(is_listed);
    let is_beside = || {
        let own = text(first - 1);
        let is_other = |i: usize| {
            i + 1 != *first
                && text(i) == own
                && PREPOSITIONS.contains(&text(i + 1))
                && !sides.contains(&(i + 1))
        };
        sides.len() == 1 && (0..tokens.len()).any(is_other) && (0..tokens.len()).any(is_listed)
    };
    if !is_twin && !is_beside() {
        return tokens;
    }
    let mut all = Vec::with_capacity(tokens.len());
    let mut i = 0;
    while let Some(token) = tokens.get(i) {
        let (word, n) = side(&tokens, i).map_or((None, 1), |(word, n)| (Some(word), n));
        all.push(word.map_or_else(|| token.clone(), |word| token.taken_for(word)));
        i += n;
    }
    all
}

fn text<'t>(tokens: &'t [Token<'_>], i: usize) -> &'t str {
    tokens.get(i).map_or("", |token| &*token.text)
}

fn is_valve(tokens: &[Token<'_>], i: usize) -> bool {
    i > 0 && matches!(noun(&[singular(text(tokens, i - 1))]), Noun::Isolator(_))
}

/// Whether a token says it in the words that names are made of.
fn is_said(tokens: &[Token<'_>], i: usize) -> bool {
    matches!(text(tokens, i), "after" | "before") && is_valve(tokens, i)
}

/// The side that other words behind a valve say, and how many they are.
fn side(tokens: &[Token<'_>], i: usize) -> Option<(&'static str, usize)> {
    let text = |i: usize| text(tokens, i);
    let (word, n) = words_of_side(tokens, i)?;
    let is_hidden = opens(&singular(text(i + n)));
    let names = text(i + n - 1) == "it" || (text(i + n - 1) == "the" && !is_hidden);
    (is_valve(tokens, i) && names && n > 1).then_some((word, n - 1))
}

/// The side that words say, and how many they are with the one behind them.
fn words_of_side(tokens: &[Token<'_>], i: usize) -> Option<(&'static str, usize)> {
    let text = |i: usize| text(tokens, i);
    let is_of = text(i + 1) == "of";
    Some(match text(i) {
        "ahead" | "upstream" if is_of => ("before", 3),
        "downstream" if is_of => ("after", 3),
        "in" if text(i + 1) == "front" && text(i + 2) == "of" => ("before", 4),
        "behind" => ("after", 2),
        _ => return None,
    })
}

/// "The cocks *before and after the pump*": the cock before the pump and the cock after the pump.
fn with_one_on_each_side(tokens: Vec<Token<'_>>) -> Vec<Token<'_>> {
    let text = |i: usize| text(&tokens, i);
    let joined = |i: usize| tokens.get(i).is_some_and(|token| token.before == Break::None);
    let is_it = |i: &usize| {
        is_valve(&tokens, *i)
            && is_plural(text(i - 1))
            && matches!(
                (text(*i), text(i + 1), text(i + 2)),
                ("before", "and", "after" | "behind") | ("after" | "behind", "and", "before")
            )
            && text(i + 3) == "the"
            && (*i..=i + 4).all(joined)
    };
    let Some(at) = (2..tokens.len()).find(is_it) else { return tokens };
    let is_name = |i: &usize| {
        joined(*i)
            && ![PREPOSITIONS, ENDS, CONDITIONS].iter().any(|list| list.contains(&text(*i)))
            && !matches!(text(*i), "and" | "or" | "then")
    };
    let end = at + 4 + (at + 4..tokens.len()).take_while(is_name).count();
    let place: Vec<String> = (at + 4..end).map(|i| text(i).to_owned()).collect();
    // "Before and after *the work*" says when.
    if text(end) == "of"
        || !matches!(noun(&place), Noun::Isolator(_) | Noun::Joint | Noun::Part | Noun::Unknown)
    {
        return tokens;
    }
    if place.iter().any(|word| matches!(word.as_str(), "job" | "repair" | "service" | "test" | "work")) {
        return tokens;
    }
    let word = |i: usize| tokens.get(i).cloned();
    let is_own = |i: &usize| is_name(i) && text(*i) != "the" && amount(text(*i)).is_none();
    let named_from = (0..at - 1).rev().take_while(is_own).last().unwrap_or(at - 1);
    // "*Close* cocks before and after the pump": where no article stands before a name, the verb may.
    let is_led = |i: usize| {
        i.checked_sub(1).is_some_and(|i| matches!(text(i), "a" | "its" | "the") || amount(text(i)).is_some())
    };
    let may_be_verb =
        |i: usize| Lexicon::for_language("en").zip(word(i)).is_some_and(|(all, first)| all.may_begin(&first));
    let has_verb = named_from + 1 < at && !is_led(named_from) && may_be_verb(named_from);
    let named_from = named_from + usize::from(has_verb);
    let before_name = named_from.checked_sub(1).map_or("", text);
    // "The *two* valves before and after the filter."
    let n_counted = match amount(before_name) {
        Some(Amount::All | Amount::Exactly(2)) => 1,
        Some(Amount::Exactly(_)) => return tokens,
        None => 0,
    };
    let (name, place) = (named_from..at, at + 3..end);
    let one = |i: usize| {
        let token = word(i)?;
        Some(if i + 1 == at { token.called(&singular(&token.text)) } else { token })
    };
    let after =
        |i: usize| word(i).map(|token| token.taken_for(if text(i) == "before" { "before" } else { "after" }));
    let mut all: Vec<Token<'_>> = (0..named_from - n_counted).filter_map(word).collect();
    all.extend(name.clone().filter_map(one).chain(after(at)).chain(place.clone().filter_map(word)));
    all.extend(word(at + 1));
    all.extend(word(at + 3));
    all.extend(name.filter_map(one).chain(after(at + 2)).chain(place.filter_map(word)));
    all.extend((end..tokens.len()).filter_map(word));
    all
}
