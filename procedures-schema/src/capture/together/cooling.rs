//! Words that order to wait until it is cold: "let it cool down below 40 °C", in a sentence or a message.

use super::super::leading::limits;
use super::telling::{Telling, is_within};
use crate::lexicon::tokens;
use crate::model::{Step, Verb};
use crate::units::{Quantity, Range};

/// Words that order to wait.
const WAITS: &[&str] = &["allow", "cool", "cooled", "cools", "leave", "let", "till", "until", "wait"];
/// Words that may unsay it.
const UNSAYS: &[&str] = &["before", "don't", "never", "no", "not", "unless", "without"];

/// Up to how hot it may be when somebody goes on, as far as that is within what is asked: told last before a
/// place, and since the appliance ran last.
pub(super) fn told(telling: &Telling<'_>, asked: &Range) -> Option<Range> {
    for step in telling.document.steps.iter().take(telling.at + 1).rev() {
        if let Some(range) = in_step(step).find(|range| is_within(range, asked)) {
            return Some(range);
        }
        if step.actions.iter().any(|action| action.verb == Verb::Start) {
            return None;
        }
    }
    None
}

fn in_step(step: &Step) -> impl Iterator<Item = Range> {
    let messages = step.messages.iter().flat_map(|m| [&m.avoidance, &m.consequence, &m.hazard]);
    let texts: Vec<&String> = messages.chain([&step.words]).collect();
    texts.into_iter().flat_map(|text| text.split([',', ';', '.'])).filter_map(in_clause)
}

fn in_clause(clause: &str) -> Option<Range> {
    let words = tokens(clause);
    let has = |list: &[&str]| words.iter().any(|word| list.contains(&&*word.text));
    let range = limits(clause).filter(|_| has(WAITS) && !has(UNSAYS))?.range;
    let is_bound = range.unit.quantity() == Quantity::Temperature && range.min.is_none();
    is_bound.then_some(range)
}
