//! The range that holds several, in the unit of the first.

use crate::units::{Figure, Measured, Range, convert};

/// Widens a range so that it holds another; one that measures something else is left out.
pub(super) fn widen(held: Option<Range>, other: &Range) -> Range {
    let Some(mut held) = held else { return plain(other) };
    let (min, max) = (in_unit(other.min.as_ref(), other, &held), in_unit(other.max.as_ref(), other, &held));
    let ends = [&held.min, &held.max, &min, &max].into_iter().flatten();
    let mut ends: Vec<Figure> = ends.cloned().collect();
    ends.sort_by(|a, b| a.value().total_cmp(&b.value()));
    // One end alone says from nought to there, or from there on: it is held as the end that it is.
    let (lowest, highest) = (ends.first().cloned(), ends.last().cloned());
    held.min = if held.min.is_none() && min.is_none() { None } else { lowest };
    held.max = if held.max.is_none() && max.is_none() { None } else { highest };
    held
}

fn plain(range: &Range) -> Range {
    Range::new(range.min.clone(), range.max.clone(), range.unit.clone())
}

fn in_unit(figure: Option<&Figure>, of: &Range, unit_of: &Range) -> Option<Figure> {
    let figure = figure?;
    if of.unit == unit_of.unit {
        return Some(figure.clone());
    }
    let value = convert(figure.value(), &of.unit, &unit_of.unit).ok()?;
    // Three digits behind the point say a torque or a pressure finer than any tool is set to.
    Figure::parse(format!("{value:.3}").trim_end_matches('0').trim_end_matches('.')).ok()
}

/// The smallest difference in which the ends of a range are written: `0.1 bar` of `0 to 0.1 bar`; none if whole units
/// do.
pub(super) fn finest(range: &Range) -> Option<Measured> {
    let places = |figure: &Figure| figure.as_str().split_once('.').map_or(0, |(_, behind)| behind.len());
    let most = [&range.min, &range.max].into_iter().flatten().map(places).max()?;
    let figure = (most > 0).then(|| Figure::parse(&format!("0.{}1", "0".repeat(most - 1))).ok())??;
    Some(Measured::new(figure, range.unit.clone()))
}
