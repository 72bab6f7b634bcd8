//! Temporary items: placing and taking away.

use crate::model::Action;
use crate::simulate::machine::Machine;

impl Machine<'_> {
    /// Placing follows the rule for touching the connection on which the item sits.
    pub(super) fn place_item(&mut self, action: &Action, in_place: bool) {
        let items: Vec<_> = action.on.iter().filter_map(|id| self.trace.plant.temporary_named(id)).collect();
        for item in items {
            let on = self.trace.plant.temporary(item).and_then(|t| t.on);
            let is_joint = on.and_then(|k| self.trace.plant.connection(k)).is_some_and(|k| k.port.is_none());
            if let (Some(connection), true) = (on, is_joint) {
                let failing = self.touch(connection);
                self.unmet(failing);
            }
            self.change_temporary(item, |state| state.in_place = in_place);
        }
    }
}
