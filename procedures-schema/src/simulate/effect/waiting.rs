//! Time: waits that hold the job up, waits that go on while other things are done, and what grows old.

use super::Part;
use super::appliance::lapse;
use crate::model::{Action, Id, Step};
use crate::simulate::machine::Machine;
use crate::simulate::state::Lapse;
use crate::simulate::unmet::Demand;
use crate::simulate::{ClockCell, Guard, Place, SectionCell, Thing};
use crate::units::{Unit, convert};

/// A wait that was started and need not be over yet.
#[derive(Clone, Debug)]
pub(in crate::simulate) struct RunningWait {
    /// The step before which it must be over.
    until: Id,
    started: Place,
    seconds: u32,
    guard: Guard,
}

impl Machine<'_> {
    /// Leaving is waiting with nobody there: proofs lapse, and nothing may stand open or bare.
    pub(super) fn wait(&mut self, action: &Action, part: Part) {
        match part {
            Part::Whole if self.later_end(action).is_none() => {
                self.pass(action);
            }
            Part::Section(section) if action.unattended => {
                self.demand_left_alone(section);
                self.change(&section, |state| lapse(&mut state.proof, Lapse::LeftAlone));
            }
            Part::Section(section) => self.grow_old(section),
            Part::Whole | Part::Thing(_) => {}
        }
    }

    /// Writes down a wait that goes on while other things are done. What needs it may not rest on it before
    /// the step until which it runs.
    pub(in crate::simulate) fn start_waiting(&mut self, action: &Action, guard: &Guard) {
        if let Some(until) = self.later_end(action) {
            let seconds = seconds_of(action);
            self.waits.push(RunningWait { until, started: self.place, seconds, guard: guard.clone() });
        }
    }

    /// A step comes before which waits must be over: the time that is left of them passes.
    pub(in crate::simulate) fn end_waits(&mut self, execution: usize, step: &Step) {
        let (over, on): (Vec<_>, Vec<_>) =
            std::mem::take(&mut self.waits).into_iter().partition(|wait| wait.until == step.id);
        self.waits = on;
        for wait in over {
            self.place = Place::before(execution);
            let sections = self.trace.plant.sections().map(|(section, _)| Part::Section(section));
            let parts: Vec<Part> = std::iter::once(Part::Whole).chain(sections).collect();
            self.on_ways_by_part(&wait.guard, &parts, &|machine: &mut Self, part: &Part| match part {
                Part::Whole => {
                    let started = machine.state_at(&ClockCell, wait.started).copied().unwrap_or(0);
                    let end = started.saturating_add(wait.seconds);
                    machine.change(&ClockCell, |clock| *clock = (*clock).max(end));
                }
                Part::Section(section) => machine.grow_old(*section),
                Part::Thing(_) => {}
            });
        }
    }

    /// The time that an action takes at least goes by.
    pub(super) fn pass(&mut self, action: &Action) {
        let seconds = seconds_of(action);
        if seconds > 0 {
            self.change(&ClockCell, |clock| *clock = clock.saturating_add(seconds));
        }
    }

    pub(super) fn grow_old(&mut self, section: SectionCell) {
        if self.is_too_old(section) {
            self.change(&section, |state| lapse(&mut state.proof, Lapse::Old));
        }
    }

    /// The step until which a wait runs beside the others; none if it holds the job up: because it says no
    /// step, one that has come already, or because a test has failed and the steps after it are short.
    fn later_end(&self, action: &Action) -> Option<Id> {
        let until = action.until.as_ref().filter(|_| !self.after_failure)?;
        let execution = self.place.execution().and_then(|at| self.trace.run().executions().get(at))?;
        let coming = self.procedure.steps.get(execution.step + 1..)?;
        coming.iter().any(|step| step.id == *until).then(|| until.clone())
    }

    /// What must be so when people leave: no open end of gas, oil or refrigerant, no bare live part.
    fn demand_left_alone(&mut self, section: SectionCell) {
        let Some(circuit) = self.trace.plant.circuit_of(section) else { return };
        let escapes = circuit.flammable
            || circuit.row.is_some_and(|row| !row.open_from.is_empty() || row.tightened_off);
        if escapes {
            for end in self.open_ends(section, false) {
                let thing = Some(Thing::Section(section));
                self.demand(false, Demand::OpenEnd, thing, vec![Thing::Connection(end)]);
            }
        }
        self.demand_not_bare(section);
    }
}

/// How long a wait takes at least, in whole seconds that have surely passed; beyond a year it makes no
/// difference.
fn seconds_of(action: &Action) -> u32 {
    const YEAR: f64 = 31_536_000.0;
    let duration = action.duration.as_ref();
    let seconds = duration.and_then(|d| convert(d.value.value(), &d.unit, &Unit::Second).ok());
    // A hair more, so that 0.1 min is 6 s and not 5 for want of a last digit.
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "bounded just here")]
    let whole = (seconds.unwrap_or(0.0) + 1e-6).floor().clamp(0.0, YEAR) as u32;
    whole
}
