//! Spares: parts that are fitted new and seals that are renewed, as many as the way takes that takes most.

use super::{Done, Needed};
use crate::model::{Answer, Component, Connection, Grouping, Id, KitList, Procedure, Renewal, Seal, Verb};
use std::collections::BTreeMap;

/// Beyond as many ways the sum over all of them is taken, which is never too few.
const MOST_WAYS: usize = 1024;

/// How many of a thing an action uses, and when.
struct Use<'p> {
    when: Vec<&'p [Answer]>,
    quantity: u32,
    number: usize,
}

pub(super) fn spares(procedure: &Procedure, done: &[Done<'_>]) -> Vec<Needed> {
    let mut order: Vec<Id> = Vec::new();
    let mut uses: BTreeMap<Id, Vec<Use<'_>>> = BTreeMap::new();
    for one in done {
        for (id, quantity) in used(procedure, one) {
            if !uses.contains_key(&id) {
                order.push(id.clone());
            }
            let when = one.when.clone();
            uses.entry(id).or_default().push(Use { when, quantity, number: one.number });
        }
    }
    order.into_iter().filter_map(|id| spare(procedure, &id, uses.get(&id)?)).collect()
}

/// What an action uses: parts that it fits new, seals that it renews.
fn used(procedure: &Procedure, one: &Done<'_>) -> Vec<(Id, u32)> {
    let action = one.action;
    let new_part = action.verb == Verb::Fit && action.part == Some(Renewal::New);
    let parts =
        action.on.iter().filter(|id| new_part && procedure.map.components.iter().any(|c| c.id == **id));
    let mut used: Vec<(Id, u32)> = parts.map(|id| (id.clone(), 1)).collect();
    if action.verb == Verb::Make && action.seal == Some(Renewal::New) {
        for connection in action.on.iter().filter_map(|id| procedure.map.connection(id)) {
            for (seal, quantity) in renewed(connection, action.count) {
                let seal = first_alike(procedure, seal);
                // Of several joints of which a failed test points at one, only that one gets new seals.
                let known =
                    used.iter_mut().find(|(known, _)| *known == seal && one.one_of.contains(&&connection.id));
                match known {
                    Some((_, known)) => *known = quantity.max(*known),
                    None => used.push((seal, quantity)),
                }
            }
        }
    }
    used
}

/// The first seal of the map that is ordered as this one is: two joints may each have theirs.
fn first_alike(procedure: &Procedure, id: Id) -> Id {
    let seals = &procedure.map.seals;
    let Some(it) = seals.iter().find(|seal| seal.id == id) else { return id };
    let is_alike = |seal: &&Seal| {
        let seal = *seal;
        (&seal.name, &seal.size, &seal.material, &seal.number)
            == (&it.name, &it.size, &it.material, &it.number)
    };
    // What nobody has found out yet may differ.
    let is_open = [&it.size, &it.number].into_iter().flatten().any(|known| known.value().is_none());
    let first = seals.iter().find(is_alike).filter(|_| !is_open);
    first.map_or(id, |first| first.id.clone())
}

fn renewed(connection: &Connection, count: Option<u32>) -> impl Iterator<Item = (Id, u32)> {
    let n = match connection.grouping {
        Grouping::Each => count.unwrap_or(connection.count),
        _ => 1,
    };
    connection.seals.iter().map(move |seal| (seal.seal.clone(), seal.quantity.saturating_mul(n)))
}

fn spare(procedure: &Procedure, id: &Id, uses: &[Use<'_>]) -> Option<Needed> {
    let seal = procedure.map.seals.iter().find(|seal| seal.id == *id);
    let part = procedure.map.components.iter().find(|part| part.id == *id);
    let mut needed = match (seal, part) {
        (Some(Seal { name, size, number, .. }), _) => {
            let mut needed = Needed::new(KitList::Spares, name);
            needed.size.clone_from(size);
            needed.number.clone_from(number);
            needed
        }
        (None, Some(Component { name, number, .. })) => {
            let mut needed = Needed::new(KitList::Spares, name);
            needed.number.clone_from(number);
            needed
        }
        (None, None) => return None,
    };
    needed.quantity = worst(procedure, uses);
    needed.thing = Some(id.clone());
    for used in uses {
        needed.at(used.number);
    }
    (needed.quantity > 0).then_some(needed)
}

/// How many are used on the way that uses most.
fn worst(procedure: &Procedure, uses: &[Use<'_>]) -> u32 {
    let mut ways: Vec<Vec<Answer>> = vec![Vec::new()];
    let asked =
        |id: &Id| uses.iter().flat_map(|used| used.when.iter().copied().flatten()).any(|w| w.question == *id);
    for question in procedure.questions.iter().filter(|question| asked(&question.id)) {
        if ways.len() * question.answers.len() > MOST_WAYS {
            return uses.iter().map(|used| used.quantity).fold(0, u32::saturating_add);
        }
        let answers = || question.answers.iter().map(|answer| Answer::new(question.id.clone(), answer));
        ways = ways
            .iter()
            .flat_map(|way| answers().map(|answer| [way.as_slice(), &[answer]].concat()))
            .collect();
    }
    let on_way = |way: &Vec<Answer>| {
        let done = uses.iter().filter(|used| used.when.iter().all(|when| is_met(when, way)));
        done.map(|used| used.quantity).fold(0, u32::saturating_add)
    };
    ways.iter().map(on_way).max().unwrap_or(0)
}

/// Answers to one question stand beside each other; answers to different questions must all have been given.
fn is_met(when: &[Answer], way: &[Answer]) -> bool {
    when.iter().all(|asked| {
        let of_question = when.iter().filter(|other| other.question == asked.question);
        of_question
            .into_iter()
            .any(|one| way.iter().any(|given| given.question == one.question && given.answer == one.answer))
    })
}
