//! One noun for things of several owners: "the screws out of *the fan and the pump*", "the covers off both"; and the name
//! that a part has by its owner: "the cover of the fan".

use super::bench::Bench;
use super::nouns::{Noun, noun, opens};
use super::phrase::{Lead, Phrase};
use super::wanted::{Wanted, is_appliance};
use crate::lexicon::Amount;
use crate::model::ThingKind;

/// What leads from a thing to its owner.
const LEADS: &[&str] = &["from", "of", "off"];

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
                own.words.splice(0..0, owner.stem());
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

    /// The words that name a part, with those of its owner before them where it is called by one word alone.
    pub(super) fn with_owner(&self, phrase: &Phrase, words: Vec<String>) -> Vec<String> {
        let leads: &[&str] = if opens(&phrase.head_word()) { LEADS } else { &["of"] };
        let of = self.behind(phrase, leads).filter(|of| phrase.words.len() == 1 && self.is_owner(of));
        // "The pipes *clear of* the pump", "the filter *down out of* the housing" are told where they go.
        let of = of.filter(|_| leads.contains(&self.line.text(phrase.head + 1)));
        let own = of.map(|of| of.stem()).unwrap_or_default();
        own.into_iter().chain(words).collect()
    }
}
