//! Walking a document: its steps and actions with their numbers, for rules that look at what is written.

use super::context::Context;
use super::finding::Finding;
use super::rule::Rule;
use crate::model::{Action, Span, Step};

/// A step, or an action of it, with its number.
pub(super) struct At<'c> {
    /// The step.
    pub(super) step: &'c Step,
    /// Its words in lower case; empty for an action.
    pub(super) lower: &'c str,
    /// Its number, from 1.
    pub(super) number: usize,
    action: Option<usize>,
    span: Option<Span>,
}

impl At<'_> {
    /// A finding of a rule here.
    pub(super) fn finding(&self, rule: &Rule, title: String, remedy: &str) -> Finding {
        let mut finding = rule.finding(title);
        finding.step = Some(self.step.id.clone());
        finding.action = self.action;
        finding.span = self.span;
        finding.remedy.push(remedy.to_owned());
        finding
    }
}

/// Every step in order.
pub(super) fn steps<'c>(context: &'c Context<'_>) -> impl Iterator<Item = At<'c>> {
    let steps = context.procedure.steps.iter().zip(&context.lower).enumerate();
    steps.map(|(i, (step, lower))| At { step, lower, number: i + 1, action: None, span: None })
}

/// Every action in order, those that follow a failed test left out.
pub(super) fn actions<'c>(context: &Context<'c>) -> impl Iterator<Item = (At<'c>, &'c Action)> + use<'c> {
    context.procedure.steps.iter().enumerate().flat_map(|(i, step)| {
        step.actions.iter().enumerate().map(move |(k, action)| {
            let span = action.says.first().copied();
            (At { step, lower: "", number: i + 1, action: Some(k), span }, action)
        })
    })
}

/// Whether a text holds a phrase as whole words. Both are in lower case.
pub(super) fn has_phrase(text: &str, phrase: &str) -> bool {
    let Some(first) = phrase.bytes().next() else { return false };
    let is_letter = |c: Option<char>| c.is_some_and(char::is_alphanumeric);
    let ends_in_letter = (is_letter(phrase.chars().next()), is_letter(phrase.chars().next_back()));
    // Texts are a line long and phrases short: looking for the first byte beats building a searcher.
    text.bytes().enumerate().filter(|(_, byte)| *byte == first).any(|(at, _)| {
        let (Some(before), Some(here)) = (text.get(..at), text.get(at..)) else { return false };
        let Some(after) = here.strip_prefix(phrase) else { return false };
        let within_a_word = ends_in_letter.0 && is_letter(before.chars().next_back())
            || ends_in_letter.1 && is_letter(after.chars().next());
        !within_a_word
    })
}

#[cfg(test)]
mod tests {
    use super::has_phrase;

    #[test]
    fn phrases_are_whole_words() {
        assert!(has_phrase("tell the keeper tbd.", "tbd"));
        assert!(has_phrase("13 \u{b1} 1", "\u{b1}"));
        assert!(!has_phrase("unsuitable", "suitable"));
        assert!(!has_phrase("fewer", "few"));
    }
}
