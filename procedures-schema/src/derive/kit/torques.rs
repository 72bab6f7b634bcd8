//! Torque spanners: as few as hold all torques, each within what one can be set to.

use super::widest::widen;
use super::{Done, Needed};
use crate::model::{Connection, KitList, Known, Procedure, Tight, Verb};
use crate::units::{Range, Unit, convert};

/// How many times its smallest setting a torque spanner reaches: they are tested from 20 % of the largest on (ISO 6789,
/// from memory).
const SPAN: f64 = 5.0;

/// The torque spanners, the smallest first.
pub(super) fn torque_spanners(procedure: &Procedure, done: &[Done<'_>]) -> Vec<Needed> {
    let mut all: Vec<(usize, &Range, f64, f64)> = Vec::new();
    for one in done.iter().filter(|one| matches!(one.action.verb, Verb::Make | Verb::Tighten)) {
        let made = one.action.on.iter().filter_map(|id| procedure.map.connection(id));
        let ranges = made.filter_map(|made| one.action.torque.as_ref().or_else(|| torque(made)));
        all.extend(ranges.filter_map(|range| ends(range).map(|(low, high)| (one.number, range, low, high))));
    }
    all.sort_by(|a, b| a.2.total_cmp(&b.2).then(a.0.cmp(&b.0)));
    let mut spanners: Vec<(Needed, f64)> = Vec::new();
    for (number, range, low, high) in all {
        let fits = spanners.last().is_some_and(|(_, lowest)| high <= lowest * SPAN);
        if !fits {
            spanners.push((Needed::new(KitList::Tools, "torque spanner"), low));
        }
        if let Some((needed, _)) = spanners.last_mut() {
            needed.range = Some(widen(needed.range.take(), range));
            needed.steps.push(number);
        }
    }
    spanners.into_iter().map(|(needed, _)| in_order(needed)).collect()
}

fn torque(connection: &Connection) -> Option<&Range> {
    connection.tight.as_ref().and_then(Known::value).and_then(|Tight { torque, .. }| torque.as_ref())
}

/// The smallest and the largest torque of a range in newton metres; one end alone is both.
fn ends(range: &Range) -> Option<(f64, f64)> {
    let value = |figure: &crate::units::Figure| convert(figure.value(), &range.unit, &Unit::NewtonMetre).ok();
    let (min, max) = (range.min.as_ref().and_then(value), range.max.as_ref().and_then(value));
    Some((min.or(max)?, max.or(min)?))
}

fn in_order(mut needed: Needed) -> Needed {
    needed.steps.sort_unstable();
    needed.steps.dedup();
    needed
}
