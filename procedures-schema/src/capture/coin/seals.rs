//! Seals of new joints: the one that the words name, or what such a joint usually has.

use super::super::clause::Clause;
use super::super::quantity::Figures;
use super::bench::Bench;
use super::nouns::{Noun, noun, usual_seal};
use super::phrase::Phrase;
use crate::model::{Connection, Known, Seal, SealPolicy, SealUse, ThingKind};

/// Who finds out what no sentence says.
const FINDS_OUT: &str = "writer";

impl Bench<'_> {
    /// Gives a new joint its seal; a new one is always renewed and its number found out later.
    pub(super) fn seal(&mut self, clause: &Clause, phrase: &Phrase, joint: &mut Connection) {
        let said = self.phrases.iter().find(|other| noun(&other.stem()) == Noun::Seal).cloned();
        let name = match &said {
            Some(said) => said.stem().join(" "),
            None => match usual_seal(&phrase.stem()) {
                Some(usual) => usual.to_owned(),
                None => return,
            },
        };
        // A pipe thread is the size of its washer; that of a bolt says nothing of the gasket between.
        let size =
            self.line.size(clause).filter(|size| size.starts_with(['G', 'R']) || size.ends_with(" in"));
        let name = size.iter().fold(name, |name, size| format!("{name} {size}"));
        let measured = self.line.quantities(clause).find_map(|quantity| match &quantity.figures {
            Figures::Dimensions(measures) => Some(measures.clone()),
            _ => None,
        });
        let name = measured.iter().fold(name, |name, measures| format!("{name} {measures}"));
        let known = self.map.seals.iter().find(|seal| seal.name == name).map(|seal| seal.id.clone());
        let id = known.unwrap_or_else(|| {
            let id = self.new_id(&name);
            let mut seal = Seal::new(id.clone(), &name, policy(&name));
            seal.number = Some(Known::later(FINDS_OUT));
            seal.size = measured.map(Known::Value);
            self.map_mut().seals.push(seal);
            match &said {
                Some(said) => self.note_in_words(&id, ThingKind::Seal, &name, said),
                None => self.note(&id, ThingKind::Seal, &name),
            }
            id
        });
        joint.seals.push(SealUse { seal: id, quantity: 1, rest: crate::model::Rest::default() });
    }
}

/// What becomes of a seal of which the words say no more: an olive that is sound on its pipe stays there.
fn policy(name: &str) -> SealPolicy {
    if name.starts_with("olive") { SealPolicy::RenewUnlessSound } else { SealPolicy::AlwaysRenew }
}
