//! What each action demands and does.
//!
//! One file a family of actions. Demands are looked at in the state before the action; effects happen also
//! where a demand is unmet, as if the step had done what it says.

mod appliance;
mod components;
mod connections;
mod filling;
mod making;
mod sections;
mod settings;
mod starting;
mod supplies;
mod temporaries;
mod waiting;

pub(super) use waiting::RunningWait;

use super::machine::Machine;
use super::{Few, Guard, SectionCell, Thing};
use crate::model::{Action, Verb};
use smallvec::smallvec;

/// A part of an action that does not depend on its other parts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Part {
    /// What concerns the action as a whole.
    Whole,
    /// What it does to one section.
    Section(SectionCell),
    /// What it does to one thing.
    Thing(Thing),
}

impl Machine<'_> {
    /// The parts of an action. Actions that reach far have a part for everything that they may reach.
    pub(super) fn parts(&mut self, action: &Action, guard: &Guard) -> Few<Part> {
        let mut parts: Few<Part> = smallvec![Part::Whole];
        let far =
            matches!(action.verb, Verb::Start | Verb::Restore | Verb::Charge | Verb::Purge | Verb::Wait)
                || (action.verb == Verb::Clean && action.duration.is_some());
        if far {
            parts.extend(self.trace.plant.sections().map(|(section, _)| Part::Section(section)));
        }
        if action.verb == Verb::Test {
            parts.extend(self.awaiting(action, guard).into_iter().map(Part::Thing));
        }
        parts
    }

    /// Carries out one part of an action.
    pub(super) fn act(&mut self, action: &Action, part: Part) {
        match action.verb {
            Verb::ShutDown => self.shut_down(),
            Verb::Start => self.start(action, part),
            Verb::Wait => self.wait(action, part),
            Verb::Finish => self.finish(action),
            Verb::Isolate => self.isolate(action),
            Verb::Lock => self.lock(action),
            Verb::Restore => self.restore(action, part),
            Verb::Release => self.release(action),
            Verb::Prove => self.prove(action),
            Verb::Charge => self.charge(action, part),
            Verb::Purge => self.purge(action, part),
            Verb::Test => self.test(action, part),
            Verb::Slacken => self.slacken(action),
            Verb::Undo => self.undo(action),
            Verb::Make => self.make(action),
            Verb::Tighten => self.tighten(action),
            Verb::Remove | Verb::MoveAside | Verb::Discard => self.take_off(action),
            Verb::Fit => self.fit(action),
            Verb::Clean | Verb::Inspect => self.handle(action, part),
            Verb::Place => self.place_item(action),
            Verb::TakeAway => self.take_item(action),
            Verb::RecordSetting => self.record_setting(action),
            Verb::Set => self.set_setting(action),
            Verb::Photograph => self.photograph(action),
            Verb::Read => self.open_where_taken(action),
            Verb::Ask | Verb::Tell | Verb::Hold | Verb::Other(_) => {}
        }
    }
}
