//! The fix that corrects the map: what the document holds to be out of reach can be reached after all.

use super::Fix;
use crate::check::context::Context;
use crate::edit::Edit;
use crate::model::{Id, listed};
use crate::simulate::{ComponentCell, Demand, Place, Reason, Thing, Unmet};
use std::collections::BTreeMap;
use std::sync::Arc;

/// Says of the connections that they can be reached with what stands before them in place. Parts have no such
/// field: they are behind what the map says. Where the part that is in the way was off before, the order of
/// the steps is wrong and not the map.
pub(super) fn in_place(context: &Context<'_>, met: &[&Unmet]) -> Option<Fix> {
    let mut reached: BTreeMap<Id, Vec<ComponentCell>> = BTreeMap::new();
    let mut in_place: Vec<ComponentCell> = Vec::new();
    for unmet in met {
        let Reason::Demand { demand: Demand::OutOfReach, thing: Some(Thing::Connection(cell)), others } =
            &unmet.reason
        else {
            return None;
        };
        if unmet.since != Place::START {
            return None;
        }
        let plan = context.trace.plant().connection(*cell)?;
        let reach = reached.entry(plan.id.clone()).or_insert_with(|| plan.reach.clone());
        for other in others {
            let Thing::Component(blocking) = other else { return None };
            reach.retain(|component| component != blocking);
            if !in_place.contains(blocking) {
                in_place.push(*blocking);
            }
        }
    }
    let names: Vec<String> = reached.keys().map(|id| context.the_id(id)).collect();
    let blocking: Vec<String> = in_place.iter().map(|c| context.the(Thing::Component(*c))).collect();
    let mut map = (*context.procedure.map).clone();
    for connection in &mut map.connections {
        if let Some(reach) = reached.get(&connection.id) {
            let ids = reach.iter().filter_map(|c| context.trace.plant().id_of(Thing::Component(*c)));
            connection.reached_after = Some(ids.cloned().collect());
        }
    }
    let label = format!("say that {} can be reached with {} in place", listed(&names), listed(&blocking));
    (!reached.is_empty()).then(|| Fix { label, edits: vec![Edit::SetMap(Arc::new(map))] })
}
