//! Connections: slackening, undoing, making, tightening.

use crate::model::{Action, Renewal, SealPolicy};
use crate::simulate::machine::Machine;
use crate::simulate::state::{Contents, Whereabouts};
use crate::simulate::unmet::Reason;
use crate::simulate::{ConnectionCell, Hazard, Place};

impl Machine<'_> {
    pub(super) fn slacken(&mut self, action: &Action) {
        for connection in self.connections_of(action) {
            self.demand_touch(connection);
            let place = self.place;
            self.change_connection(connection, |state| {
                let n = action.count.unwrap_or(state.made).min(state.made);
                state.made -= n;
                state.slack += n;
                state.seals_disturbed = true;
                state.last_touched = Some(place);
                state.last_opened = Some(place);
            });
        }
    }

    /// Takes slack fasteners first, then made ones.
    pub(super) fn undo(&mut self, action: &Action) {
        for connection in self.connections_of(action) {
            self.demand_touch(connection);
            let place = self.place;
            self.change_connection(connection, |state| {
                let mut left = action.count.unwrap_or(state.made + state.slack);
                let slack = left.min(state.slack);
                left -= slack;
                let made = left.min(state.made);
                state.slack -= slack;
                state.made -= made;
                state.open += slack + made;
                state.seals_disturbed = true;
                state.last_touched = Some(place);
                state.last_opened = Some(place);
            });
            self.let_air_in(connection);
            self.let_parts_out(connection, place);
        }
    }

    fn let_air_in(&mut self, connection: ConnectionCell) {
        let Some(plan) = self.trace.plant.connection(connection) else { return };
        if plan.port.is_some() {
            return;
        }
        let Some(section) = plan.section else { return };
        let hazard = self.trace.plant.row_of(section).map(|row| row.hazard);
        self.change_section(section, |state| match hazard {
            Some(Hazard::Gas) => state.contents = Contents::Mixed,
            Some(Hazard::Pressure) => state.contents = Contents::Air,
            Some(Hazard::Isolation) | None => {}
        });
    }

    fn let_parts_out(&mut self, connection: ConnectionCell, place: Place) {
        let parts = self.trace.plant.connection(connection).map(|k| k.holds.clone()).unwrap_or_default();
        for part in parts {
            self.change_component(part, |state| {
                state.whereabouts = Whereabouts::Off;
                state.last_touched = Some(place);
            });
        }
    }

    pub(super) fn make(&mut self, action: &Action) {
        let slack_only = action.to.as_deref() == Some("slack");
        for connection in self.connections_of(action) {
            let is_port = self.trace.plant.connection(connection).is_some_and(|k| k.port.is_some());
            if !is_port {
                self.demand_touch(connection);
            }
            self.demand_new_seals(connection, action);
            let place = self.place;
            self.change_connection(connection, |state| {
                let mut left = action.count.unwrap_or(state.open + state.slack);
                let open = left.min(state.open);
                left -= open;
                state.open -= open;
                if slack_only {
                    state.slack += open;
                } else {
                    let slack = left.min(state.slack);
                    state.slack -= slack;
                    state.made += open + slack;
                }
                state.last_touched = Some(place);
                state.seals_disturbed = state.seals_disturbed && !state.is_made();
            });
        }
    }

    /// A seal that is always renewed goes in new once its joint was disturbed.
    fn demand_new_seals(&mut self, connection: ConnectionCell, action: &Action) {
        let disturbed = self.now(&connection).is_some_and(|state| state.seals_disturbed);
        if !disturbed || action.seal == Some(Renewal::New) {
            return;
        }
        let since = self.now(&connection).and_then(|s| s.last_opened).unwrap_or(Place::START);
        let seals = self.trace.plant.connection(connection).map(|k| k.seals.clone()).unwrap_or_default();
        let failing: Vec<_> = seals
            .into_iter()
            .filter(|(_, policy)| *policy == SealPolicy::AlwaysRenew)
            .map(|(seal, _)| (Reason::SealNotRenewed { connection, seal: seal.index() }, since))
            .collect();
        self.unmet(failing);
    }

    pub(super) fn tighten(&mut self, action: &Action) {
        for connection in self.connections_of(action) {
            let joins = self.trace.plant.connection(connection).map(|k| k.joins.clone()).unwrap_or_default();
            let failing = self.hands(&joins);
            self.unmet(failing);
            let place = self.place;
            self.change_connection(connection, |state| {
                state.made += state.slack;
                state.slack = 0;
                state.last_touched = Some(place);
            });
        }
    }

    fn demand_touch(&mut self, connection: ConnectionCell) {
        let failing = self.touch(connection);
        self.unmet(failing);
    }

    pub(in crate::simulate) fn connections_of(&self, action: &Action) -> Vec<ConnectionCell> {
        action.on.iter().filter_map(|id| self.trace.plant.connection_named(id)).collect()
    }
}
