//! Letters and numbers by which things of one name are told apart: "valve *A*", "unions *1* and *2*", "the zone *2* valve".

use super::super::clause::Clause;
use super::super::mention::{is_plural, singular};
use super::super::reader::Reader;
use super::nouns::{Noun, noun};
use super::particles::is_particle;
use super::phrase_words::{ENDS, PREPOSITIONS};
use super::wanted::is_appliance;
use crate::lexicon::{Break, Token};

/// What something is turned or moved by.
const TURNS: &[&str] = &["click", "flat", "notch", "step", "time", "turn"];

/// Labels behind the words of a name.
pub(super) struct Labels {
    /// Each with its token and as it is written.
    pub(super) each: Vec<(usize, String)>,
    /// The token behind the last.
    pub(super) behind: usize,
    /// Whether the name goes on behind it: "the zone 2 *valve*".
    pub(super) within: bool,
}

/// The labels that begin at a token, behind the words of a name that are given by their tokens.
pub(super) fn labels_at(line: &Reader<'_>, clause: &Clause, words: &[usize], at: usize) -> Option<Labels> {
    let last = words.last().copied().filter(|last| last + 1 == at && is_joined(line, at))?;
    // "The nut 1 *turn*" counts.
    let label = label(line, clause, at).filter(|_| !TURNS.contains(&&*singular(line.text(at + 1))))?;
    let is_several = is_plural(line.text(last));
    let mut stem: Vec<String> = words.iter().map(|i| line.text(*i).to_owned()).collect();
    if let Some(head) = stem.last_mut() {
        *head = singular(head);
    }
    // "The pump 1 *screws*."
    let owns = may_own(&stem);
    let further: Vec<String> = (at + 1..line.tokens.len())
        .take_while(|i| goes_on(line, clause, *i) || (owns && !ends_a_name(line, clause, *i)))
        .map(|i| line.text(i).to_owned())
        .collect();
    if !is_several && !further.is_empty() {
        let mut whole: Vec<String> = stem.into_iter().chain([label.clone()]).chain(further).collect();
        if let Some(head) = whole.last_mut() {
            *head = singular(head);
        }
        return is_of_appliance(&whole).then(|| Labels {
            each: vec![(at, label)],
            behind: at + 1,
            within: true,
        });
    }
    let is_thing = is_of_appliance(&stem) || is_numbered_unknown(line, clause, &stem, words);
    if !is_thing || !ends_a_name(line, clause, at + 1) {
        return None;
    }
    let (mut each, mut behind) = (vec![(at, label)], at + 1);
    // "Breaker F1 *and F2*."
    let series = |label: &str| label.trim_end_matches(|c: char| c.is_ascii_digit()).to_owned();
    let begun = each.first().map(|(_, first)| series(first)).unwrap_or_default();
    // "Of *boiler 1 and 2*."
    let is_owned = words.first().and_then(|first| first.checked_sub(1)).is_some_and(|i| line.text(i) == "of");
    let is_number = |label: &str| label.bytes().all(|b| b.is_ascii_digit());
    let numbered = is_owned && each.first().is_some_and(|(_, first)| is_number(first));
    let goes_on = |next: &str| {
        is_several
            || (numbered && is_number(next))
            || (!begun.is_empty() && next != begun && series(next) == begun)
    };
    while let Some((next, label)) = listed(line, clause, behind).filter(|(_, label)| goes_on(label)) {
        each.push((next, label));
        behind = next + 1;
    }
    // "The screws 4" counts them.
    (!is_several || each.len() > 1).then_some(Labels { each, behind, within: false })
}

/// The label with which a list goes on: "valves A, *B* and C".
fn listed(line: &Reader<'_>, clause: &Clause, behind: usize) -> Option<(usize, String)> {
    let is_and = line.text(behind) == "and" && is_joined(line, behind);
    let at = behind + usize::from(is_and);
    let is_listed = is_and || line.tokens.get(at).is_some_and(|next| next.before == Break::Comma);
    let next = label(line, clause, at).filter(|_| is_listed && ends_a_name(line, clause, at + 1))?;
    Some((at, next))
}

/// A letter in upper case, a number of one or two digits, or both, as words write them to tell things apart.
pub(in crate::capture) fn is_label(written: &str) -> bool {
    let letters = written.trim_end_matches(|c: char| c.is_ascii_digit());
    let n_digits = written.len() - letters.len();
    let is_upper = letters.bytes().all(|b| b.is_ascii_uppercase());
    n_digits <= 2 && is_upper && written != "I" && matches!((letters.len(), n_digits), (0 | 2, 1..) | (1, _))
}

/// What a token says as a label.
fn label(line: &Reader<'_>, clause: &Clause, at: usize) -> Option<String> {
    if is_numbered_in_words(line, at) {
        return Some(line.text(at).to_owned());
    }
    let written = Some(line.written(at)).filter(|written| is_label(written))?;
    // Where all is in upper case, an article is too.
    let tells =
        written.bytes().all(|b| b.is_ascii_digit()) || line.words.bytes().any(|b| b.is_ascii_lowercase());
    let measured = line.quantities(clause).any(|quantity| (quantity.from..quantity.to).contains(&at));
    (tells && !measured).then(|| written.to_owned())
}

/// "The zone *one* valve".
fn is_numbered_in_words(line: &Reader<'_>, at: usize) -> bool {
    let before = at.checked_sub(1).map_or("", |before| line.text(before));
    number_behind(before, line.text(at)).is_some() && is_joined(line, at)
}

/// Places of which an appliance has several, told apart by numbers.
const NUMBERED: &[&str] = &["bank", "circuit", "loop", "room", "stage", "zone"];

/// Whether a noun is a place that is told from others by its number.
pub(in crate::capture) fn is_numbered_place(noun: &str) -> bool {
    NUMBERED.contains(&noun)
}

/// The number that a word says behind the noun of a numbered place: "zone *two*".
pub(in crate::capture) fn number_behind(noun: &str, word: &str) -> Option<usize> {
    const NUMBERS: &[&str] = &["one", "two", "three", "four", "five", "six"];
    let at = NUMBERS.iter().position(|number| *number == word)?;
    is_numbered_place(noun).then_some(at + 1)
}

/// "Pump *1*": whether a token tells apart what is named right before it.
pub(in crate::capture) fn is_label_behind_owner(tokens: &[Token<'_>], at: usize) -> bool {
    let Some(label) = tokens.get(at).filter(|label| label.before == Break::None && is_label(label.raw))
    else {
        return false;
    };
    let named = at.checked_sub(1).and_then(|i| tokens.get(i));
    !label.raw.is_empty() && named.is_some_and(|named| may_own(&[named.text.to_string()]))
}

/// Whether a noun in the singular names a part or an appliance, of which there may be several.
fn may_own(words: &[String]) -> bool {
    noun(words) == Noun::Part || is_appliance(words)
}

fn is_joined(line: &Reader<'_>, at: usize) -> bool {
    line.tokens.get(at).is_some_and(|token| token.before == Break::None) && line.bracket(at).is_none()
}

/// Whether the words of a name say a thing that an appliance has.
fn is_of_appliance(words: &[String]) -> bool {
    if words.last().is_some_and(|head| is_numbered_place(head)) {
        return true;
    }
    !matches!(noun(words), Noun::Nothing | Noun::Seal | Noun::Setting | Noun::Side | Noun::Unknown)
}

/// Whether a number behind a noun counts or shows something, and tells no thing from another: "step 2".
pub(in crate::capture) fn counts(noun: &str) -> bool {
    const COUNTED: &[&str] = &[
        "chapter", "check", "class", "day", "figure", "grade", "item", "job", "level", "mode", "note",
        "number", "option", "page", "part", "phase", "photo", "picture", "point", "position", "section",
        "setting", "size", "speed", "step", "task", "test", "table", "type",
    ];
    COUNTED.contains(&noun)
}

/// "*Cam* 1": whether a noun that nobody knows may be one of several, and counts or shows nothing.
fn is_numbered_unknown(line: &Reader<'_>, clause: &Clause, stem: &[String], words: &[usize]) -> bool {
    let head = stem.last().map_or("", String::as_str);
    let is_led = words.first().and_then(|first| first.checked_sub(1)).is_some_and(|before| {
        clause.phrase.contains(&before)
            || matches!(line.text(before), "and" | "the")
            || PREPOSITIONS.contains(&line.text(before))
    });
    noun(stem) == Noun::Unknown && is_led && !counts(head) && !TURNS.contains(&head)
}

/// Whether a token ends a name before it.
fn ends_a_name(line: &Reader<'_>, clause: &Clause, at: usize) -> bool {
    let text = line.text(at);
    !is_joined(line, at)
        || matches!(text, "and" | "or" | "then")
        || PREPOSITIONS.contains(&text)
        || ENDS.contains(&text)
        || is_particle(text)
        || clause.phrase.contains(&at)
}

/// Whether a name goes on at a token with a noun that is one thing.
fn goes_on(line: &Reader<'_>, clause: &Clause, at: usize) -> bool {
    let text = line.text(at);
    !ends_a_name(line, clause, at) && text.bytes().all(|b| b.is_ascii_alphabetic()) && !is_plural(text)
}

/// "CN4", "X12": how connectors and valves are marked.
pub(in crate::capture) fn is_code(text: &str) -> bool {
    let letters = text.trim_end_matches(|c: char| c.is_ascii_digit());
    let n_digits = text.len() - letters.len();
    letters.bytes().all(|b| b.is_ascii_alphabetic())
        && (1..=3).contains(&letters.len())
        && (1..=3).contains(&n_digits)
}

/// "2-pin", "3-way".
pub(super) fn is_pins(text: &str) -> bool {
    let parts = text.split_once('-');
    parts.is_some_and(|(n, of)| {
        n.bytes().all(|b| b.is_ascii_digit()) && matches!(of, "core" | "pin" | "pole" | "way")
    })
}
