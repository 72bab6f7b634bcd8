//! Verbs of sections: release, prove, charge, purge, test.

use super::clause::Clause;
use super::coin;
use super::mention::Mention;
use super::reader::{Proposal, Reader};
use crate::model::{
    Action, ApplianceMap, CircuitKind, Connection, Energy, Id, Means, Port, Reading, ThingKind, Verb,
};
use crate::units::{Quantity as Kind, Range, Unit};

/// Where energy is let out of a circuit by hand.
pub(super) fn is_wet(kind: &CircuitKind) -> bool {
    !is_electrical(kind) && !matches!(kind, CircuitKind::AirAndFlue | CircuitKind::StoredMotion)
}

/// What can run out of a circuit and into a tray.
pub(super) fn is_liquid(kind: &CircuitKind) -> bool {
    is_wet(kind)
        && !matches!(kind, CircuitKind::FuelGas | CircuitKind::CompressedAir | CircuitKind::Refrigerant)
}

pub(super) fn is_electrical(kind: &CircuitKind) -> bool {
    matches!(kind, CircuitKind::MainsElectricity | CircuitKind::ControlElectricity | CircuitKind::DcBus)
}

impl Reader<'_> {
    /// Reads a clause as a verb of sections, if it is one.
    pub(super) fn sections(&self, clause: &Clause) -> Option<Vec<Proposal>> {
        let mut proposals = self.of_sections(clause)?;
        for proposal in &mut proposals {
            self.leave_out_empty(&mut proposal.action);
        }
        Some(proposals)
    }

    /// What is empty in service is not drained, filled or proved with its circuit.
    fn leave_out_empty(&self, action: &mut Action) {
        let [only] = action.on.as_slice() else { return };
        let mut circuits = self.map.circuits.iter();
        let Some(circuit) = circuits.find(|circuit| circuit.id == *only) else { return };
        if circuit.sections.iter().any(|section| section.normally_empty) {
            let full = circuit.sections.iter().filter(|section| !section.normally_empty);
            action.on = full.map(|section| section.id.clone()).collect();
        }
    }

    fn of_sections(&self, clause: &Clause) -> Option<Vec<Proposal>> {
        let verb = self.section_verb(clause)?;
        if verb == Verb::Release && self.lets_down_in_part(clause) {
            return Some(Vec::new());
        }
        if verb == Verb::Purge && self.waits_for_water(clause) && !self.is_at_vent(clause) {
            return Some(Vec::new());
        }
        let mut proposal = self.section_proposal(clause, &verb)?;
        if verb == Verb::Charge && self.fills_unnamed_fuel(clause, &proposal) {
            return Some(Vec::new());
        }
        match verb {
            Verb::Release => self.release(clause, &mut proposal.action),
            Verb::Charge | Verb::Purge => self.fill(clause, &mut proposal.action),
            Verb::Prove => return Some(self.prove(clause, proposal)),
            _ => {}
        }
        Some(vec![proposal])
    }

    /// "Open the valve and let her fill": nobody fills oil or gas without saying so.
    fn fills_unnamed_fuel(&self, clause: &Clause, proposal: &Proposal) -> bool {
        let is_fuel = |id: &Id| matches!(self.kind_of(id), Some(CircuitKind::Oil | CircuitKind::FuelGas));
        let may_be = proposal.action.on.iter().chain(&proposal.choices);
        may_be.into_iter().any(is_fuel) && !self.has(clause, &["gas", "fuel", "oil"])
    }

    /// "Let it down to 1.6 bar": what keeps a pressure is not at zero.
    fn lets_down_in_part(&self, clause: &Clause) -> bool {
        const NOTHING: f64 = 0.2;
        let mut figures = self.quantities(clause).filter(|quantity| {
            let before = quantity.from.checked_sub(1);
            before.is_some_and(|i| matches!(self.text(i), "at" | "to"))
        });
        figures.any(|quantity| {
            let range = quantity.range(Kind::Pressure);
            let bar = range.filter(|range| range.unit == Unit::Bar).and_then(|range| range.min.as_ref());
            bar.is_some_and(|least| least.value() > NOTHING)
        })
    }

    /// "When water comes at the vent": the air is out then. At a drain it says nothing of the kind.
    fn waits_for_water(&self, clause: &Clause) -> bool {
        matches!(self.text(clause.verb()), "when" | "until" | "till")
    }

    fn is_at_vent(&self, clause: &Clause) -> bool {
        let is_vent = |mention: &Mention| {
            let port = self.connection(mention).and_then(|joint| joint.port.as_ref());
            port == Some(&Port::Vent)
        };
        self.mentions_in(clause).any(is_vent)
    }

    /// The verb of sections that a clause means here.
    fn section_verb(&self, clause: &Clause) -> Option<Verb> {
        let says = |verb: &Verb| clause.means.contains(verb);
        if self.draws_off_a_thing(clause) {
            return None;
        }
        let coming_back = self.is_coming_back();
        if says(&Verb::Restore) && !self.is_let_out(clause) {
            return None;
        }
        let says_dead = clause.phrase.iter().any(|i| self.text(*i) == "dead");
        if says(&Verb::Prove)
            && !says_dead
            && (says(&Verb::Test) || clause.means.first() == Some(&Verb::Read))
        {
            return self.tests_dead(clause).then_some(Verb::Prove);
        }
        if says(&Verb::Release) && says(&Verb::Purge) {
            return Some(if coming_back { Verb::Purge } else { Verb::Release });
        }
        // "Release the clips", "crack the union": a connection that is not a way out.
        let only_joint = (says(&Verb::Undo) || says(&Verb::Slacken)) && !self.names_section(clause);
        if only_joint && !self.is_let_out(clause) {
            return None;
        }
        [Verb::Release, Verb::Prove, Verb::Charge, Verb::Purge].into_iter().find(|verb| says(verb))
    }

    /// "Open the drain *until* the gauge reads 0", "open the tap *to drain* the store".
    fn is_let_out(&self, clause: &Clause) -> bool {
        let beyond = clause.to.saturating_add(3);
        // "Open the cock, let the pressure *settle*": what comes in.
        let comes_in =
            |i: usize| matches!(self.text(i + 1), "build" | "come" | "rise" | "settle" | "stabilise");
        (clause.from..beyond).any(|i| match self.text(i) {
            "pressure" => !comes_in(i),
            text => matches!(text, "until" | "till" | "empty" | "into"),
        })
    }

    fn names_section(&self, clause: &Clause) -> bool {
        self.mentions_in(clause).any(|mention| {
            mention.candidates.iter().any(|c| matches!(c.kind, ThingKind::Section | ThingKind::Circuit))
        })
    }

    /// The connection that a mention names, if it names only one.
    pub(super) fn connection(&self, mention: &Mention) -> Option<&Connection> {
        let mut named = mention.candidates.iter().filter_map(|candidate| self.map.connection(&candidate.id));
        named.next().filter(|_| named.next().is_none())
    }

    /// The bare action on the section that a clause means.
    fn section_proposal(&self, clause: &Clause, verb: &Verb) -> Option<Proposal> {
        let mut proposal = Proposal {
            action: Action::new(verb.clone(), Vec::new()),
            choices: Vec::new(),
            doubtful: None,
            possible: true,
            said_by: clause.phrase.clone(),
        };
        let is_loose = self.is_loose(clause);
        // "When water comes at the vent": the water is no name there.
        let waits = self.waits_for_water(clause);
        let is_verb =
            |mention: &&Mention| waits && (mention.from..mention.to).any(|i| clause.phrase.contains(&i));
        let may_name = |mention: &&Mention| {
            !is_loose && !is_verb(mention) && self.may_name_section(clause, verb, mention)
        };
        for mention in self.mentions_in(clause).filter(may_name) {
            let mut ids: Vec<Id> = self.sections_of(mention, verb);
            if ids.len() > 1 {
                let dead: Vec<Id> =
                    ids.iter().filter(|id| self.here.fed.get(*id) == Some(&false)).cloned().collect();
                ids = if dead.is_empty() { ids } else { dead };
            }
            match ids.as_slice() {
                [] => continue,
                [only] => proposal.action.on = vec![only.clone()],
                _ => {
                    proposal.doubtful = Some((mention.from, mention.to));
                    proposal.choices = ids;
                }
            }
            proposal.said_by.extend(self.tokens_of(mention));
            return Some(proposal);
        }
        let is_moved = *verb != Verb::Prove && self.is_about_a_vessel(clause);
        if is_moved || self.is_about_another_thing(clause, verb) {
            return None;
        }
        let last: Vec<Id> = self
            .last_of(&[ThingKind::Section, ThingKind::Circuit])
            .into_iter()
            .map(|candidate| candidate.id)
            .collect();
        let mut touched = self.sections_touched(verb);
        // "Close the oil valve, then prove the burner *dead*" proves no oil.
        if *verb == Verb::Prove && self.has(clause, &["dead", "voltage"]) {
            touched.retain(|id| self.kind_of(id).is_some_and(is_electrical));
        }
        let by_kind = if !last.is_empty() {
            last
        } else if let [only] = touched.as_slice() {
            vec![only.clone()]
        } else {
            self.circuits_meant(clause, verb)
        };
        match by_kind.as_slice() {
            [] => None,
            [only] => {
                proposal.action.on = vec![only.clone()];
                Some(proposal)
            }
            _ => {
                proposal.doubtful = Some((clause.verb(), clause.verb() + 1));
                proposal.choices = by_kind;
                Some(proposal)
            }
        }
    }

    /// Whether a mention can name the section that a clause is about.
    fn may_name_section(&self, clause: &Clause, verb: &Verb, mention: &Mention) -> bool {
        // "Fill the trap *with water*": what it is filled with is no name of a circuit.
        let is_filling = *verb == Verb::Charge && matches!(self.preposition(mention), Some("of" | "with"));
        // "Until the mains drain gauge reads 0 bar": nobody reads bar of electricity.
        let is_live =
            || mention.candidates.iter().all(|one| self.kind_of(&one.id).is_some_and(is_electrical));
        !is_filling && (self.pressure(clause).is_none() || !is_live())
    }

    /// The circuits of what the last clause opened or closed: "open the gas cock and purge".
    fn sections_touched(&self, verb: &Verb) -> Vec<Id> {
        let of_isolator = |id: &Id| {
            let mut isolators = self.map.isolators.iter();
            isolators.find(|isolator| isolator.id == *id).map(|isolator| isolator.between.1.clone())
        };
        let of =
            |id: &Id| self.map.connection(id).and_then(|c| c.section.clone()).or_else(|| of_isolator(id));
        let mut touched: Vec<Id> = Vec::new();
        for section in self.last.iter().filter_map(|candidate| of(&candidate.id)) {
            let Some((circuit, _)) = self.map.sections().find(|(_, known)| known.id == section) else {
                continue;
            };
            let fits = is_wet(&circuit.kind) || (*verb == Verb::Prove && is_electrical(&circuit.kind));
            if fits && !touched.contains(&circuit.id) {
                touched.push(circuit.id.clone());
            }
        }
        touched
    }

    /// The sections that a mention stands for: itself, that of a joint, those of a part's joints.
    pub(super) fn sections_of(&self, mention: &Mention, verb: &Verb) -> Vec<Id> {
        let mut ids: Vec<Id> = Vec::new();
        let fits = |section: &Id| {
            let kind = self.kind_of(section);
            kind.is_some_and(|kind| {
                if *verb == Verb::Prove { is_wet(kind) || is_electrical(kind) } else { is_wet(kind) }
            })
        };
        for candidate in &mention.candidates {
            let of_part = |connection: &&Connection| connection.joins.contains(&candidate.id);
            match candidate.kind {
                ThingKind::Section | ThingKind::Circuit => ids.push(candidate.id.clone()),
                ThingKind::Connection => {
                    ids.extend(self.map.connection(&candidate.id).and_then(|c| c.section.clone()));
                }
                ThingKind::Component if *verb != Verb::Prove => {
                    let joints = self.map.connections.iter().filter(of_part);
                    ids.extend(joints.filter_map(|c| c.section.clone()).filter(fits));
                }
                _ => {}
            }
        }
        let mut seen = Vec::new();
        ids.retain(|id| {
            let new = fits(id) && !seen.contains(id);
            seen.push(id.clone());
            new
        });
        ids
    }

    /// The kind of the circuit that an id names, or of its section.
    pub(super) fn kind_of(&self, id: &Id) -> Option<&CircuitKind> {
        let mut circuits = self.map.circuits.iter();
        circuits.find(|c| c.id == *id || c.sections.iter().any(|s| s.id == *id)).map(|c| &c.kind)
    }

    /// The circuits that a clause can mean although it names none.
    fn circuits_meant(&self, clause: &Clause, verb: &Verb) -> Vec<Id> {
        let dead = self.has(clause, &["dead", "voltage"]) || self.tests_dead(clause);
        let is_liquid = |kind: &CircuitKind| {
            !matches!(kind, CircuitKind::FuelGas | CircuitKind::CompressedAir | CircuitKind::Refrigerant)
        };
        let drains =
            *verb == Verb::Release && clause.phrase.iter().any(|i| self.text(*i).starts_with("drain"));
        let cools = clause.phrase.iter().any(|i| self.text(*i).starts_with("cool"));
        let of_caps = self.tokens.iter().any(|t| matches!(&*t.text, "capacitor" | "capacitors"));
        // What is filled or topped up is no gas or oil pipe, unless the words say so.
        let fills = *verb == Verb::Charge;
        let words: Vec<String> = (clause.from..clause.to).map(|i| self.text(i).to_owned()).collect();
        let named = coin::named_kind(&words, false);
        let fits = |kind: &CircuitKind| {
            let is_gas = matches!(kind, CircuitKind::FuelGas | CircuitKind::Oil);
            if (drains && !is_liquid(kind))
                || (fills && is_gas && named.is_none())
                || named.as_ref().is_some_and(|named| named != kind)
            {
                // "Fill the heating" fills no gas pipe.
                false
            } else if cools {
                *kind == CircuitKind::StoredHeat
            } else if of_caps {
                *kind == CircuitKind::DcBus
            } else if dead {
                is_electrical(kind)
            } else {
                is_wet(kind) && (*verb != Verb::Prove || !dead)
            }
        };
        let of = |fits: &dyn Fn(&CircuitKind) -> bool| -> Vec<Id> {
            let circuits = self.map.circuits.iter().filter(|circuit| fits(&circuit.kind));
            circuits.map(|circuit| circuit.id.clone()).collect()
        };
        let all = of(&fits);
        // A filling loop fills the heating, and inhibitor goes nowhere else.
        let of_heating = (0..self.tokens.len())
            .any(|i| matches!(self.text(i), "filling" | "inhibitor" | "radiator" | "radiators"));
        let heating = of(&|kind| *kind == CircuitKind::HeatingWater);
        if all.len() > 1 && of_heating && !heating.is_empty() { heating } else { all }
    }

    /// The port that a clause opens, and the vent beside it.
    fn ports(&self, clause: &Clause) -> (Option<Id>, Option<Id>) {
        let mut through: Option<&Connection> = None;
        let mut vent: Option<&Connection> = None;
        for mention in self.mentions_in(clause) {
            let Some(connection) = self.connection(mention) else { continue };
            let is_vent = matches!(connection.port, Some(Port::Vent));
            let let_in = self.text(mention.to) == "open" || self.preposition(mention) == Some("with");
            if mention.from < clause.verb() && !let_in {
                continue;
            }
            if is_vent && (let_in || through.is_some()) {
                vent = Some(connection);
            } else if through.is_none() && (connection.port.is_some() || connection.section.is_some()) {
                through = Some(connection);
            }
        }
        (through.map(|c| c.id.clone()), vent.map(|c| c.id.clone()))
    }

    fn release(&self, clause: &Clause, action: &mut Action) {
        let (through, vent) = self.ports(clause);
        let through = through.or_else(|| self.open_drain(clause, action));
        let by_port = through.as_ref().and_then(|id| self.map.connection(id)).and_then(|c| c.port.as_ref());
        let says = |stem: &str| clause.phrase.iter().any(|i| self.text(*i).starts_with(stem));
        let means = [
            ("drain", Means::Drain),
            ("empt", Means::Drain),
            ("vent", Means::Vent),
            ("bleed", Means::Vent),
            ("bled", Means::Vent),
            ("recover", Means::Recover),
            ("evacuat", Means::Evacuate),
            ("flush", Means::Flush),
            ("block", Means::Block),
            ("restrain", Means::Block),
            ("crack", Means::Vent),
        ];
        let by_word = means.into_iter().find(|(stem, _)| says(stem)).map(|(_, means)| means);
        let by_port = by_port.map(|port| if *port == Port::Vent { Means::Vent } else { Means::Drain });
        let motion = action.on.iter().any(|id| self.kind_of(id) == Some(&CircuitKind::StoredMotion));
        action.by = by_word.or(by_port).or(Some(Means::Vent));
        action.what = Some(if motion { Energy::Motion } else { Energy::Pressure });
        action.through = through;
        action.vent = vent.or_else(|| self.open_port(action, &Port::Vent));
        let outlet = through_port(self.map, action.through.as_ref()) == Some(&Port::Outlet);
        let to_a_place = || self.after(clause, &["to"]).filter(|place| takes_water(place));
        let at_outlet = || self.after(clause, &["at"]).filter(|_| outlet);
        action.to = self.after(clause, &["into"]).or_else(to_a_place).or_else(at_outlet);
        let hot = self.quantities(clause).find_map(|quantity| quantity.measured(Kind::Temperature));
        action.temperature = hot.filter(|hot| hot.value.value() > 0.0);
    }

    /// "Let the boiler drain": through the only drain of it that stands open or has a hose on it.
    fn open_drain(&self, clause: &Clause, action: &Action) -> Option<Id> {
        let drains = clause.phrase.iter().any(|i| self.text(*i) == "drain");
        drains.then(|| self.open_port(action, &Port::Drain)).flatten()
    }

    /// The only port of a kind, of what an action is about, that stands open or has a hose on it.
    fn open_port(&self, action: &Action, port: &Port) -> Option<Id> {
        let is_open = |joint: &&Connection| {
            let open = self.here.connections.get(&joint.id).is_some_and(|here| here.open > 0);
            let own = joint.section.as_ref().is_some_and(|section| {
                let mut sections = self.map.sections();
                let circuit =
                    sections.find(|(_, known)| known.id == *section).map(|(circuit, _)| &circuit.id);
                action.on.iter().any(|on| on == section || Some(on) == circuit)
            });
            (open || self.has_hose(&joint.id)) && own && joint.port.as_ref() == Some(port)
        };
        let mut open = self.map.connections.iter().filter(is_open);
        open.next().filter(|_| open.next().is_none()).map(|joint| joint.id.clone())
    }

    /// Whether a hose is on a joint.
    pub(super) fn has_hose(&self, joint: &Id) -> bool {
        self.map.temporary.iter().any(|item| {
            let in_place = self.here.temporary.get(&item.id) == Some(&true);
            in_place && item.on.as_ref() == Some(joint) && item.name.ends_with("hose")
        })
    }

    fn fill(&self, clause: &Clause, action: &mut Action) {
        action.through = self.ports(clause).0;
        if action.verb == Verb::Purge && action.through.is_none() {
            return;
        }
        action.readings.extend(self.pressure(clause).map(|limits| reading("pressure", Some(limits))));
    }

    pub(super) fn pressure(&self, clause: &Clause) -> Option<Range> {
        self.quantities(clause).find_map(|quantity| quantity.range(Kind::Pressure).cloned())
    }
}

fn through_port<'m>(map: &'m ApplianceMap, through: Option<&Id>) -> Option<&'m Port> {
    through.and_then(|id| map.connection(id)).and_then(|connection| connection.port.as_ref())
}

pub(super) fn reading(what: &str, limits: Option<Range>) -> Reading {
    Reading { what: what.to_owned(), limits, ..Reading::default() }
}

/// Whether words name a place that water can run to: "to the gully", not "to below the pump".
fn takes_water(place: &str) -> bool {
    const PLACES: &[&str] = &[
        "bucket",
        "container",
        "drain",
        "drum",
        "floor",
        "gulley",
        "gully",
        "outside",
        "sink",
        "tundish",
        "waste",
    ];
    place.split(' ').any(|word| PLACES.contains(&word.to_lowercase().as_str()))
}
