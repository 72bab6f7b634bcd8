//! Tools: a spanner for each width across flats, torque spanners, and what is placed for the job.

use super::torques::torque_spanners;
use super::{Done, Needed};
use crate::model::{Connection, KitList, Known, Procedure, Size, Verb};
use crate::units::{Measured, Unit, convert};

pub(super) fn tools(procedure: &Procedure, done: &[Done<'_>]) -> Vec<Needed> {
    let mut spanners: Vec<Needed> = Vec::new();
    let mut placed: Vec<Needed> = Vec::new();
    for one in done {
        for connection in one.action.on.iter().filter_map(|id| procedure.map.connection(id)) {
            if is_turned(&one.action.verb) {
                spanner(&mut spanners, connection, one.number);
            }
        }
        put_there(procedure, one, &mut placed);
    }
    spanners.into_iter().chain(torque_spanners(procedure, done)).chain(placed).collect()
}

fn is_turned(verb: &Verb) -> bool {
    matches!(verb, Verb::Undo | Verb::Slacken | Verb::Make | Verb::Tighten)
}

fn spanner(spanners: &mut Vec<Needed>, connection: &Connection, number: usize) {
    let size = connection.size.as_ref().and_then(Known::value);
    let Some(Size { across_flats: Some(flats), .. }) = size else { return };
    let size = Known::Value(flats.to_string());
    if let Some(known) = spanners.iter_mut().find(|known| known.size.as_ref() == Some(&size)) {
        known.at(number);
        return;
    }
    let mut needed = Needed::new(KitList::Tools, if is_key(flats) { "hex key" } else { "spanner" });
    needed.size = Some(size);
    needed.at(number);
    spanners.push(needed);
}

/// Whether a width is that of a key and not of a spanner: the smallest nut that the trade turns is M3, 5.5 mm across its
/// flats (ISO 272, from memory).
fn is_key(flats: &Measured) -> bool {
    convert(flats.value.value(), &flats.unit, &Unit::Millimetre).is_ok_and(|width| width < 5.5)
}

/// Hoses, caps, notices: what a step puts there and what was not there before. A gauge is an instrument.
fn put_there(procedure: &Procedure, one: &Done<'_>, placed: &mut Vec<Needed>) {
    if one.action.verb != Verb::Place {
        return;
    }
    for id in &one.action.on {
        let item = procedure.map.temporary.iter().find(|item| item.id == *id);
        let Some(item) = item.filter(|item| !item.initially && item.arrives_with.is_none()) else { continue };
        if let Some(known) = placed.iter_mut().find(|known| known.thing.as_ref() == Some(id)) {
            known.at(one.number);
            continue;
        }
        let list = if item.gauge { KitList::Instruments } else { KitList::Tools };
        let mut needed = Needed::new(list, &item.name);
        needed.thing = Some(id.clone());
        needed.at(one.number);
        placed.push(needed);
    }
}
