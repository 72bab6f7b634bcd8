//! `words/not-typed`: a sentence says something to do that no action holds.

use crate::check::context::Context;
use crate::check::document::steps;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::model::Span;

pub(in crate::check) static RULE: Rule = Rule {
    code: "words/not-typed",
    level: Level::Warn,
    summary: "a sentence says something to do that no action holds",
    documentation: documentation!("not_typed.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for at in steps(context) {
        let said = context.heard.said(at.number - 1);
        let covered = |word: &Span| {
            let spans = at.step.actions.iter().flat_map(|action| &action.says);
            spans.into_iter().any(|span| span.0 < word.1 && word.0 < span.1)
        };
        for phrase in said.iter().filter(|phrase| !phrase.unsaid && !phrase.means.is_empty()) {
            let Some(first) = phrase.words.first() else { continue };
            let begins = || begins_a_clause(&at.step.words, first.0);
            let text = || first.of(&at.step.words);
            let declined = || at.step.declined.iter().any(|known| known.eq_ignore_ascii_case(text()));
            let typed = at.step.actions.iter().any(|action| phrase.says(&action.verb));
            if !typed
                && !phrase.words.iter().any(covered)
                && begins()
                && !declined()
                && names_a_thing(context, &at.step.words, first.1)
            {
                let title = format!("Step {} says \"{}\", and no action holds it", at.number, text());
                let mut finding = at.finding(rule, title, "Type it as an action, or decline the reading");
                finding.span = Some(*first);
                findings.push(finding);
            }
        }
    }
}

/// Whether a word stands where an instruction begins: first, or after "and", "then" or a stop.
fn begins_a_clause(words: &str, from: u32) -> bool {
    let before = Span(0, from).of(words).trim_end();
    let ends_with = |end: &&str| {
        let last = before.len().checked_sub(end.len()).and_then(|from| before.get(from..));
        last.is_some_and(|last| last.eq_ignore_ascii_case(end))
    };
    before.is_empty() || [" and", " then", ",", ";", "."].iter().any(ends_with)
}

/// Whether the rest of the clause names a thing of the map.
fn names_a_thing(context: &Context<'_>, words: &str, from: u32) -> bool {
    let before = Span(0, from).of(words);
    let rest = words.get(before.len()..).unwrap_or_default();
    let clause = rest.split([';', '.']).next().unwrap_or_default();
    context.names().stand_in(&clause.to_lowercase())
}
