//! Whose a number of fasteners is by what it stands beside: the name behind it, or the action in whose words it stands.

use super::beside::{first_said, owners};
use super::counts::{Held, Stated, is_counting};
use super::{Holder, only, word};
use crate::check::context::Context;
use crate::lexicon::Token;
use crate::model::Step;

/// A count and what is held where it stands, if that is certain and the only one that differs: what is counted is
/// the noun of one thing alone ("four nuts"), or every action has one count of its own.
pub(super) fn beside<'s>(
    context: &Context<'_>,
    step: &Step,
    stated: &'s [Stated],
    tokens: &[Token<'_>],
) -> Option<(&'s Stated, Held)> {
    let mut held: Vec<(Held, &str)> = Vec::new();
    for (k, action) in step.actions.iter().enumerate().filter(|(_, action)| is_counting(action)) {
        let is_counted_whole = action.count.is_some() && action.on.len() > 1;
        for (at, id) in action.on.iter().enumerate().filter(|_| !is_counted_whole) {
            let known = context.connection(id)?;
            let (n, holder) =
                action.count.map_or((known.count, Holder::MapCount(k, at)), |n| (n, Holder::Count(k)));
            held.push((Held { n, action: k, holder }, known.name.as_str()));
        }
    }
    if held.len() != stated.len() || held.len() < 2 {
        return None;
    }
    let begins: Option<Vec<usize>> =
        held.iter().map(|(held, _)| first_said(step, tokens, held.action)).collect();
    let at: Vec<usize> = stated.iter().map(|(_, from, _)| *from).collect();
    let owners = by_noun(stated, &held, tokens).or_else(|| owners(&at, &begins?))?;
    let pairs = stated.iter().zip(owners).filter_map(|(stated, owner)| Some((stated, held.get(owner)?.0)));
    only(pairs.filter(|(stated, held)| stated.0 != held.n))
}

/// For each count the position of the only thing that goes by the name that ends there, or at least by its noun.
fn by_noun(stated: &[Stated], held: &[(Held, &str)], tokens: &[Token<'_>]) -> Option<Vec<usize>> {
    let mut owners: Vec<usize> = Vec::new();
    for (_, from, last) in stated {
        let is_named = |name: &str, n_words: usize| {
            let mut words = name.rsplit(' ').take(n_words);
            (*from + 1..=*last)
                .rev()
                .zip(words.by_ref())
                .all(|(at, known)| is_one_of(word(tokens, at), known))
                && words.next().is_none()
        };
        let by_name = only(held.iter().enumerate().filter(|(_, (_, name))| is_named(name, usize::MAX)));
        let by_noun = || only(held.iter().enumerate().filter(|(_, (_, name))| is_named(name, 1)));
        let (owner, _) = by_name.or_else(by_noun)?;
        if owners.contains(&owner) {
            return None;
        }
        owners.push(owner);
    }
    Some(owners)
}

/// Whether a word is another one, for one or for several.
fn is_one_of(word: &str, known: &str) -> bool {
    word.eq_ignore_ascii_case(known)
        || word.strip_suffix('s').is_some_and(|one| one.eq_ignore_ascii_case(known))
}
