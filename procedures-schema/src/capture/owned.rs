//! Which of several is meant by whose it is: "refit pump A *and its cover*" where pump B has a cover too, whichever of the
//! covers was touched last.

use super::mention::{Mention, words_of};
use super::reader::Reader;
use super::refer::nearest;
use super::twins::{are_opposite, is_side};
use crate::model::{ApplianceMap, Id, ThingKind};

/// What whose it is tells of several things.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Owned {
    /// Nothing, or which are meant.
    Clear,
    /// Another than the one that was touched last, without saying so.
    Disputed,
}

impl Reader<'_> {
    /// Keeps those of several that belong to a part which the line has named before a mention, or "its" part, which the step
    /// before changed. All of them stay where that tells nothing.
    pub(super) fn keep_owned(&self, mention: &Mention, ids: &mut Vec<Id>) -> Owned {
        if ids.len() < 2 {
            return Owned::Clear;
        }
        let named = self.parts_named_before(mention);
        let is_its = (mention.from.saturating_sub(3)..mention.from).any(|i| self.text(i) == "its");
        let of_line = !named.is_empty();
        let owners = if of_line { named } else { self.parts_changed_before() };
        let owned = match self.owned_by_each(&owners, ids).as_slice() {
            [] => return Owned::Clear,
            [one] => one.clone(),
            // "Fit the damper and the pump. Tighten *the screws*": those of both were worked on alike.
            _ => return Owned::Disputed,
        };
        if of_line || is_its {
            *ids = owned;
            return Owned::Clear;
        }
        // "Take out the left fan. Put *the plug* back", where that of the right one was pulled last.
        let is_other = nearest(&self.here, ids).is_some_and(|nearest| !owned.contains(&nearest));
        if is_other { Owned::Disputed } else { Owned::Clear }
    }

    /// Those of several things that belong to each of some parts that has any; or that are on its side.
    fn owned_by_each(&self, owners: &[Id], ids: &[Id]) -> Vec<Vec<Id>> {
        let only = |belongs: &dyn Fn(&ApplianceMap, &Id, &Id) -> bool| {
            let of = |owner: &Id| -> Vec<Id> {
                ids.iter().filter(|id| belongs(self.map, id, owner)).cloned().collect()
            };
            let mut all: Vec<Vec<Id>> = owners.iter().map(of).filter(|owned| !owned.is_empty()).collect();
            all.dedup();
            all
        };
        let owned = only(&belongs_to);
        if owned.is_empty() { only(&is_on_side_of) } else { owned }
    }

    /// The parts that the line names before a mention.
    fn parts_named_before(&self, mention: &Mention) -> Vec<Id> {
        let before = self.mentions.iter().filter(|other| other.to <= mention.from);
        let named = before.filter_map(|other| match other.candidates.as_slice() {
            [only] => Some(only.id.clone()),
            _ => None,
        });
        let said = self.last.iter().map(|last| last.id.clone());
        let mut parts: Vec<Id> = named.chain(said).filter(|id| self.is_part(id)).collect();
        parts.sort();
        parts.dedup();
        parts
    }

    fn parts_changed_before(&self) -> Vec<Id> {
        self.here.changed_before().filter(|id| self.is_part(id)).cloned().collect()
    }

    fn is_part(&self, id: &Id) -> bool {
        self.map.thing_kind(id) == Some(ThingKind::Component)
    }
}

/// Whether a thing joins a part, or is called after it: the pump A cover is of pump A.
fn belongs_to(map: &ApplianceMap, id: &Id, owner: &Id) -> bool {
    let joins = map.connection(id).is_some_and(|known| known.joins.contains(owner));
    let (own, name) = (words_of(map.name_of(id)), words_of(map.name_of(owner)));
    joins || (own.len() > name.len() && own.starts_with(&name))
}

/// Whether the names of two things say the same side, and none the other.
fn is_on_side_of(map: &ApplianceMap, id: &Id, owner: &Id) -> bool {
    let sides = |id: &Id| -> Vec<String> {
        words_of(map.name_of(id)).into_iter().filter(|word| is_side(word)).collect()
    };
    let (own, said) = (sides(id), sides(owner));
    let is_opposite = |one: &String| said.iter().any(|other| are_opposite(one, other));
    own.iter().any(|side| said.contains(side)) && !own.iter().any(is_opposite)
}
