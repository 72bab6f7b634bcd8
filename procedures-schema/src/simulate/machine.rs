//! The machine that runs: executes actions in order, on every way, and writes timelines.

use super::effect::{Part, RunningWait};
use super::guard::QuestionIndex;
use super::pending::{Pending, Written, write, write_alone};
use super::plant::Thing;
use super::run::{Execution, Run};
use super::service::trace_of;
use super::timeline::{Found, Timeline};
use super::touched::Touched;
use super::trace::{Cell, Trace};
use super::unmet::{CannotJudge, Demand, Reason, Unmet};
use super::{
    ApplianceCell, ClockCell, ConnectionCell, ConnectionState, Few, Guard, Place, Plant, SectionCell, Side,
    SupplyCell, SupplyState,
};
use crate::model::{Action, Id, Procedure, Step, Verb};
use std::cell::Cell as Slot;

/// Most ways on which one action is tried; beyond, it cannot be judged.
const MOST_WAYS: usize = 1024;

/// Runs a procedure. Total: whatever the document says, there is a trace.
pub fn simulate(procedure: &Procedure, run: &Run) -> Trace {
    let mut machine = Machine::new(procedure, run);
    machine.place = Place::START;
    machine.look_at_supplies(&Guard::ALWAYS);
    for (execution, executed) in run.executions().iter().enumerate() {
        if let Some(step) = procedure.steps.get(executed.step) {
            machine.execute(execution, executed, step);
        }
    }
    if run.is_complete() {
        machine.end();
    }
    machine.trace
}

/// A run in progress: the trace so far, and the place that is being written.
#[derive(Clone)]
pub(super) struct Machine<'p> {
    pub(super) procedure: &'p Procedure,
    pub(super) trace: Trace,
    pub(super) place: Place,
    /// The ways on which the action in hand is tried.
    pub(super) guard: Guard,
    pub(super) pending: Pending,
    /// What was changed and may wait for a test.
    pub(super) touched: Touched,
    /// Waits that go on while other things are done.
    pub(super) waits: Vec<RunningWait>,
    /// A question on which the action in hand turned out to depend.
    split: Slot<Option<QuestionIndex>>,
    /// The action in hand, for unmet demands.
    verb: Option<Verb>,
    thing: Option<Id>,
    /// How many people the step in hand takes.
    pub(super) people: u32,
    /// Whether the tests of the execution in hand fail.
    pub(super) failed: bool,
    /// Whether the steps after a failed test are being run.
    pub(super) after_failure: bool,
}

impl<'p> Machine<'p> {
    fn new(procedure: &'p Procedure, run: &Run) -> Self {
        let plant = Plant::of(procedure);
        Self {
            procedure,
            trace: trace_of(plant, run),
            place: Place::START,
            guard: run.way().clone(),
            pending: Pending::default(),
            touched: Touched::default(),
            waits: Vec::new(),
            split: Slot::new(None),
            verb: None,
            thing: None,
            people: 1,
            failed: false,
            after_failure: false,
        }
    }

    fn execute(&mut self, execution: usize, executed: &Execution, step: &'p Step) {
        self.failed = executed.failed;
        self.end_waits(execution, step);
        let actions = executed.instead.as_ref().unwrap_or(&step.actions);
        self.execute_actions(execution, step, actions);
        self.failed = false;
    }

    /// Runs actions of a step. Those of a failure block stand at the place of the test that failed.
    pub(super) fn execute_actions(&mut self, execution: usize, step: &Step, actions: &[Action]) {
        self.place = Place::before(execution);
        self.people = step.people.unwrap_or(1);
        let Some(guard) = self.guard_of(step) else { return };
        for (i, action) in actions.iter().enumerate() {
            self.place = Place::of_action(execution, i);
            let on_fail = action.on_fail.as_ref().filter(|on_fail| !on_fail.steps.is_empty());
            let looks = on_fail.filter(|_| !self.after_failure && !self.failed);
            let before = looks.map(|_| Box::new(self.clone()));
            self.perform(action, &guard);
            if let (Some(before), Some(on_fail)) = (before, looks) {
                self.look_after_failure(before, action, on_fail, &guard);
            }
        }
        self.verb = None;
        self.thing = None;
    }

    /// One action, part by part, with what follows from it.
    pub(super) fn perform(&mut self, action: &Action, guard: &Guard) {
        self.verb = Some(action.verb.clone());
        self.thing = action.on.first().cloned();
        let unknown = self.unknown_in(action);
        if !unknown.is_empty() {
            self.on_ways(guard, |machine| unknown.iter().for_each(|what| machine.cannot_judge(what)));
        }
        let parts = self.parts(action, guard);
        self.on_ways_by_part(guard, &parts, &|machine: &mut Self, part: &Part| machine.act(action, *part));
        if action.verb == Verb::Wait {
            self.start_waiting(action, guard);
        }
        if action.verb == Verb::Test {
            self.forget_stamped(action, guard, &parts);
        }
        self.settle();
        let changes = matches!(
            action.verb,
            Verb::Isolate | Verb::Lock | Verb::Restore | Verb::Release | Verb::Charge | Verb::Start
        );
        if changes {
            self.look_at_supplies(guard);
        }
    }

    /// What the action in hand left as in service on every way need not be looked at any more.
    fn settle(&mut self) {
        let way = self.trace.run.way().clone();
        while let Some(thing) = self.touched.next_changed() {
            let is_settled = self.on_all(&way, |machine| match thing {
                Thing::Connection(cell) => machine.look(&cell, ConnectionState::is_made) == Some(true),
                Thing::Setting(cell) => machine.look(&cell, |state| !state.lost) == Some(true),
                _ => true,
            });
            if is_settled == Some(true) {
                self.touched.is_settled(thing);
            }
        }
    }

    /// Connections of a section of which some fastener may be undone, in the order of the map.
    pub(super) fn unsettled_in(&self, section: SectionCell) -> impl Iterator<Item = ConnectionCell> {
        self.touched.unsettled().filter_map(move |thing| {
            let Thing::Connection(cell) = thing else { return None };
            let plan = self.trace.plant.connection(cell)?;
            (plan.section == Some(section)).then_some(cell)
        })
    }

    /// The guard of a step within the ways of the run; none if the step is not on them.
    fn guard_of(&mut self, step: &Step) -> Option<Guard> {
        let mut guard = self.trace.run.way().clone();
        for answer in &step.when {
            if let Some((question, answer)) = self.trace.plant.answer(answer) {
                guard = guard.and(&Guard::ALWAYS.with(question, answer))?;
            } else {
                let listed = self.procedure.questions.iter().find(|known| known.id == answer.question);
                let question = listed.map_or_else(
                    || "a question that the document does not list".to_owned(),
                    |listed| format!("\"{}\"", listed.words),
                );
                let what = format!("the answer \"{}\" to {question}", answer.answer);
                self.trace.cannot_judge.push(CannotJudge { place: self.place, what });
            }
        }
        Some(guard)
    }

    /// Tries something on all ways of a guard at once, and on each answer where it turns out to depend on
    /// a question; then writes what it left.
    pub(super) fn on_ways(&mut self, base: &Guard, act: impl Fn(&mut Self)) {
        if self.is_alike(base, &act) {
            return;
        }
        let mut open = vec![base.clone()];
        let mut done: Vec<(Guard, Pending)> = Vec::new();
        while let Some(guard) = open.pop() {
            self.guard.clone_from(&guard);
            self.split.set(None);
            act(self);
            let pending = std::mem::take(&mut self.pending);
            match self.split.take() {
                Some(question) if open.len() + done.len() < MOST_WAYS => {
                    // The last pushed is tried first, so that ways come in the order of the answers.
                    let answers = self.trace.plant.n_answers(question);
                    open.extend((0..answers).rev().map(|answer| guard.with(question, answer)));
                }
                Some(_) => {
                    let what = format!("a step that depends on more than {MOST_WAYS} ways");
                    self.trace.cannot_judge.push(CannotJudge { place: self.place, what });
                    done.push((guard, pending));
                    break;
                }
                None => done.push((guard, pending)),
            }
        }
        write(&mut self.trace, self.place, base, done);
    }

    /// Tries something on all ways of a guard at once and writes what it left; drops that, and says so, if a
    /// question matters.
    fn is_alike(&mut self, base: &Guard, act: impl FnOnce(&mut Self)) -> bool {
        self.guard.clone_from(base);
        self.split.set(None);
        act(self);
        let is_alike = self.split.take().is_none();
        if is_alike {
            write_alone(&mut self.trace, self.place, base, &mut self.pending);
        } else {
            self.pending.clear();
        }
        is_alike
    }

    /// As [`Machine::on_ways`] for parts that do not depend on each other: at once if no question matters,
    /// else by halves, so that the questions of one part do not multiply with those of another.
    pub(super) fn on_ways_by_part<P>(&mut self, base: &Guard, parts: &[P], act: &impl Fn(&mut Self, &P)) {
        match parts {
            [] => {}
            [one] => self.on_ways(base, |machine| act(machine, one)),
            several => {
                let all = |machine: &mut Self| several.iter().for_each(|part| act(machine, part));
                if self.is_alike(base, all) {
                    return;
                }
                let (first, second) = several.split_at(several.len() / 2);
                self.on_ways_by_part(base, first, act);
                self.on_ways_by_part(base, second, act);
            }
        }
    }

    /// Works out anew what is fed and locked.
    fn look_at_supplies(&mut self, guard: &Guard) {
        let sections: Few<SectionCell> = self.trace.plant.sections().map(|(s, _)| s).collect();
        self.on_ways_by_part(guard, &sections, &|machine: &mut Self, section: &SectionCell| {
            let section = *section;
            let fed = machine.is_still_fed(section);
            let locked = !fed && machine.not_locked(section).is_none() && machine.has_closed(section);
            let second = machine.second();
            machine.change(&SupplyCell(section), |state| *state = SupplyState { fed, locked });
            machine.change(&section, |state| {
                state.off_since = if fed { None } else { state.off_since.or(Some(second)) };
            });
        });
    }

    /// What of an action this version does not know; what it knows is still simulated.
    fn unknown_in(&self, action: &Action) -> Vec<String> {
        let mut unknown = Vec::new();
        if !action.verb.is_known() {
            unknown.push(format!("the verb \"{}\"", action.verb));
        }
        if let Some(test) = &action.test
            && super::test_row(test).is_none()
        {
            unknown.push(format!("the test \"{test}\""));
        }
        let details = [&action.through, &action.vent, &action.at];
        for id in action.on.iter().chain(details.into_iter().flatten()) {
            match self.trace.plant.thing(id) {
                None => unknown.push("a thing that is not on the appliance map".to_owned()),
                Some(thing) => unknown.extend(self.unknown_kind(thing)),
            }
        }
        if let Some(until) = &action.until
            && self.procedure.position(until).is_none()
        {
            unknown.push("a wait until a step that is not there".to_owned());
        }
        if let Some(question) = &action.ask
            && self.trace.plant.question(question).is_none()
        {
            unknown.push("a question that the document does not list".to_owned());
        }
        unknown
    }

    /// The kind of a thing's circuit, if this version does not know it.
    fn unknown_kind(&self, thing: Thing) -> Option<String> {
        let section = match thing {
            Thing::Section(section) => Some(section),
            Thing::Circuit(circuit) => {
                self.trace.plant.circuit(circuit).and_then(|c| c.sections.first().copied())
            }
            Thing::Connection(k) => self.trace.plant.connection(k).and_then(|k| k.section),
            Thing::Isolator(i) => self.trace.plant.isolator(i).and_then(|i| i.between).and_then(|(a, b)| {
                [a, b].into_iter().find_map(|side| match side {
                    Side::Section(section) => Some(section),
                    Side::Supply => None,
                })
            }),
            _ => None,
        };
        let circuit = self.trace.plant.circuit_of(section?).filter(|circuit| circuit.row.is_none())?;
        let known = self.procedure.map.circuits.iter().find(|c| c.id == circuit.id);
        let kind = known.map_or_else(String::new, |c| c.kind.word().to_owned());
        Some(format!("circuits of the kind \"{kind}\""))
    }

    pub(super) fn cannot_judge(&mut self, what: &str) {
        let unknown = CannotJudge { place: self.place, what: what.to_owned() };
        self.pending.cannot_judge.push(unknown);
    }

    /// The state of a cell now. If it differs between the ways in hand, they are told apart and the action
    /// is tried again.
    pub(super) fn now<C: Written>(&self, cell: &C) -> Option<&C::State> {
        if let Some(state) = self.pending.get(cell) {
            return Some(state);
        }
        self.state_at(cell, self.place)
    }

    /// As [`Machine::now`] for an earlier place.
    pub(super) fn state_at<C: Written>(&self, cell: &C, place: Place) -> Option<&C::State> {
        match cell.timeline(&self.trace)?.find(place, &self.guard) {
            Found::Is(entry) => Some(&entry.state),
            Found::Depends(question, entry) => {
                self.split.set(Some(question));
                Some(&entry.state)
            }
        }
    }

    /// Something about a cell now: the ways are told apart only if they differ in that.
    pub(super) fn look<C: Written, V: PartialEq>(&self, cell: &C, of: impl Fn(&C::State) -> V) -> Option<V> {
        if let Some(state) = self.pending.get(cell) {
            return Some(of(state));
        }
        let n_answers = |question| self.trace.plant.n_answers(question);
        let line = cell.timeline(&self.trace)?;
        let (value, question) = line.look(self.place, &self.guard, n_answers, of);
        if question.is_some() {
            self.split.set(question);
        }
        Some(value)
    }

    /// Since when a cell is as it is.
    pub(super) fn since<C: Cell>(&self, cell: &C) -> Place {
        cell.timeline(&self.trace)
            .map_or(Place::START, |line| line.find(self.place, &self.guard).entry().since)
    }

    /// Since when something about a cell is so.
    pub(super) fn since_when<C: Cell>(&self, cell: &C, is_so: impl Fn(&C::State) -> bool) -> Place {
        let Some(line) = cell.timeline(&self.trace) else { return Place::START };
        let entries = line.entries().rev().filter(|entry| entry.guard.is_compatible(&self.guard));
        entries.take_while(|entry| is_so(&entry.state)).last().map_or(self.place, |entry| entry.since)
    }

    /// The first place that a cell's states give on the ways in hand; where the ways differ, they are told
    /// apart.
    pub(super) fn first_place<T: PartialEq>(
        &self,
        line: &Timeline<T>,
        place: impl Fn(&T) -> Option<Place>,
    ) -> Option<Place> {
        let mut giving = line
            .entries()
            .filter(|entry| entry.guard.is_compatible(&self.guard))
            .filter_map(|entry| place(&entry.state).map(|place| (place, &entry.guard)));
        let (place, guard) = giving.next()?;
        if let Some(question) = guard.beyond(&self.guard) {
            self.split.set(Some(question));
        }
        Some(place)
    }

    /// Changes a state from here on; nothing is written if it stays as it is.
    pub(super) fn change<C: Written>(&mut self, cell: &C, change: impl FnOnce(&mut C::State))
    where
        C::State: Clone,
    {
        let Some(now) = self.now(cell) else { return };
        let mut state = now.clone();
        change(&mut state);
        if state != *now {
            self.pending.put(cell, state);
            if let Some(thing) = cell.testable() {
                self.touched.note(thing);
            }
        }
    }

    /// Something that is so on all ways in hand; none if the ways differ in it. Nothing is tried again.
    pub(super) fn on_all<T>(&mut self, guard: &Guard, look: impl FnOnce(&Self) -> T) -> Option<T> {
        self.guard.clone_from(guard);
        let split = self.split.take();
        let found = look(self);
        self.split.replace(split).is_none().then_some(found)
    }

    /// The second of the job.
    pub(super) fn second(&self) -> u32 {
        self.now(&ClockCell).copied().unwrap_or(0)
    }

    /// Whether the first answer to a question is given; where it is open, the ways are told apart.
    pub(super) fn is_first_answer(&self, question: QuestionIndex) -> bool {
        let answer = self.guard.answer(question);
        if answer.is_none() {
            self.split.set(Some(question));
        }
        answer.is_none_or(|answer| answer == 0)
    }

    /// Whether the appliance runs.
    pub(super) fn is_running(&self) -> bool {
        self.now(&ApplianceCell).is_some_and(|state| state.running.is_some())
    }

    /// Notes unmet demands of the action in hand.
    pub(super) fn unmet(&mut self, failing: impl IntoIterator<Item = (Reason, Place)>) {
        for (reason, since) in failing {
            self.pending.unmet.push(Unmet {
                place: self.place,
                guard: self.guard.clone(),
                verb: self.verb.clone(),
                thing: self.thing.clone(),
                reason,
                since,
                after_failure: self.after_failure,
            });
        }
    }

    /// Notes an unmet demand of the action in hand on a thing.
    pub(super) fn demand(&mut self, is_met: bool, demand: Demand, thing: Option<Thing>, others: Vec<Thing>) {
        if !is_met {
            let since = self.since_of(demand, thing, &others);
            self.unmet([(Reason::Demand { demand, thing, others }, since)]);
        }
    }

    /// Since when the thing that causes an unmet demand is as it is.
    fn since_of(&self, demand: Demand, thing: Option<Thing>, others: &[Thing]) -> Place {
        let cause = Unmet {
            place: self.place,
            guard: Guard::ALWAYS,
            verb: None,
            thing: None,
            reason: Reason::Demand { demand, thing, others: others.to_vec() },
            since: Place::START,
            after_failure: false,
        };
        match cause.cause() {
            super::CauseOf::Thing(thing) => self.since_thing(thing),
            super::CauseOf::Isolators(isolators) => {
                isolators.iter().map(|i| self.since(i)).max().unwrap_or(Place::START)
            }
            super::CauseOf::Appliance => self.since(&ApplianceCell),
            _ => self.place,
        }
    }

    /// Since when a thing is as it is.
    pub(super) fn since_thing(&self, thing: Thing) -> Place {
        match thing {
            Thing::Section(cell) => self.since(&cell),
            Thing::Isolator(cell) => self.since(&cell),
            Thing::Component(cell) => self.since(&cell),
            Thing::Connection(cell) => self.since(&cell),
            Thing::Temporary(cell) => self.since(&cell),
            Thing::Setting(cell) => self.since(&cell),
            Thing::Seal(cell) => self.since(&cell),
            Thing::Circuit(_) => Place::START,
        }
    }

    /// Leaves the action in hand: the end of the job has none.
    pub(super) fn no_action(&mut self) {
        self.verb = None;
        self.thing = None;
    }
}
