//! Walking a document: its steps and actions with their numbers, for rules that look at what is written.

use super::context::Context;
use super::finding::Finding;
use super::lower::Lower;
use super::rule::Rule;
use crate::model::{Action, Span, Step};

/// A step, or an action of it, with its number.
pub(super) struct At<'c> {
    /// The step.
    pub(super) step: &'c Step,
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
pub(super) fn steps<'c>(context: &Context<'c>) -> impl Iterator<Item = At<'c>> + use<'c> {
    let steps = context.procedure.steps.iter().enumerate();
    steps.map(|(i, step)| At { step, number: i + 1, action: None, span: None })
}

/// Every step whose words hold one of these phrases, in order, with its words in lower case.
pub(super) fn steps_holding<'c>(context: &Context<'c>, phrases: &[&str]) -> Vec<(At<'c>, Lower<'c>)> {
    let held = context.heard.held(phrases);
    if held.is_empty() {
        return Vec::new();
    }
    let lower = context.heard.lower();
    steps(context).zip(lower).filter(|(_, lower)| lower.has_any(&held)).collect()
}

/// Every action in order, those that follow a failed test left out.
pub(super) fn actions<'c>(context: &Context<'c>) -> impl Iterator<Item = (At<'c>, &'c Action)> + use<'c> {
    context.procedure.steps.iter().enumerate().flat_map(|(i, step)| {
        step.actions.iter().enumerate().map(move |(k, action)| {
            let span = action.says.first().copied();
            (At { step, number: i + 1, action: Some(k), span }, action)
        })
    })
}
