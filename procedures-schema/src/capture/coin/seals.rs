//! Seals of new joints: the one that the words name, or what such a joint usually has.

use super::super::clause::Clause;
use super::super::quantity::Figures;
use super::super::reader::Reader;
use super::bench::Bench;
use super::nouns::{Noun, noun, usual_seal};
use super::phrase::Phrase;
use crate::model::{Connection, Known, Seal, SealPolicy, SealUse, ThingKind};

/// Who finds out what no sentence says.
pub(super) const FINDS_OUT: &str = "writer";

impl Bench<'_> {
    /// Gives a new joint its seal; a new one is always renewed and its number found out later.
    pub(super) fn seal(&mut self, clause: &Clause, phrase: &Phrase, joint: &mut Connection) {
        let Some(SealSaid { name, measured, by }) = seal_said(&self.line, clause, phrase, &self.phrases)
        else {
            return;
        };
        let known = self.map.seals.iter().find(|seal| seal.name == name).map(|seal| seal.id.clone());
        let id = known.unwrap_or_else(|| {
            let id = self.new_id(&name);
            let mut seal = Seal::new(id.clone(), &name, policy(&name));
            seal.number = Some(Known::later(FINDS_OUT));
            seal.size = measured.map(Known::Value);
            self.map_mut().seals.push(seal);
            match &by {
                Some(by) => self.note_in_words(&id, ThingKind::Seal, &name, by),
                None => self.note(&id, ThingKind::Seal, &name),
            }
            id
        });
        joint.seals.push(SealUse { seal: id, quantity: 1, rest: crate::model::Rest::default() });
    }
}

/// The seal of a joint as words name it, or as such a joint usually has it.
pub(in crate::capture) struct SealSaid {
    /// Its name, with its size.
    pub(in crate::capture) name: String,
    /// What it measures.
    pub(in crate::capture) measured: Option<String>,
    /// The words that name it; none, if it is only usual.
    by: Option<Phrase>,
}

/// What a clause says of the seal of the joint that a phrase names.
pub(in crate::capture) fn seal_said(
    line: &Reader<'_>,
    clause: &Clause,
    phrase: &Phrase,
    phrases: &[Phrase],
) -> Option<SealSaid> {
    let by = phrases.iter().find(|other| noun(&other.stem()) == Noun::Seal).cloned();
    let name = match &by {
        Some(by) => by.stem().join(" "),
        None => usual_seal(&phrase.stem())?.to_owned(),
    };
    // A pipe thread is the size of its washer; that of a bolt says nothing of the gasket between.
    let size = line.size(clause).filter(|size| size.starts_with(['G', 'R']) || size.ends_with(" in"));
    let name = size.iter().fold(name, |name, size| format!("{name} {size}"));
    let measured = line.quantities(clause).find_map(|quantity| match &quantity.figures {
        Figures::Dimensions(measures) => Some(measures.clone()),
        _ => None,
    });
    let name = measured.iter().fold(name, |name, measures| format!("{name} {measures}"));
    Some(SealSaid { name, measured, by })
}

/// What becomes of a seal of which the words say no more: an olive that is sound on its pipe stays there.
fn policy(name: &str) -> SealPolicy {
    if name.starts_with("olive") { SealPolicy::RenewUnlessSound } else { SealPolicy::AlwaysRenew }
}
