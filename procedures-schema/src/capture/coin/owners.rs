//! One noun for things of several owners: "the screws out of *the fan and the pump*", "the covers off both"; and the name
//! that a part has by its owner: "the cover of the fan".

use super::super::twins::is_side;
use super::bench::Bench;
use super::nouns::{Noun, noun, opens};
use super::phrase::{Lead, Phrase};
use super::wanted::{Wanted, is_appliance};
use crate::lexicon::Amount;
use crate::model::ThingKind;

/// What leads from a thing to its owner.
const LEADS: &[&str] = &["from", "of", "off"];

/// What leads to the owner of one of twins.
const PLACES: &[&str] = &["at", "from", "in", "of", "off", "on"];

impl Bench<'_> {
    /// A phrase for each of several owners, with the phrases of its clause as they would stand if it named only that one;
    /// none where there are not several, or where the words count what they all have together.
    pub(super) fn of_each_owner(
        &self,
        phrase: &Phrase,
        wanted: &Wanted,
    ) -> Option<Vec<(Phrase, Vec<Phrase>)>> {
        let is_whole = matches!(wanted, Wanted::Component | Wanted::Connector(_));
        if !(is_whole || matches!(wanted, Wanted::Fixing | Wanted::Joint))
            || phrase.lead != Lead::Direct
            || !phrase.plural()
        {
            return None;
        }
        let owners = self.owners_of(phrase);
        let n = u32::try_from(owners.len()).unwrap_or(u32::MAX);
        let is_one_each = phrase.amount == Some(Amount::Exactly(n));
        if n < 2 || !(is_one_each || phrase.amount.is_none()) {
            return None;
        }
        let besides = self
            .phrases
            .iter()
            .filter(|other| other.from != phrase.from && !owners.iter().any(|of| of.from == other.from));
        let besides: Vec<Phrase> = besides.cloned().collect();
        let of = |owner: &Phrase| {
            let mut own = Phrase { amount: None, ..phrase.clone() };
            if is_whole || is_one_each {
                own.words = own.stem();
            }
            if *wanted == Wanted::Component {
                own.words.splice(0..0, owner.name().split(' ').map(str::to_owned));
            }
            let owner = Phrase { lead: Lead::After("of".to_owned()), ..owner.clone() };
            let phrases = [own.clone(), owner].into_iter().chain(besides.iter().cloned()).collect();
            (own, phrases)
        };
        Some(owners.iter().map(of).collect())
    }

    /// The parts behind a phrase that it is of, up to what stands otherwise.
    fn owners_of(&self, phrase: &Phrase) -> Vec<Phrase> {
        let mut behind = self.phrases.iter().skip_while(|other| other.from <= phrase.from).peekable();
        let Some(lead) = behind.peek().map(|first| first.lead.clone()) else { return Vec::new() };
        let owners: Vec<Phrase> =
            behind.take_while(|other| other.lead == lead && other.is_after(LEADS)).cloned().collect();
        if owners.iter().all(|owner| self.is_owner(owner)) { owners } else { Vec::new() }
    }

    fn is_owner(&self, phrase: &Phrase) -> bool {
        let stem = phrase.stem();
        let is_known = |kinds: &[ThingKind]| !self.known(phrase, kinds).is_empty();
        let may_own = match noun(&stem) {
            Noun::Part => true,
            // "The unions of the pump and *the mixing valve*": as long as nothing is shut with it.
            Noun::Isolator(_) => !is_known(&[ThingKind::Isolator, ThingKind::Connection]),
            // "The nuts of the flow union and *the return union*."
            Noun::Joint => stem.len() > 1 && !is_known(&[ThingKind::Connection]),
            _ => false,
        };
        !phrase.plural() && !is_appliance(&stem) && (may_own || is_known(&[ThingKind::Component]))
    }

    /// The words that name a thing, with those of its owner before them where it is called by one word alone, or is one of
    /// twins.
    pub(super) fn with_owner(&self, phrase: &Phrase, words: Vec<String>) -> Vec<String> {
        let is_twin = is_one_of_two(phrase, &self.phrases);
        let leads: &[&str] = if opens(&phrase.head_word()) || is_twin { PLACES } else { &["of"] };
        let Some(of) = self.behind(phrase, PLACES).filter(|of| self.is_owner(of)) else { return words };
        // "The pipes *clear of* the pump", "the filter *down out of* the housing" are told where they go.
        let is_out = self.line.text(phrase.head + 1) == "out";
        let lead = self.line.text(phrase.head + 1 + usize::from(is_out));
        let is_bare = phrase.words.len() == 1;
        let is_of_twins = is_one_of_twins(&of) && (lead == "of" || (is_bare && LEADS.contains(&lead)));
        let is_owned = (is_twin || !is_out) && (is_bare || is_twin || lead == "of") && leads.contains(&lead);
        let owner: Vec<String> = of.name().split(' ').map(str::to_owned).collect();
        if (is_owned || is_of_twins) && !words.starts_with(&owner) {
            owner.into_iter().chain(words).collect()
        } else {
            words
        }
    }

    /// The name of what a port is of: "the drain *of the boiler*", and where there are two "the vent *on the left radiator*".
    pub(super) fn owner_of_port(&self, phrase: &Phrase) -> Option<String> {
        let of = self.behind(phrase, PLACES)?;
        let is_twin = is_one_of_two(phrase, &self.phrases) || is_one_of_twins(&of);
        let may_own = matches!(noun(&of.stem()), Noun::Part) || is_appliance(&of.stem());
        let is_said = of.is_after(&["of"]) || is_twin;
        (is_said && may_own && of.start > phrase.head && !phrase.plural()).then(|| of.name())
    }
}

/// Whether the same noun is acted on twice, each time with what it is of: "the filter out of the fan *and the filter out of
/// the pump*".
pub(in crate::capture) fn is_one_of_two(phrase: &Phrase, phrases: &[Phrase]) -> bool {
    let is_it = |other: &Phrase| {
        let (first, next) = if other.from < phrase.from { (other, phrase) } else { (phrase, other) };
        let is_between = |place: &Phrase| {
            place.from > first.head && place.head < next.start && matches!(place.lead, Lead::After(_))
        };
        other.from != phrase.from
            && other.lead == Lead::Direct
            && other.words.last() == phrase.words.last()
            && phrases.iter().any(is_between)
    };
    phrase.lead == Lead::Direct && phrases.iter().any(is_it)
}

/// Whether a phrase says which of several it is: "the *left* fan", "pump *1*".
pub(super) fn is_one_of_twins(phrase: &Phrase) -> bool {
    const OF_PIPES: &[&str] = &["cold", "flow", "hot", "primary", "return", "secondary"];
    let says_side = |word: &String| is_side(word) && !OF_PIPES.contains(&word.as_str());
    phrase.label.is_some() || phrase.words.iter().rev().skip(1).any(says_side)
}
