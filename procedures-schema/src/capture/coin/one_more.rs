//! What a clause acts on as well, behind "and" or a comma: "the hose off the pump *and the clip off* the tank", "the fan, *pump*
//! and board".

use super::super::mention::singular;
use super::super::reader::Reader;
use super::label::is_label;
use super::nouns::{Noun, noun, opens};
use super::phrase::{Lead, Phrase};
use super::phrase_words::{ARTICLES, PREPOSITIONS};
use crate::lexicon::Break;

/// At most so many words stand between "and" and what leads to a place.
const MOST_WORDS: usize = 5;

/// Whether what stands behind "and" is acted on too: the same noun, or another that holds or joins, with what it is of; or
/// anything that is as far from a place as what stands before, "CN4 from the board *and X12 from* the fan".
pub(super) fn names_one_more(line: &Reader<'_>, lead: &Lead, found: &[Phrase], and: usize) -> bool {
    const LEADS: &[&str] = &[
        "above", "after", "before", "below", "beneath", "from", "in", "of", "off", "on", "onto", "over",
        "round", "to", "under",
    ];
    let Lead::After(own_lead) = lead else { return false };
    let joined = |i: &usize| line.tokens.get(*i).is_some_and(|token| token.before == Break::None);
    let mut behind = (and + 1..=and + MOST_WORDS).take_while(joined);
    // "And *one of the* screws of the pump."
    if line.text(and + 2) == "of" && line.lexicon.amount(line.text(and + 1)).is_some() {
        behind.by_ref().take(2).for_each(drop);
    }
    let is_lead = |i: &usize| LEADS.contains(&line.text(*i)) || line.text(*i) == own_lead;
    let Some(at) = behind.find(is_lead) else { return false };
    let direct = || found.iter().filter(|found| found.lead == Lead::Direct);
    // "The plug *B* from", "the filter *out* of".
    let is_beside = |i: usize| is_label(line.written(i)) || matches!(line.text(i), "down" | "out" | "up");
    let goes_out = at > and + 2 && line.text(at - 1) == "out";
    // "The capillaries of the control *and the limiter out of* the pocket": whose else they are.
    let own = found.last().map_or(0, |last| last.start);
    let own_goes_out = own > 1 && line.text(own - 2) == "out";
    let is_same =
        line.text(at) == own_lead && (own_lead != "of" || (goes_out && own_goes_out)) && at > and + 1;
    if is_same && direct().next().is_some() {
        return true;
    }
    let head = singular(line.text(at - 1 - usize::from(at > and + 2 && is_beside(at - 1))));
    let holds =
        |head: &str| matches!(noun(&[head.to_owned()]), Noun::Connector(_) | Noun::Fixing | Noun::Joint);
    direct().any(|found| {
        let own = found.head_word();
        // "The cover of the pump *and the lid of the box*."
        own == head || (holds(&own) && holds(&head)) || (opens(&own) && opens(&head))
    })
}

/// Whether a token behind a comma begins one more of a list without articles: "the fan, *pump* and board".
pub(in crate::capture) fn is_bare_item(line: &Reader<'_>, at: usize, to: usize) -> bool {
    const MOST: usize = 3;
    let is_word = |i: usize| line.text(i).chars().all(|c| c.is_alphabetic() || c == '-');
    let breaks = |i: usize| line.tokens.get(i).is_none_or(|token| token.before != Break::None);
    let ends = |i: &usize| breaks(*i) || line.text(*i) == "and";
    let Some(end) = (at + 1..=at + MOST).take_while(|i| *i < to).find(ends) else { return false };
    let mut stem: Vec<String> = (at..end).map(|i| line.text(i).to_owned()).collect();
    if let Some(head) = stem.last_mut() {
        *head = singular(head);
    }
    // "Throw the nuts away, *grease the threads* and …" is no list.
    let is_no_name =
        |i: usize| PREPOSITIONS.contains(&line.text(i)) || (i > at && ARTICLES.contains(&line.text(i)));
    let is_name = (at..end).all(|i| is_word(i) && !is_no_name(i));
    let is_thing = noun(&stem).is_worked_on();
    // The list ends with "and".
    let goes_on = line.text(end) == "and" || is_bare_item(line, end, to);
    is_name && is_thing && goes_on
}
