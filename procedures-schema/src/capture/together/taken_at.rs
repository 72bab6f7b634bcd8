//! Where a test was taken, told by what is closed behind it: "test the gas pipes … and close the test point again".

use super::{put, traced};
use crate::model::{Action, CircuitKind, Connection, Id, Port, Procedure, Step, TestKind, Verb};
use crate::simulate::{Place, test_row};

/// Says of a test where it was taken, if the step at a position closes a port behind it that nobody has opened.
pub(super) fn add_ports(document: &mut Procedure, at: usize) {
    let Some(step) = document.steps.get(at) else { return };
    let closes = |(_, action): &(usize, &Action)| port_closed(document, action).is_some();
    let Some((position, action)) = step.actions.iter().enumerate().find(closes) else { return };
    let Some(port) = port_closed(document, action).cloned() else { return };
    if is_open(document, &port.id, at, position) {
        return;
    }
    // In the same step, else in the step before.
    let own = taken(document, step.actions.get(..position).unwrap_or_default(), &port).map(|kind| (at, kind));
    let before = || {
        let before = at.checked_sub(1)?;
        Some((before, taken(document, &document.steps.get(before)?.actions, &port)?))
    };
    let Some((at, kind)) = own.or_else(before) else { return };
    let Some(step) = document.steps.get(at) else { return };
    let mut changed = Step::clone(step);
    for test in changed.actions.iter_mut().filter(|test| test.test.as_ref() == Some(&kind)) {
        test.at.get_or_insert_with(|| port.id.clone());
    }
    put(document, at, changed);
}

/// The test or sampling port that an action closes.
fn port_closed<'d>(document: &'d Procedure, action: &Action) -> Option<&'d Connection> {
    let [only] = action.on.as_slice() else { return None };
    let port = document.map.connection(only).filter(|_| action.verb == Verb::Make)?;
    matches!(port.port, Some(Port::Test | Port::Sample)).then_some(port)
}

fn is_open(document: &Procedure, port: &Id, at: usize, position: usize) -> bool {
    let trace = traced(document);
    let place = position.checked_sub(1).map_or(Place::before(at), |i| Place::of_action(at, i));
    let cell = trace.plant().connection_named(port);
    cell.and_then(|cell| trace.at(&cell, place)).is_none_or(|state| state.open + state.slack > 0)
}

/// The kind of the last test among actions that can have been taken at a port and does not say where.
fn taken(document: &Procedure, actions: &[Action], port: &Connection) -> Option<TestKind> {
    let section = port.section.as_ref()?;
    let mut sections = document.map.sections();
    let circuit = sections.find(|(_, known)| known.id == *section).map(|(circuit, _)| &circuit.kind)?;
    let at_port = |kind: &TestKind| match circuit {
        CircuitKind::FuelGas => {
            matches!(kind, TestKind::Tightness | TestKind::WorkingPressure | TestKind::GasRate)
        }
        CircuitKind::AirAndFlue => *kind == TestKind::Combustion,
        _ => test_row(kind).is_some_and(|row| row.not_at && row.circuits.contains(circuit)),
    };
    let open = |action: &&Action| action.at.is_none() && action.verb == Verb::Test;
    actions.iter().rev().filter(open).find_map(|action| action.test.clone().filter(at_port))
}
