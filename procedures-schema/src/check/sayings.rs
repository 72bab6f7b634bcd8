//! What the words of each step say, for one check and for the next one.
//!
//! While somebody writes, a check follows each key and one step differs from the check before. What the words
//! of the others say is taken over, which is about half of what a check costs.

use super::lower::{Lower, Vocabulary};
use crate::lexicon::{Lexicon, Said};
use crate::model::{Procedure, Step};
use std::sync::{Arc, OnceLock};

/// What the words of all steps of a document say.
pub struct Sayings {
    language: String,
    steps: Vec<Arc<Step>>,
    /// By the position of the step its verb phrases; found once, for several rules ask for them.
    said: Vec<Vec<Said>>,
    lower: OnceLock<Vec<Lower>>,
    /// The words of all steps together, and of some that have gone.
    vocabulary: Vocabulary,
    /// How many steps were read since the vocabulary was begun.
    n_read: usize,
}

fn said_of(steps: &[Arc<Step>], language: &str) -> Vec<Vec<Said>> {
    let lexicon = Lexicon::for_language(language);
    let words = steps.iter().map(|step| step.words.as_str());
    lexicon.map_or_else(Vec::new, |lexicon| lexicon.phrases_of_each(words))
}

impl Sayings {
    /// Those of a document.
    pub fn of(procedure: &Procedure) -> Self {
        Self {
            language: procedure.language.clone(),
            steps: procedure.steps.clone(),
            said: said_of(&procedure.steps, &procedure.language),
            lower: OnceLock::new(),
            vocabulary: Vocabulary::of(procedure.steps.iter().map(|step| step.words.as_str())),
            n_read: procedure.steps.len(),
        }
    }

    /// The same as [`Sayings::of`], sooner if these are of a document that shares most of its steps.
    #[must_use]
    pub fn followed_by(&self, procedure: &Procedure) -> Self {
        let (known, steps) = (&self.steps, &procedure.steps);
        let shorter = known.len().min(steps.len());
        let n_first = known.iter().zip(steps).take_while(|(known, step)| Arc::ptr_eq(known, step)).count();
        let from_end = known.iter().rev().zip(steps.iter().rev());
        let n_last = from_end.take_while(|(known, step)| Arc::ptr_eq(known, step)).count();
        let n_last = n_last.min(shorter - n_first);
        let between = steps.get(n_first..steps.len() - n_last).unwrap_or_default();
        let n_read = self.n_read + between.len();
        // A vocabulary in which most words have gone tells less and less to be absent.
        if self.language != procedure.language || n_read > 2 * steps.len() + 64 {
            return Self::of(procedure);
        }
        let mut vocabulary = self.vocabulary.clone();
        for step in between {
            vocabulary.take_in(&step.words);
        }
        let first = self.said.iter().take(n_first).cloned();
        let last = self.said.iter().skip(known.len() - n_last).cloned();
        let said = first.chain(said_of(between, &self.language)).chain(last).collect();
        let (language, lower) = (self.language.clone(), OnceLock::new());
        Self { language, steps: steps.clone(), said, lower, vocabulary, n_read }
    }

    /// The verb phrases of each step; none, if there is no lexicon for the language.
    pub(super) fn said(&self) -> &[Vec<Said>] {
        &self.said
    }

    /// The words of each step in lower case.
    pub(super) fn lower(&self) -> &[Lower] {
        self.lower.get_or_init(|| self.steps.iter().map(|step| Lower::of(&step.words)).collect())
    }

    /// Those of some phrases in lower case that the words of a step may hold.
    pub(super) fn held<'p>(&self, phrases: &[&'p str]) -> Vec<&'p str> {
        self.vocabulary.held(phrases)
    }
}
