//! What the actions of a step say of a quantity: the ranges that they hold, and the figures in their texts.

use super::holder::{Holder, Text};
use super::reading::{Stated, stated_in};
use super::{stretch, word};
use crate::check::context::Context;
use crate::lexicon::{Break, Token, tokens};
use crate::model::{Action, Reading, Span, Step, Verb};
use crate::simulate::default_readings;
use crate::units::{Figure, Measured, Quantity, Range, Unit};

/// What an action says of a quantity, in figures and as it is shown.
#[derive(Debug)]
pub(super) struct Held {
    pub(super) unit: Unit,
    pub(super) min: Option<f64>,
    pub(super) max: Option<f64>,
    pub(super) shown: String,
    pub(super) holder: Holder,
    /// The range itself, if it is no text.
    pub(super) range: Option<Range>,
}

impl Held {
    pub(super) fn of_range(holder: Holder, range: &Range) -> Self {
        let value = |end: &Option<Figure>| end.as_ref().map(Figure::value);
        let (min, max) = (value(&range.min), value(&range.max));
        Self {
            unit: range.unit.clone(),
            min,
            max,
            shown: range.to_string(),
            holder,
            range: Some(range.clone()),
        }
    }

    fn of_text(at: impl Fn(Span) -> Holder, stated: Stated, text: &str, tokens: &[Token<'_>]) -> Self {
        let (span, shown) = stretch(text, tokens, stated.from, stated.last);
        Self {
            unit: stated.unit,
            min: Some(stated.min),
            max: Some(stated.max),
            shown,
            holder: at(span),
            range: None,
        }
    }
}

/// What the actions of a step say of a quantity, each once. Words are held to figures in what is read and seen
/// only where they speak of that, or of nothing, where the figure stands.
pub(super) fn held(
    context: &Context<'_>,
    step: &Step,
    kind: Quantity,
    words: &[Token<'_>],
    unmet: &[&Stated],
) -> Vec<Held> {
    let mut held: Vec<Held> = Vec::new();
    each_held(context, step, kind, &mut |holder, range| held.push(Held::of_range(holder, range)));
    let mut add = |at: &dyn Fn(Span) -> Holder, text: &str| {
        if !text.bytes().any(|byte| byte.is_ascii_digit()) {
            return;
        }
        let tokens = tokens(text);
        let alike = stated_in(context.lexicon, &tokens).into_iter().filter(|stated| {
            let how = introduced(&tokens, stated);
            let is_alike = |at: &&Stated| match (how, introduced(words, at)) {
                (Some(one), Some(other)) => one == other,
                _ => true,
            };
            stated.unit.quantity() == kind && unmet.iter().any(is_alike)
        });
        held.extend(alike.map(|stated| Held::of_text(at, stated, text, &tokens)));
    };
    for (k, action) in step.actions.iter().enumerate() {
        action.criterion.iter().for_each(|text| add(&|span| Holder::Text(Text::Criterion(k), span), text));
        action.to.iter().for_each(|text| add(&|span| Holder::Text(Text::To(k), span), text));
        let is_asked = action.readings.is_empty() && action.verb == Verb::Prove;
        let asked = if is_asked { default_readings(context.procedure, action) } else { Vec::new() };
        let is_spoken_of = |reading: &&Reading| unmet.iter().any(|at| may_speak_of(reading, words, at));
        for reading in asked.iter().filter(is_spoken_of) {
            for text in texts(reading) {
                add(&|_| Holder::Table(k), text);
            }
        }
        for (r, reading) in action.readings.iter().enumerate().filter(|(_, reading)| is_spoken_of(reading)) {
            add(&|span| Holder::Text(Text::What(k, r), span), &reading.what);
            add(&|span| Holder::Text(Text::Seen(k, r), span), &reading.seen);
        }
    }
    let mut each: Vec<Held> = Vec::new();
    for one in held {
        if !each.iter().any(|known| known.shown == one.shown) {
            each.push(one);
        }
    }
    each
}

/// The word that leads to a time: "dry after 1 min" is not said by "lift it for 5 s".
fn introduced<'t>(tokens: &'t [Token<'_>], stated: &Stated) -> Option<&'t str> {
    let before = word(tokens, stated.from.checked_sub(1)?);
    matches!(before, "for" | "after" | "in" | "within" | "over").then_some(before)
}

fn texts(reading: &Reading) -> [&str; 2] {
    [&reading.what, &reading.seen]
}

/// Whether the part of the words where a figure stands names what is read, or nothing at all: "no flow at the
/// drain for 60 s", "10 min".
fn may_speak_of(reading: &Reading, words: &[Token<'_>], stated: &Stated) -> bool {
    const SHORTEST: usize = 4;
    let is_joined = |at: &usize| words.get(*at).is_some_and(|token| token.before == Break::None);
    let from = (1..=stated.from).rev().take_while(is_joined).last().map_or(stated.from, |at| at - 1);
    let end = (stated.last + 1..words.len()).take_while(is_joined).last().unwrap_or(stated.last) + 1;
    let around = (from..stated.from).chain(stated.last + 1..end).map(|at| word(words, at));
    let mut named = around.filter(|word| word.len() >= SHORTEST).peekable();
    let texts = texts(reading).map(tokens);
    named.peek().is_none() || named.any(|word| texts.iter().flatten().any(|token| token.text == word))
}

/// Each range that the actions of a step hold of a quantity.
pub(super) fn each_held(context: &Context<'_>, step: &Step, kind: Quantity, each: Each<'_>) {
    for (k, action) in step.actions.iter().enumerate() {
        each_of_action(context, k, action, kind, &mut |holder, range| {
            if range.unit.quantity() == kind {
                each(holder, range);
            }
        });
    }
}

/// What is done with a range and where it is held.
type Each<'e> = &'e mut dyn FnMut(Holder, &Range);

fn each_of_action(context: &Context<'_>, k: usize, action: &Action, kind: Quantity, each: Each<'_>) {
    match kind {
        Quantity::Torque => each_torque(context, k, action, each),
        Quantity::Time => {
            if let Some(least) = action.duration.as_ref().or(action.at_most.as_ref()) {
                let most = action.at_most.as_ref().filter(|most| most.unit == least.unit).unwrap_or(least);
                each(Holder::Time(k), &between(least, most));
            }
        }
        Quantity::Temperature => {
            action.temperature.iter().for_each(|at| each(Holder::Temperature(k), &between(at, at)));
        }
        _ => {}
    }
    // Of a test words tell the pressure at which it is taken, and its kind by how much it may drop.
    if action.readings.is_empty() && action.verb == Verb::Prove {
        let default = default_readings(context.procedure, action);
        let limits = default.iter().filter_map(|reading| reading.limits.as_ref());
        limits.for_each(|limits| each(Holder::Table(k), limits));
    } else {
        for (r, reading) in action.readings.iter().enumerate() {
            reading.limits.iter().for_each(|limits| each(Holder::Limits(k, r), limits));
        }
    }
}

/// The torque of an action or, where it says none, those that the map knows of what it makes.
fn each_torque(context: &Context<'_>, k: usize, action: &Action, each: Each<'_>) {
    if let Some(torque) = &action.torque {
        each(Holder::Torque(k), torque);
    } else if matches!(action.verb, Verb::Make | Verb::Tighten) {
        for (on, id) in action.on.iter().enumerate() {
            let tight = context.connection(id).and_then(|known| known.tight.as_ref()?.value());
            if let Some(torque) = tight.and_then(|tight| tight.torque.as_ref()) {
                each(Holder::MapTorque(k, on), torque);
            }
        }
    }
}

fn between(least: &Measured, most: &Measured) -> Range {
    Range::new(Some(least.value.clone()), Some(most.value.clone()), least.unit.clone())
}

/// Figures in the texts of the step and of its actions and in the names of their things: what words take from
/// there is right.
pub(super) fn told(context: &Context<'_>, step: &Step) -> Vec<Stated> {
    let mut texts: Vec<String> = vec![step.why.clone()];
    for message in &step.messages {
        texts.extend([&message.hazard, &message.consequence, &message.avoidance].map(String::clone));
    }
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
