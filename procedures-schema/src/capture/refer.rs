//! Which thing is meant: by kind, by what the words add, by what is possible here, by what is nearest.

use super::agreement::Said;
use super::here::Here;
use super::mention::{Candidate, words_of};
use crate::model::{ApplianceMap, Id, Known, ThingKind, Verb};

/// What narrows a mention.
pub(super) struct Wanted<'a> {
    pub(super) map: &'a ApplianceMap,
    pub(super) here: &'a Here,
    pub(super) verb: &'a Verb,
    pub(super) kinds: &'a [ThingKind],
    /// Other words of the clause, in singular.
    pub(super) words: &'a [String],
    /// Things that the words name beside it: "of the pump".
    pub(super) beside: &'a [Id],
    /// A thread or width across flats that the words name.
    pub(super) size: Option<&'a str>,
    /// What they say beside the name.
    pub(super) said: &'a Said,
    /// Whether they say "the other one": not what was touched last.
    pub(super) other: bool,
    /// Whether they say "the remaining one": if only one is left, that.
    pub(super) remaining: bool,
}

/// The things that may be meant, the possible ones before all, and whether they are possible here.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Meant {
    pub(super) ids: Vec<Id>,
    pub(super) possible: bool,
    /// Whether the words name an owner for each of them.
    pub(super) each: bool,
}

/// The things of a mention that may be meant; none if none is of a fitting kind.
pub(super) fn meant(candidates: &[Candidate], wanted: &Wanted<'_>) -> Option<Meant> {
    let mut ids = fitting(candidates, wanted);
    if ids.is_empty() {
        return None;
    }
    let possible = ids.iter().any(|id| wanted.here.is_possible(wanted.verb, id));
    narrow(&mut ids, |id| wanted.here.is_possible(wanted.verb, id));
    let each = wanted.said.names_owner_of_each(wanted.map, &ids);
    Some(Meant { ids, possible, each })
}

/// The things of a mention that the words can name, possible here or not.
pub(super) fn fitting(candidates: &[Candidate], wanted: &Wanted<'_>) -> Vec<Id> {
    // "Refit *the filter*" where "the filters" are one thing: which of them, nobody can say.
    let is_all_of_them = |known: &&Candidate| {
        matches!(known.kind, ThingKind::Component | ThingKind::Temporary)
            && !known.agrees
            && wanted.said.total() == Some(1)
    };
    let of_kind = candidates.iter().filter(|candidate| wanted.kinds.contains(&candidate.kind));
    let of_kind = of_kind.filter(|known| !is_all_of_them(known));
    let mut ids: Vec<Id> = of_kind.map(|candidate| candidate.id.clone()).collect();
    let possible = || ids.iter().filter(|id| wanted.here.is_possible(wanted.verb, id));
    let is_left_alone = wanted.remaining && possible().count() == 1;
    if wanted.other && !is_left_alone {
        // Of four screws of which two are out, the other two are the same connection.
        let in_part = |id: &Id| {
            let here = wanted.here.connections.get(id);
            here.is_some_and(|here| here.made > 0 && here.open + here.slack > 0)
        };
        let last = ids.iter().map(|id| wanted.here.nearness(id)).max();
        ids.retain(|id| in_part(id) || Some(wanted.here.nearness(id)) != last);
    }
    ids = wanted.said.agreeing(wanted.map, ids);
    narrow(&mut ids, |id| wanted.beside.iter().any(|other| is_related(wanted.map, id, other)));
    // "The plugs of the fan and *the valve motor*": a longer name is no better one where each is named.
    if !wanted.said.names_owner_of_each(wanted.map, &ids) {
        keep_most(&mut ids, |id| n_words_shared(wanted.map, id, wanted.words));
    }
    if let Some(size) = wanted.size {
        narrow(&mut ids, |id| has_size(wanted.map, id, size));
    }
    narrow(&mut ids, |id| candidates.iter().any(|candidate| candidate.id == *id && candidate.agrees));
    ids
}

/// Of several things the one that was touched last, if there is one.
pub(super) fn nearest(here: &Here, ids: &[Id]) -> Option<Id> {
    let last = ids.iter().map(|id| here.nearness(id)).max()?;
    let mut at_last = ids.iter().filter(|id| here.nearness(id) == last);
    match (at_last.next(), at_last.next()) {
        (Some(only), None) => Some(only.clone()),
        _ => None,
    }
}

/// Keeps those that pass, unless none does.
fn narrow(ids: &mut Vec<Id>, passes: impl Fn(&Id) -> bool) {
    if ids.iter().any(&passes) {
        ids.retain(|id| passes(id));
    }
}

/// Keeps those with the largest number.
fn keep_most(ids: &mut Vec<Id>, number: impl Fn(&Id) -> usize) {
    let most = ids.iter().map(&number).max().unwrap_or(0);
    ids.retain(|id| number(id) == most);
}

/// Whether a thing belongs to another: it joins it, is in front of it, carries its section, sits on it.
fn is_related(map: &ApplianceMap, id: &Id, other: &Id) -> bool {
    let connection = map.connection(id).is_some_and(|connection| {
        connection.joins.contains(other) || connection.section.as_ref() == Some(other)
    });
    let temporary = map.temporary.iter().any(|item| item.id == *id && item.on.as_ref() == Some(other));
    let setting = map.settings.iter().any(|setting| setting.id == *id && setting.of.as_ref() == Some(other));
    let isolator =
        map.isolators.iter().any(|i| i.id == *id && (i.between.0 == *other || i.between.1 == *other));
    let carried = map
        .components
        .iter()
        .any(|c| c.id == *id && (c.carried_by.as_ref() == Some(other) || c.held_in.as_ref() == Some(other)));
    connection || temporary || setting || isolator || carried
}

/// How many of the words occur in the names of a thing.
fn n_words_shared(map: &ApplianceMap, id: &Id, words: &[String]) -> usize {
    let Some((_, _, name, aliases)) = map.things().find(|(_, known, ..)| *known == id) else { return 0 };
    let names = std::iter::once(name).chain(aliases.iter().map(String::as_str));
    let shared = |name: &str| {
        let own = words_of(name);
        words.iter().filter(|word| own.contains(word)).count()
    };
    names.map(shared).max().unwrap_or(0)
}

fn has_size(map: &ApplianceMap, id: &Id, said: &str) -> bool {
    let size = map.connection(id).and_then(|connection| connection.size.as_ref()).and_then(Known::value);
    size.is_some_and(|size| {
        let flats = size.across_flats.as_ref().map(ToString::to_string);
        size.thread.as_deref() == Some(said) || flats.as_deref() == Some(said)
    })
}
