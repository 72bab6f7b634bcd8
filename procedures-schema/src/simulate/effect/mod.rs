//! What each action demands and does.
//!
//! One file a family of actions. Demands are looked at in the state before the action; effects happen also
//! where a demand is unmet, as if the step had done what it says.

mod appliance;
mod components;
mod connections;
mod sections;
mod supplies;
mod temporaries;

use super::machine::Machine;
use crate::model::{Action, Verb};

impl Machine<'_> {
    /// Carries out one action.
    pub(super) fn act(&mut self, action: &Action) {
        match action.verb {
            Verb::ShutDown => self.shut_down(),
            Verb::Start => self.start(action),
            Verb::Wait => self.wait(action),
            Verb::Finish => self.finish(action),
            Verb::Isolate => self.isolate(action),
            Verb::Lock => self.lock(action),
            Verb::Restore => self.restore(action),
            Verb::Release => self.release(action),
            Verb::Prove => self.prove(action),
            Verb::Charge => self.charge(action),
            Verb::Purge => self.purge(action),
            Verb::Test => self.test(action),
            Verb::Slacken => self.slacken(action),
            Verb::Undo => self.undo(action),
            Verb::Make => self.make(action),
            Verb::Tighten => self.tighten(action),
            Verb::Remove => self.remove(action),
            Verb::MoveAside => self.move_aside(action),
            Verb::Discard => self.discard(action),
            Verb::Fit => self.fit(action),
            Verb::Clean | Verb::Inspect => self.handle(action),
            Verb::Place => self.place_item(action, true),
            Verb::TakeAway => self.place_item(action, false),
            Verb::RecordSetting => self.record_setting(action),
            Verb::Set => self.set_setting(action),
            Verb::Ask => self.cannot_judge("a question"),
            Verb::Read | Verb::Photograph | Verb::Tell | Verb::Hold | Verb::Other(_) => {}
        }
    }
}
