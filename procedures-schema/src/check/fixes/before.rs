//! Fixes that add a ready step before the place where it was missed: a rung of a ladder, an item placed or
//! taken away, a photograph, a test that is due; and those that put a part or a setting back.

use super::Fix;
use super::places::on_the_way_back;
use super::steps::{inserted, positions};
use crate::check::context::Context;
use crate::derive::ready::{fitting, photographing, placing, setting_back};
use crate::derive::rungs::{cutting_off, proving, releasing, waiting};
use crate::derive::way_back::{missing_test, taking_away};
use crate::model::{Aim, Id, IdSource, Procedure, Step, Temporary, Verb};
use crate::simulate::{Demand, IsolatorCell, Place, Reason, SectionCell, Thing, Unmet};

/// How long a burner or a heat pump is run at most before figures are taken, in minutes.
const SETTLING: u32 = 15;

/// What was missed, as late as it still helps: most of what is made safe is done just before it is needed.
pub(super) fn missed(context: &Context<'_>, met: &[&Unmet], ids: &mut dyn IdSource) -> Vec<Fix> {
    let Some(unmet) = met.first() else { return Vec::new() };
    let Some(step) = step(context, unmet, ids) else { return Vec::new() };
    let last = unmet.place.execution().unwrap_or(usize::MAX);
    let mut places: Vec<usize> =
        positions(context, Place::START).into_iter().filter(|at| *at <= last).collect();
    places.reverse();
    inserted(context, step, met, &places)
}

/// A part or a setting put back, on the way back.
pub(super) fn put_back(context: &Context<'_>, met: &[&Unmet], ids: &mut dyn IdSource) -> Vec<Fix> {
    let Some(unmet) = met.first() else { return Vec::new() };
    let id = |thing: Thing| context.trace.plant().id_of(thing);
    let put_back = match &unmet.reason {
        Reason::LeftOff { component } => id(Thing::Component(*component)).and_then(|id| {
            Some((id, fitting(context.procedure, id, is_renewed(context.procedure, id), ids)?))
        }),
        Reason::Demand { thing: Some(thing @ Thing::Setting(_)), .. } => {
            id(*thing).and_then(|id| Some((id, setting_back(context.procedure, id, ids)?)))
        }
        _ => None,
    };
    let Some((id, step)) = put_back else { return Vec::new() };
    inserted(context, step, met, &on_the_way_back(context, id, unmet.since))
}

/// Whether the document sets out to renew a part.
fn is_renewed(procedure: &Procedure, part: &Id) -> bool {
    procedure.goals.iter().any(|goal| goal.thing == *part && goal.aim == Aim::Renew)
}

fn step(context: &Context<'_>, unmet: &Unmet, ids: &mut dyn IdSource) -> Option<Step> {
    let (procedure, plant) = (context.procedure, context.trace.plant());
    match &unmet.reason {
        Reason::StillFed { section, through } => {
            let open = open_around(context, *section, through, unmet.place);
            cut_off(context, &open, plant.locks(*section), ids)
        }
        Reason::NotReleased { section } => releasing(procedure, plant, *section, ids),
        Reason::NotProved { section } | Reason::ProofLapsed { section, .. } => {
            proving(procedure, plant, *section, ids)
        }
        Reason::TestLate { .. } => missing_test(&unmet.reason, ids),
        Reason::Demand { demand, thing, others } => of_demand(context, *demand, *thing, others, ids),
        _ => None,
    }
}

fn of_demand(
    context: &Context<'_>,
    demand: Demand,
    thing: Option<Thing>,
    others: &[Thing],
    ids: &mut dyn IdSource,
) -> Option<Step> {
    let (procedure, plant) = (context.procedure, context.trace.plant());
    let id = |thing: Thing| plant.id_of(thing).cloned();
    match (demand, thing) {
        (Demand::GuardOffLive, _) => {
            let isolators: Vec<IsolatorCell> = others.iter().copied().filter_map(isolator).collect();
            // What a cover guards is locked off before it comes off.
            cut_off(context, &isolators, true, ids)
        }
        (Demand::WaitTooShort, Some(thing)) => waiting(minutes_of(context, thing)?, ids),
        (Demand::NotSettled, _) => waiting(SETTLING, ids),
        (Demand::BlankInside, _) => {
            let item = others.iter().copied().find(|other| matches!(other, Thing::Temporary(_)))?;
            taking_away(procedure, &id(item)?, ids)
        }
        (Demand::NoBond, Some(thing)) => {
            let connection = id(thing)?;
            placing(procedure, &item(procedure, |item| item.bonds.as_ref() == Some(&connection))?, ids)
        }
        (Demand::OpenEnd, _) => {
            let end = id(*others.first()?)?;
            placing(procedure, &item(procedure, |item| item.closes && item.on.as_ref() == Some(&end))?, ids)
        }
        (Demand::Unmarked, Some(thing)) => Some(photographing(procedure, &[id(thing)?], ids)),
        _ => None,
    }
}

/// The isolators on the way that was found open, and the others of the section that are open then: closing
/// one of two feeds mends nothing.
fn open_around(
    context: &Context<'_>,
    section: SectionCell,
    through: &[IsolatorCell],
    place: Place,
) -> Vec<IsolatorCell> {
    let mut open = through.to_vec();
    let around = context.trace.plant().section(section).map(|plan| plan.isolators.as_slice());
    for isolator in around.unwrap_or_default() {
        let is_open = context.trace.at(isolator, place).is_some_and(|state| state.open);
        if is_open && !open.contains(isolator) {
            open.push(*isolator);
        }
    }
    open
}

fn isolator(thing: Thing) -> Option<IsolatorCell> {
    if let Thing::Isolator(isolator) = thing { Some(isolator) } else { None }
}

fn item(procedure: &Procedure, is_it: impl Fn(&Temporary) -> bool) -> Option<Id> {
    procedure.map.temporary.iter().find(|item| is_it(item)).map(|item| item.id.clone())
}

fn minutes_of(context: &Context<'_>, thing: Thing) -> Option<u32> {
    let plant = context.trace.plant();
    let section: SectionCell = match thing {
        Thing::Section(section) => section,
        Thing::Circuit(circuit) => *plant.circuit(circuit)?.sections.first()?,
        Thing::Connection(connection) => plant.connection(connection)?.section?,
        _ => return plant.sections().filter_map(|(_, plan)| plan.demands.wait_minutes).max(),
    };
    plant.demands_on(section)?.wait_minutes
}

/// Where an isolator is closed by a step of the document already, that step is where the mistake is; a second
/// one would hide it.
fn cut_off(
    context: &Context<'_>,
    isolators: &[IsolatorCell],
    locks: bool,
    ids: &mut dyn IdSource,
) -> Option<Step> {
    let named: Option<Vec<Id>> =
        isolators.iter().map(|i| context.trace.plant().id_of(Thing::Isolator(*i)).cloned()).collect();
    let named = named.filter(|named| !named.is_empty())?;
    let mut actions = context.procedure.steps.iter().flat_map(|step| &step.actions);
    let closes = actions.any(|a| a.verb == Verb::Isolate && named.iter().all(|id| a.on.contains(id)));
    if closes { None } else { cutting_off(context.procedure, &named, locks, ids) }
}
