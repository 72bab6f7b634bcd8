//! New components and settings, and what closes the end of a pipe.

use super::super::clause::Clause;
use super::super::refer::nearest;
use super::super::twins::is_side;
use super::Made;
use super::bench::Bench;
use super::label::is_code;
use super::nouns::{Noun, is_open_end, is_place, noun, role};
use super::owners::topic;
use super::phrase::Phrase;
use super::wanted::{is_appliance, is_whole};
use crate::lexicon::Amount;
use crate::model::{Component, Connection, Family, Id, Setting, Span, ThingKind};

impl Bench<'_> {
    /// Makes the component that a phrase names.
    pub(super) fn make_component(&mut self, phrase: &Phrase) -> Id {
        let single = matches!(phrase.amount, Some(Amount::Exactly(1))) || !phrase.plural();
        let mut words = if single { phrase.stem() } else { phrase.words.clone() };
        for word in words.iter_mut().filter(|word| is_code(word) || word.contains('&')) {
            // "X1" as it is written on boards, the "T&P valve".
            word.make_ascii_uppercase();
        }
        words.extend(phrase.label.clone());
        words = self.with_owner(phrase, words);
        if self.is_another(phrase) {
            words = self.name_of_another(&words.join(" ")).split(' ').map(str::to_owned).collect();
        }
        let id = self.component_named(&words);
        if let Some(made) = self.made.iter_mut().find(|made| made.thing == id) {
            made.span = Some(self.line.span(phrase.from, phrase.head + 1));
        }
        id
    }

    /// What the words add to a new component: what it is behind, and its mass.
    pub(super) fn place_component(&mut self, clause: &Clause, phrase: &Phrase, id: &Id) {
        let before = self.behind(phrase, &["behind"]);
        let before = before.map(|before| self.known(&before, &[ThingKind::Component])).unwrap_or_default();
        let mass =
            self.line.quantities(clause).find_map(|quantity| quantity.measured(crate::units::Quantity::Mass));
        if let Some(component) = self.map_mut().components.iter_mut().find(|component| component.id == *id) {
            component.behind.extend(before);
            component.mass = mass.or_else(|| component.mass.take());
        }
    }

    /// The component of exactly this name, made if there is none.
    pub(super) fn component_named(&mut self, words: &[String]) -> Id {
        let name = words.join(" ");
        let is_it = |part: &&Component| part.name == name || part.aliases.contains(&name);
        if let Some(known) = self.map.components.iter().find(is_it) {
            return known.id.clone();
        }
        let id = self.new_id(&name);
        let mut component = Component::new(id.clone(), &name);
        component.role = role(words);
        self.map_mut().components.push(component);
        self.note(&id, ThingKind::Component, &name);
        id
    }

    /// The component that a connection belongs to: "of the pump", "*lid* screws", "at the head".
    pub(super) fn part_of(&mut self, phrase: &Phrase) -> Option<Id> {
        if self.is_twin_at_a_side(phrase) {
            return None;
        }
        if let Some(of) = self.behind(phrase, &["of"]) {
            return match self.part_with_joint(&of) {
                Some(part) => Some(part),
                None => self.part_in(&of, true),
            };
        }
        if matches!(self.line.text(phrase.start), "its" | "their") {
            let named = self.part_named_before(phrase);
            return named.or_else(|| Some(self.make_component(&topic(&self.line, phrase.start)?)));
        }
        if let Some(known) = self.part_before(phrase) {
            return Some(known);
        }
        let mut before = phrase.words.split_last().map(|(_, before)| before.to_vec()).unwrap_or_default();
        if noun(&phrase.stem()) == Noun::Joint {
            // "The lower pump union" is the lower one of the pump; "the left cover screws" are of the left cover.
            before = before.into_iter().skip_while(|word| is_place(word)).collect();
        }
        let is_part = matches!(noun(&before), Noun::Part)
            || (matches!(noun(&before), Noun::Isolator(_)) && before.len() > 1);
        if is_part && !is_appliance(&before) {
            return Some(self.component_named(&before));
        }
        if noun(&phrase.stem()) == Noun::Fixing
            && let Some(within) = self.behind(phrase, &["in"])
            && noun(&within.stem()) == Noun::Part
        {
            // "The screw in the terminal cover" holds it.
            return self.part_in(&within, false);
        }
        let at = self.behind(phrase, &["at", "from", "off", "on", "to"])?;
        // "The nut on the cartridge" is its nut; what is on the left or on the wall is of neither.
        let holds = matches!(noun(&phrase.stem()), Noun::Connector(_) | Noun::Fixing | Noun::Joint)
            && at.is_after(&["on"]);
        let is_twin = || self.line.is_one_of_two(phrase, &self.phrases);
        let is_nowhere =
            |word: &String| is_place(word) || matches!(word.as_str(), "ceiling" | "floor" | "wall");
        let owned = at.is_after(&["from", "off"])
            || (holds && !at.stem().last().is_some_and(is_nowhere))
            || (is_twin() && noun(&at.stem()) == Noun::Part);
        self.part_in(&at, owned)
    }

    /// "The union at the inlet and *the union at the outlet* of the valve": each is called after where it is.
    fn is_twin_at_a_side(&self, phrase: &Phrase) -> bool {
        let place = self.behind(phrase, &["at", "from", "of", "off", "on"]);
        let is_side = |place: &Phrase| place.words.len() == 1 && is_side(&place.head_word());
        self.line.is_one_of_two(phrase, &self.phrases) && place.is_some_and(|place| is_side(&place))
    }

    /// "The nuts of the *fan* flange": the part whose joint a phrase names.
    fn part_with_joint(&mut self, phrase: &Phrase) -> Option<Id> {
        let before = phrase.words.split_last().map(|(_, before)| before.to_vec()).unwrap_or_default();
        let is_joint = noun(&phrase.stem()) == Noun::Joint && !is_whole(&phrase.head_word());
        (is_joint && noun(&before) == Noun::Part && !is_appliance(&before))
            .then(|| self.component_named(&before))
    }

    /// "Refit the exchanger and torque *its* screws": the part that the line named last before.
    fn part_named_before(&self, phrase: &Phrase) -> Option<Id> {
        let before = self.mentions.iter().rev().filter(|mention| mention.to <= phrase.start);
        let mut parts = before.flat_map(|mention| &mention.candidates);
        parts.find(|candidate| candidate.kind == ThingKind::Component).map(|candidate| candidate.id.clone())
    }

    /// The component that a phrase names; made, if its noun is a part's, or any noun where it is owned.
    fn part_in(&mut self, phrase: &Phrase, owned: bool) -> Option<Id> {
        let known = self.known(phrase, &[ThingKind::Component]);
        let nearest = || nearest(&self.line.here, &known).filter(|_| self.line.text(phrase.start) == "the");
        let meant = if let [only] = known.as_slice() { Some(only.clone()) } else { nearest() };
        if meant.is_some() {
            return meant;
        }
        if !self.known(phrase, &[ThingKind::Isolator, ThingKind::Connection]).is_empty() {
            return None;
        }
        let stem = phrase.stem();
        let fits = match noun(&stem) {
            Noun::Part => true,
            Noun::Unknown | Noun::Isolator(_) => owned,
            Noun::Fixing | Noun::Joint | Noun::Temporary => owned && is_whole(&phrase.head_word()),
            _ => false,
        };
        (fits && !is_appliance(&stem)).then(|| self.make_component(phrase))
    }

    /// A known component whose name stands right before the head.
    fn part_before(&self, phrase: &Phrase) -> Option<Id> {
        let mention =
            self.mentions.iter().find(|mention| mention.to == phrase.head && mention.from >= phrase.from)?;
        let mut parts = mention.candidates.iter().filter(|candidate| candidate.kind == ThingKind::Component);
        parts.next().filter(|_| parts.next().is_none()).map(|candidate| candidate.id.clone())
    }

    /// "Cap the gas union": the item that the verb names, on what it closes.
    pub(super) fn close_with_the_verb(&mut self, clause: &Clause) {
        if self.line.text(clause.verb()).starts_with("plug") && self.line.has(clause, &["in"]) {
            return;
        }
        let names_item = |phrase: &Phrase| noun(&phrase.stem()) == Noun::Temporary;
        let direct = self.phrases.iter().find(|phrase| phrase.lead == super::phrase::Lead::Direct).cloned();
        // "Plug *the ignition leads* on again": what has plugs of its own gets none.
        let plugs = self.line.text(clause.verb()).starts_with("plug");
        let has_plugs = |phrase: &Phrase| {
            let is_tube = matches!(&*phrase.head_word(), "hose" | "tube");
            plugs && !is_tube && matches!(noun(&phrase.stem()), Noun::Connector(_))
        };
        if self.phrases.iter().any(names_item) || direct.as_ref().is_some_and(has_plugs) {
            return;
        }
        match direct {
            Some(direct) => self.make_closing(clause, &direct),
            None if self.line.pronoun(clause).is_some() && !self.follows_item(clause) => {
                self.close_last(clause);
            }
            None => {}
        }
    }

    /// "Disconnect the loop and cap it": what the clause before is about is no joint.
    fn follows_item(&self, clause: &Clause) -> bool {
        let before = self.line.clauses.iter().rev().find(|other| other.verb() < clause.verb());
        let phrases = before.map(|before| super::phrases(&self.line, before)).unwrap_or_default();
        let direct = phrases.iter().find(|phrase| phrase.lead == super::phrase::Lead::Direct);
        let known = |phrase: &Phrase| {
            let mut at = self.mentions.iter().filter(|mention| mention.to == phrase.head + 1);
            at.any(|m| m.candidates.iter().all(|candidate| candidate.kind == ThingKind::Temporary))
        };
        direct.is_some_and(known)
    }

    fn make_closing(&mut self, clause: &Clause, phrase: &Phrase) {
        let Some(head) = self.closing_item(clause) else { return };
        let is_joint = |id: &Id| self.map.connection(id).is_some_and(|known| known.family == Family::Joint);
        let is_end = is_open_end(&phrase.head_word()) && !phrase.plural();
        let last = || self.last_connection.clone().filter(|last| is_end && is_joint(last));
        let Some(on) = self.connection_in(phrase).or_else(last).or_else(|| self.open_end()) else {
            self.ask(phrase, format!("Which joint gets the {head}?"));
            return;
        };
        let span = self.span_of(phrase);
        self.close(on, head, span);
    }

    /// "Bond it": on the connection that was named last.
    fn close_last(&mut self, clause: &Clause) {
        let Some(head) = self.closing_item(clause) else { return };
        if let Some(on) = self.last_connection.clone() {
            self.close(on, head, self.line.span(clause.verb(), clause.verb() + 1));
        }
    }

    /// The item that a verb names.
    fn closing_item(&self, clause: &Clause) -> Option<&'static str> {
        let verb = self.line.text(clause.verb());
        let heads = [
            ("cap", "cap"),
            ("blank", "blank"),
            ("bung", "bung"),
            ("plug", "plug"),
            ("bond", "bond"),
            ("bridg", "bond"),
        ];
        heads.into_iter().find(|(begin, _)| verb.starts_with(begin)).map(|(_, head)| head)
    }

    fn close(&mut self, on: Id, head: &str, span: Span) {
        let closed = self.map.temporary.iter().any(|item| {
            let is_it = item.name.ends_with(head);
            is_it && (item.on.as_ref() == Some(&on) || item.bonds.as_ref() == Some(&on))
        });
        if closed {
            return;
        }
        let name = format!("{} {head}", self.map.name_of(&on));
        let thing = self.push_temporary(&name, head, Some(on));
        self.made.push(Made { thing, kind: ThingKind::Temporary, name, span: Some(span) });
    }

    /// The only joint that is open here.
    pub(super) fn open_end(&self) -> Option<Id> {
        let is_open = |joint: &&Connection| {
            let open = self.line.here.connections.get(&joint.id).is_some_and(|here| here.open > 0);
            open && joint.section.is_some() && joint.port.is_none()
        };
        let mut open = self.map.connections.iter().filter(is_open);
        open.next().filter(|_| open.next().is_none()).map(|joint| joint.id.clone())
    }

    /// Makes the setting that a phrase names.
    pub(super) fn make_setting(&mut self, phrase: &Phrase) {
        let stem = phrase.stem();
        let own = if noun(&stem) == Noun::Setting { None } else { Some(stem.join(" ")) };
        let of = self.behind(phrase, &["of"]);
        let part = match &own {
            Some(name) => {
                self.map.components.iter().find(|part| part.name == *name).map(|part| part.id.clone())
            }
            None => self.part_of(phrase),
        };
        let name = match (&own, of) {
            (Some(own), _) => format!("{own} setting"),
            (None, Some(of)) if stem.len() == 1 => format!("{} {}", of.stem().join(" "), stem.join(" ")),
            _ => stem.join(" "),
        };
        let id = self.new_id(&name);
        let mut setting = Setting::new(id.clone(), &name);
        setting.aliases.extend(own);
        setting.aliases.extend(name.strip_suffix(" setting").map(str::to_owned));
        setting.aliases.dedup();
        setting.of = part;
        self.map_mut().settings.push(setting);
        self.note_in_words(&id, ThingKind::Setting, &name, phrase);
    }
}
