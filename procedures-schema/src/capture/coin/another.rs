//! Words in doubt may mean none of the things that the map knows by them, but one more: what it would be, and what
//! is done to it.
//!
//! It is made only if somebody says so, and offered only where the verb can be done to what is in service. Where the
//! words leave open which circuit it is of, each circuit that comes into question is an offer of its own.

use super::super::mention::{head_of, is_plural, singular};
use super::super::{Doubt, Here};
use super::bench::Bench;
use super::owners::is_one_of_twins;
use super::phrase::Phrase;
use super::{Answer, Given, Made, Making, Meaning, Question, worked};
use crate::lexicon::Amount;
use crate::model::{Action, ApplianceMap, CircuitKind, Id, IdSource, Span, Stage, ThingKind};
use crate::simulate::{Place, Trace};
use std::sync::Arc;

/// One more thing that words in doubt may mean.
#[derive(Clone, Debug, PartialEq)]
pub struct Another {
    /// The map with it.
    pub map: Arc<ApplianceMap>,
    /// What was made for it, in order.
    pub made: Vec<Made>,
    /// The thing.
    pub thing: Id,
    /// Its name.
    pub name: String,
    /// The circuit that somebody says with it; none, if the words or the map say it or nothing asks.
    pub circuit: Option<CircuitKind>,
    /// What is done to it, in order.
    pub actions: Vec<Action>,
}

/// What more a doubt may mean, for a line that stands right after `place` of the run.
#[expect(clippy::too_many_arguments, reason = "those of a line that makes things, and the doubt")]
pub fn another(
    words: &str,
    doubt: &Doubt,
    map: &Arc<ApplianceMap>,
    trace: &Trace,
    place: Place,
    stage: &Stage,
    given: Given<'_>,
    ids: &mut dyn IdSource,
) -> Vec<Another> {
    // Whether something is meant at all is no question of which.
    if doubt.choices.len() < 2 {
        return Vec::new();
    }
    let here = Here::from_trace(map, trace, place);
    let new = Answer { span: doubt.span, means: Meaning::New { name: doubt.span.of(words).to_owned() } };
    let mut trial = |answers: &[Answer]| {
        let given = Given { answers, ..given };
        worked(words, map, here.clone(), stage, given, ids).map(|worked| worked.making)
    };
    let Some(first) = trial(std::slice::from_ref(&new)) else { return Vec::new() };
    if let Some(only) = found(&first, doubt, &here, None) {
        return vec![only];
    }
    let asked = first.asked.into_iter().find(|question| meet(question.span, doubt.span));
    let Some(asked) = asked else { return Vec::new() };
    let of_circuit = |means: Meaning| {
        let Meaning::Circuit(kind) = &means else { return None };
        let kind = kind.clone();
        let making = trial(&[new.clone(), Answer { span: asked.span, means }])?;
        found(&making, doubt, &here, Some(kind))
    };
    asked.choices.into_iter().filter_map(of_circuit).collect()
}

/// The new thing among what was made, if the verb can be done to it.
fn found(making: &Making, doubt: &Doubt, here: &Here, circuit: Option<CircuitKind>) -> Option<Another> {
    let choice = doubt.choices.first()?;
    let kind = making.map.thing_kind(&choice.thing)?;
    let is_it = |made: &&Made| made.kind == kind && made.span.is_some_and(|span| meet(span, doubt.span));
    let mut all = making.made.iter().filter(is_it);
    let made = all.next().filter(|_| all.next().is_none())?;
    let mut here = here.clone();
    here.meet(&making.map, making.made.iter().map(|made| &made.thing));
    let done_to_it = |action: &Action| Action { on: vec![made.thing.clone()], ..action.clone() };
    here.is_possible(&choice.action.verb, &made.thing).then(|| Another {
        map: making.map.clone(),
        made: making.made.clone(),
        thing: made.thing.clone(),
        name: made.name.clone(),
        circuit,
        actions: choice.actions().map(done_to_it).collect(),
    })
}

fn meet(one: Span, other: Span) -> bool {
    one.0 < other.1 && other.0 < one.1
}

impl Bench<'_> {
    /// Whether somebody has said that a phrase means none of the things that are known by it.
    pub(super) fn is_another(&self, phrase: &Phrase) -> bool {
        let span = self.span_of(phrase);
        let says = |answer: &Answer| matches!(answer.means, Meaning::New { .. }) && meet(answer.span, span);
        self.given.answers.iter().any(says)
    }

    /// "Push the mains plug into the socket" where the map has a mains plug to which that is not done: whether it is
    /// another one is asked, for nothing is made twice under one name.
    pub(super) fn may_be_the_one_so_called(&mut self, phrase: &Phrase) -> bool {
        let (name, written) = (phrase.name(), phrase.labelled(phrase.words.join(" ")));
        // "The drip tray *of the left door*."
        let owned = self.with_owner(phrase, phrase.stem()).join(" ");
        let is_it =
            |known: &str| [&name, &written, &owned].iter().any(|name| known.eq_ignore_ascii_case(name));
        // "Refit *the tray*" where a drip tray was put.
        let is_bare = phrase.words.len() == 1 && !phrase.plural() && self.line.text(phrase.start) == "the";
        let is_put = |known: &str| is_bare && head_of(known) == phrase.head_word();
        let is_there = self.map.things().any(|(kind, _, known, aliases)| match kind {
            ThingKind::Seal => false,
            ThingKind::Temporary if is_put(known) => true,
            _ => is_it(known) || aliases.iter().any(|alias| is_it(alias)),
        });
        let is_open = is_there && !self.is_another(phrase);
        if is_open {
            let question = format!("Is it another \"{written}\" than the one on the map?");
            let (span, name) = (self.span_of(phrase), self.name_of_another(&name));
            let choices = vec![Meaning::New { name }];
            self.asked.push(Question { span, question, choices, thing: None });
        }
        is_open
    }

    /// "Undo both unions. Do up *the union*": one of those that the map has as one thing, and none that is new.
    pub(super) fn is_one_of_a_group(&self, phrase: &Phrase) -> bool {
        let is_one = !phrase.plural()
            && phrase.words.len() == 1
            && phrase.label.is_none()
            && self.line.text(phrase.start) == "the";
        let head = phrase.head_word();
        // "The cap" of the gas valve caps and the liquid valve caps.
        let is_group = |name: &str| singular(head_of(name)) == head && head_of(name) != head;
        is_one && self.map.things().any(|(_, _, name, _)| is_group(name))
    }

    /// "Close the flow valve and the return valve. Clean *the valve*": one of those, whatever is done to it, and no third; and
    /// "*both valves*" are those two.
    pub(super) fn is_one_of_several(&self, phrase: &Phrase) -> bool {
        let is_led = matches!(self.line.text(phrase.start), "both" | "the" | "these");
        let is_bare = phrase.words.len() == 1 && phrase.label.is_none() && is_led;
        let is_so_called = |name: &str| head_of(name) == phrase.head_word();
        let things =
            self.map.things().filter(|(kind, _, name, _)| *kind != ThingKind::Seal && is_so_called(name));
        let is_new = (phrase.start..phrase.from).any(|i| self.line.text(i) == "new");
        let n_known = things.count();
        let are_all = match phrase.amount {
            Some(Amount::Exactly(n)) => u32::try_from(n_known) == Ok(n),
            _ => true,
        };
        // "Both valves *of the right pump*" are others than those of the left one.
        let is_theirs = || are_all && self.behind(phrase, &["at", "from", "in", "of", "off", "on"]).is_none();
        // "The plugs of the fan, the pump and *the valve motor*" are three, of which two are known when it comes to the last.
        let is_each = !phrase.plural() && is_plural(self.line.text(phrase.head));
        // "The clamp at the elbow, the clamp at the bend and *the clamp at the tee*" as well.
        let owner = self.behind(phrase, &["at", "from", "in", "of", "off", "on"]);
        // And so is "the valve *of pump 3*", where those of pump 1 and pump 2 are known.
        let is_placed = self.line.is_one_of_two(phrase, &self.phrases)
            || owner
                .as_ref()
                .is_some_and(|of| is_one_of_twins(of) && of.head_word() != "side" && !phrase.plural());
        let is_one = !phrase.plural() && !is_each;
        is_bare && !is_new && !is_placed && !self.is_another(phrase) && n_known > 1 && (is_one || is_theirs())
    }

    /// A name that tells one more thing of a name from those that have it: "pump valve 3".
    pub(super) fn name_of_another(&self, name: &str) -> String {
        let number = |known: &str| match known.strip_prefix(name)?.trim_start() {
            "" => Some(1),
            rest => rest.parse::<u32>().ok(),
        };
        let names = self.map.things().flat_map(|(_, _, known, aliases)| {
            std::iter::once(known).chain(aliases.iter().map(String::as_str))
        });
        match names.filter_map(number).max() {
            Some(last) => format!("{name} {}", last.saturating_add(1)),
            None => name.to_owned(),
        }
    }
}
