//! Words that lead from a name to another: "the valve *before* the pump", "the nuts *round* the flange", "the screws *holding*
//! the plate".

use super::super::clause::Clause;
use super::super::mention::singular;
use super::super::reader::Reader;
use super::nouns::{Noun, noun};
use super::particles::is_particle;
use super::phrase::{Chunker, Lead, Phrase};
use super::phrase_words::{ARTICLES, ENDS, PREPOSITIONS};
use crate::lexicon::Break;
use crate::model::{Handle, Verb};

impl Chunker<'_, '_> {
    /// How what follows stands to the name before a token, and how many tokens say so; no lead where it stays as it was.
    pub(super) fn leads_from_name(&self, i: usize) -> Option<(Option<Lead>, usize)> {
        if self.line.text(i) == "as" && self.line.text(i + 1) == "well" {
            // "Take the cable off *as well*": too.
            return Some((None, 2));
        }
        if !self.words.is_empty() && [0, 1, 2].map(|n| self.line.text(i + n)) == ["in", "front", "of"] {
            // "The stop valve *in front of* the filter."
            return Some((Some(Lead::After("before".to_owned())), 3));
        }
        if self.says_what_it_holds(i) {
            // "The screws *that hold* the plate" are those of the plate.
            return Some((Some(Lead::After("of".to_owned())), 2));
        }
        // "The valve *before the pump*": where it sits.
        self.leads_before_or_after(i).then(|| (Some(Lead::After(self.line.text(i).to_owned())), 1))
    }

    /// Whether what goes on behind a comma is led by nothing that stands before it: "take the lid off, *then the fan*", "lift
    /// the motor off its body, *then the mixer*", "the lead of the fan, *the plug of the pump*".
    pub(super) fn begins_anew(&self, i: usize) -> bool {
        let text = |i: usize| self.line.text(i);
        let joined = |i: &usize| self.line.tokens.get(*i).is_some_and(|next| next.before == Break::None);
        let Lead::After(lead) = &self.lead else { return false };
        let is_of_verb = i.checked_sub(1).is_some_and(|at| is_particle(text(at)));
        let is_its = self.found.last().is_some_and(|last| matches!(text(last.start), "its" | "their"));
        let is_then = text(i) == "then" && ARTICLES.contains(&text(i + 1));
        let mut behind = (i + 1..i + 5).take_while(joined).skip(1);
        // Where it goes on, says nothing of what else is acted on.
        let leads_on = matches!(lead.as_str(), "into" | "onto" | "to");
        let mut has_owner = || {
            !leads_on && behind.any(|at| text(at) == lead && ARTICLES.contains(&text(at + 1)))
                || self.names_owner_again(i)
        };
        (is_then && (is_of_verb || is_its)) || (text(i) == "the" && has_owner())
    }

    /// "The flow valve of boiler 1, *the return valve of boiler 1* and …": one more, of the same owner.
    pub(super) fn names_owner_again(&self, from: usize) -> bool {
        const MOST_WORDS: usize = 6;
        let text = |i: usize| self.line.text(i);
        let Some(owner) = self.found.last().filter(|owner| owner.is_after(&["of"])) else { return false };
        let joined = |i: &usize| self.line.tokens.get(*i).is_some_and(|next| next.before == Break::None);
        let mut behind = (from + 1..=from + MOST_WORDS).take_while(joined);
        let Some(of) = behind.find(|i| text(*i) == "of") else { return false };
        let first = of + 1 + usize::from(ARTICLES.contains(&text(of + 1)));
        let label = owner.label.iter().map(|label| label.to_lowercase());
        let mut words = owner.words.iter().cloned().chain(label).zip(first..);
        words.all(|(word, i)| text(i) == word)
    }

    /// "Close the stopcock of the cylinder *and the flow valve*": what is shut too, and not whose the stopcock is.
    pub(super) fn shuts_one_more(&self, clause: &Clause, and: usize) -> bool {
        const MOST_WORDS: usize = 4;
        let text = |i: usize| self.line.text(i);
        let joined = |i: &usize| self.line.tokens.get(*i).is_some_and(|next| next.before == Break::None);
        let is_worked =
            clause.means.iter().any(|verb| matches!(verb, Verb::Isolate | Verb::Lock | Verb::Restore));
        let is_one = |found: &Phrase| {
            found.lead == Lead::Direct
                && !found.plural()
                && matches!(noun(&found.stem()), Noun::Isolator(Handle::Valve))
        };
        let is_owned = matches!(&self.lead, Lead::After(lead) if matches!(lead.as_str(), "for" | "of"));
        if !is_worked || !is_owned || !self.found.iter().any(is_one) {
            return false;
        }
        let from = and + 1 + usize::from(matches!(text(and + 1), "also" | "then"));
        let is_name = |i: &usize| {
            joined(i) && !PREPOSITIONS.contains(&text(*i)) && !ENDS.contains(&text(*i)) && text(*i) != "and"
        };
        let name: Vec<usize> = (from + 1..=from + MOST_WORDS).take_while(is_name).collect();
        let mut words: Vec<String> = name.iter().map(|i| text(*i).to_owned()).collect();
        if let Some(head) = words.last_mut() {
            *head = singular(head);
        }
        ARTICLES.contains(&text(from))
            && words.len() > 1
            && matches!(noun(&words), Noun::Isolator(Handle::Valve))
    }

    /// "The valve *before* the pump", not "close it before the pump runs".
    fn leads_before_or_after(&self, i: usize) -> bool {
        let leads =
            matches!(self.line.text(i), "after" | "before") && ARTICLES.contains(&self.line.text(i + 1));
        let is_worked = self.words.last().is_some_and(|last| {
            let head = [singular(self.line.text(*last))];
            last + 1 == i && matches!(noun(&head), Noun::Isolator(_) | Noun::Joint)
        });
        let ends = |at: usize| {
            self.line.text(at) == "and"
                || self.line.tokens.get(at).is_none_or(|next| next.before != Break::None)
        };
        // "Before *the water meter*"; a word that nobody knows as a part only where another valve is on the other side of it.
        let joined = |at: usize| self.line.tokens.get(at).is_some_and(|next| next.before == Break::None);
        let is_place = |n: usize| {
            let mut words: Vec<String> = (i + 2..i + 2 + n).map(|at| self.line.text(at).to_owned()).collect();
            if let Some(head) = words.last_mut() {
                *head = singular(head);
            }
            let is_part = match noun(&words) {
                Noun::Part => true,
                Noun::Unknown => self.line.has_valves_on_two_sides(),
                _ => false,
            };
            is_part && ends(i + 2 + n) && (i + 3..i + 2 + n).all(joined)
        };
        leads && is_worked && (1..=2).any(is_place)
    }

    /// "Wipe *round* the pocket", "the nuts *round* the flange", not "the round cover".
    pub(super) fn leads_round(&self, i: usize) -> bool {
        let behind_name = !self.words.is_empty() && ARTICLES.contains(&self.line.text(i + 1));
        match self.line.text(i) {
            "round" => self.start.is_none() || behind_name,
            text => text == "around" && behind_name,
        }
    }

    /// Whether a word behind a name says what that holds, up to the article of it.
    pub(super) fn holds_another(&self, i: usize) -> bool {
        let holds = matches!(self.line.text(i), "holding" | "retaining" | "securing");
        holds && !self.words.is_empty() && ARTICLES.contains(&self.line.text(i + 1))
    }

    /// Whether "that" or "which" leads from a name to what that holds.
    fn says_what_it_holds(&self, i: usize) -> bool {
        let leads = matches!(self.line.text(i), "that" | "which") && !self.words.is_empty();
        let holds =
            matches!(self.line.text(i + 1), "hold" | "holds" | "retain" | "retains" | "secure" | "secures");
        // A bare noun that is new may be the short name of what the next line names in full.
        let goes_on = self.line.tokens.get(i + 4).is_some_and(|next| {
            let word = next.text.as_ref();
            next.before == Break::None
                && !PREPOSITIONS.contains(&word)
                && !ENDS.contains(&word)
                && word != "and"
        });
        let known = self.line.mentions.iter().any(|mention| mention.from == i + 3);
        leads && holds && ARTICLES.contains(&self.line.text(i + 2)) && (known || goes_on)
    }
}

impl Reader<'_> {
    /// Whether two valves are told apart by their sides: "the valve before the dryer and the valve after the dryer".
    fn has_valves_on_two_sides(&self) -> bool {
        let is_sited = |i: &usize| {
            let head = singular(self.text(i - 1));
            matches!(self.text(*i), "after" | "before") && matches!(noun(&[head]), Noun::Isolator(_))
        };
        (1..self.tokens.len()).filter(is_sited).count() > 1
    }
}
