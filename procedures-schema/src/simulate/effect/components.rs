//! Components: removing, moving aside, discarding, fitting, cleaning and inspecting.

use super::Part;
use crate::model::{Action, Renewal, Verb};
use crate::simulate::machine::Machine;
use crate::simulate::state::{ComponentState, Whereabouts};
use crate::simulate::unmet::Demand;
use crate::simulate::{ComponentCell, ConnectionCell, Few, Thing};
use smallvec::smallvec;

/// Heaviest lift for one person, in kilograms: HSE lifting filter for men at knuckle to elbow height close
/// to the body (from memory).
const HEAVIEST: f64 = 25.0;

impl Machine<'_> {
    pub(super) fn take_off(&mut self, action: &Action) {
        let aside = action.verb == Verb::MoveAside;
        let to = match action.verb {
            Verb::MoveAside => Whereabouts::Aside,
            Verb::Discard => Whereabouts::Discarded,
            _ => Whereabouts::Off,
        };
        for component in self.components_of(action) {
            let thing = Some(Thing::Component(component));
            if self.is_on_the_bench(component) {
                self.change(&component, |state| state.on_carrier = false);
                if action.verb == Verb::Discard {
                    self.demand(given(action), Demand::NoReason, thing, Vec::new());
                    self.whereabouts(component, to, false);
                }
                continue;
            }
            let was = self.now(&component).map(|state| state.whereabouts);
            let there = was == Some(Whereabouts::Fitted) || (!aside && was == Some(Whereabouts::Aside));
            self.demand(there || to == Whereabouts::Discarded, Demand::RemovedTwice, thing, Vec::new());
            if action.verb == Verb::Discard {
                self.demand(given(action), Demand::NoReason, thing, Vec::new());
            }
            if there {
                self.demand_removal(component, aside);
            }
            for part in self.assembly(component) {
                let there = |state: &ComponentState| {
                    matches!(state.whereabouts, Whereabouts::Fitted | Whereabouts::Aside)
                };
                if part == component || self.now(&part).is_some_and(there) {
                    self.whereabouts(part, to, false);
                }
            }
            if !aside && self.carrier_of(component).is_some() {
                self.change(&component, |state| state.on_carrier = false);
            }
        }
    }

    /// A carried part whose carrier is off can be taken off on the bench.
    fn is_on_the_bench(&self, component: ComponentCell) -> bool {
        self.carrier_of(component).is_some_and(|carrier| !self.is_fitted(carrier))
            && self.now(&component).is_some_and(|state| state.on_carrier)
    }

    fn demand_removal(&mut self, component: ComponentCell, aside: bool) {
        let thing = Thing::Component(component);
        let behind =
            self.trace.plant.component(component).map(|plan| plan.behind.clone()).unwrap_or_default();
        self.demand_reach(&behind, thing);
        let assembly = self.assembly(component);
        for connection in self.holding(&assembly, aside) {
            self.demand(false, Demand::StillHeld, Some(thing), vec![Thing::Connection(connection)]);
        }
        let mut failing = self.hands(&[component]);
        // What it bares has the demand of a guard, which says more than "still fed".
        let bares = self.bares(component);
        failing.retain(|(reason, _)| !concerns(reason, &bares));
        self.unmet(failing);
        self.demand_guard(component);
        self.demand_people(&assembly, thing);
    }

    /// Connections between the assembly and the rest that have not let go.
    fn holding(&self, assembly: &[ComponentCell], aside: bool) -> Vec<ConnectionCell> {
        let plant = &self.trace.plant;
        plant
            .connections()
            .filter(|(_, plan)| {
                let inside = plan.joins.iter().filter(|part| assembly.contains(part)).count();
                let within = plan.joins.len() > 1 && inside == plan.joins.len();
                inside > 0 && !within && plan.port.is_none() && !(aside && plan.flexible)
            })
            .filter(|(cell, plan)| {
                self.now(cell)
                    .is_some_and(|state| state.made > 0 || (state.slack > 0 && !plan.frees_when_slack))
            })
            .map(|(cell, _)| cell)
            .collect()
    }

    fn demand_people(&mut self, assembly: &[ComponentCell], thing: Thing) {
        let mass: f64 = assembly
            .iter()
            .filter_map(|part| self.trace.plant.component(*part))
            .map(|plan| plan.mass_kg)
            .sum();
        let light = mass <= HEAVIEST * f64::from(self.people);
        self.demand(light, Demand::TooHeavy, Some(thing), Vec::new());
    }

    /// Carried parts come on with their carrier if it is the one that came off.
    pub(super) fn fit(&mut self, action: &Action) {
        let new = action.part == Some(Renewal::New);
        for component in self.components_of(action) {
            let carrier = self.carrier_of(component);
            if carrier.is_some_and(|carrier| !self.is_fitted(carrier)) {
                self.change(&component, |state| {
                    state.put_over = !state.on_carrier;
                    state.on_carrier = true;
                    state.new = state.new || new;
                });
                continue;
            }
            self.demand_fitting(action, component, new);
            let with_new: Vec<ComponentCell> =
                action.with_new.iter().filter_map(|id| self.trace.plant.component_named(id)).collect();
            for part in self.carried_by(component).into_iter().filter(|part| with_new.contains(part)) {
                self.change(&part, |state| state.on_carrier = true);
            }
            if carrier.is_some() {
                self.change(&component, |state| state.on_carrier = true);
            }
            for part in self.assembly(component) {
                let comes_new = new && (part == component || with_new.contains(&part));
                self.whereabouts(part, Whereabouts::Fitted, comes_new);
            }
            if new {
                self.renew_with(component);
            }
        }
    }

    /// The part that carries another.
    fn carrier_of(&self, component: ComponentCell) -> Option<ComponentCell> {
        self.trace.plant.component(component).and_then(|plan| plan.carried_by)
    }

    /// A component and what is on it, and on that in turn: what goes where it goes.
    fn assembly(&self, component: ComponentCell) -> Few<ComponentCell> {
        let mut all: Few<ComponentCell> = smallvec![component];
        let mut next = 0;
        while let Some(carrier) = all.get(next).copied() {
            for part in self.carried_by(carrier) {
                if !all.contains(&part) && self.now(&part).is_some_and(|state| state.on_carrier) {
                    all.push(part);
                }
            }
            next += 1;
        }
        all
    }

    fn demand_fitting(&mut self, action: &Action, component: ComponentCell, new: bool) {
        let thing = Thing::Component(component);
        let was = self.now(&component).map(|state| state.whereabouts);
        let off = matches!(was, Some(Whereabouts::Off | Whereabouts::Aside | Whereabouts::Discarded));
        self.demand(off, Demand::FitNotRemoved, Some(thing), Vec::new());
        let behind =
            self.trace.plant.component(component).map(|plan| plan.behind.clone()).unwrap_or_default();
        self.demand_reach(&behind, thing);
        self.demand_no_blank(component);
        self.demand_finished_behind(component);
        if new {
            self.demand_nothing_carried_left(action, component);
        }
        let failing = self.hands(&[component]);
        self.unmet(failing);
    }

    /// Nothing caps a rigid connection of what goes on.
    fn demand_no_blank(&mut self, component: ComponentCell) {
        let rigid = self.rigid_connections(component);
        for connection in rigid {
            if let Some(item) = self.closing_item(connection) {
                let others = vec![Thing::Temporary(item)];
                self.demand(false, Demand::BlankInside, Some(Thing::Connection(connection)), others);
            }
        }
    }

    fn rigid_connections(&self, component: ComponentCell) -> Few<ConnectionCell> {
        let plant = &self.trace.plant;
        let own = plant.component(component).map(|plan| plan.connections.as_slice()).unwrap_or_default();
        let is_rigid = |k: &&ConnectionCell| {
            plant.connection(**k).is_some_and(|plan| !plan.flexible && plan.port.is_none())
        };
        own.iter().filter(is_rigid).copied().collect()
    }

    /// Nothing behind what goes on is off, aside, open or slack; joints there that are still to be looked
    /// at, as far as that can be done now, are looked at.
    fn demand_finished_behind(&mut self, component: ComponentCell) {
        let thing = Thing::Component(component);
        let Some(plan) = self.trace.plant.component(component) else { return };
        let (parts, joints) = (plan.covers.clone(), plan.hides.clone());
        let unfinished_part = |part: &ComponentCell| {
            self.now(part).is_some_and(|s| matches!(s.whereabouts, Whereabouts::Off | Whereabouts::Aside))
        };
        let mut unfinished: Vec<Thing> =
            parts.into_iter().filter(unfinished_part).map(Thing::Component).collect();
        let open = |joint: &&ConnectionCell| {
            self.now(*joint).is_some_and(|state| !state.is_made()) && self.closing_item(**joint).is_none()
        };
        unfinished.extend(joints.iter().filter(open).map(|joint| Thing::Connection(*joint)));
        for what in unfinished {
            self.demand(false, Demand::CoversUnfinished, Some(thing), vec![what]);
        }
        for joint in joints {
            if let Some((touched, any_of)) = self.lacks_a_look(joint) {
                self.unmet_test(Demand::AboutToBeCovered, Thing::Connection(joint), any_of, touched);
            }
        }
    }

    fn demand_nothing_carried_left(&mut self, action: &Action, component: ComponentCell) {
        for carried in self.carried_by(component) {
            let left = self.now(&carried).is_some_and(|s| s.on_carrier && !s.new && !s.put_over);
            let comes_new =
                action.with_new.iter().any(|id| self.trace.plant.component_named(id) == Some(carried));
            let others = vec![Thing::Component(carried)];
            self.demand(!left || comes_new, Demand::CarriedLeft, Some(Thing::Component(component)), others);
        }
    }

    /// A new part brings its transport protection and loses its settings.
    fn renew_with(&mut self, component: ComponentCell) {
        let arrives: Vec<_> = self
            .trace
            .plant
            .temporaries()
            .filter(|(_, plan)| plan.arrives_with == Some(component))
            .map(|(cell, _)| cell)
            .collect();
        for item in arrives {
            self.change(&item, |state| state.in_place = true);
        }
        let settings: Vec<_> = self
            .trace
            .plant
            .settings()
            .filter(|(_, plan)| plan.of == Some(component))
            .map(|(cell, _)| cell)
            .collect();
        for setting in settings {
            self.change(&setting, |state| state.lost = true);
        }
    }

    fn whereabouts(&mut self, component: ComponentCell, to: Whereabouts, new: bool) {
        let place = self.place;
        self.change(&component, |state| {
            state.whereabouts = to;
            state.new = state.new || new;
            state.last_touched = Some(place);
        });
    }

    pub(in crate::simulate) fn carried_by(&self, component: ComponentCell) -> Vec<ComponentCell> {
        self.trace.plant.component(component).map(|c| c.carries.clone()).unwrap_or_default()
    }

    /// Cleaning and inspecting put the hands on a thing.
    pub(super) fn handle(&mut self, action: &Action, part: Part) {
        match part {
            Part::Whole => self.handle_all(action),
            Part::Section(section) => self.grow_old(section),
            Part::Thing(_) => {}
        }
        if part == Part::Whole && action.verb == Verb::Clean {
            self.pass(action);
        }
    }

    fn handle_all(&mut self, action: &Action) {
        let inspects = action.verb == Verb::Inspect;
        let things: Vec<Thing> = action.on.iter().filter_map(|id| self.trace.plant.thing(id)).collect();
        let criterion = action.criterion.as_deref().is_some_and(|text| !text.trim().is_empty());
        self.demand(!inspects || criterion, Demand::NoCriterion, things.first().copied(), Vec::new());
        let components = self.components_of(action);
        let failing = self.hands(&components);
        self.unmet(failing);
        let place = self.place;
        for component in components {
            self.change(&component, |state| {
                if inspects {
                    state.inspected = Some(place);
                } else {
                    state.cleaned = Some(place);
                }
            });
        }
        let question = action.ask.as_ref().and_then(|id| self.trace.plant.question(id));
        for thing in things {
            if let (Thing::Seal(seal), true) = (thing, inspects) {
                self.demand_seal_in_sight(seal);
                self.change(&seal, |state| {
                    state.inspected = Some(place);
                    state.question = question;
                });
            }
        }
    }

    /// A seal can be looked at while its joint is open.
    fn demand_seal_in_sight(&mut self, seal: crate::simulate::SealCell) {
        let joints: Vec<ConnectionCell> = self
            .trace
            .plant
            .connections()
            .filter(|(_, k)| k.seals.iter().any(|(used, _)| *used == seal))
            .map(|(cell, _)| cell)
            .collect();
        let open = joints.iter().any(|k| self.now(k).is_some_and(|state| state.open > 0));
        self.demand(open || joints.is_empty(), Demand::WrongState, Some(Thing::Seal(seal)), Vec::new());
    }

    pub(in crate::simulate) fn components_of(&self, action: &Action) -> Few<ComponentCell> {
        action.on.iter().filter_map(|id| self.trace.plant.component_named(id)).collect()
    }
}

fn given(action: &Action) -> bool {
    action.reason.as_deref().is_some_and(|text| !text.trim().is_empty())
}

/// Whether an unmet demand speaks of one of these sections.
fn concerns(reason: &crate::simulate::Reason, sections: &[crate::simulate::SectionCell]) -> bool {
    use crate::simulate::Reason;
    match reason {
        Reason::StillFed { section, .. }
        | Reason::NotLocked { section, .. }
        | Reason::NotReleased { section }
        | Reason::NotProved { section }
        | Reason::ProofLapsed { section, .. }
        | Reason::WrongContents { section, .. } => sections.contains(section),
        _ => false,
    }
}
