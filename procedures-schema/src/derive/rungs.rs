//! Single rungs of a ladder as ready steps, for where one is missing: cutting off, releasing, proving, waiting.

use super::ladder::{cut_off, prove, release};
use super::sentence::Sentence;
use crate::model::{Action, Handle, Id, IdSource, Procedure, Rest, Stage, Step, Verb};
use crate::simulate::{Plant, SectionCell};
use crate::units::{Figure, Measured, Unit};

/// The step that closes isolators, and locks them if that is asked for; none if nobody works one by hand.
pub fn cutting_off(
    procedure: &Procedure,
    isolators: &[Id],
    locks: bool,
    ids: &mut dyn IdSource,
) -> Option<Step> {
    let known = procedure.map.isolators.iter().filter(|known| isolators.contains(&known.id));
    let by_hand = |handle: &Handle| !matches!(handle, Handle::Automatic | Handle::Relief | Handle::None);
    let known: Vec<_> = known.filter(|known| by_hand(&known.handle)).collect();
    let all = known.len() == isolators.len();
    cut_off(&known, locks, ids).pop().filter(|_| all)
}

/// The step that lets out what a section stores.
pub fn releasing(
    procedure: &Procedure,
    plant: &Plant,
    section: SectionCell,
    ids: &mut dyn IdSource,
) -> Option<Step> {
    release(procedure, plant, section, ids)
}

/// The step that proves a section, with the readings of its kind; none if its kind is not judged.
pub fn proving(
    procedure: &Procedure,
    plant: &Plant,
    section: SectionCell,
    ids: &mut dyn IdSource,
) -> Option<Step> {
    prove(procedure, plant, section, plant.row_of(section)?, ids)
}

/// The step that lets some minutes pass.
pub fn waiting(minutes: u32, ids: &mut dyn IdSource) -> Option<Step> {
    let mut wait = Action::new(Verb::Wait, Vec::new());
    let value = Figure::parse(&minutes.to_string()).ok()?;
    wait.duration = Some(Measured { value, unit: Unit::Minute, rest: Rest::default() });
    let sentence = Sentence::new().say(&format!("Wait {minutes} min"), wait).add(".");
    Some(sentence.step(ids.next_id("step"), Stage::MakeSafe))
}
