//! Of several items of a name the one that is where the words say: "take the cloth *off the fan*".

use super::clause::Clause;
use super::coin::{self, PLACES};
use super::mention::Mention;
use super::reader::Reader;
use crate::model::{Id, Temporary};

/// Whether an item is called after a place: the "cloth 2" that is the "pump cloth" as well.
pub(super) fn is_called_after(item: &Temporary, place: &str) -> bool {
    let own = |alias: &String| alias.strip_prefix(place)?.strip_prefix(' ').map(str::to_owned);
    item.aliases.iter().filter_map(own).any(|own| item.name.starts_with(&own))
}

impl Reader<'_> {
    /// Keeps of temporary items those that are put where the words behind a mention say, if there are any.
    pub(super) fn keep_placed(&self, clause: &Clause, mention: &Mention, ids: &mut Vec<Id>) {
        let is_item = |id: &Id| self.map.temporary.iter().any(|item| item.id == *id);
        if ids.len() < 2 || !ids.iter().all(is_item) {
            return;
        }
        let phrases = coin::phrases(self, clause);
        let place =
            phrases.iter().find(|place| place.from >= mention.to).filter(|place| place.is_after(PLACES));
        let Some(place) = place else { return };
        let is_there = |id: &Id| {
            let item = self.map.temporary.iter().find(|item| item.id == *id);
            let sits_on = || {
                let named = self.mentions.iter().filter(|other| other.to == place.head + 1);
                let on = item.and_then(|item| item.on.as_ref());
                named.flat_map(|other| &other.candidates).any(|known| Some(&known.id) == on)
            };
            item.is_some_and(|item| is_called_after(item, &place.name())) || sits_on()
        };
        if ids.iter().any(is_there) {
            ids.retain(is_there);
        }
    }
}
