//! What words add to the name of a connection: how many, which size, whose it is. A known connection that does not
//! agree with it is not the one that is meant.

use super::clause::Clause;
use super::coin::{self, Lead, Noun, Phrase, is_appliance, named_kind, noun};
use super::mention::{Mention, singular, words_of};
use super::quantity::{Figures, Quantity};
use super::reader::Reader;
use super::twins::{WHERE, is_another_twin};
use crate::lexicon::Amount;
use crate::model::{ApplianceMap, Connection, Id, Known, ThingKind, Verb};

/// What the words around a name say of the thing.
#[derive(Debug, Default)]
pub(super) struct Said {
    /// The words of the name, in singular.
    words: Vec<String>,
    /// How many there are of it in all, as far as the words say.
    total: Option<u32>,
    /// Whether the amount is only a part of all there are: "two of the four", "the other two".
    in_part: bool,
    /// Its thread.
    thread: Option<String>,
    /// Its width across flats.
    flats: Option<String>,
    /// What it is of; of several, one each or all of one.
    owners: Vec<Owner>,
    /// The words of the name and of what it is of, at or on, with the letters and numbers behind them.
    around: Vec<String>,
    /// The words of the part at which it sits, or of which it is: "the valves *at the pump*".
    site: Vec<String>,
    /// Whether the same noun is acted on twice in its clause.
    is_one_of_two: bool,
    /// Whether it is put back: whatever is off may go by fewer words, or by others.
    puts_back: bool,
}

/// What a thing is of: "the nuts *of the fan flange*".
#[derive(Debug)]
struct Owner {
    words: Vec<String>,
    parts: Vec<Id>,
    others: Vec<Id>,
}

impl Said {
    /// What the words say of what a phrase names; the mentions find known things in them.
    pub(super) fn of_phrase(
        line: &Reader<'_>,
        clause: &Clause,
        phrase: &Phrase,
        phrases: &[Phrase],
        mentions: &[Mention],
    ) -> Self {
        let mut said = Self::sizes(line, clause, phrase, phrases);
        let apart = |verb: &Verb| matches!(verb, Verb::Undo | Verb::Remove | Verb::Slacken | Verb::MoveAside);
        said.puts_back = !clause.means.iter().any(apart);
        said.words = phrase.words.iter().map(|word| singular(word)).collect();
        let exactly = |amount: Option<Amount>| match amount {
            Some(Amount::Exactly(n)) if n > 0 => Some(n),
            _ => None,
        };
        said.in_part = phrase.part.is_some()
            || (phrase.start..phrase.from).any(|i| matches!(line.text(i), "last" | "other" | "remaining"));
        // Whoever only cleans or looks counts faces and threads that nobody has named.
        let only_looks = clause.means.iter().all(|verb| matches!(verb, Verb::Clean | Verb::Inspect));
        // "Open *the clip*" opens none of the four of the cover, "nip *the screw* up" none of its four screws.
        let is_one = !phrase.plural() && line.text(phrase.start) == "the";
        let one = is_one.then_some(1).filter(|_| !said.in_part);
        said.total = exactly(phrase.amount).or(one).filter(|_| !only_looks);
        // "The M4 screw *from* the wiring plug": what has a size of its own comes from what it is of.
        let leads: &[&str] = match phrase.head_word() {
            // "Lift the cover *off* the fan."
            head if coin::opens(&head) && said.puts_back => &["from", "of", "off", "on"],
            head if coin::opens(&head) => &["from", "of", "off"],
            // "The hose off the pump *and the hose off the tank*."
            _ if line.is_one_of_two(phrase, phrases) => &["at", "from", "in", "of", "off", "on"],
            _ if said.thread.is_some() => &["from", "of"],
            // "Pull the hose *off* the pump."
            _ if line.text(phrase.head + 1) == "off" && is_off_a_part(phrase, phrases) => &["of", "off"],
            _ => &["of"],
        };
        said.around = words_around(line, phrase, phrases);
        let owner = coin::owner_of_its(line, phrase);
        said.around.extend(owner.iter().flat_map(|owner| words_around(line, owner, &[])));
        said.site = site(phrase, phrases);
        said.is_one_of_two = line.is_one_of_two(phrase, phrases);
        let list = coin::list_in_plural(line, phrase, phrases);
        said.owners = owners(list.as_ref().unwrap_or(phrase), phrases, mentions, leads);
        if said.owners.is_empty() && phrase.plural() {
            // "The tubes *from the switch and the fan*": of one alone it may only say where they end.
            let several = owners(phrase, phrases, mentions, &["from", "off"]);
            said.owners = if several.len() > 1 { several } else { Vec::new() };
        }
        if said.owners.is_empty() && phrase.plural() {
            // "The lock nuts *on the switch and the sensor*."
            let parts = owners(phrase, phrases, mentions, &["on"]);
            let is_known = parts.len() > 1 && parts.iter().all(|owner| !owner.parts.is_empty());
            said.owners = if is_known { parts } else { Vec::new() };
        }
        said
    }

    /// The sizes that stand with a phrase: before its noun, or behind it up to the next thing.
    fn sizes(line: &Reader<'_>, clause: &Clause, phrase: &Phrase, phrases: &[Phrase]) -> Self {
        let mut said = Self::default();
        for quantity in quantities_with(line, clause, phrase, phrases) {
            match &quantity.figures {
                Figures::Size(thread) => said.thread = said.thread.or_else(|| Some(thread.clone())),
                Figures::Range(_) => {
                    said.flats = said.flats.or_else(|| quantity.width().map(ToString::to_string));
                }
                Figures::Dimensions(_) => {}
            }
        }
        said
    }

    /// Where the same noun is acted on twice, the words that belong to this one.
    pub(super) fn own_words(&self) -> Option<Vec<String>> {
        self.is_one_of_two.then(|| self.around.clone())
    }

    /// How many there are in all, as far as the words say.
    pub(super) fn total(&self) -> Option<u32> {
        self.total
    }

    /// Whether an amount may be a part of what there is of a connection.
    pub(super) fn may_be_in_part(&self, connection: &Connection) -> bool {
        self.in_part || self.is_of_its_part(connection)
    }

    /// Those of several things that agree with the words.
    pub(super) fn agreeing(&self, map: &ApplianceMap, mut ids: Vec<Id>) -> Vec<Id> {
        ids.retain(|id| !self.is_part_of_another(map, id) && !is_another_twin(map, id, &self.around));
        ids.retain(|id| !self.is_isolator_of_another(map, id) && !self.is_at_another_place(map, id));
        let is_open = !self.puts_back || ids.len() > 1;
        let is_other = |known: &Connection| {
            self.is_other_size(known)
                || self.is_of_another(map, known)
                || (is_open && self.is_of_another_sort(map, known))
        };
        ids.retain(|id| !map.connection(id).is_some_and(is_other));
        let is_other = |id: &Id| map.connection(id).is_some_and(|known| self.is_other_count(known));
        // "Both threads" are two of those that are single.
        let is_single = |id: &Id| map.connection(id).is_some_and(|known| known.count == 1);
        let n_single = ids.iter().filter(|id| is_single(id)).count();
        let together = self.total.is_some_and(|n| u32::try_from(n_single).is_ok_and(|single| single >= n));
        // "Tighten the four screws", two of the lid and two of the guard.
        let counts = ids.iter().map(|id| map.connection(id).map_or(0, |known| known.count));
        let is_sum = ids.len() > 1 && self.total == Some(counts.fold(0, u32::saturating_add));
        let fits = |id: &Id| !is_other(id) || is_sum || (together && is_single(id));
        ids.retain(fits);
        ids
    }

    /// "The three nuts" are no single nut; what is named in full may have been counted wrongly before.
    fn is_other_count(&self, connection: &Connection) -> bool {
        let differs = match self.total {
            // "Two screws of the head" may be two of its four.
            Some(n) if self.may_be_in_part(connection) => n > connection.count,
            Some(n) => n != connection.count,
            None => false,
        };
        differs && !self.names_in_full(connection)
    }

    fn is_of_its_part(&self, connection: &Connection) -> bool {
        let parts = self.owners.iter().flat_map(|owner| &owner.parts);
        parts.into_iter().any(|part| connection.joins.contains(part))
    }

    /// Whether the words say each word of a name, perhaps by what the thing is of.
    fn names_in_full(&self, connection: &Connection) -> bool {
        let said = |word: &String| {
            self.words.contains(word) || self.owners.iter().any(|owner| owner.words.contains(word))
        };
        let mut names =
            std::iter::once(&connection.name).chain(&connection.aliases).map(|name| words_of(name));
        names.any(|name| name.len() > 1 && name.iter().all(said))
    }

    /// Whether a connection is known to have another size.
    pub(super) fn is_other_size(&self, connection: &Connection) -> bool {
        let Some(own) = connection.size.as_ref().and_then(Known::value) else { return false };
        let own_flats = own.across_flats.as_ref().map(ToString::to_string);
        let other_thread = pair(self.thread.as_ref(), own.thread.as_ref(), |said, own| !is_thread(said, own));
        let other_flats = pair(self.flats.as_ref(), own_flats.as_ref(), |said, own| said != own);
        // Where one is known and the other said, a nut of 24 mm is still none for M6.
        let one_each = self.thread.as_ref().zip(own_flats.as_ref()).filter(|_| own.thread.is_none());
        let other_each = own.thread.as_ref().zip(self.flats.as_ref()).filter(|_| own_flats.is_none());
        let unlike = one_each.or(other_each).is_some_and(|(thread, flats)| !may_belong(thread, flats));
        // A width that agrees outweighs a thread that is written in another way.
        let flats_agree = pair(self.flats.as_ref(), own_flats.as_ref(), |said, own| said == own);
        (other_thread && !flats_agree) || other_flats || unlike
    }

    /// "The *locking* clips" are none of the clips of the sensor: a word before the head says of which sort they are, and
    /// nothing in the name of a connection, or of what it joins, says that.
    fn is_of_another_sort(&self, map: &ApplianceMap, connection: &Connection) -> bool {
        let own = words_of(&connection.name);
        let Some((_, before)) = self.words.split_last().filter(|_| own.len() > 1) else { return false };
        let joined = connection.joins.iter().flat_map(|part| words_of(map.name_of(part)));
        let aliases = connection.aliases.iter().flat_map(|alias| words_of(alias));
        let section = connection.section.iter().flat_map(|section| words_of(map.name_of(section)));
        let known: Vec<String> = own.into_iter().chain(joined).chain(aliases).chain(section).collect();
        let tells = |word: &&String| !says_no_sort(word) && !known.contains(word);
        before.iter().any(|word| tells(&word))
    }

    /// "The screws *of the fan and the pump*": whether several things are each of one of several owners.
    pub(super) fn names_owner_of_each(&self, map: &ApplianceMap, ids: &[Id]) -> bool {
        let is_of = |owner: &Owner, id: &Id| match map.connection(id) {
            Some(connection) => !self.is_not_of(owner, map, connection),
            None => owner.words.last().is_some_and(|head| words_of(map.name_of(id)).contains(head)),
        };
        self.owners.len() > 1
            && ids.len() > 1
            && self.owners.iter().all(|owner| ids.iter().any(|id| is_of(owner, id)))
            && ids.iter().all(|id| self.owners.iter().any(|owner| is_of(owner, id)))
    }

    /// "The cover *of the fan*" is no pump cover: whether the words before the head of a part name another owner.
    fn is_part_of_another(&self, map: &ApplianceMap, id: &Id) -> bool {
        let Some(part) = map.components.iter().find(|part| part.id == *id) else { return false };
        let own = words_of(&part.name);
        let Some((_, before)) = own.split_last().filter(|_| !self.owners.is_empty()) else { return false };
        let is_owner = |owner: &Owner| {
            let is_named = owner.words.last().is_some_and(|head| own.contains(head));
            (is_named && !is_of_another_sort(&own, &owner.words)) || owner.parts.contains(id)
        };
        let other: Vec<String> = before.iter().filter(|word| !self.words.contains(word)).cloned().collect();
        let is_known = || map.components.iter().any(|known| words_of(&known.name) == other);
        let is_alike = |owner: &Owner| owner.words.last() == other.last();
        let is_whose = || {
            noun(&other) == Noun::Part
                || is_appliance(&other)
                || is_known()
                || self.owners.iter().any(is_alike)
        };
        !self.owners.iter().any(is_owner) && !other.is_empty() && is_whose()
    }

    /// "The two valves *at the plate heat exchanger*" are none of the pump valves.
    fn is_isolator_of_another(&self, map: &ApplianceMap, id: &Id) -> bool {
        let Some(isolator) = map.isolators.iter().find(|isolator| isolator.id == *id) else { return false };
        let name = words_of(&isolator.name);
        let is_head = |word: &String| matches!(noun(std::slice::from_ref(word)), Noun::Isolator(_));
        let own: Vec<String> = name.iter().take_while(|word| !is_head(word)).cloned().collect();
        let own: Vec<&String> = own.iter().filter(|word| !coin::tells_apart(word)).collect();
        let is_of_part = own.last().is_some_and(|head| noun(&[(*head).clone()]) == Noun::Part);
        // "The *pump* valves at the boiler."
        let is_said = |word: &String| self.site.contains(word) || self.words.contains(word);
        is_of_part && !self.site.is_empty() && !own.iter().any(|word| is_said(word))
    }

    /// "The vent on the cylinder and *the vent on the boiler*": what is called after the place of the one is not the other.
    fn is_at_another_place(&self, map: &ApplianceMap, id: &Id) -> bool {
        let own = words_of(map.name_of(id));
        let is_place = |word: &&String| !self.words.contains(word) && !WHERE.contains(&word.as_str());
        let mut places = self.around.iter().filter(is_place).peekable();
        let joined = map.connection(id).map(|known| known.joins.as_slice()).unwrap_or_default();
        let is_named = |word: &String| {
            own.contains(word) || joined.iter().any(|part| words_of(map.name_of(part)).contains(word))
        };
        let is_called_after_another =
            own.len() > self.words.len() && self.words.iter().all(|w| own.contains(w));
        let is_item = map.temporary.iter().any(|item| item.id == *id);
        self.is_one_of_two
            && !is_item
            && places.peek().is_some()
            && is_called_after_another
            && !places.any(is_named)
    }

    /// Whether the words say that the thing is of another one than a connection.
    pub(super) fn is_of_another(&self, map: &ApplianceMap, connection: &Connection) -> bool {
        !self.owners.is_empty() && self.owners.iter().all(|owner| self.is_not_of(owner, map, connection))
    }

    /// Whether a connection belongs to something else than an owner.
    fn is_not_of(&self, owner: &Owner, map: &ApplianceMap, connection: &Connection) -> bool {
        if connection.joins.iter().any(|part| owner.parts.contains(part))
            || owner.others.contains(&connection.id)
        {
            return false;
        }
        let names_owner = |name: &str| {
            let own = words_of(name);
            let is_other = || {
                // "The nuts of the *return* union" are none of the flow union.
                let tells = |one: &[String], other: &[String]| {
                    one.iter().any(|word| coin::tells_apart(word) && !other.contains(word))
                };
                (tells(&own, &owner.words) && tells(&owner.words, &own))
                    || is_of_another_sort(&own, &owner.words)
            };
            owner.words.last().is_some_and(|head| own.contains(head)) && !is_other()
        };
        let joined = connection.joins.iter().map(|part| map.name_of(part));
        let names =
            std::iter::once(connection.name.as_str()).chain(connection.aliases.iter().map(String::as_str));
        if owner.parts.is_empty() && joined.chain(names).any(names_owner) {
            return false;
        }
        // What is only called "the screws" so far may be of anything.
        !(connection.joins.is_empty() && words_of(&connection.name).len() <= self.words.len())
    }
}

impl Reader<'_> {
    /// What the words say of what a mention names.
    pub(super) fn said_of(&self, clause: &Clause, mention: &Mention) -> Said {
        let phrases = coin::phrases(self, clause);
        let phrase = phrases.iter().find(|phrase| phrase.head + 1 == mention.to);
        if phrase.is_none() && mention.to <= clause.verb() {
            // "*Valves on the left radiator* opened", "valve opened *on the left boiler*".
            let before = coin::phrases_between(self, clause.from, clause.verb());
            let all: Vec<Phrase> = before.into_iter().chain(phrases.to_vec()).collect();
            let own = all.iter().find(|phrase| phrase.head + 1 == mention.to);
            let around = own.map(|own| words_around(self, own, &all)).unwrap_or_default();
            return Said { around, ..Said::default() };
        }
        phrase.map_or_else(Said::default, |phrase| {
            Said::of_phrase(self, clause, phrase, &phrases, &self.mentions)
        })
    }
}

/// Whether what is right behind "off" is a part that may own the thing.
fn is_off_a_part(phrase: &Phrase, phrases: &[Phrase]) -> bool {
    let place = phrases.iter().find(|other| other.from > phrase.from);
    let is_bare = phrase.words.len() == 1;
    place.is_some_and(|place| is_bare && place.is_after(&["off"]) && noun(&place.stem()) == Noun::Part)
}

/// The words of a phrase and of what stands behind it in the same place, with the letters and numbers behind them.
pub(super) fn words_around(line: &Reader<'_>, phrase: &Phrase, phrases: &[Phrase]) -> Vec<String> {
    let behind = phrases.iter().skip_while(|other| other.from <= phrase.from);
    // "The *vent plug* and the drain plug of pump B": both are of it.
    let is_listed = |other: &&Phrase| {
        other.lead == phrase.lead
            && other.head_word() == phrase.head_word()
            && (other.words.len() > 1 || phrase.words.len() == 1)
    };
    let mut places =
        behind.skip_while(is_listed).take_while(|other| matches!(other.lead, Lead::After(_))).peekable();
    // "Of the flow sensor and the return sensor": both.
    let lead = places.peek().map(|first| first.lead.clone());
    let places = places.take_while(|other| Some(&other.lead) == lead.as_ref());
    let words = |one: &Phrase| {
        let label = line.written(one.head + 1);
        // "The suction hose *to port S*": where it goes on.
        if one.is_after(&["into", "onto", "to"]) {
            return one.words.iter().map(|word| singular(word)).collect();
        }
        let behind = one.label.is_none() && coin::is_label(label);
        let label = one.label.clone().or_else(|| behind.then(|| label.to_owned()));
        let own = one.words.iter().map(|word| singular(word));
        own.chain(label.map(|label| label.to_lowercase())).collect::<Vec<_>>()
    };
    // "The valve *before* the pump."
    let sits = lead.iter().filter_map(|lead| match lead {
        Lead::After(lead) if WHERE.contains(&lead.as_str()) => Some(lead.clone()),
        _ => None,
    });
    let own: Vec<String> = std::iter::once(phrase).chain(places).flat_map(words).collect();
    own.into_iter().chain(sits).collect()
}

/// The quantities that stand with a phrase: before its noun, or behind it up to the next thing.
pub(super) fn quantities_with<'r>(
    line: &'r Reader<'_>,
    clause: &Clause,
    phrase: &Phrase,
    phrases: &[Phrase],
) -> impl Iterator<Item = &'r Quantity> {
    let stands_alone = |other: &&Phrase| !matches!(other.lead, Lead::After(_)) || other.from == phrase.from;
    line.quantities(clause).filter(move |quantity| {
        let before = phrases.iter().filter(stands_alone).rfind(|other| other.start <= quantity.from);
        let with = before.or_else(|| phrases.iter().find(stands_alone));
        with.is_some_and(|with| with.from == phrase.from)
    })
}

/// "The cover of the *terminal box*" is none of the control box: whether a name and an owner have one noun with different words
/// before it.
fn is_of_another_sort(name: &[String], owner: &[String]) -> bool {
    let Some((head, before)) = owner.split_last() else { return false };
    let own = name.iter().position(|word| word == head).and_then(|at| name.get(at.checked_sub(1)?));
    let tells = |word: &str| !says_nothing_of_which(word);
    own.zip(before.last()).is_some_and(|(own, said)| own != said && tells(own) && tells(said))
}

/// What a phrase is of: "the screws of *the fan* and *the pump*".
fn owners(phrase: &Phrase, phrases: &[Phrase], mentions: &[Mention], leads: &[&str]) -> Vec<Owner> {
    let behind = phrases.iter().skip_while(|other| other.from <= phrase.from);
    let mut own = behind.take_while(|other| matches!(other.lead, Lead::After(_)));
    let Some(first) = own.find(|other| other.is_after(leads)) else { return Vec::new() };
    let further = own.take_while(|other| other.lead == first.lead);
    let mut owners: Vec<Owner> = owner(first, mentions).into_iter().collect();
    if !owners.is_empty() {
        owners.extend(further.filter_map(|of| owner(of, mentions)));
    }
    owners
}

/// The words of the parts that stand behind "at" or "of" right behind a name: "the breakers of *the fan and the pump*".
fn site(phrase: &Phrase, phrases: &[Phrase]) -> Vec<String> {
    let mut behind = phrases.iter().skip_while(|other| other.from <= phrase.from).peekable();
    let Some(lead) = behind.peek().filter(|next| next.is_after(&["at", "of"])).map(|next| next.lead.clone())
    else {
        return Vec::new();
    };
    let stems: Vec<Vec<String>> =
        behind.take_while(|other| other.lead == lead && !other.plural()).map(Phrase::stem).collect();
    let is_part = |stem: &Vec<String>| noun(stem) == Noun::Part && !is_appliance(stem);
    if stems.iter().all(is_part) { stems.concat() } else { Vec::new() }
}

/// What stands behind "of", if that is a thing: not the appliance, a circuit or a side.
fn owner(of: &Phrase, mentions: &[Mention]) -> Option<Owner> {
    let stem = of.stem();
    let names_circuit = stem.len() == 1 && named_kind(&stem, true).is_some() && noun(&stem) != Noun::Part;
    let is_none = matches!(noun(&stem), Noun::Nothing | Noun::Side | Noun::Setting | Noun::Seal);
    // "Of *boiler 1*", one of several.
    if is_none || names_circuit || (is_appliance(&stem) && of.label.is_none()) {
        return None;
    }
    let known = |kinds: &[ThingKind]| -> Vec<Id> {
        let named = mentions.iter().filter(|m| m.to == of.head + 1 && m.from <= of.from);
        let of_kind = named.flat_map(|m| &m.candidates).filter(|c| kinds.contains(&c.kind));
        of_kind.map(|candidate| candidate.id.clone()).collect()
    };
    let parts = known(&[ThingKind::Component]);
    // "The screws of the gas valve": what is only shut off with owns nothing that is known.
    if parts.is_empty() && !known(&[ThingKind::Isolator]).is_empty() {
        return None;
    }
    Some(Owner { words: stem, parts, others: known(&[ThingKind::Connection]) })
}

/// What may be said of any thing.
const OF_ANY: &[&str] = &[
    "big",
    "brass",
    "copper",
    "fixing",
    "flat",
    "hex",
    "holding",
    "large",
    "little",
    "long",
    "main",
    "mounting",
    "plastic",
    "retaining",
    "rubber",
    "securing",
    "short",
    "small",
    "steel",
    "tiny",
];

/// Whether a word may be said of any thing: how large it is, of what, of which colour.
pub(super) fn says_nothing_of_which(word: &str) -> bool {
    OF_ANY.contains(&word) || super::mention::COLOURS.contains(&word)
}

/// Whether a word before the head of a name may be said of any of them: where it sits, what it does, how it looks.
fn says_no_sort(word: &str) -> bool {
    says_nothing_of_which(word) || coin::tells_apart(word)
}

/// Whether two values are there and something holds of them.
fn pair(one: Option<&String>, other: Option<&String>, holds: impl Fn(&str, &str) -> bool) -> bool {
    one.zip(other).is_some_and(|(one, other)| holds(one, other))
}

/// Whether two texts name one thread; the usual pitch need not be written.
pub(super) fn is_thread(one: &str, other: &str) -> bool {
    let bare = |text: &str| text.split(" x ").next().map(str::to_owned);
    let has_pitch = |text: &str| text.contains(" x ");
    one == other || (has_pitch(one) != has_pitch(other) && bare(one) == bare(other))
}

/// Whether a width across flats can be that of a nut or screw with a metric thread: from a small socket to a nut
/// with a wide rim.
fn may_belong(thread: &str, flats: &str) -> bool {
    const NARROWEST: f64 = 0.4;
    const WIDEST: f64 = 2.2;
    let number = |text: &str| text.split(' ').next().and_then(|figure| figure.parse::<f64>().ok());
    let Some(diameter) = thread.strip_prefix('M').and_then(number) else { return true };
    number(flats).is_none_or(|flats| (NARROWEST * diameter..=WIDEST * diameter).contains(&flats))
}
