//! Sections: releasing and proving.

use crate::model::{Action, Energy, Id, Means, Reading};
use crate::simulate::kinds::{KindRow, ProofReading};
use crate::simulate::machine::Machine;
use crate::simulate::state::{Contents, Proof};
use crate::simulate::trace::ProofTaken;
use crate::simulate::unmet::{Demand, Reason};
use crate::simulate::{ConnectionCell, Few, Hazard, SectionCell, Thing};
use crate::units::{Figure, Measured, Unit, convert};

/// Hottest water that may be let out through a cracked joint, in degrees Celsius: design value from scald
/// tables after Moritz and Henriques 1947 (secondary).
const HOTTEST: f64 = 43.0;

impl Machine<'_> {
    pub(super) fn release(&mut self, action: &Action) {
        let sections = self.named_sections(action);
        self.demand_release(action, &sections);
        let place = self.place;
        let what = action.what.clone().unwrap_or(Energy::Pressure);
        for section in sections {
            self.change(&section, |state| {
                state.stored = state.stored.without(&what);
                state.contents = match action.by {
                    Some(Means::Drain) => Contents::Air,
                    Some(Means::Recover) => Contents::Residual,
                    Some(Means::Evacuate) => Contents::Vacuum,
                    _ => state.contents,
                };
                state.last_filled = Some(place);
            });
        }
        for id in [&action.through, &action.vent].into_iter().flatten() {
            self.open_for_release(id);
        }
    }

    fn demand_release(&mut self, action: &Action, sections: &[SectionCell]) {
        let by = action.by.as_ref();
        if by != Some(&Means::Recover) {
            let failing: Vec<_> = sections.iter().filter_map(|s| self.still_fed(*s, sections)).collect();
            self.unmet(failing);
        }
        let running = self.is_running();
        self.demand(!running, Demand::NotShutDown, None, Vec::new());
        for section in sections {
            if matches!(by, Some(Means::Drain | Means::Evacuate)) {
                self.demand_no_live_part(*section);
            }
            if by == Some(&Means::Evacuate) {
                let failing = self.not_released(*section);
                self.unmet(failing);
            }
        }
        let thing = sections.first().map(|section| Thing::Section(*section));
        let wet = sections.iter().any(|s| self.trace.plant.row_of(*s).is_some_and(|row| row.fills_vented));
        if by == Some(&Means::Drain) {
            self.demand(action.to.is_some(), Demand::NowhereToGo, thing, Vec::new());
            self.demand(!wet || action.vent.is_some(), Demand::NoVent, thing, Vec::new());
        }
        self.demand_cool_joint(action, thing);
    }

    /// Cracking a joint instead of opening a drain: only cool, and with something to catch it.
    fn demand_cool_joint(&mut self, action: &Action, thing: Option<Thing>) {
        let joint = action.through.as_ref().and_then(|id| self.trace.plant.connection_named(id));
        let is_joint =
            joint.and_then(|k| self.trace.plant.connection(k)).is_some_and(|plan| plan.port.is_none());
        if !is_joint {
            return;
        }
        let cool = action.temperature.as_ref().is_some_and(is_cool);
        self.demand(cool, Demand::Hot, thing, Vec::new());
        self.demand(action.to.is_some(), Demand::NowhereToGo, thing, Vec::new());
    }

    /// No part joined to a section that is drained may be electrified: an element would burn dry.
    fn demand_no_live_part(&mut self, section: SectionCell) {
        let plant = &self.trace.plant;
        let parts: Vec<_> = plant
            .connections()
            .filter(|(_, plan)| plan.section == Some(section))
            .flat_map(|(_, plan)| plan.joins.iter().copied())
            .collect();
        for part in parts {
            for live in self.energises(part) {
                if let Some((reason, _)) = self.still_fed(live, &[]) {
                    let through = match reason {
                        crate::simulate::Reason::StillFed { through, .. } => through,
                        _ => Vec::new(),
                    };
                    let others = through.into_iter().map(Thing::Isolator).collect();
                    self.demand(false, Demand::DrainedLive, Some(Thing::Component(part)), others);
                }
            }
        }
    }

    /// A port that is named opens; a joint that is cracked stays slack.
    fn open_for_release(&mut self, id: &Id) {
        let Some(connection) = self.trace.plant.connection_named(id) else { return };
        let is_port = self.trace.plant.connection(connection).is_some_and(|k| k.port.is_some());
        if is_port {
            self.open_port(connection);
        } else {
            let place = self.place;
            self.change(&connection, |state| {
                if state.made > 0 {
                    state.slack += state.made;
                    state.made = 0;
                    state.seals_disturbed = true;
                    state.last_touched = Some(place);
                    state.last_opened = Some(place);
                }
            });
        }
    }

    pub(in crate::simulate) fn open_port(&mut self, connection: ConnectionCell) {
        let place = self.place;
        self.change(&connection, |state| {
            if state.made + state.slack > 0 {
                state.open += state.made + state.slack;
                state.made = 0;
                state.slack = 0;
                state.most_open = state.most_open.max(state.open);
                state.seals_disturbed = true;
                state.last_touched = Some(place);
                state.last_opened = Some(place);
            }
        });
    }

    /// Demands what makes a zero reading mean something; then heat, charge and movement are gone.
    pub(super) fn prove(&mut self, action: &Action) {
        let sections = self.named_sections(action);
        let mut shows = true;
        for section in &sections {
            let failing = self.not_cut_off(*section, &sections).or_else(|| self.not_released(*section));
            // A lock that is missing says nothing of what the reading shows.
            let only_unlocked = |(reason, _): &(Reason, _)| matches!(reason, Reason::NotLocked { .. });
            shows &= failing.as_ref().is_none_or(only_unlocked) && self.not_released(*section).is_none();
            self.unmet(failing);
            let waited = self.has_waited(*section);
            self.demand(waited, Demand::WaitTooShort, Some(Thing::Section(*section)), Vec::new());
            self.demand_readings(action, *section);
        }
        self.demand_proved_here(action);
        let second = self.second();
        for section in self.with_sections_behind_automatic(sections) {
            self.change(&section, |state| {
                state.stored.heat = false;
                state.stored.charge = false;
                state.stored.motion = false;
                state.proof = Proof::Proved { second };
            });
            self.pending.proofs.push(ProofTaken { place: self.place, section, shows });
        }
        self.open_where_taken(action);
    }

    /// A port at which something is read, tested or proved is open from then on; closing is always written.
    pub(in crate::simulate) fn open_where_taken(&mut self, action: &Action) {
        if let Some(port) = action.at.as_ref().and_then(|id| self.trace.plant.connection_named(id))
            && self.trace.plant.connection(port).is_some_and(|k| k.port.is_some())
        {
            self.open_port(port);
        }
    }

    /// Readings that are written are complete, in the order of the kind, and not wider than its limits.
    fn demand_readings(&mut self, action: &Action, section: SectionCell) {
        let Some(row) = self.trace.plant.row_of(section) else { return };
        if action.readings.is_empty() {
            return;
        }
        let thing = Some(Thing::Section(section));
        let matched = match_readings(row, &action.readings);
        self.demand(matched.is_some(), Demand::ProofIncomplete, thing, Vec::new());
        let demands = self.trace.plant.demands_on(section);
        let looser = matched.into_iter().flatten().any(|(at, asked, given)| {
            match demands.and_then(|demands| demands.limits_of(at)) {
                Some(replaced) => is_wider(replaced.max.as_ref(), &replaced.unit, given),
                None => is_looser(asked, given),
            }
        });
        self.demand(!looser, Demand::LooserThanDefault, thing, Vec::new());
    }

    /// An electrical proof is taken where the work is: at terminals that can be reached.
    fn demand_proved_here(&mut self, action: &Action) {
        let Some(at) = action.at.as_ref().and_then(|id| self.trace.plant.connection_named(id)) else {
            return;
        };
        let Some(plan) = self.trace.plant.connection(at) else { return };
        let electrical = plan
            .section
            .and_then(|s| self.trace.plant.row_of(s))
            .is_some_and(|row| row.hazard == Hazard::Isolation);
        let reach = plan.reach.clone();
        let reached = reach.iter().all(|guard| !self.is_fitted(*guard));
        self.demand(!electrical || reached, Demand::ProvedElsewhere, Some(Thing::Connection(at)), Vec::new());
    }

    /// What lies behind a shut automatic valve holds no more than what stands before it.
    fn with_sections_behind_automatic(&self, sections: Few<SectionCell>) -> Few<SectionCell> {
        let mut all = sections.clone();
        for section in sections {
            for joined in self.group(section) {
                let behind = self.trace.plant.section(joined).is_some_and(|s| s.behind_automatic);
                if behind && !all.contains(&joined) {
                    all.push(joined);
                }
            }
        }
        all
    }

    pub(in crate::simulate) fn named_sections(&self, action: &Action) -> Few<SectionCell> {
        action.on.iter().flat_map(|id| self.sections_of(id)).collect()
    }
}

fn is_cool(temperature: &Measured) -> bool {
    convert(temperature.value.value(), &temperature.unit, &Unit::Celsius).is_ok_and(|t| t <= HOTTEST)
}

/// Pairs the readings that a kind asks for, by position, with those given, in order; none if one is missing. Readings
/// are known by their unit's quantity and, where that is not enough, by being figures or observations.
fn match_readings<'g>(
    row: &'static KindRow,
    given: &'g [Reading],
) -> Option<Vec<(usize, &'static ProofReading, &'g Reading)>> {
    let mut rest = given.iter();
    row.proof
        .iter()
        .enumerate()
        .map(|(at, asked)| rest.find(|reading| fits(asked, reading)).map(|found| (at, asked, found)))
        .collect()
}

fn fits(asked: &ProofReading, given: &Reading) -> bool {
    match (&asked.limits, &given.limits) {
        (Some((_, _, unit)), Some(range)) => unit.quantity() == range.unit.quantity(),
        (None, _) => !given.seen.is_empty(),
        (Some(_), None) => false,
    }
}

fn is_looser(asked: &ProofReading, given: &Reading) -> bool {
    let Some((_, max, unit)) = &asked.limits else { return false };
    // An end that is empty in the table is open.
    is_wider(Figure::parse(max).ok().as_ref(), unit, given)
}

/// Whether a reading accepts more than a largest figure.
fn is_wider(most: Option<&Figure>, unit: &Unit, given: &Reading) -> bool {
    let (Some(most), Some(range)) = (most, &given.limits) else { return false };
    let value = range.max.as_ref().map(|max| convert(max.value(), &range.unit, unit));
    value.is_none_or(|value| value.is_ok_and(|value| value > most.value()))
}
