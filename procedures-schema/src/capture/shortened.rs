//! A thing named in full and then by its last word alone, in one line: "undo the nuts of the *flexible hose* and take the
//! *hose* out".

use super::mention::{Mention, singular};
use super::reader::Reader;
use super::twins::WHERE;

impl Reader<'_> {
    /// The mentions with those of one word that stand for a longer name of the same line: none of the things elsewhere that
    /// have the one word for a name is nearer.
    pub(super) fn with_shortened(&self, mut mentions: Vec<Mention>) -> Vec<Mention> {
        let head = |mention: &Mention| singular(self.text(mention.to - 1));
        for at in 1..mentions.len() {
            let Some((before, [short, ..])) = mentions.split_at_mut_checked(at) else { continue };
            let is_short = short.whole
                && short.to - short.from == 1
                && short.from.checked_sub(1).is_some_and(|before| self.text(before) == "the")
                // "The cold water valve before the softener and *the valve after* it."
                && !WHERE.contains(&self.text(short.to));
            let is_it = |long: &&Mention| {
                long.to - long.from > 1
                    && head(long) == head(short)
                    && self.text(long.to - 1) == self.text(short.to - 1)
            };
            let mut longer = before.iter().rev().filter(|_| is_short).filter(is_it);
            // "The front cover and the rear cover … the cover" may be either.
            if let Some(long) =
                longer.next().filter(|long| longer.all(|other| other.candidates == long.candidates))
            {
                short.candidates.clone_from(&long.candidates);
            }
        }
        mentions
    }
}
