//! New valves, switches, plugs and fuses.

use super::super::clause::Clause;
use super::super::twins::{WHERE, is_side};
use super::bench::Bench;
use super::circuits::{About, named_kind};
use super::nouns::{Noun, count, noun, tells_apart};
use super::owners::{is_one_of_twins, owner_before, owner_of_its};
use super::phrase::{Lead, Phrase};
use crate::model::{Circuit, CircuitKind, Handle, Id, Isolator, SUPPLY, Section, ThingKind};

/// What an appliance that is unplugged has.
const MAINS_PLUG: &str = "mains plug";

impl Bench<'_> {
    /// Makes the isolators that a clause names and the map does not know.
    pub(super) fn make_isolators(&mut self, clause: &Clause, new: &[(Phrase, Handle)]) {
        for (phrase, handle) in new {
            let about = self.about(clause, phrase);
            let component = self.part_between(phrase);
            let circuit = if *handle == Handle::Valve {
                let mut near = about.near.clone();
                near.extend(component.iter().flat_map(|words| words.iter().cloned()));
                self.circuit_of_valve(&About { near, ..about })
            } else {
                self.circuit_of_kind(&CircuitKind::MainsElectricity)
            };
            let Some(circuit) = circuit else {
                let about = self.about(clause, phrase);
                self.ask_circuit(phrase, "shut", &about);
                continue;
            };
            let is_its = |other: &&(Phrase, Handle)| self.part_between(&other.0) == component;
            let n_of_it: u32 = new.iter().filter(is_its).map(|(phrase, _)| number(phrase)).sum();
            let body = component.filter(|_| n_of_it > 1).and_then(|words| self.body(&circuit, &words));
            self.make_on(&circuit, phrase, handle, body);
        }
    }

    /// "Turn the gas off at the meter": the valve there, as long as nothing else that a hand works is known to shut it.
    pub(super) fn make_valve_of_supply(&mut self, clause: &Clause) {
        const SUPPLIES: &[&str] = &["gas", "oil", "steam", "water"];
        let off = clause.phrase.iter().any(|i| self.line.text(*i) == "off");
        let direct = self.phrases.iter().find(|phrase| phrase.lead == Lead::Direct).cloned();
        let is_supply =
            |phrase: &Phrase| phrase.words.len() == 1 && SUPPLIES.contains(&phrase.head_word().as_str());
        let Some(supply) = direct.filter(|phrase| off && is_supply(phrase)) else { return };
        let Some(at) = self.behind(&supply, &["at"]) else { return };
        if !matches!(noun(&at.stem()), Noun::Part | Noun::Unknown) {
            return;
        }
        let near = supply.stem();
        let Some(circuit) = named_kind(&near, true).and_then(|kind| self.circuit_of_kind(&kind)) else {
            return;
        };
        let by_hand = |isolator: &Isolator| {
            let of = self.map.sections().find(|(_, section)| section.id == isolator.between.1);
            isolator.handle != Handle::None && of.is_some_and(|(of, _)| of.id == circuit)
        };
        if self.map.isolators.iter().any(by_hand) {
            return;
        }
        let words = [at.stem(), near, vec!["valve".to_owned()]].concat();
        let valve = Phrase { words, amount: None, part: None, label: None, ..supply };
        self.make_on(&circuit, &valve, &Handle::Valve, None);
        self.look_again();
    }

    /// "Unplug the boiler at the wall socket", "unplug the boiler" once its plug is known: the appliance is no plug of its
    /// own beside the one that is there or is named.
    pub(super) fn has_its_plug(&self, phrase: &Phrase, handle: &Handle, others: &[Phrase]) -> bool {
        let is_plug = |other: &Phrase| matches!(noun(&other.stem()), Noun::Connector(_) | Noun::Isolator(_));
        let known = self.map.isolators.iter().any(|isolator| isolator.handle == Handle::Plug);
        let is_appliance = super::wanted::is_appliance(&phrase.stem());
        *handle == Handle::Plug && is_appliance && (known || others.iter().any(is_plug))
    }

    /// The words of the component that valves are of: "pump valves", "the valves of the pump".
    fn part_between(&self, phrase: &Phrase) -> Option<Vec<String>> {
        let before = phrase.words.split_last().map(|(_, before)| before.to_vec()).unwrap_or_default();
        let own: Vec<String> = before.into_iter().skip_while(|word| tells_apart(word)).collect();
        let of = self.behind(phrase, &["of", "on", "at"]);
        let label: Vec<String> = of.iter().filter_map(|of| of.label.clone()).collect();
        let of = of.map(|of| of.stem()).unwrap_or_default();
        let is_part = |words: &[String]| noun(words) == Noun::Part && !super::wanted::is_appliance(words);
        if is_part(&own) { Some(own) } else { is_part(&of).then(|| [of, label].concat()) }
    }

    /// The stretch of a circuit between the valves of a component, made while the circuit is in one piece.
    fn body(&mut self, circuit: &Id, part: &[String]) -> Option<Id> {
        let name = part.join(" ");
        let section = format!("{name} body");
        let known = self.map.circuits.iter().find(|known| known.id == *circuit)?;
        if let Some(there) = known.sections.iter().find(|known| known.name == section) {
            return Some(there.id.clone());
        }
        if known.sections.iter().filter(|section| !section.normally_empty).count() != 1 {
            return None;
        }
        self.component_named(part);
        let id = self.new_id(&section);
        let made = Section::new(id.clone(), &section);
        self.map_mut().circuits.iter_mut().find(|known| known.id == *circuit)?.sections.push(made);
        self.note(&id, ThingKind::Section, &section);
        Some(id)
    }

    fn make_on(&mut self, circuit: &Id, phrase: &Phrase, handle: &Handle, body: Option<Id>) {
        let Some(known) = self.map.circuits.iter().find(|known| known.id == *circuit) else { return };
        let Some(first) = known.sections.first().map(|section| section.id.clone()) else { return };
        let between = match body {
            Some(body) => (first, body),
            None => self.like_others(known).unwrap_or_else(|| (SUPPLY.into(), first)),
        };
        let is_bare = super::wanted::is_appliance(&phrase.stem()) || phrase.words.len() == 1;
        let of_appliance = *handle == Handle::Plug && is_bare && phrase.head_word() != "socket";
        let mut stem = if of_appliance { MAINS_PLUG.to_owned() } else { self.isolator_name(phrase) };
        if self.is_another(phrase) {
            stem = self.name_of_another(&stem);
        }
        let n = number(phrase);
        for i in 1..=n {
            let name = if n == 1 { stem.clone() } else { format!("{stem} {i}") };
            let mut isolator = Isolator::new(self.new_id(&name), &name, between.clone(), handle.clone());
            if name.starts_with("fused ") {
                // The fuse sits in it: whoever takes it out has cut off what the spur cuts off.
                isolator.aliases.push("fuse".to_owned());
            }
            if name.starts_with("double pole ") || name.starts_with("double-pole ") {
                isolator.aliases.push("DP".to_owned());
            }
            isolator.aliases.extend(by_height(&name));
            // "The hot outlet" is what shuts it.
            let written = phrase.name();
            let adds_valve = n == 1
                && name.strip_suffix(" valve").is_some_and(|name| name.ends_with(&written))
                && !written.ends_with(" valve");
            // "V1" is a valve.
            let is_mark =
                !name.contains(' ') && name.starts_with('V') && name.ends_with(|c: char| c.is_ascii_digit());
            isolator.aliases.extend(is_mark.then(|| format!("valve {name}")));
            isolator.aliases.extend(adds_valve.then_some(written).filter(|name| name.contains(' ')));
            self.note_in_words(&isolator.id, ThingKind::Isolator, &name, phrase);
            self.map_mut().isolators.push(isolator);
        }
        if between.0 == SUPPLY.into() {
            self.name_the_feed(circuit, &between.1);
        }
    }

    /// Where a circuit is in several pieces, the sides of its last isolator that a hand works.
    fn like_others(&self, circuit: &Circuit) -> Option<(Id, Id)> {
        let of = |id: &Id| circuit.sections.iter().any(|section| section.id == *id);
        let by_hand = |handle: &Handle| !matches!(handle, Handle::Automatic | Handle::None | Handle::Relief);
        let mut others = self.map.isolators.iter().filter(|i| of(&i.between.1) && by_hand(&i.handle));
        let full = circuit.sections.iter().filter(|section| !section.normally_empty).count();
        others.next_back().filter(|_| full > 1).map(|isolator| isolator.between.clone())
    }

    /// "The valves *of pump 1*", but not "the cock ahead *of the train*".
    fn is_owned(&self, of: &Phrase) -> bool {
        let before = |n: usize| of.start.checked_sub(n).map_or("", |i| self.line.text(i));
        !matches!(before(2), "ahead" | "clear" | "downstream" | "front" | "out" | "upstream")
            || before(1) != "of"
    }

    /// The name; "the valve on the return" is the return valve.
    fn isolator_name(&self, phrase: &Phrase) -> String {
        let mut words = phrase.stem();
        let is_twin = self.line.is_one_of_two(phrase, &self.phrases);
        // "The valve on the *supply* and the valve on the return."
        let is_side_of_two = |of: &Phrase| is_twin && of.words.len() == 1 && is_side(&of.head_word());
        if let Some(of) = self.behind(phrase, &["of", "on", "in", "at"])
            && (noun(&of.stem()) != Noun::Nothing || is_side_of_two(&of))
            && !self.is_next_supply(&of)
            && !(of.is_after(&["at"]) && matches!(noun(&of.stem()), Noun::Isolator(_)))
            && (words.len() == 1
                || is_twin
                || (is_one_of_twins(&of) && self.is_owned(&of))
                || (of.is_after(&["of"]) && self.is_owned(&of) && owns_isolators(&of))
                // "The two ball valves *at the strainer*."
                || (of.is_after(&["at"]) && phrase.plural() && noun(&of.stem()) == Noun::Part))
        {
            let mut named: Vec<String> = of.name().split(' ').map(str::to_owned).collect();
            named.append(&mut words);
            words = named;
        }
        if words
            .last()
            .is_some_and(|last| matches!(last.as_str(), "flow" | "inlet" | "main" | "outlet" | "return"))
        {
            words.push("valve".to_owned());
        }
        if let [only] = words.as_mut_slice()
            && only.ends_with(|c: char| c.is_ascii_digit())
        {
            // "V1" as it is written on drawings.
            only.make_ascii_uppercase();
        }
        // "Upper heater off at *its spur*", "heating pump: shut *its valves*."
        if let Some(owner) = owner_of_its(&self.line, phrase) {
            words = owner_before(&owner, words);
        }
        let name = phrase.labelled(words.join(" "));
        let is_told = is_twin || phrase.words.len() == 1;
        let place = self.behind(phrase, WHERE).filter(|_| is_told);
        match place.map(|place| (place.lead.clone(), place.name())) {
            // "The ball valve before the pump and the ball valve after the pump."
            Some((Lead::After(lead), of)) => format!("{name} {lead} the {of}"),
            _ => name,
        }
    }
}

/// "The valve above the softener" is the upper valve.
fn by_height(name: &str) -> Option<String> {
    let sides = [(" above the ", "upper"), (" below the ", "lower")];
    sides.into_iter().find_map(|(at, side)| Some(format!("{side} {}", name.split_once(at)?.0)))
}

/// How many isolators a phrase names.
fn number(phrase: &Phrase) -> u32 {
    count(phrase.amount, phrase.part, phrase.plural()).min(12)
}

/// "The mains switch *of the fan*", "the isolating valve *of the flow pipe*".
pub(super) fn owns_isolators(of: &Phrase) -> bool {
    let stem = of.stem();
    !of.plural() && !super::wanted::is_appliance(&stem) && matches!(noun(&stem), Noun::Joint | Noun::Part)
}
