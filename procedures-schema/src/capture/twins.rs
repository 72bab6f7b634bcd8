//! What tells twins apart: "the *left* valve" is no right one, "radiator *2*" no radiator 1, whatever else agrees.

use super::coin::{is_label, number_behind};
use super::mention::words_of;
use crate::model::{ApplianceMap, Id};

/// Words of which a thing has one or the other.
const OPPOSITES: &[(&[&str], &[&str])] = &[
    (&["left", "left-hand"], &["right", "right-hand"]),
    (&["flow"], &["return"]),
    (&["top", "upper"], &["bottom", "lower"]),
    (&["front"], &["back", "rear"]),
    (&["inlet"], &["outlet"]),
    (&["suction"], &["discharge"]),
    (&["supply"], &["exhaust", "extract", "return"]),
    (&["cold"], &["hot"]),
    (&["inner", "inside"], &["outer", "outside"]),
    (&["primary"], &["secondary"]),
    (&["indoor"], &["outdoor"]),
    (&["after", "downstream"], &["before", "upstream"]),
    (&["above"], &["below"]),
];

/// The other words for the side that a word says: "top" for "upper".
pub(super) fn same_side(word: &str) -> impl Iterator<Item = &'static str> {
    let groups = OPPOSITES.iter().flat_map(|(one, other)| [*one, *other]);
    let own = groups.filter(move |group| group.contains(&word)).flatten().copied();
    // Supply air is extracted and blown out by two things.
    own.filter(move |other| *other != word && !matches!(*other, "exhaust" | "extract" | "return"))
}

/// What says on which side of a part something sits.
pub(super) const WHERE: &[&str] = &["above", "after", "before", "below"];

/// Whether words say another twin than a thing of the map is.
pub(super) fn is_another_twin(map: &ApplianceMap, id: &Id, said: &[String]) -> bool {
    let Some((_, _, name, aliases)) = map.things().find(|(_, known, ..)| *known == id) else { return false };
    let is_where = |word: &str| is_side(word) || WHERE.contains(&word);
    let tells = said.iter().any(|word| is_where(word) || is_label(&word.to_uppercase()));
    (tells || !labelled(said).is_empty())
        && differs(said, name)
        && aliases.iter().all(|alias| differs(said, alias) || !shares_side(said, alias))
}

/// Whether a word says which of two; "before" and "after" do only in front of what it sits at.
pub(super) fn is_side(word: &str) -> bool {
    !WHERE.contains(&word)
        && OPPOSITES.iter().any(|(one, other)| one.contains(&word) || other.contains(&word))
}

/// Whether a name says which of two or more a thing is.
pub(super) fn is_one_of_twins(name: &str) -> bool {
    let words = words_of(name);
    let is_labelled = || words.last().is_some_and(|last| is_label(&last.to_uppercase()));
    words.iter().any(|word| is_side(word)) || is_labelled() || !labelled(&words).is_empty()
}

/// Whether one word says the one side and the other the other.
pub(super) fn are_opposite(one: &str, other: &str) -> bool {
    OPPOSITES.iter().any(|(left, right)| {
        (left.contains(&one) && right.contains(&other)) || (right.contains(&one) && left.contains(&other))
    })
}

fn shares_side(said: &[String], name: &str) -> bool {
    words_of(name).iter().any(|word| said.contains(word) && (is_side(word) || is_label(&word.to_uppercase())))
}

/// Whether a name has the opposite of what words say, or another letter or number behind the same noun.
fn differs(said: &[String], name: &str) -> bool {
    let own = words_of(name);
    let has = |words: &[String], group: &[&str]| words.iter().any(|word| group.contains(&word.as_str()));
    let is_opposite = |(one, other): &(&[&str], &[&str])| {
        let only = |words: &[String], group: &[&str], not: &[&str]| has(words, group) && !has(words, not);
        (only(said, one, other) && only(&own, other, one))
            || (only(said, other, one) && only(&own, one, other))
    };
    OPPOSITES.iter().any(is_opposite) || has_another_label(said, &own)
}

/// The nouns of some words that have a letter or number behind them, with that: "zone two" is zone 2.
fn labelled(words: &[String]) -> Vec<(String, String)> {
    let label = |(noun, word): (&String, &String)| {
        let number = number_behind(noun, word).map(|number| number.to_string());
        let label = number.or_else(|| is_label(&word.to_uppercase()).then(|| word.clone()))?;
        Some((noun.clone(), label))
    };
    words.iter().zip(words.iter().skip(1)).filter_map(label).collect()
}

fn has_another_label(said: &[String], own: &[String]) -> bool {
    let said = labelled(said);
    labelled(own).iter().any(|(noun, label)| {
        let mut of_noun = said.iter().filter(|(other, _)| other == noun).peekable();
        of_noun.peek().is_some() && of_noun.all(|(_, other)| other != label)
    })
}
