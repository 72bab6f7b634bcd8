//! Walking a document: its steps and actions with their numbers, for rules that look at what is written.
//!
//! [`steps`] and [`actions`] are for rules that judge a step by itself, with map and scope, whatever stands before and
//! behind it; they leave out the steps of which such rules have found nothing before.

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

/// Every step that has to be looked at, in order.
pub(super) fn steps<'c>(context: &Context<'c>) -> impl Iterator<Item = At<'c>> + use<'c> {
    context.open_steps().map(|(i, step)| At { step, number: i + 1, action: None, span: None })
}

/// Every step that has to be looked at whose words hold one of these phrases, in order, with its words in lower case.
pub(super) fn steps_holding<'c>(context: &Context<'c>, phrases: &[&str]) -> Vec<(At<'c>, Lower<'c>)> {
    let held = context.heard.held(phrases);
    if held.is_empty() {
        return Vec::new();
    }
    let lower = |at: &At<'_>| context.heard.lower_at(at.number - 1);
    let all = steps(context).filter_map(|at| lower(&at).map(|lower| (at, lower)));
    all.filter(|(_, lower)| lower.has_any(&held)).collect()
}

/// Every action of these steps in order, those that follow a failed test left out.
pub(super) fn actions<'c>(context: &Context<'c>) -> impl Iterator<Item = (At<'c>, &'c Action)> + use<'c> {
    steps(context).flat_map(|at| actions_of(at.step, at.number))
}

/// Every action of every step in order, for rules that remember what they have seen.
pub(super) fn all_actions<'c>(context: &Context<'c>) -> impl Iterator<Item = (At<'c>, &'c Action)> + use<'c> {
    let steps = context.procedure.steps.iter().zip(1..);
    steps.flat_map(|(step, number)| actions_of(step, number))
}

fn actions_of(step: &Step, number: usize) -> impl Iterator<Item = (At<'_>, &Action)> {
    step.actions.iter().enumerate().map(move |(k, action)| {
        let span = action.says.first().copied();
        (At { step, number, action: Some(k), span }, action)
    })
}
