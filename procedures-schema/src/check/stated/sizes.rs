//! Threads and widths across flats in words against those of the connections that the actions name.

use super::reading::Stated;
use super::{Difference, Holder, Value, Words, ends_a_clause, only, stretch, word};
use crate::check::context::Context;
use crate::lexicon::{Break, Token};
use crate::model::{Connection, Known, Size, Step};
use crate::units::{Quantity, Unit, convert};

/// What takes a size of its own.
const TOOLS: &[&str] = &["spanner", "wrench", "key", "socket", "driver", "bit", "drill", "tap", "die", "box"];

/// Adds what differs: only of one connection whose size is known, and only one size in the words.
pub(super) fn differ(context: &Context<'_>, step: &Step, words: &Words<'_>, found: &mut Vec<Difference>) {
    let named = step.actions.iter().enumerate();
    let named = named.flat_map(|(k, action)| action.on.iter().enumerate().map(move |(on, id)| (k, on, id)));
    let mut sized: Vec<(usize, usize, &Connection, &Size)> = Vec::new();
    for (k, on, id) in named {
        let Some(connection) = context.connection(id) else { continue };
        let size = connection.size.as_ref().and_then(Known::value);
        if let Some(size) = size.filter(|_| sized.iter().all(|(_, _, known, _)| known.id != connection.id)) {
            sized.push((k, on, connection, size));
        }
    }
    let [(k, on, connection, size)] = sized.as_slice() else { return };
    let stating = words.stating;
    if stating.thread.is_some() && is_said(size, words) {
        return;
    }
    let apart = stating.apart.and_then(|at| stating.figures.get(at));
    let flats = apart.and_then(|length| Some((length.from, length.last, fits_flats(size, length)?)));
    // Where the words name no thread, nothing but a figure that differs needs a look at the words themselves.
    if stating.thread.is_none() && flats.is_none_or(|(_, _, fits)| fits) {
        return;
    }
    let tokens = &words.tokens();
    let thread = stating.thread.map(|(from, last)| (from, last, fits_thread(size, tokens, from, last)));
    let stated = thread.or(flats.map(|(from, last, fits)| (from, last, Some(fits))));
    let Some((from, last, Some(false))) = stated else { return };
    if TOOLS.contains(&word(tokens, last + 1)) || TOOLS.contains(&word(tokens, last + 2)) {
        return;
    }
    let (span, stated) = stretch(&step.words, tokens, from, last);
    let held = format!("the map says {size} of {}", context.the_id(&connection.id));
    let known = size.thread.as_ref().filter(|_| thread.is_some()).cloned().map(Value::Thread);
    let unit = apart.map_or(Unit::Millimetre, |apart| apart.unit.clone());
    let flats = || size.across_flats.clone().map(|known| Value::Flats(known, unit));
    let Some(value) = known.or_else(flats) else { return };
    let holder = if thread.is_some() { Holder::Thread(*k, *on) } else { Holder::Flats(*k, *on) };
    found.push(Difference { span, stated, held, holder, value });
}

/// Whether the words name just the metric thread of the map, as most do. Of pipe threads `G 1` stands in `G 1 1/2`.
fn is_said(size: &Size, words: &Words<'_>) -> bool {
    let known = size.thread.as_deref().filter(|thread| thread.starts_with('M'));
    known.is_some_and(|thread| words.lower.has_name(thread))
}

/// The only thread in some words: `M6`, `M10 x 1`, `G 1 1/2`.
pub(super) fn thread(tokens: &[Token<'_>]) -> Option<(usize, usize)> {
    let mut all = (0..tokens.len()).filter(|at| begins_thread(tokens, *at));
    let from = all.next().filter(|_| all.next().is_none())?;
    let belongs = |at: &usize| {
        let same = tokens.get(*at).is_some_and(|token| token.before == Break::None);
        let figure = |at: usize| word(tokens, at).starts_with(|c: char| c.is_ascii_digit());
        same && (is_inches(word(tokens, *at)) || (word(tokens, *at) == "x" && figure(at + 1)))
    };
    let last = (from + 1..tokens.len()).take_while(belongs).last().unwrap_or(from);
    Some((from, last))
}

fn begins_thread(tokens: &[Token<'_>], at: usize) -> bool {
    let raw = tokens.get(at).map_or("", |token| token.raw);
    if let Some(rest) = raw.strip_prefix('M') {
        return rest.starts_with(|c: char| c.is_ascii_digit());
    }
    // Every word of a text is asked, and one letter tells nearly all of them.
    if !raw.starts_with(['R', 'G']) {
        return false;
    }
    let rest = ["Rc", "Rp", "R", "G"].iter().find_map(|letters| raw.strip_prefix(letters));
    rest.is_some_and(|rest| if rest.is_empty() { is_inches(word(tokens, at + 1)) } else { is_inches(rest) })
}

fn is_inches(text: &str) -> bool {
    !text.is_empty() && text.len() < 6 && text.chars().all(|c| c.is_ascii_digit() || c == '/')
}

/// Whether a thread in words is that of the map, as far as the words tell it: `M10` is `M10 x 1` too.
fn fits_thread(size: &Size, tokens: &[Token<'_>], from: usize, last: usize) -> Option<bool> {
    let plain = |text: &str| text.to_lowercase().replace([' ', '×'], "");
    let known = plain(size.thread.as_ref()?);
    let mut stated: String = (from..=last).map(|at| plain(word(tokens, at))).collect();
    // "Both M5s."
    if stated.ends_with('s') {
        stated.pop();
    }
    let rest =
        known.strip_prefix(stated.as_str()).map(|rest| !rest.starts_with(|c: char| c.is_ascii_digit()));
    Some(rest.unwrap_or(false) || stated.starts_with(&format!("{known}x")))
}

/// The position among the figures of the only length, if it stands apart behind a comma, or as "hexagon 4 mm".
pub(super) fn apart(figures: &[Stated], tokens: &[Token<'_>]) -> Option<usize> {
    let is_length = |(_, stated): &(usize, &Stated)| stated.unit.quantity() == Quantity::Length;
    let (at, stated) = only(figures.iter().enumerate().filter(is_length))?;
    let before = stated.from.checked_sub(1)?;
    let is_apart = tokens.get(stated.from).is_some_and(|token| token.before == Break::Comma)
        || matches!(word(tokens, before), "hexagon" | "flats");
    (is_apart && ends_a_clause(tokens, stated.last)).then_some(at)
}

/// Whether a length is the width across flats of the map.
fn fits_flats(size: &Size, length: &Stated) -> Option<bool> {
    let known = size.across_flats.as_ref()?;
    let value = convert(length.min, &length.unit, &known.unit).ok()?;
    Some((value - known.value.value()).abs() < 1e-6)
}
