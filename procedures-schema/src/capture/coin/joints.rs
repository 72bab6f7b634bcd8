//! New connections: joints, fixings, ports, plugs and leads.

use super::super::agreement::Said;
use super::super::clause::Clause;
use super::super::quantity::Figures;
use super::super::twins::is_side;
use super::Question;
use super::bench::Bench;
use super::circuits::About;
use super::nouns::{Noun, count, noun};
use super::owners::{is_one_of_twins, is_worked, tells_twins_apart};
use super::phrase::{Lead, Phrase};
use super::wanted::is_appliance;
use crate::model::{Circuit, Connection, Family, Grouping, Id, Known, Port, Role, Size, ThingKind, Verb};

impl Bench<'_> {
    /// Makes a joint; it needs a section, and the words or the map must say which.
    pub(super) fn make_joint(&mut self, clause: &Clause, phrase: &Phrase) {
        let before = self.mark();
        let component = self.part_of(phrase).or_else(|| self.part_taken_off());
        if !self.joint(clause, phrase, component) {
            self.back_to(before);
        }
    }

    /// A joint of a part; none, and a question, if its section is open.
    fn joint(&mut self, clause: &Clause, phrase: &Phrase, component: Option<Id>) -> bool {
        let electrical = phrase.head_word() == "terminal";
        let about = About { component: component.clone(), electrical, ..self.about(clause, phrase) };
        let Some(section) = self.section_for(&about) else {
            self.ask_circuit(phrase, "carry", &about);
            return false;
        };
        let section = self.behind_relief(phrase, &about.near, section);
        let mut joint = self.connection(clause, phrase, Family::Joint, component);
        joint.section = Some(section);
        if joint.count > 1 && is_joint_each(phrase) {
            joint.grouping = Grouping::Each;
        }
        self.seal(clause, phrase, &mut joint);
        self.put(joint, phrase);
        true
    }

    /// Makes a fixing of the part that the words name, or that the next clause takes off.
    pub(super) fn make_fixing(&mut self, clause: &Clause, phrase: &Phrase) {
        if let Some((within, port)) = self.port_in(phrase) {
            if self.known(&within, &[ThingKind::Connection]).is_empty() {
                self.make_port(clause, &within, &port);
            }
            return;
        }
        let component = self.part_of(phrase).or_else(|| self.part_taken_off());
        if phrase.head_word() == "nut" && self.has_pipe_thread(clause, phrase) {
            // "The G 3/4 nut at the gas valve": what has a pipe thread carries a medium.
            return self.make_joint(clause, phrase);
        }
        self.fixing(clause, phrase, component);
    }

    /// Whether a pipe thread stands right before a name.
    fn has_pipe_thread(&self, clause: &Clause, phrase: &Phrase) -> bool {
        let is_pipe = |size: &str| size.starts_with(['G', 'R']);
        self.line.quantities(clause).any(|quantity| {
            let is_own = quantity.to == phrase.from || quantity.to == phrase.start;
            is_own && matches!(&quantity.figures, Figures::Size(size) if is_pipe(size))
        })
    }

    fn fixing(&mut self, clause: &Clause, phrase: &Phrase, component: Option<Id>) {
        if self.phrases.iter().any(|other| noun(&other.stem()) == Noun::Seal) {
            // What is closed with a seal carries a medium.
            self.joint(clause, phrase, component);
            return;
        }
        let holds_nothing = component.is_none();
        let fixing = self.connection(clause, phrase, Family::Fixing, component);
        let (id, name) = (fixing.id.clone(), fixing.name.clone());
        self.put(fixing, phrase);
        if holds_nothing {
            self.ask_about(phrase, &id, format!("What is held by the {name}?"));
        }
    }

    /// "Take off the belt guard: four M6 screws": what holds the part that the clause takes off or puts on.
    pub(super) fn make_fixings_beside(&mut self, clause: &Clause) {
        let parts = self.phrases.iter().filter(|phrase| phrase.lead == Lead::Direct);
        let meant = |phrase: &Phrase| {
            let said = Said::of_phrase(&self.line, clause, phrase, &self.phrases, &self.mentions);
            said.agreeing(&self.map, self.known(phrase, &[ThingKind::Component]))
        };
        let parts: Vec<Id> = parts.flat_map(meant).collect();
        let [part] = parts.as_slice() else { return };
        for phrase in self.phrases.clone() {
            // "Lift it out *by its strap*": how.
            let is_held = matches!(&*phrase.head_word(), "grip" | "handle" | "hook" | "lug" | "strap");
            let beside = phrase.lead == Lead::Beside
                || phrase.is_after(&["with"])
                || (phrase.is_after(&["by"]) && !is_held);
            if !beside || noun(&phrase.stem()) != Noun::Fixing {
                continue;
            }
            let known = self.known(&phrase, &[ThingKind::Connection]);
            let holds = |id: &Id| self.map.connection(id).is_some_and(|known| known.joins.contains(part));
            if !known.iter().any(holds) {
                self.fixing(clause, &phrase, Some(part.clone()));
                self.look_again();
            }
        }
    }

    /// Makes a joint that is opened to let something in or out.
    pub(super) fn make_port(&mut self, clause: &Clause, phrase: &Phrase, port: &Port) {
        let about = About { port: Some(port.clone()), ..self.about(clause, phrase) };
        let Some(section) = self.section_for(&about) else {
            self.ask_circuit(phrase, "open", &about);
            return;
        };
        let mut joint = self.connection(clause, phrase, Family::Joint, None);
        if let Some(owner) = self.owner_of_port(phrase) {
            joint.name = format!("{owner} {}", joint.name);
            joint.id = self.new_id(&joint.name);
        } else if let Some(place) = self.place_of_test(clause, phrase, port) {
            joint.name = format!("{place} {}", joint.name);
            joint.id = self.new_id(&joint.name);
        }
        joint.section = Some(section);
        joint.port = Some(port.clone());
        joint.aliases.extend(self.name_by_place(phrase));
        if phrase.label.is_none() && phrase.head - phrase.from + 1 > phrase.words.len() {
            // "The drain off cock" is looked for as it is written.
            let written: Vec<&str> = (phrase.from..=phrase.head).map(|i| self.line.text(i)).collect();
            joint.aliases.push(written.join(" "));
        }
        self.put(joint, phrase);
    }

    /// "Test the gas pipes at the *meter* and close the test point": where a test point is that was not named
    /// while it was open.
    fn place_of_test(&self, clause: &Clause, phrase: &Phrase, port: &Port) -> Option<String> {
        let closes = clause.means.contains(&Verb::Make) && !clause.means.contains(&Verb::Undo);
        if *port != Port::Test || phrase.words.len() > 2 || !closes {
            return None;
        }
        let tests = |other: &&Clause| other.verb() < clause.verb() && other.means.contains(&Verb::Test);
        let test = self.line.clauses.iter().rev().find(tests)?;
        let places = super::phrases(&self.line, test);
        let place = places.iter().find(|place| place.is_after(&["at"]) && place.words.len() < 3)?;
        matches!(noun(&place.stem()), Noun::Part | Noun::Isolator(_)).then(|| place.name())
    }

    /// "The hot tap at the basin" is the basin tap too, "the small drain screw on the domestic side" the domestic
    /// drain screw.
    fn name_by_place(&self, phrase: &Phrase) -> Option<String> {
        const OPENED: &[&str] = &["bleed", "drain", "fill", "filling", "sampling", "test", "vent"];
        let place = self.behind(phrase, &["at", "on"])?;
        let first = place.words.first().filter(|word| !super::nouns::is_place(word))?;
        let stem = phrase.stem();
        let (head, before) = stem.split_last()?;
        let of = before.last().filter(|word| OPENED.contains(&word.as_str()));
        let own = of.map_or_else(|| head.clone(), |of| format!("{of} {head}"));
        let is_thing = !self.known(&place, &[ThingKind::Component, ThingKind::Connection]).is_empty();
        (!is_thing && stem.len() > 1).then(|| format!("{first} {own}"))
    }

    /// "The screw in the test nipple" is what opens the nipple.
    fn port_in(&self, phrase: &Phrase) -> Option<(Phrase, Port)> {
        let within = self.behind(phrase, &["in", "of"]).filter(|_| phrase.head_word() == "screw")?;
        match noun(&within.stem()) {
            Noun::Port(port) => Some((within, port)),
            _ => None,
        }
    }

    /// Makes a plug or lead of the part that the words name.
    pub(super) fn make_connector(&mut self, clause: &Clause, phrase: &Phrase, mains: bool) {
        let component = self.part_of(phrase);
        let mut plug = self.connection(clause, phrase, Family::Connector, component.clone());
        plug.section = self.section_of_plug(clause, phrase, component, mains);
        self.put(plug, phrase);
    }

    /// "Unplug the fan": the plug of the fan.
    pub(super) fn make_plug_of(&mut self, clause: &Clause, phrase: &Phrase) {
        let said = Said::of_phrase(&self.line, clause, phrase, &self.phrases, &self.mentions);
        let known = said.agreeing(&self.map, self.known(phrase, &[ThingKind::Component]));
        let part = match known.as_slice() {
            _ if self.is_another(phrase) => self.make_component(phrase),
            [only] => only.clone(),
            [] => self.make_component(phrase),
            // Which of them is left to a doubt of the reader, who knows no plug of either.
            _ => return self.ask(phrase, format!("Which {} is unplugged?", phrase.name())),
        };
        let name = self.map.name_of(&part).to_owned();
        let mut words = name.split(' ').map(str::to_owned).collect::<Vec<_>>();
        words.push("plug".to_owned());
        let mains = noun(&words) == Noun::Connector(true);
        let mut plug = Connection::new(self.new_id(&words.join(" ")), &words.join(" "), Family::Connector);
        plug.joins.push(part.clone());
        plug.section = self.section_of_plug(clause, phrase, Some(part), mains);
        self.put(plug, phrase);
    }

    /// "Unclip the sensor": the clip of the sensor.
    pub(super) fn make_clip_of(&mut self, phrase: &Phrase) {
        let part = match self.known(phrase, &[ThingKind::Component]).as_slice() {
            _ if self.is_another(phrase) => self.make_component(phrase),
            [only] => only.clone(),
            [] => self.make_component(phrase),
            _ => return,
        };
        let name = format!("{} clip", self.map.name_of(&part));
        let mut clip = Connection::new(self.new_id(&name), &name, Family::Fixing);
        clip.joins.push(part);
        self.put(clip, phrase);
    }

    /// "Unscrew the safety valve": the thread by which it is screwed in carries the medium.
    pub(super) fn make_thread_of(&mut self, clause: &Clause, phrase: &Phrase) {
        let before = self.mark();
        let said = Said::of_phrase(&self.line, clause, phrase, &self.phrases, &self.mentions);
        // "The strainer of the *secondary* circuit" is none of the primary.
        let known = said.agreeing(&self.map, self.known(phrase, &[ThingKind::Component]));
        let part = match known.as_slice() {
            _ if self.is_another(phrase) => self.make_component(phrase),
            [only] => only.clone(),
            [] => self.make_component(phrase),
            _ => return,
        };
        let about = About { component: Some(part.clone()), ..self.about(clause, phrase) };
        let Some(section) = self.section_for(&about) else {
            self.back_to(before);
            return self.ask_circuit(phrase, "carry", &about);
        };
        let name = format!("{} thread", self.map.name_of(&part));
        let mut thread = Connection::new(self.new_id(&name), &name, Family::Joint);
        let relieves = self.map.components.iter().any(|c| c.id == part && c.role == Some(Role::Relief));
        thread.joins.push(part);
        thread.section = Some(section.clone());
        self.put(thread, phrase);
        let of = |circuit: &&Circuit| circuit.sections.iter().any(|known| known.id == section);
        let circuit = self.map.circuits.iter().find(of).map(|circuit| circuit.id.clone());
        if let Some(circuit) = circuit.filter(|_| relieves) {
            self.discharge_of(&circuit);
        }
    }

    /// The electrical section of a plug. A plug of which nothing is said counts as mains: the safe side.
    fn section_of_plug(
        &mut self,
        clause: &Clause,
        phrase: &Phrase,
        part: Option<Id>,
        mains: bool,
    ) -> Option<Id> {
        let about = About { component: part, electrical: true, ..self.about(clause, phrase) };
        if mains { self.section_for(&about) } else { None }
    }

    /// A connection with the name, count and size that the words give.
    fn connection(
        &mut self,
        clause: &Clause,
        phrase: &Phrase,
        family: Family,
        component: Option<Id>,
    ) -> Connection {
        let mut name = self.connection_name(phrase, component.as_ref());
        if self.is_another(phrase) {
            name = self.name_of_another(&name);
        }
        let mut connection = Connection::new(self.new_id(&name), &name, family);
        connection.joins.extend(component);
        connection.aliases.extend(other_name(&name));
        connection.count = count(phrase.amount, phrase.part, phrase.plural()).clamp(1, 999);
        connection.size = self.size_of(clause, phrase).map(Known::Value);
        if phrase.plural() && !matches!(phrase.amount, Some(crate::lexicon::Amount::Exactly(_))) {
            let id = connection.id.clone();
            self.ask_about(phrase, &id, format!("How many {name}? 2 are assumed."));
        }
        connection
    }

    /// The name: "the union nuts of the pump" are the pump union nuts, "the screws" of the guard the guard screws.
    fn connection_name(&self, phrase: &Phrase, component: Option<&Id>) -> String {
        let single = count(phrase.amount, phrase.part, phrase.plural()) == 1;
        let own = phrase.labelled(if single { phrase.stem() } else { phrase.words.clone() }.join(" "));
        let of =
            self.behind(phrase, &["of"]).filter(|of| noun(&of.stem()) == Noun::Joint && of.words.len() > 1);
        if let Some(joint) = of {
            return format!("{} {own}", joint.stem().join(" "));
        }
        let Some(part) = component.map(|part| self.map.name_of(part)) else {
            return self.told_apart(phrase, own);
        };
        let is_named = phrase.stem().iter().any(|word| part.split(' ').any(|other| other == word));
        if is_named { own } else { format!("{part} {own}") }
    }

    /// A nut with a pipe thread is called after where it is: "the G 1/2 nut at the *service cock*"; so is each of two, "the
    /// cap off the *fill valve* and the cap off the *drain valve*".
    fn told_apart(&self, phrase: &Phrase, own: String) -> String {
        // "The screws of the *cold pump end*."
        let is_end = |of: &Phrase| {
            noun(&of.stem()) == Noun::Side && of.words.iter().rev().skip(1).any(|word| is_side(word))
        };
        if let Some(of) = self.behind(phrase, &["of"]).filter(is_end) {
            return format!("{} {own}", of.name());
        }
        // "The union *of boiler 1*."
        let is_one_of_several = |of: &Phrase| is_appliance(&of.stem()) && is_one_of_twins(of);
        let is_port = matches!(noun(&phrase.stem()), Noun::Port(_));
        if let Some(of) = self.behind(phrase, &["of"]).filter(|of| is_one_of_several(of) && !is_port) {
            return format!("{} {own}", of.name());
        }
        // What a port is of stands before its name anyway.
        let place = self.behind(phrase, &["at", "from", "of", "off", "on"]);
        let place = place.filter(|of| if is_port { is_worked(of) } else { tells_twins_apart(of) });
        if let Some(of) = place.filter(|_| self.line.is_one_of_two(phrase, &self.phrases)) {
            return format!("{} {own}", of.name());
        }
        let size = phrase.from.checked_sub(1).map_or("", |before| self.line.text(before));
        let is_sized = size.starts_with(|c: char| c.is_ascii_digit());
        let is_nut = phrase.words.len() == 1 && phrase.head_word() == "nut" && is_sized;
        let at = self.behind(phrase, &["at", "on"]).filter(|_| is_nut);
        match at.filter(|at| !matches!(noun(&at.stem()), Noun::Nothing | Noun::Side | Noun::Unknown)) {
            Some(at) => format!("{} {own}", at.stem().join(" ")),
            None => own,
        }
    }

    /// Thread and width across flats, as far as they stand with a name and not with another.
    fn size_of(&self, clause: &Clause, phrase: &Phrase) -> Option<Size> {
        let mut size = Size::default();
        let before = |other: &Phrase, at: usize| {
            let is_sized = matches!(noun(&other.stem()), Noun::Fixing | Noun::Joint | Noun::Port(_));
            // "The bolts *of the bracket*, 8 mm": of the bolts, unless the bracket is said in so many figures.
            let is_of_it = other.is_after(&["of"]) && at > other.head;
            is_sized
                && !is_of_it
                && other.from != phrase.from
                && other.start <= at
                && other.start > phrase.start
        };
        for quantity in self.line.quantities(clause) {
            let is_behind_another = self.phrases.iter().any(|other| before(other, quantity.from));
            let is_of_one_before = quantity.from < phrase.start
                && self.phrases.iter().any(|other| {
                    other.head < phrase.start
                        && other.start <= quantity.from
                        && !matches!(other.lead, Lead::After(_))
                });
            if is_behind_another || is_of_one_before {
                continue;
            }
            match &quantity.figures {
                Figures::Size(thread) => size.thread = size.thread.or_else(|| Some(thread.clone())),
                Figures::Range(_) if quantity.width().is_some() => {
                    size.across_flats = quantity.measured(crate::units::Quantity::Length);
                }
                Figures::Range(_) | Figures::Dimensions(_) => {}
            }
        }
        (size != Size::default()).then_some(size)
    }

    /// The part that the next clause takes off.
    fn part_taken_off(&mut self) -> Option<Id> {
        let phrase = self.next_off.clone()?;
        let own = std::mem::replace(&mut self.phrases, self.next_phrases.clone());
        // "Undo the bolts and lift off the motor *of pump 2*" is none of pump 1.
        let known = self.named_next(self.known(&phrase, &[ThingKind::Component]));
        let part = match known.as_slice() {
            [only] => Some(only.clone()),
            [] => Some(self.make_component(&phrase)),
            _ => None,
        };
        self.phrases = own;
        part
    }

    /// Those of some parts that have the name that the next clause says with an owner; all of them if it says none.
    fn named_next(&self, mut parts: Vec<Id>) -> Vec<Id> {
        parts.retain(|id| self.next_name.as_ref().is_none_or(|name| self.map.name_of(id) == name));
        parts
    }

    /// Whether a known connection is of the part that the words name.
    pub(super) fn agrees_in_part(&self, connection: &Connection, phrase: &Phrase) -> bool {
        if let Some(within) = self.behind(phrase, &["in"]).filter(|_| phrase.words.len() == 1) {
            // "The screw in the test nipple" is none of the cover.
            let kinds = [ThingKind::Component, ThingKind::Connection];
            let known = self.known(&within, &kinds);
            let is_thing = !matches!(noun(&within.stem()), Noun::Nothing | Noun::Side | Noun::Unknown);
            if is_thing
                && !connection.joins.iter().any(|part| known.contains(part))
                && !known.contains(&connection.id)
            {
                return false;
            }
        }
        // "The plug on the fan" is the fan's.
        let is_plug = matches!(noun(&phrase.stem()), Noun::Connector(_)) && phrase.words.len() == 1;
        let on = || self.behind(phrase, &["on"]).filter(|_| is_plug);
        let named = self.behind(phrase, &["of"]).or_else(on).or_else(|| self.next_off.clone());
        // "The screws of the gas valve" are not those of the case, whatever else a valve is.
        let is_shut_with = |named: &Phrase| {
            matches!(noun(&named.stem()), Noun::Isolator(_))
                && self.known(named, &[ThingKind::Component]).is_empty()
                && !self.known(named, &[ThingKind::Isolator]).is_empty()
        };
        let is_part =
            |named: &Phrase| matches!(noun(&named.stem()), Noun::Part | Noun::Unknown | Noun::Isolator(_));
        let Some(named) = named.filter(|named| is_part(named) && !is_shut_with(named)) else {
            return true;
        };
        let mut parts = self.known(&named, &[ThingKind::Component]);
        if self.next_off.as_ref().is_some_and(|next| next.from == named.from) {
            // "Unscrew the nuts and take off the guard *of pump 2*" unscrews none of pump 1.
            let n_known = parts.len();
            parts = self.named_next(parts);
            if parts.len() < n_known && parts.is_empty() && !connection.joins.is_empty() {
                return false;
            }
        }
        let of_part = connection.joins.iter().any(|part| parts.contains(part));
        let all_named = self.behind(phrase, &["of"]).is_none() && covers(phrase, &connection.name);
        if connection.port.is_some() {
            // The screw of a nipple is the nipple; "the screws of the gas valve" hold the valve.
            return noun(&phrase.stem()) != Noun::Fixing;
        }
        connection.joins.is_empty() || of_part || all_named
    }

    fn put(&mut self, connection: Connection, phrase: &Phrase) {
        let (id, name) = (connection.id.clone(), connection.name.clone());
        self.map_mut().connections.push(connection);
        self.note_in_words(&id, ThingKind::Connection, &name, phrase);
        self.last_connection = Some(id);
    }

    fn ask_about(&mut self, phrase: &Phrase, thing: &Id, question: String) {
        let span = self.span_of(phrase);
        self.asked.push(Question { span, question, choices: Vec::new(), thing: Some(thing.clone()) });
    }
}

/// Whether a phrase is a whole name.
fn covers(phrase: &Phrase, name: &str) -> bool {
    name.split(' ').count() == phrase.words.len()
}

/// Union nuts are called unions too, and connectors plugs.
fn other_name(name: &str) -> Option<String> {
    let names =
        [("union nuts", "unions"), ("union nut", "union"), ("connectors", "plugs"), ("connector", "plug")];
    let other = |(end, other): (&str, &str)| name.strip_suffix(end).map(|before| format!("{before}{other}"));
    names.into_iter().find_map(other)
}

/// Whether several are several joints, as unions are; the screws of a flange and the terminals of a supply are
/// one.
pub(in crate::capture) fn is_joint_each(phrase: &Phrase) -> bool {
    noun(&phrase.stem()) == Noun::Joint && !matches!(phrase.head_word().as_str(), "flange" | "terminal")
}
