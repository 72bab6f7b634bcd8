//! "The belt guard from *the supply fan and the extract fan*": one guard over both, or one of each. Nobody but the writer knows.

use super::super::clause::Clause;
use super::super::mention::plural;
use super::bench::Bench;
use super::phrase::{Lead, Phrase};
use super::{Meaning, Question};
use crate::model::Verb;

impl Bench<'_> {
    /// Asks whether a new thing that is of two of a sort is one for both or one of each. Whether there is such a thing.
    pub(super) fn may_be_one_or_each(&mut self, clause: &Clause) -> bool {
        if !clause.means.iter().any(Verb::changes_the_appliance) {
            return false;
        }
        let Some(open) = self.phrases.iter().find(|phrase| self.is_of_two_alike(phrase)).cloned() else {
            return false;
        };
        let name = open.name();
        let several = plural(&name);
        let question =
            format!("Is it one {name} for both, or one of each? Say it in the words: the {several}");
        let choices = vec![Meaning::New { name }];
        self.asked.push(Question { span: self.span_of(&open), question, choices, thing: None });
        true
    }

    fn is_of_two_alike(&self, phrase: &Phrase) -> bool {
        let is_one = phrase.lead == Lead::Direct
            && !phrase.plural()
            && phrase.label.is_none()
            && self.line.text(phrase.start) == "the";
        let is_known = || self.mentions.iter().any(|mention| mention.to == phrase.head + 1);
        if !is_one || self.is_another(phrase) || is_known() {
            return false;
        }
        let owners = self.owners_of(phrase);
        let text = |at: usize, back: usize| at.checked_sub(back).map_or("", |i| self.line.text(i));
        let is_joined = |owner: &Phrase| text(owner.start, 1) == "and" || text(owner.start, 2) == "and";
        if !owners.iter().skip(1).all(is_joined) {
            return false;
        }
        let mut heads = owners.iter().map(Phrase::head_word);
        heads.next().is_some_and(|first| owners.len() > 1 && heads.all(|head| head == first))
    }
}
