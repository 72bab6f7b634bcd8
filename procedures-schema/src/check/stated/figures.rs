//! Torques, pressures, temperatures, voltages and times in words against those of the actions.

use super::reading::{Stated, stated_in, unit};
use super::{Difference, Words, ends_a_clause, stretch, word};
use crate::check::context::Context;
use crate::lexicon::{Few, Token, tokens};
use crate::model::{Action, Known, Step, Verb};
use crate::simulate::default_readings;
use crate::units::{Figure, Measured, Quantity, Range, Unit, convert};

/// The quantities that words are held to.
const HELD: [Quantity; 5] =
    [Quantity::Torque, Quantity::Pressure, Quantity::Temperature, Quantity::Voltage, Quantity::Time];

/// Adds what differs.
pub(super) fn differ(context: &Context<'_>, step: &Step, words: &Words<'_>, found: &mut Vec<Difference>) {
    let stated = &words.stating.figures;
    for kind in HELD {
        let is_of_kind = |stated: &&Stated| stated.unit.quantity() == kind;
        let mut unmet: Few<&Stated> = stated.iter().filter(is_of_kind).collect();
        if unmet.is_empty() {
            continue;
        }
        each_held(context, step, kind, &mut |held| unmet.retain(|stated| !agrees(stated, held)));
        if unmet.is_empty() {
            continue;
        }
        let held = held(context, step, kind);
        if held.is_empty() {
            continue;
        }
        let told = told_in_text(context, step);
        unmet.retain(|stated| {
            !told.iter().any(|told| agree(stated, &told.unit, Some(told.min), Some(told.max)))
        });
        let of_kind: Vec<&Stated> = stated.iter().filter(is_of_kind).collect();
        let unsaid: Vec<&Range> =
            held.iter().filter(|held| !of_kind.iter().any(|stated| agrees(stated, held))).collect();
        let ([stated], [held]) = (unmet.as_slice(), unsaid.as_slice()) else { continue };
        let tokens = words.tokens();
        if !may_be_followed(&tokens, stated.last) || has_loose_unit(&tokens, &of_kind, kind) {
            continue;
        }
        let (span, text) = stretch(&step.words, &tokens, stated.from, stated.last);
        found.push(Difference { span, stated: text, held: format!("its action says {held}") });
    }
}

/// Whether a unit of a kind stands behind no figure that was read: "half an hour".
fn has_loose_unit(tokens: &[Token<'_>], read: &[&Stated], kind: Quantity) -> bool {
    (0..tokens.len()).any(|at| {
        let is_read = read.iter().any(|stated| (stated.from..=stated.last).contains(&at));
        !is_read && tokens.get(at).and_then(|t| unit(t.raw)).is_some_and(|unit| unit.quantity() == kind)
    })
}

/// Whether a figure may be followed by this: before a noun it describes a thing, as in "the 6 bar valve".
fn may_be_followed(tokens: &[Token<'_>], last: usize) -> bool {
    let is_follower = |word: &str| {
        matches!(
            word,
            "to" | "and" | "or" | "for" | "at" | "each" | "in" | "within" | "until" | "on" | "then"
        ) || matches!(word, "with" | "from" | "while" | "when" | "after" | "before" | "between" | "across")
            || matches!(word, "cold" | "hot" | "crosswise" | "long" | "first")
    };
    ends_a_clause(tokens, last) || is_follower(word(tokens, last + 1))
}

/// What the actions of a step say of a quantity, each range once.
fn held(context: &Context<'_>, step: &Step, kind: Quantity) -> Vec<Range> {
    let mut held: Vec<Range> = Vec::new();
    each_held(context, step, kind, &mut |range| {
        if !held.iter().any(|known| is_same(known, range)) {
            held.push(range.clone());
        }
    });
    held
}

/// Each range that the actions of a step hold of a quantity.
fn each_held(context: &Context<'_>, step: &Step, kind: Quantity, each: &mut dyn FnMut(&Range)) {
    for action in &step.actions {
        each_of_action(context, action, kind, &mut |range| {
            if range.unit.quantity() == kind {
                each(range);
            }
        });
    }
}

fn each_of_action(context: &Context<'_>, action: &Action, kind: Quantity, each: &mut dyn FnMut(&Range)) {
    match kind {
        Quantity::Torque => each_torque(context, action, each),
        Quantity::Time => {
            if let Some(least) = action.duration.as_ref().or(action.at_most.as_ref()) {
                let most = action.at_most.as_ref().filter(|most| most.unit == least.unit).unwrap_or(least);
                each(&between(least, most));
            }
        }
        Quantity::Temperature => action.temperature.iter().for_each(|at| each(&between(at, at))),
        _ => {}
    }
    // Of a test words tell the pressure at which it is taken, and its kind by how much it may drop.
    if action.readings.is_empty() && action.verb == Verb::Prove {
        let default = default_readings(context.procedure, action);
        default.iter().filter_map(|reading| reading.limits.as_ref()).for_each(each);
    } else {
        action.readings.iter().filter_map(|reading| reading.limits.as_ref()).for_each(each);
    }
}

/// The torque of an action or, where it says none, those that the map knows of what it makes.
fn each_torque(context: &Context<'_>, action: &Action, each: &mut dyn FnMut(&Range)) {
    if let Some(torque) = &action.torque {
        each(torque);
    } else if matches!(action.verb, Verb::Make | Verb::Tighten) {
        let made = action.on.iter().filter_map(|id| context.connection(id));
        let tight = made.filter_map(|connection| connection.tight.as_ref().and_then(Known::value));
        tight.filter_map(|tight| tight.torque.as_ref()).for_each(each);
    }
}

fn between(least: &Measured, most: &Measured) -> Range {
    Range::new(Some(least.value.clone()), Some(most.value.clone()), least.unit.clone())
}

/// Figures in the texts of the actions and in the names of their things: what words take from there is right.
fn told_in_text(context: &Context<'_>, step: &Step) -> Vec<Stated> {
    let mut texts: Vec<String> = Vec::new();
    for action in &step.actions {
        let default =
            if action.readings.is_empty() { default_readings(context.procedure, action) } else { Vec::new() };
        for reading in action.readings.iter().chain(&default) {
            texts.extend([&reading.what, &reading.seen, &reading.source].map(String::clone));
        }
        let said = [&action.criterion, &action.to, &action.with, &action.text, &action.reason];
        texts.extend(said.into_iter().flatten().cloned());
        texts.extend(action.on_fail.iter().map(|on_fail| on_fail.again.clone()));
        for id in &action.on {
            texts.push(context.procedure.map.name_of(id).to_owned());
            if let Some(tight) = context.connection(id).and_then(|known| known.tight.as_ref()?.value()) {
                texts.push(tight.method.clone());
                texts.extend(tight.passes.iter().map(ToString::to_string));
            }
        }
    }
    let with_figures = texts.iter().filter(|text| text.bytes().any(|byte| byte.is_ascii_digit()));
    with_figures.flat_map(|text| stated_in(context.lexicon, &tokens(text))).collect()
}

/// Whether words that state a range agree with one that holds. A single figure agrees with the range that it
/// lies in, an open end with the same end.
fn agrees(stated: &Stated, held: &Range) -> bool {
    let end = |end: &Option<Figure>| end.as_ref().map(Figure::value);
    agree(stated, &held.unit, end(&held.min), end(&held.max))
}

fn agree(stated: &Stated, unit: &Unit, least: Option<f64>, most: Option<f64>) -> bool {
    let of = |figure: f64| convert(figure, &stated.unit, unit);
    let (Ok(min), Ok(max)) = (of(stated.min), of(stated.max)) else { return false };
    if !is_near(min, max) {
        return ends(min, least) && ends(max, most);
    }
    let is_within = least.is_none_or(|least| min >= least || is_near(min, least))
        && most.is_none_or(|most| max <= most || is_near(max, most));
    let is_end = |end: Option<f64>| end.is_some_and(|end| is_near(min, end));
    is_within || is_end(least) || is_end(most)
}

fn ends(stated: f64, held: Option<f64>) -> bool {
    // "0 V to 5 V" and "at most 5 V" say the same of what is never below zero.
    held.map_or(is_near(stated, 0.0), |held| is_near(stated, held))
}

fn is_same(one: &Range, other: &Range) -> bool {
    one.unit == other.unit && one.min == other.min && one.max == other.max
}

fn is_near(one: f64, other: f64) -> bool {
    (one - other).abs() <= 1e-9 + 1e-6 * one.abs().max(other.abs())
}
