//! What a verb acts on beyond a comma: "close the gas cock, the flow valve and the drain", but not "feel the pipe go
//! warm, sensor signal 0.5 V", where the next thought begins.

use super::clause::Clause;
use super::coin::{Lead, Phrase, is_bare_item, is_label, phrases};
use super::mention::Mention;
use super::reader::Reader;
use crate::lexicon::Break;
use crate::model::Verb;

impl Reader<'_> {
    /// Whether a mention belongs to what the verb of a clause acts on, as far as commas tell: it stands before the first
    /// of them, or goes on with the list, or nothing before the comma is acted on.
    pub(super) fn is_listed(&self, clause: &Clause, mention: &Mention) -> bool {
        let breaks = |i: usize| self.tokens.get(i).is_some_and(|token| token.before != Break::None);
        if !self.has_breaks {
            return true;
        }
        let Some(from) = (clause.verb() + 1..=mention.from).rev().find(|i| breaks(*i)) else { return true };
        let first = (clause.verb() + 1..=from).find(|i| breaks(*i)).unwrap_or(from);
        if self.tokens.get(from).is_some_and(|token| token.before == Break::Sentence) {
            return true;
        }
        // "Sniff round the unit" says what is looked at as well.
        let looks = clause.means.iter().any(|verb| matches!(verb, Verb::Test | Verb::Inspect));
        let is_object = |phrase: &Phrase| (looks || phrase.lead == Lead::Direct) && phrase.head < first;
        let has_object = || phrases(self, clause).iter().any(is_object);
        let to = (from + 1..self.tokens.len()).find(|i| breaks(*i)).unwrap_or(self.tokens.len());
        self.goes_on_with_list(from, to) || !has_object()
    }

    /// Whether a stretch between commas is one thing more, or several.
    fn goes_on_with_list(&self, from: usize, to: usize) -> bool {
        const BEGINS: &[&str] = &[
            "a", "all", "also", "an", "and", "any", "both", "each", "every", "half", "his", "its", "one",
            "or", "plus", "quarter", "the", "their", "then", "your",
        ];
        let begins = |i: usize| BEGINS.contains(&self.text(i)) || self.lexicon.amount(self.text(i)).is_some();
        let named = |i: usize| self.mentions.iter().any(|m| (m.from..m.to).contains(&i));
        let joins = |i: usize| matches!(self.text(i), "new" | "of" | "old" | "other") || begins(i);
        // "Plugs CN1, *CN2* and CN3 from the board."
        let is_next_label = is_label(self.written(from))
            && self.mentions.iter().any(|mention| mention.from == from && mention.to == from + 1);
        begins(from)
            || (from..to).all(|i| named(i) || joins(i))
            || is_next_label
            || is_bare_item(self, from, self.tokens.len())
    }
}
