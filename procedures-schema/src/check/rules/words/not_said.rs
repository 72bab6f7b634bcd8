//! `words/not-said`: an action is not said by the words of its step.

use crate::check::context::Context;
use crate::check::document::steps;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::check::wording::{capital, does};
use crate::lexicon::{Lexicon, Own, tokens};
use crate::model::{Action, OwnPhrase, Renewal, Step, Verb};
use crate::simulate::Place;

pub(in crate::check) static RULE: Rule = Rule {
    code: "words/not-said",
    level: Level::Reject,
    summary: "an action is not said by the words of its step",
    documentation: documentation!("not_said.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for (position, step) in steps(context).map(|at| (at.number - 1, at.step)) {
        for (i, action) in step.actions.iter().enumerate() {
            let unsaid = unsaid(context, position, step, action);
            let Some(what) = unsaid else { continue };
            let thing = action.on.first().map_or_else(String::new, |id| format!(" {}", context.the_id(id)));
            let number = position + 1;
            let title = match what {
                Unsaid::Action => {
                    format!("Step {number} {}{thing}, and its words do not say so", does(&action.verb))
                }
                Unsaid::NewSeal => {
                    format!("Step {number} makes{thing} with a new seal, and its words do not say so")
                }
            };
            let mut finding = rule.finding(capital(&title));
            finding.level = level_of(context, action);
            finding.step = Some(step.id.clone());
            finding.action = Some(Place::of_action(position, i).action().unwrap_or(i));
            finding.span = action.says.first().copied();
            finding.remedy.push("Say it in the sentence, or take the action out of the step".to_owned());
            findings.push(finding);
        }
    }
}

enum Unsaid {
    Action,
    NewSeal,
}

/// What of an action its words do not say. Without a lexicon for the language only the span counts.
fn unsaid(context: &Context<'_>, position: usize, step: &Step, action: &Action) -> Option<Unsaid> {
    if action.says.iter().all(|span| span.of(&step.words).chars().all(char::is_whitespace)) {
        return Some(Unsaid::Action);
    }
    let lexicon = context.lexicon?;
    let said = context.heard.said(position);
    if !Lexicon::is_said_by(said, &action.says, action) && !is_meant(lexicon, step, action) {
        return Some(Unsaid::Action);
    }
    let new_seal = action.verb == Verb::Make && action.seal == Some(Renewal::New);
    let says_new = || {
        context.heard.says_new_seal(position)
            || lexicon.says_new_of(&step.words, &seal_names(context, action))
    };
    (new_seal && !says_new()).then_some(Unsaid::NewSeal)
}

/// Whether the words by which somebody has picked an action still stand where they say it.
fn is_meant(lexicon: &Lexicon, step: &Step, action: &Action) -> bool {
    let Some(words) = &action.meant_by else { return false };
    let own = Own::of(&[OwnPhrase::new(words, action.verb.clone())]);
    Lexicon::is_said_by(&lexicon.phrases_with(&tokens(&step.words), &own), &action.says, action)
}

/// What the map calls the seals of the connections that are made.
fn seal_names<'c>(context: &Context<'c>, action: &Action) -> Vec<&'c str> {
    let used = action.on.iter().filter_map(|id| context.connection(id)).flat_map(|k| &k.seals);
    used.filter_map(|used| context.seal(&used.seal))
        .flat_map(|seal| std::iter::once(&seal.name).chain(&seal.aliases))
        .map(String::as_str)
        .collect()
}

/// Safety actions reject, others warn.
fn level_of(context: &Context<'_>, action: &Action) -> Level {
    let rejects = match action.verb {
        Verb::Isolate
        | Verb::Lock
        | Verb::Release
        | Verb::Prove
        | Verb::Test
        | Verb::Restore
        | Verb::Start
        | Verb::Charge
        | Verb::Purge => true,
        Verb::Make => action.seal.is_some(),
        Verb::Place | Verb::TakeAway => context.procedure.map.temporary.iter().any(|item| {
            action.on.contains(&item.id) && (item.closes || item.bonds.is_some() || item.restrains.is_some())
        }),
        _ => false,
    };
    if rejects { Level::Reject } else { Level::Warn }
}
