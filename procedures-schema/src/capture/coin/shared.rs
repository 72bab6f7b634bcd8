//! Noun phrases that share a word with one beside them: "the flow and return valves", "the isolator for the cold water".

use super::super::mention::is_plural;
use super::super::reader::Reader;
use super::super::twins::{are_opposite, is_side};
use super::label::is_code;
use super::nouns::{Noun, is_numbered_valve, noun, opens, tells_apart};
use super::phrase::{Lead, Phrase};

/// "The isolator *for the cold water*" is a cold water isolator.
pub(super) fn with_media(mut found: Vec<Phrase>) -> Vec<Phrase> {
    const MEDIA: &[&str] = &["gas", "heating", "oil", "steam", "water"];
    for i in 1..found.len() {
        let Some(medium) = found.get(i).cloned() else { continue };
        let is_medium = medium.is_after(&["for"]) && MEDIA.contains(&medium.head_word().as_str());
        let Some(shut) = i.checked_sub(1).and_then(|i| found.get_mut(i)).filter(|_| is_medium) else {
            continue;
        };
        if matches!(&*shut.head_word(), "cock" | "isolator" | "stopcock" | "tap" | "valve")
            && shut.words.len() == 1
        {
            shut.words.splice(0..0, medium.words);
        }
    }
    found
}

/// "The left radiator *flow valve and return valve*": both are of it.
fn share_beginning(found: &mut [Phrase], i: usize) {
    let Some([first, second]) = i.checked_sub(1).and_then(|i| found.get_mut(i..i + 2)) else { return };
    let sides = |phrase: &Phrase| match phrase.words.as_slice() {
        [.., side, head] if is_side(side) => Some((side.clone(), head.clone())),
        _ => None,
    };
    let Some(((side, head), (other_side, other_head))) = sides(first).zip(sides(second)) else { return };
    let is_bare = second.start == second.from && second.words.len() == 2;
    let is_listed = first.head + 2 == second.start && first.lead == second.lead;
    if is_bare && is_listed && first.words.len() > 2 && head == other_head && are_opposite(&side, &other_side)
    {
        let beginning: Vec<String> = first.words.iter().take(first.words.len() - 2).cloned().collect();
        second.words.splice(0..0, beginning);
    }
}

/// "The left and *the right screw*" are a left screw and a right screw.
fn share_end(found: &mut [Phrase], i: usize) {
    let Some([first, second]) = i.checked_sub(1).and_then(|i| found.get_mut(i..i + 2)) else { return };
    let [side] = first.words.as_slice() else { return };
    let is_opposite = second.words.first().is_some_and(|other| are_opposite(side, other));
    if is_opposite
        && second.words.len() > 1
        && first.head + 2 == second.start
        && first.lead == second.lead
        && !second.plural()
    {
        let tail: Vec<String> = second.words.iter().skip(1).cloned().collect();
        first.words.extend(tail);
    }
}

/// "The flow and return valves" are a flow valve and a return valve.
pub(super) fn join_shared_heads(mut found: Vec<Phrase>) -> Vec<Phrase> {
    for i in 1..found.len() {
        share_beginning(&mut found, i);
        share_end(&mut found, i);
        let Some(shared) = found.get(i).filter(|phrase| phrase.plural() && phrase.words.len() > 1).cloned()
        else {
            continue;
        };
        let Some(first) = i.checked_sub(1).and_then(|i| found.get_mut(i)) else { continue };
        // "The hot outlet and *both* heating valves" are three.
        let joined = first.head + 2 == shared.start && first.lead == shared.lead && shared.amount.is_none();
        // "The *heating* flow and return valves": of which circuit both are.
        let says_circuit = |word: &String| {
            matches!(
                word.as_str(),
                "boiler"
                    | "brine"
                    | "buffer"
                    | "central"
                    | "chilled"
                    | "coil"
                    | "cooling"
                    | "cylinder"
                    | "domestic"
                    | "heating"
                    | "radiator"
                    | "solar"
                    | "underfloor"
            )
        };
        let tells = |word: &String| tells_apart(word) || says_circuit(word);
        if joined && share_codes(first, &shared) {
            // "The *V1* and V2 valves."
            let head = shared.head_word();
            let alone = is_numbered_valve(&head_of_code(first));
            for phrase in found.iter_mut().skip(i - 1).take(2) {
                phrase.words.truncate(1);
                phrase.words.extend((!alone).then(|| head.clone()));
            }
            continue;
        }
        if joined && shares_owned(first, &shared) {
            // "The *fan* and pump covers" are a fan cover and a pump cover.
            let head = shared.stem().last().cloned();
            first.words.extend(head);
            if let Some(second) = found.get_mut(i) {
                second.words = shared.stem();
            }
            continue;
        }
        if joined
            && first.words.last().is_some_and(|last| !says_circuit(last))
            && first.words.iter().all(tells)
        {
            let tail: Vec<String> = shared.stem().into_iter().skip(1).collect();
            first.words.extend(tail);
            if let Some(second) = found.get_mut(i) {
                second.words = shared.stem();
                second.amount = None;
            }
        }
    }
    found
}

/// Whether two marks share the noun behind the second: "CN4 and CN11 connectors".
fn share_codes(first: &Phrase, shared: &Phrase) -> bool {
    let [one] = first.words.as_slice() else { return false };
    let [other, _] = shared.words.as_slice() else { return false };
    is_code(one) && is_code(other)
}

fn head_of_code(phrase: &Phrase) -> String {
    phrase.words.first().cloned().unwrap_or_default()
}

/// Whether two parts share the name of what each of them has.
fn shares_owned(first: &Phrase, shared: &Phrase) -> bool {
    let owner = shared.words.split_last().map(|(_, before)| before.to_vec()).unwrap_or_default();
    let head = shared.head_word();
    let is_owned = opens(&head) || matches!(noun(&[head]), Noun::Connector(_) | Noun::Fixing | Noun::Joint);
    is_owned
        && shared.start == shared.from
        && first.start < first.from
        && first.label.is_none()
        && !first.plural()
        && noun(&first.stem()) == Noun::Part
        && noun(&owner) == Noun::Part
}

/// "The *flow* and return valves": the last of a list that shares its noun in the plural, if a phrase in the singular is in
/// it.
pub(in crate::capture) fn list_in_plural(
    line: &Reader<'_>,
    phrase: &Phrase,
    phrases: &[Phrase],
) -> Option<Phrase> {
    let mut listed = phrases.iter().filter(|other| other.lead == Lead::Direct && other.from >= phrase.from);
    let first = listed.next()?;
    let is_last = |one: &Phrase| !one.plural() && is_plural(line.text(one.head));
    if is_last(first) {
        return Some(first.clone());
    }
    let last = listed.next().filter(|last| first.head + 2 == last.start && is_last(last))?;
    (last.head_word() == phrase.head_word()).then(|| last.clone())
}
