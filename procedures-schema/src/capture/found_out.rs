//! What somebody has found out, as the edit that puts it where it was missing.
//!
//! Figures are read as in a line that begins with `read:`, with the same caution: what could mean something
//! else is not taken, and the person is told.

mod several;

pub use several::{Several, several_found_out};

use super::leading::{Leading, leading};
use crate::edit::{Edit, Scope};
use crate::model::{
    ApplianceMap, Connection, Id, Known, OpenPlace, Procedure, Reading, Size, Step, Tight, each_reading,
    open_values,
};
use crate::units::{Figure, Measured, Quantity, Range, Unit};
use std::sync::Arc;

/// Why what was typed is not taken, for people.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NoAnswer(pub String);

/// The edit that puts an answer in its place. What has no field of its own goes into the remark of the
/// document, with what it answers.
///
/// # Errors
/// If the answer is empty or no figure where one is needed, or nothing is missing there any more.
pub fn found_out(document: &Procedure, place: &OpenPlace, typed: &str) -> Result<Edit, NoAnswer> {
    let typed = typed.trim();
    let open = open_values(document).into_iter().find(|open| open.place == *place);
    let open = open.ok_or_else(|| NoAnswer("this has been found out already".to_owned()))?;
    if typed.is_empty() {
        return Err(NoAnswer("nothing is typed yet".to_owned()));
    }
    match place {
        OpenPlace::Limits { step, reading } => {
            let limits = one_range(typed)?;
            in_step(document, step, *reading, |reading| {
                reading.limits = Some(limits);
                reading.later.clear();
            })
        }
        OpenPlace::Input { step, reading, input } => {
            let measured = one_value(typed)?;
            in_step(document, step, *reading, |reading| {
                if let Some(input) = reading.inputs.get_mut(*input) {
                    input.value = Known::Value(measured);
                }
            })
        }
        OpenPlace::SpareNumber(id) => Ok(in_scope(document, |scope| {
            for spare in scope.kit.spares.iter_mut().filter(|spare| spare.id == *id) {
                spare.number = Some(Known::Value(typed.to_owned()));
            }
        })),
        OpenPlace::Listed(at) => Ok(in_scope(document, |scope| {
            scope.later.remove(*at);
            let blank = if scope.note.is_empty() || scope.note.ends_with(' ') { "" } else { " " };
            let stop = if typed.ends_with('.') { "" } else { "." };
            let first: String = open.what.chars().take(1).flat_map(char::to_uppercase).collect();
            let others: String = open.what.chars().skip(1).collect();
            scope.note = format!("{}{blank}{first}{others}: {typed}{stop}", scope.note);
        })),
        of_map => Ok(in_map(document, |map| answer_in_map(map, of_map, typed))),
    }
}

fn answer_in_map(map: &mut ApplianceMap, place: &OpenPlace, typed: &str) {
    let known = || Some(Known::Value(typed.to_owned()));
    match place {
        OpenPlace::Size(id) => change(map, id, |k| k.size = Some(Known::Value(size(typed)))),
        OpenPlace::Tight(id) => change(map, id, |k| k.tight = Some(Known::Value(tight(typed)))),
        OpenPlace::SealSize(id) => {
            map.seals.iter_mut().filter(|s| s.id == *id).for_each(|s| s.size = known());
        }
        OpenPlace::SealNumber(id) => {
            map.seals.iter_mut().filter(|s| s.id == *id).for_each(|s| s.number = known());
        }
        OpenPlace::ComponentNumber(id) => {
            map.components.iter_mut().filter(|c| c.id == *id).for_each(|c| c.number = known());
        }
        // The others are not on the map.
        _ => {}
    }
}

fn change(map: &mut ApplianceMap, id: &Id, set: impl Fn(&mut Connection)) {
    map.connections.iter_mut().filter(|known| known.id == *id).for_each(set);
}

/// A size as the trade writes it: a tube, a width across flats, a thread, or else the words of a terminal.
fn size(typed: &str) -> Size {
    let nothing = Size::default();
    let millimetres = |text: &str| {
        let figure = Figure::parse(text.trim().strip_suffix("mm")?).ok()?;
        Some(Measured::new(figure, Unit::Millimetre))
    };
    if let Some(tube) = typed.strip_suffix("tube").and_then(millimetres) {
        return Size { tube: Some(tube), ..nothing };
    }
    if let Some(flats) = millimetres(typed) {
        return Size { across_flats: Some(flats), ..nothing };
    }
    let after_letters = typed.trim_start_matches(|c: char| c.is_ascii_uppercase() || "cp".contains(c));
    let is_thread = after_letters.len() < typed.len()
        && after_letters.trim_start().starts_with(|c: char| c.is_ascii_digit());
    if is_thread {
        Size { thread: Some(typed.to_owned()), ..nothing }
    } else {
        Size { terminal: Some(typed.to_owned()), ..nothing }
    }
}

/// A torque, or another method in words.
fn tight(typed: &str) -> Tight {
    let torque = one_range(typed).ok().filter(|range| range.unit.quantity() == Quantity::Torque);
    match torque {
        Some(torque) => Tight { torque: Some(torque), ..Tight::default() },
        None => Tight { method: typed.to_owned(), ..Tight::default() },
    }
}

/// The limits that a line with `read:` would have, as people type them: `0.8 to 1.2 bar`, `at most 5 mbar`.
///
/// # Errors
/// If they are not limits of one value with their unit.
pub fn one_range(typed: &str) -> Result<Range, NoAnswer> {
    match leading(&format!("read: it, {typed}")) {
        Some(Leading::Read { limits: Some(limits), out, what, then })
            if out.is_empty() && then.is_empty() && what == "it" =>
        {
            Ok(limits)
        }
        _ => Err(NoAnswer(format!(
            "\"{typed}\" is not read as limits: type them like \"0.8 to 1.2 bar\" or \"at most 5 mbar\""
        ))),
    }
}

/// One value with its unit, as people type it: `12 l`.
///
/// # Errors
/// If it is not one value with its unit.
pub fn one_value(typed: &str) -> Result<Measured, NoAnswer> {
    let one = one_range(typed).ok().filter(|range| range.min == range.max);
    let value = one.and_then(|range| range.min.map(|figure| Measured::new(figure, range.unit)));
    value
        .ok_or_else(|| NoAnswer(format!("\"{typed}\" is not one value with its unit: type it like \"12 l\"")))
}

fn in_map(document: &Procedure, change: impl FnOnce(&mut ApplianceMap)) -> Edit {
    let mut map = ApplianceMap::clone(&document.map);
    change(&mut map);
    Edit::SetMap(Arc::new(map))
}

fn in_scope(document: &Procedure, change: impl FnOnce(&mut Scope)) -> Edit {
    let mut scope = Scope::of(document);
    change(&mut scope);
    Edit::SetScope(Box::new(scope))
}

fn in_step(
    document: &Procedure,
    step: &Id,
    nth: usize,
    change: impl FnOnce(&mut Reading),
) -> Result<Edit, NoAnswer> {
    let known = document.steps.iter().find(|known| known.id == *step);
    let known = known.ok_or_else(|| NoAnswer("the step has gone".to_owned()))?;
    let mut step = Step::clone(known);
    let (mut at, mut change) = (0, Some(change));
    each_reading(&mut step, &mut |reading| {
        if at == nth
            && let Some(change) = change.take()
        {
            change(reading);
        }
        at += 1;
    });
    Ok(Edit::SetStep { step: Arc::new(step) })
}

#[cfg(test)]
mod tests;
