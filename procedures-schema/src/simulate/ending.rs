//! What is demanded when the job is over and the appliance stays in service.

use super::machine::Machine;
use super::plant::Thing;
use super::state::Whereabouts;
use super::unmet::Reason;
use super::{ConnectionCell, Hazard, Place};
use crate::model::{Handle, TestKind};

impl Machine<'_> {
    /// Looks at the whole map once.
    pub(super) fn end(&mut self) {
        self.place = Place::END;
        let mut failing = self.left_apart();
        failing.extend(self.not_as_before());
        failing.extend(self.not_tested());
        failing.extend(self.function_not_shown());
        self.unmet(failing);
    }

    fn left_apart(&self) -> Vec<(Reason, Place)> {
        let mut failing = Vec::new();
        for (connection, plan) in self.trace.plant.connections() {
            let Some(state) = self.now(&connection) else { continue };
            let gone = plan.joins.iter().any(|c| self.whereabouts_of(*c) == Some(Whereabouts::Discarded));
            if gone {
                continue;
            }
            let since = state.last_opened.or(state.last_touched).unwrap_or(Place::START);
            if state.open > 0 {
                failing.push((Reason::LeftOpen { connection }, since));
            } else if state.slack > 0 {
                failing.push((Reason::LeftSlack { connection }, since));
            }
        }
        for (component, _) in self.trace.plant.components() {
            if matches!(self.whereabouts_of(component), Some(Whereabouts::Off | Whereabouts::Aside)) {
                failing.push((Reason::LeftOff { component }, self.since(&component)));
            }
        }
        failing
    }

    fn whereabouts_of(&self, component: super::ComponentCell) -> Option<Whereabouts> {
        self.now(&component).map(|state| state.whereabouts)
    }

    fn not_as_before(&self) -> Vec<(Reason, Place)> {
        let mut failing = Vec::new();
        for (temporary, plan) in self.trace.plant.temporaries() {
            let in_place = self.now(&temporary).is_some_and(|state| state.in_place);
            if in_place && !plan.initially && !plan.stays {
                failing.push((Reason::TemporaryLeft { temporary }, self.since(&temporary)));
            }
        }
        for (isolator, plan) in self.trace.plant.isolators() {
            let by_hand = !matches!(plan.handle, Handle::Automatic | Handle::Relief | Handle::None);
            let normal = self.now(&isolator).is_some_and(|state| state.open == plan.normally_open);
            if by_hand && !normal {
                failing.push((Reason::NotNormal { isolator }, self.since(&isolator)));
            }
        }
        failing
    }

    fn not_tested(&self) -> Vec<(Reason, Place)> {
        let mut failing = Vec::new();
        for (connection, _) in self.trace.plant.connections() {
            let touched = self.now(&connection).and_then(|state| state.last_touched);
            // What is still apart is reported as that; its tests can only follow.
            if !self.now(&connection).is_some_and(super::ConnectionState::is_made) {
                continue;
            }
            let lacking = self.trace.tests_lacking(connection, Place::END);
            failing.extend(touched.into_iter().flat_map(|touched| {
                let reason = move |any_of| Reason::ConnectionNotTested { connection, any_of };
                lacking.iter().map(move |any_of| (reason(*any_of), touched)).collect::<Vec<_>>()
            }));
        }
        for (section, _) in self.trace.plant.sections() {
            let Some(filled) = self.now(&section).and_then(|state| state.last_filled) else { continue };
            let demands = self.trace.plant.row_of(section).map_or(&[][..], |row| row.after_filling);
            for any_of in demands {
                if !self.trace.passed_between(any_of, Thing::Section(section), filled, Place::END) {
                    failing.push((Reason::SectionNotTested { section, any_of }, filled));
                }
            }
        }
        failing
    }

    /// The last of: a supply given back, a part fitted. Covers, joined by fixings alone, do not count.
    fn function_not_shown(&self) -> Option<(Reason, Place)> {
        let parts = self.trace.plant.components().filter(|(component, plan)| {
            let works = plan.connections.iter().any(|k| self.carries(*k));
            works && self.now(component).is_some_and(|state| state.last_touched.is_some())
        });
        let fitted = parts.map(|(component, _)| self.since(&component)).max();
        let restored = self
            .trace
            .plant
            .isolators()
            .filter(|(isolator, _)| self.since(isolator) > Place::START)
            .filter(|(_, plan)| self.gives_electricity(plan.between))
            .map(|(isolator, _)| self.since(&isolator))
            .max();
        let since = fitted.max(restored)?;
        let shown = self.trace.tests.iter().any(|(cell, line)| {
            cell.kind == TestKind::Function && line.now().state.passed.is_some_and(|passed| passed > since)
        });
        (!shown).then_some((Reason::FunctionNotShown, since))
    }

    fn carries(&self, connection: ConnectionCell) -> bool {
        self.trace.plant.connection(connection).is_some_and(|k| k.section.is_some())
    }

    fn gives_electricity(&self, between: Option<(super::Side, super::Side)>) -> bool {
        between.iter().flat_map(|(a, b)| [a, b]).any(|side| match side {
            super::Side::Section(section) => {
                self.trace.plant.row_of(*section).is_some_and(|row| row.hazard == Hazard::Isolation)
            }
            super::Side::Supply => false,
        })
    }
}
