//! A proof of a supply over several lines: the tester on a known source, the pairs, what they read, the tester
//! again.

use super::super::proof::{is_conductor_word, testers};
use super::super::section::is_electrical;
use super::telling::{Telling, is_within, row};
use super::{is_told, put, traced};
use crate::lexicon::tokens;
use crate::model::{Action, ApplianceMap, Circuit, Procedure, Reading, Span, Step, Verb};
use crate::simulate::ProofReading;
use crate::units::{Quantity, Range};

/// So many steps before and behind a proof the tester may be tried.
const NEAR: usize = 3;

/// Takes "read: 0 V on all pairs" into the proof of its step.
pub(super) fn read_pairs(document: &mut Procedure, at: usize) {
    let Some(step) = document.steps.get(at) else { return };
    let Some(read) = step.actions.last().filter(|action| is_told(step, action)) else { return };
    let last = step.actions.len() - 1;
    let Some(proof) = step.actions.iter().rposition(|action| is_of_pairs(&document.map, action)) else {
        return;
    };
    let trace = traced(document);
    let Some(volts) = Telling::of(document, &trace, at, read).and_then(|telling| dead(&telling)) else {
        return;
    };
    let mut changed = Step::clone(step);
    changed.actions.truncate(last);
    let Some(asked) = circuit(&document.map, &read_proof(step, proof)).and_then(row) else { return };
    let Some(action) = changed.actions.get_mut(proof) else { return };
    for reading in action.readings.iter_mut().filter(|reading| reading.limits.is_some()) {
        let own = asked.proof.iter().find(|asked| asked.what == reading.what).and_then(ProofReading::range);
        let Some(own) = own else { continue };
        match &volts {
            Dead::Figure(volts) if is_within(volts, &own) => reading.limits = Some(volts.clone()),
            Dead::Figure(_) => return,
            Dead::InWords => {}
        }
    }
    action.says.extend(read.says.iter().copied());
    put(document, at, changed);
}

fn read_proof(step: &Step, proof: usize) -> Action {
    step.actions.get(proof).cloned().unwrap_or_else(|| Action::new(Verb::Prove, Vec::new()))
}

/// What a reading says of all pairs.
enum Dead {
    /// A voltage.
    Figure(Range),
    /// That there is none.
    InWords,
}

/// What a reading says of all pairs; none, if it says something else.
fn dead(telling: &Telling<'_>) -> Option<Dead> {
    let mut figures = telling.figures();
    if let Some(figure) = figures.next() {
        let only = figures.next().is_none() && figure.unit.quantity() == Quantity::Voltage;
        let names_pair =
            telling.parts.iter().flat_map(|part| &part.words).any(|word| is_conductor_word(word));
        return (only && !names_pair).then(|| Dead::Figure(figure.clone()));
    }
    let dead = telling.parts.iter().any(|part| part.denies(&["voltage", "volts"]) || part.has(&["dead"]));
    (dead && !telling.says(&["not"])).then_some(Dead::InWords)
}

/// Adds to the proofs near a step that the tester was tried before them and again behind them.
pub(super) fn add_tester(document: &mut Procedure, at: usize) {
    for position in at.saturating_sub(NEAR)..=at {
        let Some(step) = document.steps.get(position) else { return };
        let proofs: Vec<usize> = (0..step.actions.len())
            .filter(|i| step.actions.get(*i).is_some_and(|action| is_of_pairs(&document.map, action)))
            .collect();
        for proof in proofs {
            let tried = (tried_before(document, position, proof), tried_behind(document, position, proof));
            if let Some(changed) = with_tester(document, position, proof, tried) {
                put(document, position, changed);
            }
        }
    }
}

/// The step with the readings of the tester added to a proof, each where its kind has it; none, if it has them.
fn with_tester(document: &Procedure, at: usize, proof: usize, tried: (bool, bool)) -> Option<Step> {
    let mut step = Step::clone(document.steps.get(at)?);
    let action = step.actions.get_mut(proof)?;
    let asked = row(circuit(&document.map, action)?)?.proof;
    let n_before = action.readings.len();
    for (position, one) in asked.iter().enumerate().filter(|(_, one)| one.limits.is_none()) {
        let is_again = position > 0;
        let known = action.readings.iter().any(|reading| reading.what == one.what);
        if !known && (if is_again { tried.1 } else { tried.0 }) {
            action.readings.push(Reading {
                what: one.what.to_owned(),
                seen: one.seen.to_owned(),
                source: one.source.to_owned(),
                ..Reading::default()
            });
        }
    }
    action.readings.sort_by_key(|reading| asked.iter().position(|one| one.what == reading.what));
    (action.readings.len() > n_before).then_some(step)
}

/// Whether an action proves a supply by pairs of conductors as its kind names them.
fn is_of_pairs(map: &ApplianceMap, action: &Action) -> bool {
    let asked = circuit(map, action).filter(|circuit| is_electrical(&circuit.kind)).and_then(row);
    let known = |what: &str| asked.is_some_and(|row| row.proof.iter().any(|one| one.what == what));
    let readings = &action.readings;
    action.verb == Verb::Prove
        && !readings.is_empty()
        && readings.iter().all(|reading| known(&reading.what))
        && readings.iter().any(|reading| reading.limits.is_some())
}

/// The circuit of what an action is on.
fn circuit<'m>(map: &'m ApplianceMap, action: &Action) -> Option<&'m Circuit> {
    let [only] = action.on.as_slice() else { return None };
    let is_it = |circuit: &&Circuit| circuit.id == *only || circuit.sections.iter().any(|s| s.id == *only);
    map.circuits.iter().find(is_it)
}

fn tried_before(document: &Procedure, at: usize, proof: usize) -> bool {
    let first = said(document, at, proof).map_or(0, |(from, _)| from);
    let Some(step) = document.steps.get(at) else { return false };
    let earlier = document.steps.iter().take(at).rev().take(NEAR);
    let earlier = earlier.take_while(|step| !brings_back(step) && !proves(document, step));
    tries(&step.words).any(|from| from < first)
        || earlier.into_iter().any(|step| tries(&step.words).next().is_some())
}

fn tried_behind(document: &Procedure, at: usize, proof: usize) -> bool {
    let last = said(document, at, proof).map_or(u32::MAX, |(_, to)| to);
    let Some(step) = document.steps.get(at) else { return false };
    let later = document.steps.iter().skip(at + 1).take(NEAR);
    let later = later.take_while(|step| !brings_back(step) && !proves(document, step));
    tries(&step.words).any(|from| from >= last)
        || later.into_iter().any(|step| tries(&step.words).next().is_some())
}

/// The first and last point of the words that say a proof.
fn said(document: &Procedure, at: usize, proof: usize) -> Option<(u32, u32)> {
    let says = &document.steps.get(at)?.actions.get(proof)?.says;
    let from = says.iter().map(|span: &Span| span.0).min()?;
    let to = says.iter().map(|span| span.1).max()?;
    Some((from, to))
}

/// Whether a step brings a supply back: what was proved of the tester beyond it counts no more.
fn brings_back(step: &Step) -> bool {
    step.actions.iter().any(|action| matches!(action.verb, Verb::Restore | Verb::Start))
}

fn proves(document: &Procedure, step: &Step) -> bool {
    step.actions.iter().any(|action| is_of_pairs(&document.map, action))
}

/// Where words order to try the tester.
fn tries(words: &str) -> impl Iterator<Item = u32> {
    const UNSAYS: &[&str] = &["before", "don't", "never", "no", "not", "unless", "without"];
    let all = tokens(words);
    let found: Vec<u32> = testers(&all)
        .into_iter()
        .filter(|at| {
            let begins = (0..=*at)
                .rev()
                .find(|i| all.get(*i).is_some_and(|token| token.before == crate::lexicon::Break::Sentence));
            let sentence = all.get(begins.unwrap_or(0)..*at).unwrap_or_default();
            !sentence.iter().any(|token| UNSAYS.contains(&&*token.text))
        })
        .filter_map(|at| all.get(at).map(|token| token.span.0))
        .collect();
    found.into_iter()
}
