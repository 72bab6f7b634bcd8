//! What is true of the appliance where a line is written, and what can be done there.

use crate::model::{Action, ApplianceMap, Handle, Id, Position, Verb};
use crate::simulate::{ApplianceCell, Cell, Place, SupplyCell, Thing, Trace, Whereabouts};
use std::collections::BTreeMap;

/// When a thing was last touched: the action of this line, then the place of the run.
type Touched = (u32, Place);

/// The state of every thing at one place, reduced to what picks a referent.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Here {
    /// Whether the appliance runs.
    pub running: bool,
    /// Isolators: open, locked, and whether a hand can work them.
    pub isolators: BTreeMap<Id, IsolatorHere>,
    /// Connections: fasteners made, slack, open.
    pub connections: BTreeMap<Id, ConnectionHere>,
    /// Components.
    pub components: BTreeMap<Id, Whereabouts>,
    /// Temporary items: whether they are in place.
    pub temporary: BTreeMap<Id, bool>,
    /// Sections: whether a supply still reaches them.
    pub fed: BTreeMap<Id, bool>,
    touched: BTreeMap<Id, Touched>,
    /// The step before, by its number in the run.
    step_before: Option<usize>,
    n_read: u32,
}

/// An isolator.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct IsolatorHere {
    /// Whether it lets through.
    pub open: bool,
    /// Whether it is locked.
    pub locked: bool,
    /// Whether it can be worked by hand.
    pub by_hand: bool,
}

/// A connection.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ConnectionHere {
    /// Fasteners made.
    pub made: u32,
    /// Fasteners slack.
    pub slack: u32,
    /// Fasteners open.
    pub open: u32,
}

impl Here {
    /// The state before the job: in service, running, everything made and fitted.
    pub fn in_service(map: &ApplianceMap) -> Self {
        let isolators = map.isolators.iter().map(|isolator| {
            let by_hand = !matches!(isolator.handle, Handle::Automatic | Handle::None | Handle::Relief);
            (
                isolator.id.clone(),
                IsolatorHere { open: isolator.normal == Position::Open, locked: false, by_hand },
            )
        });
        let made = |count| ConnectionHere { made: count, slack: 0, open: 0 };
        Self {
            running: true,
            isolators: by_id(isolators),
            connections: by_id(map.connections.iter().map(|c| (c.id.clone(), made(c.count)))),
            components: by_id(map.components.iter().map(|c| (c.id.clone(), Whereabouts::Fitted))),
            temporary: by_id(map.temporary.iter().map(|t| (t.id.clone(), t.initially))),
            fed: by_id(map.sections().map(|(_, s)| (s.id.clone(), true))),
            touched: BTreeMap::new(),
            step_before: None,
            n_read: 0,
        }
    }

    /// A state of which nothing is known, for whoever only asks what words name.
    pub(super) fn unknown() -> Self {
        Self::in_service(&ApplianceMap::default())
    }

    /// The state at a place of a run.
    pub fn from_trace(map: &ApplianceMap, trace: &Trace, place: Place) -> Self {
        let mut here = Self::in_service(map);
        here.step_before = place.execution();
        here.running = trace.at(&ApplianceCell, place).is_none_or(|state| state.running.is_some());
        let ids: Vec<Id> = map.things().map(|(_, id, ..)| id.clone()).collect();
        for id in ids {
            if let Some(thing) = trace.plant().thing(&id) {
                here.take(&id, thing, trace, place);
            }
        }
        here
    }

    /// Takes over the state of one thing.
    fn take(&mut self, id: &Id, thing: Thing, trace: &Trace, place: Place) {
        match thing {
            Thing::Isolator(cell) => {
                if let (Some(state), Some(here)) = (trace.at(&cell, place), self.isolators.get_mut(id)) {
                    (here.open, here.locked) = (state.open, state.locked);
                }
                self.note(id, &cell, trace, place);
            }
            Thing::Connection(cell) => {
                if let Some(state) = trace.at(&cell, place) {
                    let (made, slack, open) = (state.made, state.slack, state.open);
                    self.connections.insert(id.clone(), ConnectionHere { made, slack, open });
                }
                self.note(id, &cell, trace, place);
            }
            Thing::Component(cell) => {
                if let Some(state) = trace.at(&cell, place) {
                    self.components.insert(id.clone(), state.whereabouts);
                }
                self.note(id, &cell, trace, place);
            }
            Thing::Temporary(cell) => {
                if let Some(state) = trace.at(&cell, place) {
                    self.temporary.insert(id.clone(), state.in_place);
                }
                self.note(id, &cell, trace, place);
            }
            Thing::Section(cell) => {
                if let Some(state) = trace.at(&SupplyCell(cell), place) {
                    self.fed.insert(id.clone(), state.fed);
                }
                self.note(id, &cell, trace, place);
            }
            Thing::Circuit(_) | Thing::Setting(_) | Thing::Seal(_) => {}
        }
    }

    /// Notes when a thing changed last.
    fn note<C: Cell>(&mut self, id: &Id, cell: &C, trace: &Trace, place: Place) {
        if let Some(entry) = trace.entry(cell, place) {
            self.touched.insert(id.clone(), (0, entry.since));
        }
    }

    /// When a thing was last touched, by the actions of this line and the steps before it; later is nearer. What one step
    /// did to two things makes neither nearer, whatever verbs it did it with.
    pub(super) fn nearness(&self, id: &Id) -> (u32, Option<usize>) {
        let touched = self.touched.get(id);
        touched.map_or((0, None), |(n_read, place)| (*n_read, place.execution()))
    }

    /// What the step before changed and this line has not touched yet.
    pub(super) fn changed_before(&self) -> impl Iterator<Item = &Id> {
        let of_step = |touched: &Touched| touched.0 == 0 && touched.1.execution() == self.step_before;
        let changed =
            self.touched.iter().filter(move |(_, touched)| self.step_before.is_some() && of_step(touched));
        changed.map(|(id, _)| id)
    }

    /// Whether a verb can be done to a thing here. What the state says nothing about is possible.
    pub(super) fn is_possible(&self, verb: &Verb, id: &Id) -> bool {
        if let Some(isolator) = self.isolators.get(id) {
            return isolator.by_hand
                && match verb {
                    Verb::Isolate => isolator.open,
                    Verb::Lock => !isolator.open && !isolator.locked,
                    Verb::Restore => !isolator.open,
                    _ => true,
                };
        }
        if let Some(connection) = self.connections.get(id) {
            return match verb {
                Verb::Slacken => connection.made > 0,
                Verb::Undo => connection.made + connection.slack > 0,
                Verb::Make => connection.slack + connection.open > 0,
                Verb::Tighten => connection.open == 0,
                _ => true,
            };
        }
        if let Some(whereabouts) = self.components.get(id) {
            return match verb {
                Verb::Remove => matches!(whereabouts, Whereabouts::Fitted | Whereabouts::Aside),
                Verb::MoveAside => *whereabouts == Whereabouts::Fitted,
                Verb::Fit => matches!(whereabouts, Whereabouts::Off | Whereabouts::Aside),
                _ => *whereabouts != Whereabouts::Discarded,
            };
        }
        match (self.temporary.get(id), verb) {
            (Some(in_place), Verb::Place) => !in_place,
            (Some(in_place), Verb::TakeAway) => *in_place,
            _ => true,
        }
    }

    /// Takes in things that this line names for the first time: in service so far, and nearest to the words.
    pub(super) fn meet<'t>(&mut self, map: &ApplianceMap, new: impl Iterator<Item = &'t Id>) {
        let fresh = Self::in_service(map);
        for (id, state) in fresh.isolators {
            self.isolators.entry(id).or_insert(state);
        }
        for (id, state) in fresh.connections {
            self.connections.entry(id).or_insert(state);
        }
        for (id, state) in fresh.components {
            self.components.entry(id).or_insert(state);
        }
        for (id, state) in fresh.temporary {
            self.temporary.entry(id).or_insert(state);
        }
        for (id, state) in fresh.fed {
            self.fed.entry(id).or_insert(state);
        }
        for id in new {
            self.touched.insert(id.clone(), (1, Place::START));
        }
    }

    /// Takes an action of this line into account.
    pub(super) fn apply(&mut self, action: &Action) {
        self.n_read += 1;
        let ports = [&action.through, &action.vent].into_iter().flatten();
        for id in action.on.iter().chain(ports.clone()) {
            self.touched.insert(id.clone(), (self.n_read, Place::END));
        }
        for port in ports {
            self.undo(port, None);
        }
        match action.verb {
            Verb::Start => self.running = true,
            Verb::ShutDown => self.running = false,
            _ => action.on.iter().for_each(|id| self.apply_to(&action.verb, id, action.count)),
        }
    }

    fn apply_to(&mut self, verb: &Verb, id: &Id, count: Option<u32>) {
        match verb {
            Verb::Isolate | Verb::Lock | Verb::Restore => {
                if let Some(isolator) = self.isolators.get_mut(id) {
                    isolator.open = *verb == Verb::Restore;
                    isolator.locked = *verb == Verb::Lock;
                }
            }
            Verb::Undo => self.undo(id, count),
            Verb::Slacken | Verb::Make | Verb::Tighten => self.turn(verb, id, count),
            Verb::Remove | Verb::MoveAside | Verb::Fit | Verb::Discard => {
                let whereabouts = match verb {
                    Verb::Remove => Whereabouts::Off,
                    Verb::MoveAside => Whereabouts::Aside,
                    Verb::Fit => Whereabouts::Fitted,
                    _ => Whereabouts::Discarded,
                };
                self.components.entry(id.clone()).and_modify(|known| *known = whereabouts);
            }
            Verb::Place | Verb::TakeAway => {
                self.temporary.entry(id.clone()).and_modify(|in_place| *in_place = *verb == Verb::Place);
            }
            _ => {}
        }
    }

    /// Opens fasteners, slack ones first.
    fn undo(&mut self, id: &Id, count: Option<u32>) {
        if let Some(connection) = self.connections.get_mut(id) {
            let all = connection.slack + connection.made;
            let n = count.unwrap_or(all).min(all);
            let slack = n.min(connection.slack);
            connection.slack -= slack;
            connection.made -= n - slack;
            connection.open += n;
        }
    }

    fn turn(&mut self, verb: &Verb, id: &Id, count: Option<u32>) {
        let Some(connection) = self.connections.get_mut(id) else { return };
        let most = match verb {
            Verb::Slacken => connection.made,
            Verb::Make => connection.open + connection.slack,
            _ => connection.slack,
        };
        let n = count.unwrap_or(most).min(most);
        if *verb == Verb::Slacken {
            connection.made -= n;
            connection.slack += n;
        } else {
            let open = if *verb == Verb::Make { n.min(connection.open) } else { 0 };
            connection.open -= open;
            connection.slack -= n - open;
            connection.made += n;
        }
    }
}

/// The states by what they are of. They are put in one by one: to collect them would sort them first, and
/// the page would carry a sort of its own for each kind.
fn by_id<S>(states: impl Iterator<Item = (Id, S)>) -> BTreeMap<Id, S> {
    let mut by_id = BTreeMap::new();
    for (id, state) in states {
        by_id.insert(id, state);
    }
    by_id
}
