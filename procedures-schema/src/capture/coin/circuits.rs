//! Which circuit words speak of, and circuits that are made.

use super::bench::Bench;
use super::label::is_code;
use super::phrase::Phrase;
use super::{Meaning, Question};
use crate::model::{
    CensusAnswer, Circuit, CircuitKind, Handle, Id, Isolator, Port, SUPPLY, Section, ThingKind,
};

/// What is known of where a new thing belongs.
#[derive(Debug, Default)]
pub(super) struct About {
    /// The words of its name and of what it is "of".
    pub(super) near: Vec<String>,
    /// The other words of its clause.
    pub(super) far: Vec<String>,
    /// The component that it joins.
    pub(super) component: Option<Id>,
    /// What it is opened for.
    pub(super) port: Option<Port>,
    /// Whether it carries mains.
    pub(super) electrical: bool,
    /// The kind of circuit that the writer gave when asked.
    pub(super) answer: Option<CircuitKind>,
}

/// The kind of circuit that words name.
pub(in crate::capture) fn named_kind(words: &[String], near: bool) -> Option<CircuitKind> {
    let has = |list: &[&str]| words.iter().any(|word| list.contains(&word.as_str()));
    let pair = |first: &str, second: &[&str]| {
        words.windows(2).any(|pair| matches!(pair, [a, b] if a == first && second.contains(&b.as_str())))
    };
    let rows: [(bool, CircuitKind); 11] = [
        (
            has(&["condensate"]) || (near && has(&["siphon", "trap"]) && !has(&["steam"])),
            CircuitKind::Condensate,
        ),
        (has(&["refrigerant"]), CircuitKind::Refrigerant),
        (has(&["steam"]), CircuitKind::Steam),
        (has(&["oil"]), CircuitKind::Oil),
        (has(&["gas"]) && !pair("flue", &["gas", "gases"]), CircuitKind::FuelGas),
        (near && (has(&["flue"]) || pair("combustion", &["air"])), CircuitKind::AirAndFlue),
        (has(&["compressed", "receiver"]), CircuitKind::CompressedAir),
        (has(&["heating", "rad", "radiator", "radiators", "rads"]), CircuitKind::HeatingWater),
        (
            near && (has(&["cold", "hot", "domestic", "drinking", "stopcock", "stop-cock", "stop", "water"])),
            CircuitKind::DomesticWater,
        ),
        (pair("mains", &["water", "cold"]) || pair("water", &["main", "mains"]), CircuitKind::DomesticWater),
        (has(&["mains", "electric", "electrical", "electricity"]), CircuitKind::MainsElectricity),
    ];
    let found = rows.into_iter().find(|(said, _)| *said).map(|(_, kind)| kind);
    let air =
        near && has(&["air"]) && !pair("air", &["vent", "vents", "bleed", "bleeder", "screw", "intake"]);
    found.or(air.then_some(CircuitKind::CompressedAir))
}

/// Whether words speak of a ring main. What a valve shuts is none of electricity.
fn names_ring_main(words: &[String]) -> bool {
    words.windows(2).any(|two| matches!(two, [ring, main] if ring == "ring" && main == "main"))
}

/// Whether words hint at a water circuit without naming it.
pub(super) fn hints_at_water(words: &[String]) -> bool {
    const HINTS: &[&str] = &["circulator", "expansion", "flow", "pump", "pumps", "return", "system"];
    words.iter().any(|word| HINTS.contains(&word.as_str()))
}

/// "The *flow* valve": of what goes round, and not of the water from the main.
fn has_flow_or_return(words: &[String]) -> bool {
    words.iter().any(|word| matches!(&**word, "flow" | "return"))
        && !words.iter().any(|word| matches!(&**word, "circulation" | "secondary"))
}

/// Whether a medium can run out of a circuit.
pub(super) fn is_wet(kind: &CircuitKind) -> bool {
    !is_electrical(kind)
        && !matches!(kind, CircuitKind::AirAndFlue | CircuitKind::StoredMotion | CircuitKind::StoredHeat)
}

fn is_electrical(kind: &CircuitKind) -> bool {
    matches!(kind, CircuitKind::MainsElectricity | CircuitKind::ControlElectricity | CircuitKind::DcBus)
}

pub(super) fn is_water(kind: &CircuitKind) -> bool {
    matches!(kind, CircuitKind::HeatingWater | CircuitKind::DomesticWater | CircuitKind::NetworkPrimary)
}

/// The names of a new circuit and of its section; whether it is fed from outside the appliance.
fn names(kind: &CircuitKind) -> (&str, &str, bool) {
    match kind {
        CircuitKind::MainsElectricity => ("mains", "appliance mains", true),
        CircuitKind::FuelGas => ("gas", "appliance gas", true),
        CircuitKind::HeatingWater => ("heating", "heating system", false),
        CircuitKind::DomesticWater => ("domestic water", "water pipes", true),
        CircuitKind::Condensate => ("condensate", "condensate pipes", false),
        CircuitKind::AirAndFlue => ("air and flue", "flue ways", false),
        CircuitKind::Refrigerant => ("refrigerant", "refrigerant pipes", false),
        CircuitKind::CompressedAir => ("compressed air", "air pipes", true),
        CircuitKind::Steam => ("steam", "steam pipes", true),
        CircuitKind::Oil => ("oil", "oil pipes", true),
        other => (other.word(), other.word(), true),
    }
}

/// The name of the way in from outside as long as the words have not named what shuts it.
fn feed_name(circuit: &str) -> String {
    format!("{circuit} feed, not named yet")
}

impl Bench<'_> {
    /// The circuit of this kind, made if there is none.
    pub(super) fn circuit_of_kind(&mut self, kind: &CircuitKind) -> Option<Id> {
        let mut known = self.map.circuits.iter().filter(|circuit| circuit.kind == *kind);
        match (known.next(), known.next()) {
            (Some(only), None) => Some(only.id.clone()),
            (Some(_), Some(_)) => None,
            (None, _) => Some(self.make_circuit(kind)),
        }
    }

    /// A circuit with one section and, if it is fed from outside, a way in that nothing shuts yet. Without
    /// that way in the simulator would take it for dead.
    fn make_circuit(&mut self, kind: &CircuitKind) -> Id {
        let (name, section, is_fed) = names(kind);
        let (id, section_id) = (self.new_id(name), self.new_id(section));
        let stretch = Section::new(section_id.clone(), section);
        self.map_mut().circuits.push(Circuit::new(id.clone(), name, kind.clone(), stretch));
        self.note(&id, ThingKind::Circuit, name);
        self.note(&section_id, ThingKind::Section, section);
        if is_fed {
            let feed = feed_name(name);
            let isolator =
                Isolator::new(self.new_id(&feed), &feed, (SUPPLY.into(), section_id), Handle::None);
            self.note(&isolator.id, ThingKind::Isolator, &feed);
            self.map_mut().isolators.push(isolator);
        }
        id
    }

    /// Takes away the way in that stood for what has now been named.
    pub(super) fn name_the_feed(&mut self, circuit: &Id, section: &Id) {
        let Some(circuit) = self.map.circuits.iter().find(|known| known.id == *circuit) else { return };
        let feed = feed_name(&circuit.name);
        let stands_for = |isolator: &Isolator| {
            isolator.handle == Handle::None && isolator.name == feed && isolator.between.1 == *section
        };
        let gone: Vec<Id> =
            self.map.isolators.iter().filter(|i| stands_for(i)).map(|i| i.id.clone()).collect();
        self.map_mut().isolators.retain(|isolator| !gone.contains(&isolator.id));
        self.made.retain(|made| !gone.contains(&made.thing));
    }

    /// The circuit of a valve, by the words; else the only one that can be meant.
    pub(super) fn circuit_of_valve(&mut self, about: &About) -> Option<Id> {
        let named = about.answer.clone().or_else(|| named_kind(&about.near, true));
        if named.is_none()
            && names_ring_main(&about.near)
            && let Some(air) = self.compressed_air()
        {
            return Some(air);
        }
        // "Close the gas cock, the flow valve and the return valve": a flow is none of the gas.
        let hinted = hints_at_water(&about.near);
        let far = named_kind(&about.far, false).filter(|kind| !hinted || is_water(kind));
        if let Some(kind) = named.or(far) {
            return self.circuit_of_kind(&kind);
        }
        if hinted {
            let is_heating = has_flow_or_return(&about.near) && !self.has_kind(&CircuitKind::NetworkPrimary);
            let is_known = self.has_kind(&CircuitKind::HeatingWater);
            let only = self.only(is_water);
            return match only.filter(|only| !is_heating || is_known || self.goes_round(only)) {
                Some(only) => Some(only),
                None => self.circuit_of_kind(&CircuitKind::HeatingWater),
            };
        }
        self.only(is_wet).or_else(|| self.touched_alone(is_wet))
    }

    /// Asks which circuit a new thing shuts, carries or opens.
    pub(super) fn ask_circuit(&mut self, phrase: &Phrase, does: &str, about: &About) {
        let as_marked = |word: &String| if is_code(word) { word.to_uppercase() } else { word.clone() };
        let words: Vec<String> = phrase.words.iter().map(as_marked).collect();
        let what = phrase.labelled(words.join(" "));
        let asks = if phrase.plural() { "do" } else { "does" };
        let question = format!("Which circuit {asks} the {what} {does}?");
        let choices = self.kinds_in_question(about).into_iter().map(Meaning::Circuit).collect();
        self.asked.push(Question { span: self.span_of(phrase), question, choices, thing: None });
    }

    /// The kinds of circuit that come into question: those of the map, then those that the job touches by its
    /// census. As long as it names none that is touched, those that it says nothing of; never what is not there.
    fn kinds_in_question(&self, about: &About) -> Vec<CircuitKind> {
        let census = self.given.census;
        let answers = |kind: &CircuitKind| census.iter().find(|entry| entry.kind == *kind).map(|e| &e.answer);
        let is_touched = |kind: &CircuitKind| answers(kind) == Some(&CensusAnswer::Touched);
        let usual = [CircuitKind::FuelGas, CircuitKind::HeatingWater, CircuitKind::DomesticWater];
        let all = || usual.iter().chain(CircuitKind::ALL);
        let on_map = self.map.circuits.iter().map(|circuit| &circuit.kind);
        let mut kinds: Vec<CircuitKind> = Vec::new();
        let names_touched = CircuitKind::ALL.iter().any(|kind| is_touched(kind) && is_wet(kind));
        let others = all().filter(|kind| is_touched(kind) || (!names_touched && answers(kind).is_none()));
        for kind in on_map.chain(others).filter(|kind| is_wet(kind)) {
            if !kinds.contains(kind) {
                kinds.push(kind.clone());
            }
        }
        let twice = |kind: &CircuitKind| self.map.circuits.iter().filter(|c| c.kind == *kind).count() > 1;
        let carries_gas = matches!(about.port, None | Some(Port::Test));
        kinds.retain(|kind| !twice(kind) && (carries_gas || *kind != CircuitKind::FuelGas));
        // What is a pump's hardly carries gas.
        kinds.sort_by_key(|kind| hints_at_water(&about.near) && *kind == CircuitKind::FuelGas);
        kinds
    }

    /// The only circuit of compressed air, or a new one if the job touches one by its census.
    fn compressed_air(&mut self) -> Option<Id> {
        let is_air = |kind: &CircuitKind| *kind == CircuitKind::CompressedAir;
        let mut census = self.given.census.iter();
        let is_touched = census.any(|entry| is_air(&entry.kind) && entry.answer == CensusAnswer::Touched);
        match self.map.circuits.iter().filter(|circuit| is_air(&circuit.kind)).count() {
            0 if is_touched => self.circuit_of_kind(&CircuitKind::CompressedAir),
            1 => self.only(is_air),
            _ => None,
        }
    }

    /// Whether a circuit has a flow or a return that is shut.
    fn goes_round(&self, circuit: &Id) -> bool {
        let Some(circuit) = self.map.circuits.iter().find(|known| known.id == *circuit) else { return false };
        let of = |id: &Id| circuit.sections.iter().any(|section| section.id == *id);
        let mut own = self.map.isolators.iter().filter(|isolator| of(&isolator.between.1));
        own.any(|isolator| isolator.name.split(' ').any(|word| matches!(word, "flow" | "return")))
    }

    fn has_kind(&self, kind: &CircuitKind) -> bool {
        self.map.circuits.iter().any(|circuit| circuit.kind == *kind)
    }

    /// The only circuit of such a kind.
    fn only(&self, fits: impl Fn(&CircuitKind) -> bool) -> Option<Id> {
        let mut circuits = self.map.circuits.iter().filter(|circuit| fits(&circuit.kind));
        circuits.next().filter(|_| circuits.next().is_none()).map(|circuit| circuit.id.clone())
    }

    /// The circuit of the only such kind that the job touches by its census, where the map has none of them yet: the
    /// answer to a question with one answer.
    fn touched_alone(&mut self, fits: impl Fn(&CircuitKind) -> bool) -> Option<Id> {
        if self.map.circuits.iter().any(|circuit| fits(&circuit.kind)) {
            return None;
        }
        let touched = self.given.census.iter().filter(|entry| entry.answer == CensusAnswer::Touched);
        let mut kinds = touched.map(|entry| &entry.kind).filter(|kind| fits(kind));
        let only = kinds.next().filter(|_| kinds.next().is_none())?.clone();
        self.circuit_of_kind(&only)
    }

    /// The section that a new joint or port carries; none if the words and the map leave it open.
    pub(super) fn section_for(&mut self, about: &About) -> Option<Id> {
        if about.electrical {
            let electrical = self.only(is_electrical);
            let circuit = electrical.or_else(|| self.circuit_of_kind(&CircuitKind::MainsElectricity))?;
            return self.pick(&circuit, about.component.as_ref());
        }
        let named = if about.port == Some(Port::Sample) { Some(CircuitKind::AirAndFlue) } else { None };
        let named = about.answer.clone().or(named).or_else(|| named_kind(&about.near, true));
        let named = named.or_else(|| named_kind(&about.far, false)).or_else(|| self.kind_in_name(about));
        if let Some(kind) = named {
            let circuit = self.circuit_of_kind(&kind)?;
            return self.pick(&circuit, about.component.as_ref());
        }
        let beside = about.component.as_ref().and_then(|part| self.section_of_part(part));
        if beside.is_some() {
            return beside;
        }
        let hinted = hints_at_water(&about.near);
        let carries_water = about.near.first().is_some_and(|word| word == "hose");
        let may_be = |kind: &CircuitKind| match about.port {
            Some(Port::Drain | Port::Vent | Port::Outlet | Port::Fill) => {
                is_wet(kind) && *kind != CircuitKind::FuelGas && (!hinted || is_water(kind))
            }
            _ => {
                if hinted {
                    is_water(kind)
                } else {
                    // Of a hose nobody says unsaid that it carries gas.
                    is_wet(kind) && !(carries_water && *kind == CircuitKind::FuelGas)
                }
            }
        };
        let shut_off = |circuit: &&Circuit| {
            may_be(&circuit.kind) && circuit.sections.iter().any(|section| self.is_shut_off(&section.id))
        };
        let mut shut: Vec<Id> = self.map.circuits.iter().filter(shut_off).map(|c| c.id.clone()).collect();
        let circuit = match (shut.len(), self.only(may_be)) {
            (1, _) => shut.pop()?,
            (_, Some(only)) => only,
            // "Test the gas pipes at the meter and close the test point": the line has said it before.
            (_, None) => {
                let line: Vec<String> =
                    (0..self.line.tokens.len()).map(|i| self.line.text(i).to_owned()).collect();
                match named_kind(&line, false).filter(|kind| may_be(kind)) {
                    Some(kind) => self.circuit_of_kind(&kind)?,
                    None => self.touched_alone(may_be)?,
                }
            }
        };
        self.pick(&circuit, about.component.as_ref())
    }

    /// The kind of circuit that the name of a component says: the *gas* valve, the *flue* hood.
    fn kind_in_name(&self, about: &About) -> Option<CircuitKind> {
        let name = self.map.name_of(about.component.as_ref()?);
        let words: Vec<String> = name.split(' ').map(str::to_owned).collect();
        // An air filter may sit in the way of air that nobody compressed.
        named_kind(&words, true).filter(|kind| *kind != CircuitKind::CompressedAir)
    }

    /// The section of a circuit: the only one, that of the component, the one that is shut off here.
    fn pick(&self, circuit: &Id, component: Option<&Id>) -> Option<Id> {
        let circuit = self.map.circuits.iter().find(|known| known.id == *circuit)?;
        // What is empty in service is only behind a relief device.
        let mut full = circuit.sections.iter().filter(|section| !section.normally_empty);
        if let (Some(only), None) = (full.next(), full.next()) {
            return Some(only.id.clone());
        }
        let own = component.and_then(|part| self.section_of_part(part));
        if let Some(own) = own.filter(|own| circuit.sections.iter().any(|section| section.id == *own)) {
            return Some(own);
        }
        // A stretch that bears another component's name is not where this one sits.
        let is_others = |section: &Section| {
            let named = |part: &&crate::model::Component| {
                Some(&part.id) != component && is_named_after(&section.name, &part.name)
            };
            component.is_some() && self.map.components.iter().any(|part| named(&part))
        };
        let free =
            || circuit.sections.iter().filter(|section| !section.normally_empty && !is_others(section));
        let shut = free().rfind(|section| self.is_shut_off(&section.id));
        shut.or_else(|| component.and_then(|_| free().next())).map(|section| section.id.clone())
    }

    /// The section of a component's joints, or the one that bears its name.
    fn section_of_part(&self, part: &Id) -> Option<Id> {
        let wet = |section: &Id| {
            let mut sections = self.map.sections();
            sections.any(|(circuit, known)| known.id == *section && is_wet(&circuit.kind))
        };
        let joints = self.map.connections.iter().filter(|connection| connection.joins.contains(part));
        let mut carried: Vec<&Id> =
            joints.filter_map(|joint| joint.section.as_ref()).filter(|id| wet(id)).collect();
        carried.dedup();
        if let [only] = carried.as_slice() {
            return Some((*only).clone());
        }
        let name = self.map.name_of(part);
        let mut sections = self.map.sections();
        sections
            .find(|(_, section)| is_named_after(&section.name, name))
            .map(|(_, section)| section.id.clone())
    }

    /// Whether every isolator on the border of a section is closed, and there is one.
    fn is_shut_off(&self, section: &Id) -> bool {
        let borders = |isolator: &&Isolator| isolator.between.0 == *section || isolator.between.1 == *section;
        let mut around = self.map.isolators.iter().filter(borders).peekable();
        let closed = |isolator: &Isolator| {
            let here = self.line.here.isolators.get(&isolator.id);
            isolator.handle == Handle::Automatic || here.is_some_and(|here| !here.open)
        };
        around.peek().is_some() && around.all(closed)
    }
}

/// Whether a section's name begins with a component's: the pump body of the pump.
pub(in crate::capture) fn is_named_after(section: &str, part: &str) -> bool {
    section.strip_prefix(part).is_some_and(|rest| rest.starts_with(' '))
}
