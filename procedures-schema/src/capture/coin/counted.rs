//! Screws that words count and size without naming them: "unscrew the bracket (3 x M4)".

use super::super::clause::Clause;
use super::super::quantity::Figures;
use super::super::reader::Reader;
use super::bench::Bench;
use super::nouns::{Noun, noun};
use super::phrase::{Lead, Phrase};
use super::wanted::{is_appliance, is_screwed_in};
use crate::lexicon::Amount;
use crate::model::{Connection, Family, Id, Known, Size, Span, ThingKind};

impl Bench<'_> {
    /// Makes the screws of the part that a clause unscrews, where it only says how many of which thread.
    pub(super) fn make_counted_screws(&mut self, clause: &Clause) {
        let Some(Counted { n, thread, .. }) = counted_thread(&self.line, clause) else { return };
        let names_fastener = |phrase: &Phrase| matches!(noun(&phrase.stem()), Noun::Fixing | Noun::Joint);
        if self.phrases.iter().any(names_fastener) {
            return;
        }
        let direct = self.phrases.iter().find(|phrase| phrase.lead == Lead::Direct).cloned();
        let is_part = |phrase: &Phrase| {
            let stem = phrase.stem();
            matches!(noun(&stem), Noun::Part | Noun::Unknown) && !is_appliance(&stem) && !is_screwed_in(&stem)
        };
        let Some(direct) = direct.filter(is_part) else { return };
        let part = match self.known(&direct, &[ThingKind::Component]).as_slice() {
            [only] => only.clone(),
            [] => self.make_component(&direct),
            _ => return,
        };
        let size = Size { thread: Some(thread), ..Size::default() };
        if !self.has_such_screws(&part, n, &size) {
            let name = format!("{} screws", self.map.name_of(&part));
            let mut screws = Connection::new(self.new_id(&name), &name, Family::Fixing);
            (screws.joins, screws.count) = (vec![part], n);
            screws.size = Some(Known::Value(size));
            self.note_in_words(&screws.id, ThingKind::Connection, &name, &direct);
            self.map_mut().connections.push(screws);
        }
        self.look_again();
    }

    fn has_such_screws(&self, part: &Id, n: u32, size: &Size) -> bool {
        self.map.connections.iter().any(|known| {
            let same = known.size.as_ref().and_then(Known::value).is_none_or(|own| own.thread == size.thread);
            known.joins.contains(part) && known.count == n && same
        })
    }
}

/// Screws that are counted and sized and named by no noun: "3 x M4".
pub(in crate::capture) struct Counted {
    /// How many.
    pub(in crate::capture) n: u32,
    /// The token of their number.
    pub(in crate::capture) at: usize,
    /// Their thread.
    pub(in crate::capture) thread: String,
    /// Where it stands.
    pub(in crate::capture) span: Span,
}

/// A number right before a thread that no noun follows.
pub(in crate::capture) fn counted_thread(line: &Reader<'_>, clause: &Clause) -> Option<Counted> {
    line.quantities(clause).find_map(|quantity| {
        let Figures::Size(thread) = &quantity.figures else { return None };
        let before = quantity.from.checked_sub(1)?;
        let at = if line.text(before) == "x" { before.checked_sub(1)? } else { before };
        match line.lexicon.amount(line.text(at))? {
            Amount::Exactly(n) if (1..100).contains(&n) => {
                Some(Counted { n, at, thread: thread.clone(), span: quantity.span })
            }
            _ => None,
        }
    })
}
