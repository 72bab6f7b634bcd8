//! The map as words state it, against which they are read.

use super::differ::{Differing, may_state, put};
use super::{Stated, named, stated, stated_in};
use crate::capture::reader::Reader;
use crate::capture::{Here, LineReading, line_here};
use crate::lexicon::Lexicon;
use crate::model::{Action, ApplianceMap, Id, Stage};
use std::sync::Arc;

/// What words state otherwise than the map, of the connections that some actions name.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SaidOtherwise {
    connections: Vec<Id>,
    /// What is stated otherwise of them.
    pub(super) all: Vec<Differing>,
}

impl SaidOtherwise {
    /// What some words state otherwise.
    pub fn of<'a>(
        words: &str,
        actions: impl Iterator<Item = &'a Action>,
        map: &ApplianceMap,
        stage: &Stage,
    ) -> Self {
        let named = named(actions, map);
        if named.is_empty() || !may_state(words) {
            return Self::none_of(&named);
        }
        Self::among(stated(words, &named, map, stage), &named, map)
    }

    fn none_of(named: &[&Id]) -> Self {
        Self { connections: named.iter().copied().cloned().collect(), all: Vec::new() }
    }

    fn among(stated: Vec<Stated>, named: &[&Id], map: &ApplianceMap) -> Self {
        let all = stated.into_iter().filter_map(|one| one.differing(map)).collect();
        Self { all, ..Self::none_of(named) }
    }

    /// The map as the words state it; none, if they state nothing else than it holds.
    pub fn as_said(&self, map: &Arc<ApplianceMap>) -> Option<Arc<ApplianceMap>> {
        let mut said: Option<ApplianceMap> = None;
        for one in &self.all {
            put(said.get_or_insert_with(|| ApplianceMap::clone(map)), one);
        }
        said.map(Arc::new)
    }

    /// What is stated otherwise, if these are the connections that some actions name; none, if they name others.
    pub fn by<'a>(
        &self,
        actions: impl Iterator<Item = &'a Action>,
        map: &ApplianceMap,
    ) -> Option<&[Differing]> {
        let named = named(actions, map);
        let is_it =
            named.len() == self.connections.len() && named.iter().all(|id| self.connections.contains(id));
        is_it.then_some(&self.all)
    }
}

/// Reads a line in a given state against the map as its words state it of the connections that some actions name; with what
/// they state otherwise. One look at the words does for both, where they state nothing otherwise.
pub fn line_as_said<'a>(
    words: &str,
    actions: impl Iterator<Item = &'a Action>,
    map: &Arc<ApplianceMap>,
    here: Here,
    stage: &Stage,
) -> (LineReading, SaidOtherwise) {
    let named = named(actions, map);
    let Some(lexicon) = Lexicon::for_language("en").filter(|_| !named.is_empty() && may_state(words)) else {
        return (line_here(words, map, here, stage), SaidOtherwise::none_of(&named));
    };
    let (line, mentions) = Reader::of_words(words, map, &here, stage, lexicon);
    if line.takes_up_step_before {
        // What the words state hangs on nothing that is true here.
        let otherwise = SaidOtherwise::among(stated(words, &named, map, stage), &named, map);
        let said = otherwise.as_said(map);
        return (line_here(words, said.as_ref().unwrap_or(map), here, stage), otherwise);
    }
    let line = line.naming(Here::unknown(), mentions.clone());
    let otherwise = SaidOtherwise::among(stated_in(&line, &named, map), &named, map);
    let reading = match otherwise.as_said(map) {
        None => line.naming(here, mentions).read(),
        Some(said) => line_here(words, &said, here, stage),
    };
    (reading, otherwise)
}

/// A map that came of one as words state it, with the figures that the document holds.
pub fn as_was(made: &Arc<ApplianceMap>, said: &ApplianceMap, map: &ApplianceMap) -> Arc<ApplianceMap> {
    let mut made = ApplianceMap::clone(made);
    for known in &map.connections {
        let stated = said.connection(&known.id).filter(|stated| *stated != known);
        let place = made.connections.iter_mut().find(|one| one.id == known.id);
        let Some((place, stated)) = place.zip(stated) else { continue };
        place.count = known.count;
        place.grouping = known.grouping.clone();
        place.size.clone_from(&known.size);
        if stated.tight != known.tight {
            place.tight.clone_from(&known.tight);
        }
    }
    Arc::new(made)
}
