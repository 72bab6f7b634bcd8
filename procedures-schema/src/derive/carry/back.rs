//! Things that come back with the steps that name them: taken out of a map while nothing named them, or gone with an
//! earlier state of it.

use super::named;
use super::onto::{exchange, lacking, the_same, with_missing};
use crate::model::{ApplianceMap, Id, Procedure, References, Step};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// What comes back with some steps of a document.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Back {
    /// The map with what comes back, under the ids that it had; none, if nothing is missing.
    pub map: Option<Arc<ApplianceMap>>,
    /// The names of what comes back.
    pub things: Vec<String>,
    /// What has been made anew meanwhile, by the id that it had.
    anew: BTreeMap<Id, Id>,
}

impl Back {
    /// What these steps name and a document has no more, out of the map that they were made on.
    pub fn of(document: &Procedure, from: &ApplianceMap, steps: &[Arc<Step>]) -> Self {
        let there: BTreeSet<&Id> = document.map.things().map(|(_, id, ..)| id).collect();
        let known: BTreeSet<&Id> = from.things().map(|(_, id, ..)| id).collect();
        let is_gone = |id: &Id| !there.contains(id) && known.contains(id);
        let lacking = lacking(from, named(steps), &is_gone);
        let mut back = Self::default();
        if lacking.is_empty() {
            return back;
        }
        let same = the_same(from, &document.map, &BTreeSet::new());
        let mut missing = BTreeSet::new();
        for (_, id, name, _) in from.things().filter(|(_, id, ..)| lacking.contains(*id)) {
            if let Some(here) = same.get(id).filter(|here| !known.contains(here)) {
                back.anew.insert(id.clone(), here.clone());
            } else {
                missing.insert(id.clone());
                back.things.push(name.to_owned());
            }
        }
        if !missing.is_empty() {
            let map = with_missing(&document.map, from, &missing, &back.anew);
            back.map = Some(Arc::new(with_images(map, from, &missing, document)));
        }
        back
    }

    /// Lets a step name what has been made anew meanwhile.
    pub fn lead(&self, step: &mut Step) {
        step.each_thing(&mut |id| exchange(id, &self.anew));
    }
}

/// The things with the pictures that they had, as far as the document still has them.
fn with_images(
    mut map: ApplianceMap,
    from: &ApplianceMap,
    missing: &BTreeSet<Id>,
    document: &Procedure,
) -> ApplianceMap {
    let has = |image: &Id| document.images.iter().any(|known| known.id == *image);
    macro_rules! give {
        ($($list:ident),*) => {$(
            for thing in map.$list.iter_mut().filter(|thing| missing.contains(&thing.id)) {
                let old = from.$list.iter().find(|old| old.id == thing.id);
                thing.images = old.map(|old| old.images.clone()).unwrap_or_default();
                thing.images.retain(|image| has(image));
            }
        )*};
    }
    give!(circuits, isolators, components, connections, seals, temporary, settings);
    map
}
