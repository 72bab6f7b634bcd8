//! What is demanded when the job is over and the appliance stays in service.

use super::kinds::TestDemand;
use super::machine::Machine;
use super::plant::{ConnectionCell, Thing};
use super::state::Whereabouts;
use super::unmet::{Demand, Reason};
use super::{ApplianceCell, Cell, Hazard, Place, Side};
use crate::model::{Aim, Goal, Handle, Mode, TestKind};

/// A part of the end that does not depend on the other parts.
#[derive(Clone, Copy, Debug)]
enum Last {
    Thing(Thing),
    Function,
    Baseline,
    Goal(usize),
}

impl Machine<'_> {
    /// Looks at the whole map once.
    pub(super) fn end(&mut self) {
        self.place = Place::END;
        self.no_action();
        let plant = &self.trace.plant;
        let mut parts: Vec<Last> = plant
            .connections()
            .map(|(cell, _)| Thing::Connection(cell))
            .chain(plant.components().map(|(cell, _)| Thing::Component(cell)))
            .chain(plant.temporaries().map(|(cell, _)| Thing::Temporary(cell)))
            .chain(plant.isolators().map(|(cell, _)| Thing::Isolator(cell)))
            .chain(plant.settings().map(|(cell, _)| Thing::Setting(cell)))
            .chain(plant.sections().map(|(cell, _)| Thing::Section(cell)))
            .map(Last::Thing)
            .collect();
        parts.extend([Last::Function, Last::Baseline]);
        parts.extend((0..self.procedure.goals.len()).map(Last::Goal));
        let way = self.trace.run.way().clone();
        self.on_ways_by_part(&way, &parts, &|machine: &mut Self, part: &Last| machine.end_part(*part));
    }

    fn end_part(&mut self, part: Last) {
        let ended = self.now(&ApplianceCell).and_then(|state| state.ended.clone());
        if ended == Some(Mode::LeftSafe) {
            return;
        }
        let failing = match part {
            Last::Thing(Thing::Connection(cell)) => self.end_connection(cell),
            Last::Thing(Thing::Component(cell)) => self.end_component(cell),
            Last::Thing(Thing::Temporary(cell)) => self.end_temporary(cell),
            Last::Thing(Thing::Isolator(cell)) => self.end_isolator(cell),
            Last::Thing(Thing::Setting(cell)) => self.end_setting(cell),
            Last::Thing(Thing::Section(cell)) => self.end_section(cell),
            Last::Thing(Thing::Circuit(_) | Thing::Seal(_)) => Vec::new(),
            Last::Function => self.function_not_shown().into_iter().collect(),
            Last::Baseline => self.no_baseline(),
            Last::Goal(i) => {
                self.procedure.goals.get(i).and_then(|goal| self.goal_missed(goal)).into_iter().collect()
            }
        };
        self.unmet(failing);
    }

    fn end_connection(&self, connection: ConnectionCell) -> Vec<(Reason, Place)> {
        let (Some(plan), Some(state)) = (self.trace.plant.connection(connection), self.now(&connection))
        else {
            return Vec::new();
        };
        if plan.joins.iter().any(|c| self.whereabouts_of(*c) == Some(Whereabouts::Discarded)) {
            return Vec::new();
        }
        let since = self.since(&connection);
        if state.open > 0 {
            return vec![(Reason::LeftOpen { connection }, since)];
        }
        if state.slack > 0 {
            return vec![(Reason::LeftSlack { connection }, since)];
        }
        let mut failing = Vec::new();
        if plan.again.is_some() && state.last_opened.is_some() && !state.tightened_again {
            failing.push((missed(Demand::NotTightenedAgain, Thing::Connection(connection)), since));
        }
        let thing = Thing::Connection(connection);
        let lacking = self.lacking(connection).into_iter();
        failing.extend(lacking.flat_map(|(touched, lacking)| {
            lacking.into_iter().map(move |any_of| (Reason::NotTested { thing, any_of }, touched))
        }));
        failing
    }

    fn whereabouts_of(&self, component: super::ComponentCell) -> Option<Whereabouts> {
        self.now(&component).map(|state| state.whereabouts)
    }

    fn end_component(&self, component: super::ComponentCell) -> Vec<(Reason, Place)> {
        if matches!(self.whereabouts_of(component), Some(Whereabouts::Off | Whereabouts::Aside)) {
            return vec![(Reason::LeftOff { component }, self.since(&component))];
        }
        let thing = Thing::Component(component);
        let demands = self.trace.plant.component(component).map_or(&[][..], |plan| plan.tests.as_slice());
        let touched = self.now(&component).and_then(|state| state.last_touched);
        self.not_tested(thing, demands, touched)
    }

    /// The tests of a thing that do not follow its last touch.
    fn not_tested(
        &self,
        thing: Thing,
        demands: &[TestDemand],
        touched: Option<Place>,
    ) -> Vec<(Reason, Place)> {
        let Some(touched) = touched else { return Vec::new() };
        let lacking = demands.iter().filter(|any_of| !self.has_passed(any_of, thing, touched));
        lacking.map(|any_of| (Reason::NotTested { thing, any_of }, touched)).collect()
    }

    fn end_temporary(&self, temporary: super::TemporaryCell) -> Vec<(Reason, Place)> {
        let Some(plan) = self.trace.plant.temporary(temporary) else { return Vec::new() };
        let in_place = self.now(&temporary).is_some_and(|state| state.in_place);
        let since = self.since(&temporary);
        if in_place && !plan.initially && !plan.stays {
            vec![(Reason::TemporaryLeft { temporary }, since)]
        } else if !in_place && plan.initially {
            vec![(missed(Demand::TemporaryGone, Thing::Temporary(temporary)), since)]
        } else {
            Vec::new()
        }
    }

    fn end_isolator(&self, isolator: super::IsolatorCell) -> Vec<(Reason, Place)> {
        let Some(plan) = self.trace.plant.isolator(isolator) else { return Vec::new() };
        let by_hand = !matches!(plan.handle, Handle::Automatic | Handle::Relief | Handle::None);
        let open = self.now(&isolator).is_some_and(|state| state.open);
        let since = self.since(&isolator);
        match (by_hand && open != plan.normally_open, open) {
            (true, false) => vec![(Reason::NotNormal { isolator }, since)],
            (true, true) => vec![(missed(Demand::LeftOn, Thing::Isolator(isolator)), since)],
            (false, _) => Vec::new(),
        }
    }

    fn end_setting(&self, setting: super::SettingCell) -> Vec<(Reason, Place)> {
        let Some(state) = self.now(&setting) else { return Vec::new() };
        let thing = Thing::Setting(setting);
        if state.lost {
            return vec![(missed(Demand::SettingNotRestored, thing), self.since(&setting))];
        }
        let plan = self.trace.plant.setting(setting);
        let demands = plan.map(|plan| plan.tests.as_slice()).unwrap_or_default();
        self.not_tested(thing, demands, state.last_set)
    }

    fn end_section(&self, section: super::SectionCell) -> Vec<(Reason, Place)> {
        let demands = self.trace.plant.demands_on(section).map_or(&[][..], |on| on.after_filling.as_slice());
        if demands.is_empty() {
            return Vec::new();
        }
        let filled = self.now(&section).and_then(|state| state.last_filled);
        self.not_tested(Thing::Section(section), demands, filled)
    }

    /// After the last of a supply given back and a part fitted the appliance is shown to work. Covers, joined
    /// by fixings alone, do not count.
    fn function_not_shown(&self) -> Option<(Reason, Place)> {
        let shown = self.now(&ApplianceCell).and_then(|state| state.shown_to_work);
        let later = |since: Place| shown.is_none_or(|shown| since > shown);
        let mut last = None;
        for (component, plan) in self.trace.plant.components() {
            let works = plan.connections.iter().any(|k| self.carries(*k));
            if works && later(self.since(&component)) {
                // Only what may be later is looked at, so that other questions stay out of it.
                last = last.max(self.now(&component).and_then(|state| state.last_touched));
            }
        }
        for (isolator, plan) in self.trace.plant.isolators() {
            let since = self.since(&isolator);
            if since > Place::START && later(since) && self.gives_electricity(plan.between) {
                let open = self.now(&isolator).is_some_and(|state| state.open);
                last = last.max(open.then_some(since));
            }
        }
        let since = last.filter(|since| later(*since))?;
        Some((Reason::FunctionNotShown, since))
    }

    fn carries(&self, connection: ConnectionCell) -> bool {
        self.trace.plant.connection(connection).is_some_and(|k| k.section.is_some())
    }

    fn gives_electricity(&self, between: Option<(Side, Side)>) -> bool {
        between.iter().flat_map(|(a, b)| [a, b]).any(|side| match side {
            Side::Section(section) => {
                self.trace.plant.row_of(*section).is_some_and(|row| row.hazard == Hazard::Isolation)
            }
            Side::Supply => false,
        })
    }

    /// Gas joints that were opened before any tightness test had passed.
    fn no_baseline(&self) -> Vec<(Reason, Place)> {
        let first_test = self
            .trace
            .tests
            .iter()
            .filter(|(test, ..)| test.kind == TestKind::Tightness)
            .filter_map(|(_, _, line)| self.first_place(line, |state| state.passed))
            .min();
        let gas_joints = self.trace.plant.connections().filter(|(_, plan)| {
            let row = plan.section.and_then(|s| self.trace.plant.row_of(s));
            plan.port.is_none() && row.is_some_and(|row| row.hazard == Hazard::Gas)
        });
        let opened = gas_joints
            .filter_map(|(cell, _)| {
                let line = cell.timeline(&self.trace)?;
                Some((self.first_place(line, |state| state.last_opened)?, cell))
            })
            .min();
        match (opened, first_test) {
            (Some((opened, cell)), tested) if tested.is_none_or(|tested| tested > opened) => {
                vec![(missed(Demand::NoBaseline, Thing::Connection(cell)), opened)]
            }
            _ => Vec::new(),
        }
    }

    fn goal_missed(&self, goal: &Goal) -> Option<(Reason, Place)> {
        let thing = self.trace.plant.thing(&goal.thing)?;
        let met = match (thing, &goal.aim) {
            (Thing::Component(cell), aim) => {
                let state = self.now(&cell)?;
                match aim {
                    Aim::Renew => state.new,
                    Aim::Clean => state.cleaned.is_some(),
                    Aim::Inspect => state.inspected.is_some(),
                    Aim::Reach | Aim::Other(_) => true,
                }
            }
            (Thing::Seal(cell), aim) => {
                let state = self.now(&cell)?;
                match aim {
                    Aim::Renew => state.renewed.is_some(),
                    Aim::Inspect => state.inspected.is_some(),
                    Aim::Clean | Aim::Reach | Aim::Other(_) => true,
                }
            }
            _ => true,
        };
        (!met).then(|| (missed(Demand::GoalNotReached, thing), Place::END))
    }
}

fn missed(demand: Demand, thing: Thing) -> Reason {
    Reason::Demand { demand, thing: Some(thing), others: Vec::new() }
}
