//! Ladders: the ready-made steps that make a circuit safe to touch, from shut down to proved.
//!
//! They come as ordinary steps, to be edited like any other. The rungs follow from the circuit's kind: a
//! lock where the kind locks, a release where it stores pressure, the proof with the readings of the kind.

use super::sentence::Sentence;
use super::usual_units::in_usual_units;
use super::worked::worked_sections;
use crate::model::{
    Action, Energy, Handle, Id, IdSource, Isolator, Means, Port, Procedure, Reading, Stage, Step, Verb,
};
use crate::simulate::{
    ApplianceCell, Cell, IsolatorState, KindRow, Place, Plant, Run, SectionCell, Trace, default_readings,
    kind_row, simulate,
};

/// The ladder of a circuit for a position among the steps, without what is so there already; empty if all of it is, if the
/// map does not know the circuit or if its kind is not judged.
pub fn ladder(procedure: &Procedure, circuit: &Id, at: usize, ids: &mut dyn IdSource) -> Vec<Step> {
    let trace = simulate(procedure, &Run::of(procedure));
    let (plant, there) = (trace.plant(), There::before_step(&trace, at));
    let Some(found) = procedure.map.circuits.iter().find(|c| c.id == *circuit) else { return Vec::new() };
    let Some(row) = kind_row(&found.kind) else { return Vec::new() };
    let targets = targets(procedure, plant, circuit);
    let mut steps = Vec::new();
    if !there.all(&ApplianceCell, |state| state.running.is_none()) {
        let shut_down = Action::new(Verb::ShutDown, Vec::new());
        let sentence = Sentence::new().say("Shut down the appliance", shut_down).add(" at its own control.");
        steps.push(sentence.step(ids.next_id("step"), Stage::MakeSafe));
    }
    let locks = targets.iter().any(|section| plant.locks(*section));
    let is = |isolator: &Isolator, so: fn(&IsolatorState) -> bool| {
        plant.isolator_named(&isolator.id).is_some_and(|cell| there.all(&cell, so))
    };
    let around = isolators_around(procedure, plant, &targets);
    let (closed, open): (Vec<_>, Vec<_>) = around.into_iter().partition(|one| is(one, |state| !state.open));
    let unlocked: Vec<_> = closed.into_iter().filter(|one| locks && !is(one, |state| state.locked)).collect();
    steps.extend(cut_off(&open, locks, ids));
    steps.extend(lock_off(&unlocked, ids));
    for section in &targets {
        if row.stores.pressure && !there.all(section, |state| !state.stored.pressure) {
            steps.extend(release(procedure, plant, *section, ids));
        }
        if !there.all(section, |state| state.proof.holds()) || !trace.is_shown(*section, there.place) {
            steps.extend(prove(procedure, plant, *section, row, ids));
        }
    }
    steps
}

/// A place of a run at which something is looked at.
struct There<'t> {
    trace: &'t Trace,
    place: Place,
}

impl<'t> There<'t> {
    fn before_step(trace: &'t Trace, at: usize) -> Self {
        let execution = trace.run().steps().iter().position(|step| *step >= at);
        Self { trace, place: execution.map_or(Place::END, Place::before) }
    }

    /// Whether something is so on every way.
    fn all<C: Cell>(&self, cell: &C, is_so: impl Fn(&C::State) -> bool) -> bool {
        self.trace.states(cell, self.place).iter().all(|entry| is_so(&entry.state))
    }
}

/// The sections to be made safe: those worked on already, or those in which something can be undone.
fn targets(procedure: &Procedure, plant: &Plant, circuit: &Id) -> Vec<SectionCell> {
    let all = plant.sections_named(circuit);
    let worked = worked_sections(procedure, plant);
    let has_joint = |section: &SectionCell| plant.connections().any(|(_, k)| k.section == Some(*section));
    let of_all = |wanted: &dyn Fn(&SectionCell) -> bool| -> Vec<SectionCell> {
        all.iter().copied().filter(|section| wanted(section)).collect()
    };
    [of_all(&|section| worked.contains(section)), of_all(&has_joint)]
        .into_iter()
        .find(|some| !some.is_empty())
        .unwrap_or(all)
}

/// The isolators that can be worked by hand between the targets and everything else.
fn isolators_around<'p>(
    procedure: &'p Procedure,
    plant: &Plant,
    targets: &[SectionCell],
) -> Vec<&'p Isolator> {
    procedure
        .map
        .isolators
        .iter()
        .filter(|isolator| {
            let sides = [&isolator.between.0, &isolator.between.1];
            let n_inside = sides
                .iter()
                .filter(|id| plant.section_named(id).is_some_and(|section| targets.contains(&section)))
                .count();
            let by_hand = !matches!(isolator.handle, Handle::Automatic | Handle::Relief | Handle::None);
            n_inside == 1 && by_hand
        })
        .collect()
}

pub(super) fn cut_off(isolators: &[&Isolator], locks: bool, ids: &mut dyn IdSource) -> Vec<Step> {
    if isolators.is_empty() {
        return Vec::new();
    }
    let on: Vec<Id> = isolators.iter().map(|isolator| isolator.id.clone()).collect();
    let names: Vec<String> = isolators.iter().map(|isolator| format!("the {}", isolator.name)).collect();
    let all = names.join(" and ");
    let electric = isolators.iter().all(|isolator| matches!(isolator.handle, Handle::Switch | Handle::Fuse));
    let begin = if electric { format!("Switch off at {all}") } else { format!("Close {all}") };
    let mut sentence = Sentence::new().say(&begin, Action::new(Verb::Isolate, on.clone()));
    if locks {
        let it = if on.len() == 1 { "lock it off" } else { "lock them off" };
        sentence = sentence.add(" and ").say(it, Action::new(Verb::Lock, on)).add("; keep the key");
    }
    vec![sentence.add(".").step(ids.next_id("step"), Stage::MakeSafe)]
}

/// Locks what is closed already.
fn lock_off(isolators: &[&Isolator], ids: &mut dyn IdSource) -> Option<Step> {
    let names: Vec<String> = isolators.iter().map(|isolator| format!("the {}", isolator.name)).collect();
    let lock = Action::new(Verb::Lock, isolators.iter().map(|isolator| isolator.id.clone()).collect());
    let sentence = Sentence::new().say(&format!("Lock {} off", names.join(" and ")), lock);
    let step = || sentence.add("; keep the key.").step(ids.next_id("step"), Stage::MakeSafe);
    (!isolators.is_empty()).then(step)
}

pub(super) fn release(
    procedure: &Procedure,
    plant: &Plant,
    section: SectionCell,
    ids: &mut dyn IdSource,
) -> Option<Step> {
    let id = plant.section(section)?.id.clone();
    let port = |kind: Port| {
        let wanted =
            plant.connections().find(|(_, k)| k.section == Some(section) && k.port == Some(kind.clone()));
        wanted.map(|(_, k)| k.id.clone())
    };
    let (drain, vent) = (port(Port::Drain), port(Port::Vent));
    let mut action = Action::new(Verb::Release, vec![id.clone()]);
    action.what = Some(Energy::Pressure);
    action.by = Some(if drain.is_some() { Means::Drain } else { Means::Vent });
    action.to = drain.is_some().then(|| "a bucket".to_owned());
    action.through.clone_from(&drain);
    action.vent.clone_from(&vent);
    let name = |id: &Id| procedure.map.name_of(id).to_owned();
    let way = match (&drain, &vent) {
        (Some(drain), Some(vent)) => format!(
            "Drain the {} through the {} into a bucket, with the {} open",
            name(&id),
            name(drain),
            name(vent)
        ),
        (Some(drain), None) => format!("Drain the {} through the {} into a bucket", name(&id), name(drain)),
        (None, Some(vent)) => format!("Release the {} through the {}", name(&id), name(vent)),
        (None, None) => format!("Release the pressure of the {}", name(&id)),
    };
    Some(Sentence::new().say(&way, action).add(".").step(ids.next_id("step"), Stage::MakeSafe))
}

pub(super) fn prove(
    procedure: &Procedure,
    plant: &Plant,
    section: SectionCell,
    row: &KindRow,
    ids: &mut dyn IdSource,
) -> Option<Step> {
    let plan = plant.section(section)?;
    let circuit = plant.circuit(plan.circuit)?;
    let id = if circuit.sections.len() == 1 { &circuit.id } else { &plan.id };
    let name = procedure.map.name_of(id);
    let zero = if row.guarded { "dead" } else { "at zero" };
    let mut action = Action::new(Verb::Prove, vec![id.clone()]);
    let mut readings = default_readings(procedure, &action);
    let country = procedure.country.as_ref();
    let mut are_others = false;
    for reading in &mut readings {
        are_others |= in_usual_units(country, reading);
    }
    let said: Vec<String> = readings.iter().map(said).collect();
    if are_others {
        action.readings = readings;
    }
    let sentence = Sentence::new()
        .say(&format!("Prove the {name} {zero}"), action)
        .add(&format!(": {}.", said.join(", ")));
    Some(sentence.step(ids.next_id("step"), Stage::MakeSafe))
}

/// A reading in words: `gauge 0.0 to 0.1 bar`, `flow none for 60 s`.
fn said(reading: &Reading) -> String {
    let limits = reading.limits.as_ref().map(|limits| match (&limits.min, &limits.max) {
        (Some(min), Some(max)) => format!("{min} to {max} {}", limits.unit.shown()),
        _ => limits.to_string(),
    });
    format!("{} {}", reading.what, limits.as_ref().unwrap_or(&reading.seen))
}
