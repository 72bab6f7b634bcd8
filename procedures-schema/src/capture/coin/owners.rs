//! One noun for things of several owners: "the screws out of *the fan and the pump*", "the covers off both"; and the name
//! that a part has by its owner: "the cover of the fan".

use super::super::clause::Clause;
use super::super::reader::Reader;
use super::super::twins::is_side;
use super::bench::Bench;
use super::circuits::named_kind;
use super::label::is_numbered_place;
use super::nouns::{Noun, noun, opens};
use super::phrase::{Lead, Phrase, phrases_between};
use super::phrased::phrases;
use super::shared::list_in_plural;
use super::wanted::{Wanted, is_appliance};
use crate::lexicon::{Amount, Break};
use crate::model::{Handle, Span, ThingKind};

/// What leads from a thing to its owner.
const LEADS: &[&str] = &["from", "of", "off"];

/// The same, and what leads to a part that has it: "the lock nuts *on* the switch and the sensor".
const OWNING: &[&str] = &["from", "of", "off", "on"];

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
        let is_called_after = matches!(
            wanted,
            Wanted::Component | Wanted::Temporary | Wanted::PlugOf | Wanted::ClipOf | Wanted::ThreadOf
        );
        let is_worked = matches!(wanted, Wanted::Isolator(_));
        // "The flow valves of boiler 1 and boiler 2" are one each, "the valves of the pump and the boiler" those of each.
        let is_whole = is_called_after
            || matches!(wanted, Wanted::Connector(_) | Wanted::Port(_))
            || (is_worked && is_one_of_its_owner(phrase));
        if !(is_whole || is_worked || matches!(wanted, Wanted::Fixing | Wanted::Joint))
            || phrase.lead != Lead::Direct
        {
            return None;
        }
        // "The flow and return valves of boiler 1 and boiler 2."
        let end_of_list = list_in_plural(&self.line, phrase, &self.phrases).filter(|_| is_worked);
        if !(phrase.plural() || end_of_list.is_some()) {
            return None;
        }
        let owners = self.owners_of(end_of_list.as_ref().unwrap_or(phrase));
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
            if is_called_after {
                own.words.splice(0..0, owner.name().split(' ').map(str::to_owned));
            }
            let owner = Phrase { lead: Lead::After("of".to_owned()), ..owner.clone() };
            let phrases = [own.clone(), owner].into_iter().chain(besides.iter().cloned()).collect();
            (own, phrases)
        };
        Some(owners.iter().map(of).collect())
    }

    /// The parts behind a phrase that it is of, up to what stands otherwise.
    pub(super) fn owners_of(&self, phrase: &Phrase) -> Vec<Phrase> {
        let mut behind = self.phrases.iter().skip_while(|other| other.from <= phrase.from).peekable();
        let Some(lead) = behind.peek().map(|first| first.lead.clone()) else { return Vec::new() };
        let owners: Vec<Phrase> =
            behind.take_while(|other| other.lead == lead && other.is_after(OWNING)).cloned().collect();
        let is_of = |owner: &Phrase| owner.is_after(LEADS) || noun(&owner.stem()) == Noun::Part;
        if !owners.iter().all(is_of) {
            return Vec::new();
        }
        if owners.iter().all(|owner| self.is_owner(owner)) { owners } else { Vec::new() }
    }

    fn is_owner(&self, phrase: &Phrase) -> bool {
        let stem = phrase.stem();
        let is_known = |kinds: &[ThingKind]| !self.known(phrase, kinds).is_empty();
        let may_own = match noun(&stem) {
            Noun::Part => true,
            // "The board of the *outdoor unit*."
            _ if is_appliance(&stem) => true,
            // "The unions of the pump and *the mixing valve*": as long as nothing is shut with it.
            Noun::Isolator(_) => !is_known(&[ThingKind::Isolator, ThingKind::Connection]),
            // "The nuts of the flow union and *the return union*."
            Noun::Joint => stem.len() > 1 && !is_known(&[ThingKind::Connection]),
            // "The actuator of *zone two*."
            _ if names_a_place(phrase) || names_a_side(phrase) => true,
            // "The door of *oven 1*."
            Noun::Unknown => phrase.label.is_some(),
            _ => false,
        };
        let is_whole = is_appliance(&stem) && !is_one_of_twins(phrase);
        !phrase.plural() && !is_whole && (may_own || is_known(&[ThingKind::Component]))
    }

    /// The words that name a thing, with those of its owner before them where it is called by one word alone, or is one of
    /// twins.
    pub(super) fn with_owner(&self, phrase: &Phrase, words: Vec<String>) -> Vec<String> {
        let is_twin = self.line.is_one_of_two(phrase, &self.phrases);
        let leads: &[&str] = if opens(&phrase.head_word()) || is_twin { PLACES } else { &["of"] };
        // "The strainer out of *the cold valve*", though that is worked as well.
        let is_valve = |of: &Phrase| {
            let is_worked = matches!(noun(&of.stem()), Noun::Isolator(_)) || of.head_word() == "valve";
            is_worked && of.words.len() > 1 && noun(&phrase.stem()) == Noun::Part && phrase.words.len() == 1
        };
        // "The cap off the fill valve *and the cap off the drain valve*", "the lid of the tank *and the lid of the bin*".
        let is_port = |of: &Phrase| is_twin && tells_twins_apart(of);
        if let Some(of) = owner_of_its(&self.line, phrase) {
            return owner_before(&of, words);
        }
        let of = self.behind(phrase, PLACES).filter(|of| self.is_owner(of) || is_valve(of) || is_port(of));
        let Some(of) = of else { return words };
        // "The pipes *clear of* the pump", "the filter *down out of* the housing" are told where they go.
        let last = self.last_listed(phrase, &of);
        let is_out = self.line.text(last + 1) == "out";
        let lead = self.line.text(last + 1 + usize::from(is_out));
        let is_bare = phrase.words.len() == 1;
        // "Wash the coil *from the downstream side*": how, and not whose.
        if of.head_word() == "side" && lead == "from" {
            return words;
        }
        let is_of_twins = is_one_of_twins(&of) && (lead == "of" || (is_bare && LEADS.contains(&lead)));
        let is_owned = (is_twin || !is_out) && (is_bare || is_twin || lead == "of") && leads.contains(&lead);
        let is_of_valve = is_valve(&of) && LEADS.contains(&lead);
        let is_on_side = is_bare && names_a_side(&of) && matches!(lead, "at" | "on");
        if is_owned || is_of_twins || is_of_valve || is_on_side { owner_before(&of, words) } else { words }
    }

    /// "Fan 1 and *fan 2* of the outdoor unit": the last token of what is listed with a phrase before what it is of.
    fn last_listed(&self, phrase: &Phrase, of: &Phrase) -> usize {
        let between = self.phrases.iter().filter(|other| other.from > phrase.from && other.head < of.start);
        let is_alike = |other: &&Phrase| {
            other.lead == phrase.lead && other.label.is_some() && other.words == phrase.words
        };
        between.take_while(is_alike).last().map_or(phrase.head, |last| last.head)
    }

    /// The name of what a port is of: "the drain *of the boiler*", and where there are two "the vent *on the left radiator*".
    pub(super) fn owner_of_port(&self, phrase: &Phrase) -> Option<String> {
        if let Some(of) = owner_of_its(&self.line, phrase) {
            return Some(of.name());
        }
        let of = self.behind(phrase, PLACES)?;
        let is_twin = self.line.is_one_of_two(phrase, &self.phrases) || is_one_of_twins(&of);
        let may_own = matches!(noun(&of.stem()), Noun::Part)
            || is_appliance(&of.stem())
            || (is_twin && !is_worked(&of) && tells_twins_apart(&of));
        let is_said = of.is_after(&["of"]) || is_twin;
        (is_said && may_own && of.start > phrase.head && !phrase.plural()).then(|| of.name())
    }
}

/// Whether a part has one isolator of a name: what its sides or media tell apart, or what feeds it.
fn is_one_of_its_owner(phrase: &Phrase) -> bool {
    let before = phrase.words.split_last().map(|(_, before)| before).unwrap_or_default();
    let tells = |word: &String| is_side(word) || named_kind(std::slice::from_ref(word), true).is_some();
    !matches!(noun(&phrase.stem()), Noun::Isolator(Handle::Valve)) || before.iter().any(tells)
}

/// A name with that of an owner before it, unless it begins so.
pub(super) fn owner_before(of: &Phrase, words: Vec<String>) -> Vec<String> {
    let owner: Vec<String> = of.name().split(' ').map(str::to_owned).collect();
    if words.starts_with(&owner) { words } else { owner.into_iter().chain(words).collect() }
}

/// "Drain pump 1 and remove *its* drain plug": the last that was acted on before, where that is one of twins.
pub(in crate::capture) fn owner_of_its(line: &Reader<'_>, phrase: &Phrase) -> Option<Phrase> {
    if line.text(phrase.start) != "its" {
        return None;
    }
    let before = line.clauses.iter().filter(|clause| clause.verb() < phrase.start);
    let acted_on = before.flat_map(|clause: &Clause| phrases(line, clause).to_vec());
    let mut own = acted_on.filter(|other| other.head < phrase.start && other.lead == Lead::Direct);
    let owner = own.next_back().filter(|owner| is_one_of_twins(owner) && !owner.plural());
    owner.or_else(|| topic(line, phrase.start))
}

/// "*Heating pump*: shut its two valves": the part that stands before a colon by itself, if a token is in the sentence behind.
pub(super) fn topic(line: &Reader<'_>, at: usize) -> Option<Phrase> {
    let begins =
        |i: &usize| line.tokens.get(*i).is_some_and(|token| token.before == Break::Sentence) || *i == 0;
    let colon = (1..=at).rev().find(begins)?;
    let between = Span(line.tokens.get(colon - 1)?.span.1, line.tokens.get(colon)?.span.0);
    let from = (0..colon).rev().find(begins)?;
    let is_order = line.clauses.iter().any(|clause| (from..colon).contains(&clause.verb()));
    if !between.of(line.words).contains(':') || is_order {
        return None;
    }
    match phrases_between(line, from, colon).as_slice() {
        [only] if only.head + 1 == colon && noun(&only.stem()) == Noun::Part && !only.plural() => {
            Some(only.clone())
        }
        _ => None,
    }
}

impl Reader<'_> {
    /// Whether the same noun is acted on twice in a sentence, by one verb or by the same verb again, each time with what it is
    /// of or where it is.
    pub(in crate::capture) fn is_one_of_two(&self, phrase: &Phrase, phrases: &[Phrase]) -> bool {
        is_one_of_two(phrase, phrases) || self.is_one_of_two_orders(phrase, phrases)
    }

    /// "Take the cap off the fill valve *and take the cap off the drain valve*."
    fn is_one_of_two_orders(&self, phrase: &Phrase, own_phrases: &[Phrase]) -> bool {
        let place_of = |phrase: &Phrase, phrases: &[Phrase]| {
            let next = phrases.iter().find(|other| other.from > phrase.head)?;
            matches!(next.lead, Lead::After(_)).then(|| next.name())
        };
        let own = self.clauses.iter().find(|clause| (clause.from..clause.to).contains(&phrase.from));
        let Some((own, place)) = own.zip(place_of(phrase, own_phrases)) else { return false };
        let is_again = |other: &&Clause| {
            let (first, next) = (own.verb().min(other.verb()), own.verb().max(other.verb()));
            let is_one_sentence = self
                .tokens
                .iter()
                .take(next + 1)
                .skip(first + 1)
                .all(|token| token.before != Break::Sentence);
            other.verb() != own.verb() && self.text(other.verb()) == self.text(own.verb()) && is_one_sentence
        };
        self.clauses.iter().filter(is_again).any(|other| {
            let all = phrases(self, other);
            let is_alike = |other: &&Phrase| {
                other.lead == Lead::Direct && other.words == phrase.words && other.label == phrase.label
            };
            all.iter().filter(is_alike).any(|alike| place_of(alike, &all).is_some_and(|other| other != place))
        })
    }
}

/// Whether the same noun is acted on twice by one verb, each time with what it is of: "the filter out of the fan *and the
/// filter out of the pump*".
fn is_one_of_two(phrase: &Phrase, phrases: &[Phrase]) -> bool {
    let is_it = |other: &Phrase| {
        let (first, next) = if other.from < phrase.from { (other, phrase) } else { (phrase, other) };
        // "The return hose *to port R* and the suction hose *to port S*": their own words tell them apart.
        let leads_on =
            |place: &Phrase| place.is_after(&["into", "onto", "to"]) && other.words != phrase.words;
        let is_between = |place: &Phrase| {
            let is_place = matches!(place.lead, Lead::After(_)) && !leads_on(place);
            place.from > first.head && place.head < next.start && is_place
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
    phrase.label.is_some() || names_a_place(phrase) || phrase.words.iter().rev().skip(1).any(says_side)
}

/// "Zone 2", "the *underfloor circuit*": one of several places, and no circuit of the map by its kind.
fn names_a_place(phrase: &Phrase) -> bool {
    let is_told = phrase.label.is_some() || phrase.words.len() > 1;
    is_told && is_numbered_place(&phrase.head_word()) && named_kind(&phrase.stem(), true).is_none()
}

/// Whether a phrase names what is shut, opened or joined by itself.
pub(super) fn is_worked(of: &Phrase) -> bool {
    matches!(noun(&of.stem()), Noun::Isolator(_) | Noun::Joint | Noun::Port(_))
}

/// Whether a place or an owner tells two of one noun apart: "the union at the *inlet* and the union at the outlet", "the vent on
/// the *coil* and the vent on top".
pub(super) fn tells_twins_apart(of: &Phrase) -> bool {
    let stem = of.stem();
    match noun(&stem) {
        Noun::Seal | Noun::Setting => false,
        Noun::Nothing => is_side(&of.head_word()),
        Noun::Side => stem.len() > 1 || is_side(&of.head_word()),
        _ => true,
    }
}

/// "On the *secondary side*."
fn names_a_side(phrase: &Phrase) -> bool {
    phrase.head_word() == "side" && phrase.words.iter().rev().skip(1).any(|word| is_side(word))
}
