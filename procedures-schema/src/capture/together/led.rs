//! Where it goes: "push a hose on to the drain cock and lead it into a bucket" in one line, "let it drain" in the next.

use super::super::led::is_lead;
use super::put;
use crate::lexicon::{Break, tokens};
use crate::model::{Action, Id, Means, Procedure, Span, Step, Verb};

/// So many steps before a release its hose may be led away.
const NEAR: usize = 3;

/// Says of the releases of a step where they go, if a step before led away the hose of the same drain.
pub(super) fn add_ends(document: &mut Procedure, at: usize) {
    let Some(step) = document.steps.get(at) else { return };
    let drains = |action: &Action| {
        action.verb == Verb::Release && action.by == Some(Means::Drain) && action.to.is_none()
    };
    let mut changed = Step::clone(step);
    for action in changed.actions.iter_mut().filter(|action| drains(action)) {
        action.to = action.through.as_ref().and_then(|drain| led_from(document, at, drain));
    }
    if changed != **step {
        put(document, at, changed);
    }
}

/// Where the hose of a drain was led last, near before a position and there.
fn led_from(document: &Procedure, at: usize, drain: &Id) -> Option<String> {
    let is_hose = |action: &Action| {
        let on = |id: &Id| {
            document.map.temporary.iter().any(|item| item.id == *id && item.on.as_ref() == Some(drain))
        };
        action.verb == Verb::Place && action.on.iter().any(on)
    };
    let near = document.steps.iter().take(at + 1).rev().take(NEAR + 1);
    near.into_iter().find_map(|step| {
        let known = step.actions.iter().find(|action| action.through.as_ref() == Some(drain));
        let said = || step.actions.iter().any(is_hose).then(|| led_to(&step.words)).flatten();
        known.and_then(|action| action.to.clone()).or_else(said)
    })
}

/// Where words lead a hose: "lead it into *a bucket*".
fn led_to(words: &str) -> Option<String> {
    let all = tokens(words);
    let lead = all.iter().position(|token| is_lead(&token.text))?;
    let to =
        (lead + 1..all.len()).find(|i| all.get(*i).is_some_and(|t| matches!(&*t.text, "into" | "to")))?;
    let is_article = |i: &usize| all.get(*i).is_some_and(|t| matches!(&*t.text, "a" | "an" | "the"));
    let from = (to + 1..all.len()).find(|i| !is_article(i))?;
    let ends = |i: &usize| {
        all.get(*i).is_none_or(|token| token.before != Break::None || matches!(&*token.text, "and" | "then"))
    };
    let end = (from + 1..=all.len()).find(ends)?;
    let whole = Span(all.get(from)?.span.0, all.get(end - 1)?.span.1);
    Some(whole.of(words).to_owned())
}
