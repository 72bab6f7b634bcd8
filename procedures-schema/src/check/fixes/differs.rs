//! Words and actions that state two figures: the action takes that of the words, or the words that of the action.
//!
//! Which is right only the writer knows, so both are offered. What the tables demand is never put aside by a key, and
//! a figure that does not tell which limit it is goes into no reading.

use super::Fix;
use super::restated::{figures, restated};
use crate::check::context::Context;
use crate::check::finding::Finding;
use crate::check::stated::{Difference, End, Holder, Text, Value, differences};
use crate::edit::{Edit, put};
use crate::model::{Action, ApplianceMap, Connection, Id, Known, Size, Span, Step, Tight};
use crate::units::{Figure, Measured, Range, convert};
use std::sync::Arc;

/// What would mend a finding of `words/differs`: changes of the action or of the map, then changes of the words. Of
/// each list only one is meant.
pub(super) fn either(context: &Context<'_>, finding: &Finding) -> [Vec<Fix>; 2] {
    let at = finding.step.as_ref().and_then(|id| context.procedure.position(id));
    let step = at.and_then(|at| Some((at, context.procedure.steps.get(at)?)));
    let Some((at, step)) = step else { return [const { Vec::new() }; 2] };
    let is_meant = |one: &Difference| {
        Some(one.span) == finding.span
            && finding.title.ends_with(&format!("\"{}\", and {}", one.stated, one.held))
    };
    let Some(meant) = differences(context, at, step).into_iter().find(is_meant) else {
        return [const { Vec::new() }; 2];
    };
    let words = written(context, step, &meant);
    [taken(context, step, &meant), words.into_iter().collect()]
}

/// The words with what the action says.
fn written(context: &Context<'_>, step: &Step, one: &Difference) -> Option<Fix> {
    let (gone, text) = restated(context.lexicon, &step.words, one)?;
    let mut changed = step.clone();
    put(&mut changed, gone, &text)?;
    let label = format!("write {text} in the words");
    Some(Fix { label, edits: vec![Edit::SetStep { step: Arc::new(changed) }] })
}

/// The action, or the map, with what the words say.
fn taken(context: &Context<'_>, step: &Step, one: &Difference) -> Vec<Fix> {
    let changed = |k: usize, change: &dyn Fn(&mut Action) -> Option<()>| {
        let mut changed = step.clone();
        change(changed.actions.get_mut(k)?)?;
        Some(Edit::SetStep { step: Arc::new(changed) })
    };
    let into = |what: &str, edit: Option<Edit>| {
        let label = format!("put {} {what}", said(one));
        edit.map(|edit| Fix { label, edits: vec![edit] })
    };
    let range = |held: &Range| said_range(context, one, held);
    let held = if let Value::Range { held, .. } = &one.value { Some(held) } else { None };
    let thing = |k: usize, on: usize| step.actions.get(k)?.on.get(on);
    let on_map = |k: usize, on: usize, change: &dyn Fn(&mut Connection) -> Option<()>| {
        into("on the map", map_with(context, thing(k, on)?, change))
    };
    let fix = match one.holder {
        Holder::Torque(k) => into(
            "into the action",
            changed(k, &|action| {
                action.torque = Some(range(held?)?);
                Some(())
            }),
        ),
        Holder::Temperature(k) => into(
            "into the action",
            changed(k, &|action| {
                action.temperature = Some(only(range(held?)?)?);
                Some(())
            }),
        ),
        Holder::Time(k) => {
            into("into the action", changed(k, &|action| take_time(action, one, range(held?)?)))
        }
        Holder::Limits(k, r) => into(
            "into the reading",
            changed(k, &|action| {
                action.readings.get_mut(r)?.limits = Some(limits(held?, range(held?)?)?);
                Some(())
            }),
        ),
        Holder::Text(text, _) => {
            into(place_of(text), changed(text.action(), &|action| take_text(action, text, one)))
        }
        Holder::MapTorque(k, on) => on_map(k, on, &|known| {
            let tight = known.tight.as_ref().and_then(Known::value).cloned().unwrap_or_default();
            known.tight = Some(Known::Value(Tight { torque: Some(range(held?)?), ..tight }));
            Some(())
        }),
        Holder::Thread(k, on) => {
            on_map(k, on, &|known| resize(known, |size| size.thread = Some(one.stated.clone())))
        }
        Holder::Flats(k, on) => on_map(k, on, &|known| {
            let flats = flats(context, one)?;
            resize(known, |size| size.across_flats = Some(flats.clone()))
        }),
        Holder::Count(k) => return counted(context, step, one, k, 0),
        Holder::MapCount(k, on) => return counted(context, step, one, k, on),
        Holder::Table(_) | Holder::Thing(_) => None,
    };
    fix.into_iter().collect()
}

/// What the words state, as a key says it: of "six lid screws" the number.
fn said(one: &Difference) -> String {
    match &one.value {
        Value::Count(_) => one.stated.split(' ').next().unwrap_or_default().to_owned(),
        Value::Range { end: End::Most, .. } => format!("at most {}", one.stated),
        Value::Range { end: End::Least, .. } => format!("at least {}", one.stated),
        _ => one.stated.clone(),
    }
}

/// The range of the words, of which a single figure may be one end of what is held.
fn said_range(context: &Context<'_>, one: &Difference, held: &Range) -> Option<Range> {
    let Value::Range { unit, end, .. } = &one.value else { return None };
    let (min, max) = figures(context.lexicon, &one.stated)?;
    let is_zero = |figure: &Option<Figure>| figure.as_ref().is_some_and(|figure| figure.value() == 0.0);
    // The other end stays where it can be written with this unit.
    let other = |end: &Option<Figure>| end.clone().filter(|_| held.unit == *unit || is_zero(end));
    let is_single = min == max;
    let is_upper = *end == End::Most || (held.min.is_none() || is_zero(&held.min) && held.min != held.max);
    let (min, max) = match end {
        _ if !is_single => (Some(min), Some(max)),
        End::Least => (Some(min), other(&held.max)),
        End::Open if held.max.is_none() => (Some(min), None),
        _ if is_upper => (other(&held.min), Some(max)),
        _ => (Some(min), Some(max)),
    };
    let is_in_order = min.as_ref().zip(max.as_ref()).is_none_or(|(min, max)| min.value() <= max.value());
    is_in_order.then(|| Range::new(min, max, unit.clone()))
}

/// Limits of a reading: a single figure in the place of two does not tell which of them it is.
fn limits(held: &Range, said: Range) -> Option<Range> {
    let is_single = |range: &Range| range.min == range.max;
    (!is_single(&said) || is_single(held)).then_some(said)
}

/// The figure of a range that has only one.
fn only(range: Range) -> Option<Measured> {
    let figure = range.max.filter(|max| range.min.as_ref().is_none_or(|min| min == max))?;
    Some(Measured::new(figure, range.unit))
}

/// Takes how long the words say into an action: into what it holds of the two.
fn take_time(action: &mut Action, one: &Difference, said: Range) -> Option<()> {
    let Value::Range { end, .. } = one.value else { return None };
    let of = |figure: &Option<Figure>| Some(Measured::new(figure.clone()?, said.unit.clone()));
    match (&action.duration, &action.at_most, end) {
        (Some(_), None, End::Open | End::Least) => action.duration = Some(only(said)?),
        (None, Some(_), End::Open | End::Most) => action.at_most = Some(only(said)?),
        (Some(_), Some(_), _) if said.min != said.max => {
            (action.duration, action.at_most) = (of(&said.min), of(&said.max));
        }
        _ => return None,
    }
    Some(())
}

fn place_of(text: Text) -> &'static str {
    match text {
        Text::What(..) | Text::Seen(..) => "into the reading",
        Text::Criterion(_) | Text::To(_) => "into the action",
    }
}

/// Writes the figure of the words into a text of an action.
fn take_text(action: &mut Action, text: Text, one: &Difference) -> Option<()> {
    let Holder::Text(_, span) = one.holder else { return None };
    let text = match text {
        Text::Criterion(_) => action.criterion.as_mut()?,
        Text::To(_) => action.to.as_mut()?,
        Text::What(_, r) => &mut action.readings.get_mut(r)?.what,
        Text::Seen(_, r) => &mut action.readings.get_mut(r)?.seen,
    };
    let end = u32::try_from(text.chars().count()).ok()?;
    let (before, behind) = (Span(0, span.0), Span(span.1, end));
    *text = [before.of(text), &one.stated, behind.of(text)].concat();
    Some(())
}

/// The number of the words: of the action, where it is a part of what there is, or of the map, of which the action then
/// takes all.
fn counted(context: &Context<'_>, step: &Step, one: &Difference, k: usize, on: usize) -> Vec<Fix> {
    let take = || {
        let n: u32 = figures(context.lexicon, &said(one))?.0.as_str().parse().ok()?;
        let action = step.actions.get(k)?;
        let id = action.on.get(on)?;
        Some((n, action.on.len(), id, context.connection(id)?.count))
    };
    let Some((n, n_things, id, known)) = take() else { return Vec::new() };
    let set = |count: Option<u32>| {
        let mut changed = step.clone();
        changed.actions.get_mut(k)?.count = count;
        Some(Edit::SetStep { step: Arc::new(changed) })
    };
    let mut all = Vec::new();
    if n_things == 1 && n <= known {
        let edits: Vec<Edit> = set((n < known).then_some(n)).into_iter().collect();
        all.push(Fix { label: format!("put {} into the action", said(one)), edits });
    }
    let map = map_with(context, id, &|known| {
        known.count = n;
        Some(())
    });
    let edits = map.into_iter().chain(set(None)).collect();
    all.push(Fix { label: format!("put {} on the map", said(one)), edits });
    all
}

/// The map with one connection changed.
fn map_with(context: &Context<'_>, id: &Id, change: &dyn Fn(&mut Connection) -> Option<()>) -> Option<Edit> {
    let mut map = ApplianceMap::clone(&context.procedure.map);
    change(map.connections.iter_mut().find(|known| known.id == *id)?)?;
    Some(Edit::SetMap(Arc::new(map)))
}

fn resize(connection: &mut Connection, change: impl Fn(&mut Size)) -> Option<()> {
    let mut size = connection.size.as_ref().and_then(Known::value).cloned()?;
    change(&mut size);
    connection.size = Some(Known::Value(size));
    Some(())
}

fn flats(context: &Context<'_>, one: &Difference) -> Option<Measured> {
    let Value::Flats(held, unit) = &one.value else { return None };
    let (figure, _) = figures(context.lexicon, &one.stated)?;
    convert(figure.value(), unit, &held.unit).ok()?;
    Some(Measured::new(figure, unit.clone()))
}
