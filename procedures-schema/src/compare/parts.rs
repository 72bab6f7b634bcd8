//! What differs between two lists of things that have an identity.

use crate::model::Id;
use std::collections::BTreeMap;

/// Something that differs, and what it is called.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Named {
    /// Identity.
    pub id: Id,
    /// What it is called where it still is, for example `step 4` or `pump`.
    pub name: String,
}

/// What differs, each thing once.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Parts {
    /// They are new.
    pub added: Vec<Named>,
    /// They are not what they were.
    pub changed: Vec<Named>,
    /// They are the same and stand elsewhere; as few as explain the new order.
    pub moved: Vec<Named>,
    /// They are no longer there, by the name they had.
    pub gone: Vec<Named>,
}

impl Parts {
    /// Whether nothing differs.
    pub fn is_empty(&self) -> bool {
        self.added.is_empty() && self.changed.is_empty() && self.moved.is_empty() && self.gone.is_empty()
    }

    pub(super) fn join(&mut self, other: Self) {
        self.added.extend(other.added);
        self.changed.extend(other.changed);
        self.moved.extend(other.moved);
        self.gone.extend(other.gone);
    }
}

/// Compares two lists; `name` says what the thing at a position of a list is called there.
pub(super) fn parts<T: PartialEq>(
    before: &[T],
    after: &[T],
    id: impl Fn(&T) -> &Id,
    name: impl Fn(&T, usize) -> String,
) -> Parts {
    let named = |part: &T, at: usize| Named { id: id(part).clone(), name: name(part, at) };
    let places = |list: &[T]| -> BTreeMap<Id, usize> {
        list.iter().enumerate().map(|(at, part)| (id(part).clone(), at)).collect()
    };
    let (was, is) = (places(before), places(after));
    let mut found = Parts::default();
    let mut common = Vec::new();
    for (at, part) in after.iter().enumerate() {
        match was.get(id(part)).and_then(|from| before.get(*from).zip(Some(*from))) {
            None => found.added.push(named(part, at)),
            Some((old, from)) => {
                common.push((from, at));
                if old != part {
                    found.changed.push(named(part, at));
                }
            }
        }
    }
    let changed: Vec<&Id> = found.changed.iter().map(|part| &part.id).collect();
    let out_of_order = out_of_order(&common);
    let moved = out_of_order.iter().filter_map(|at| after.get(*at).zip(Some(*at)));
    found.moved =
        moved.filter(|(part, _)| !changed.contains(&id(part))).map(|(part, at)| named(part, at)).collect();
    let gone = before.iter().enumerate().filter(|(_, part)| !is.contains_key(id(part)));
    found.gone = gone.map(|(at, part)| named(part, at)).collect();
    found
}

/// The later places of as few pairs as can be, so that the others are in the same order before and after.
/// The pairs are given in the order of their later places.
fn out_of_order(pairs: &[(usize, usize)]) -> Vec<usize> {
    // The longest rising sequence of earlier places: for each length the position of its lowest last one.
    let mut ends: Vec<usize> = Vec::new();
    let mut links: Vec<Option<usize>> = Vec::with_capacity(pairs.len());
    let from = |position: &usize| pairs.get(*position).map_or(usize::MAX, |(from, _)| *from);
    for (position, (here, _)) in pairs.iter().enumerate() {
        let length = ends.partition_point(|end| from(end) < *here);
        links.push(length.checked_sub(1).and_then(|shorter| ends.get(shorter).copied()));
        match ends.get_mut(length) {
            Some(end) => *end = position,
            None => ends.push(position),
        }
    }
    let mut stays = vec![false; pairs.len()];
    let mut next = ends.last().copied();
    while let Some(position) = next {
        if let Some(stay) = stays.get_mut(position) {
            *stay = true;
        }
        next = links.get(position).copied().flatten();
    }
    pairs.iter().zip(stays).filter(|(_, stays)| !stays).map(|((_, at), _)| *at).collect()
}
