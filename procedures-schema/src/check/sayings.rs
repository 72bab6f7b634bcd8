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
    steps: Vec<Arc<Saying>>,
    /// The words of all steps together, and of some that have gone.
    vocabulary: Vocabulary,
    /// How many steps were read since the vocabulary was begun.
    n_read: usize,
}

/// What the words of one step say.
pub(super) struct Saying {
    step: Arc<Step>,
    /// Its verb phrases; found once, for several rules ask for them.
    pub(super) said: Vec<Said>,
    lower: OnceLock<Lower>,
}

impl Saying {
    fn of_each(steps: &[Arc<Step>], lexicon: Option<&Lexicon>) -> Vec<Arc<Self>> {
        let words = steps.iter().map(|step| step.words.as_str());
        let mut said = lexicon.map_or_else(Vec::new, |lexicon| lexicon.phrases_of_each(words));
        said.resize_with(steps.len(), Vec::new);
        let new = |(step, said): (&Arc<Step>, _)| Self { step: step.clone(), said, lower: OnceLock::new() };
        steps.iter().zip(said).map(|pair| Arc::new(new(pair))).collect()
    }

    /// The words in lower case.
    pub(super) fn lower(&self) -> &Lower {
        self.lower.get_or_init(|| Lower::of(&self.step.words))
    }

    fn is_of(&self, step: &Arc<Step>) -> bool {
        Arc::ptr_eq(&self.step, step)
    }
}

impl Sayings {
    /// Those of a document.
    pub fn of(procedure: &Procedure) -> Self {
        let lexicon = Lexicon::for_language(&procedure.language);
        Self {
            language: procedure.language.clone(),
            steps: Saying::of_each(&procedure.steps, lexicon),
            vocabulary: Vocabulary::of(procedure.steps.iter().map(|step| step.words.as_str())),
            n_read: procedure.steps.len(),
        }
    }

    /// The same as [`Sayings::of`], sooner if these are of a document that shares most of its steps.
    #[must_use]
    pub fn followed_by(&self, procedure: &Procedure) -> Self {
        let (known, steps) = (&self.steps, &procedure.steps);
        let shorter = known.len().min(steps.len());
        let n_first = known.iter().zip(steps).take_while(|(known, step)| known.is_of(step)).count();
        let from_end = known.iter().rev().zip(steps.iter().rev());
        let n_last = from_end.take_while(|(known, step)| known.is_of(step)).count().min(shorter - n_first);
        let between = steps.get(n_first..steps.len() - n_last).unwrap_or_default();
        let n_read = self.n_read + between.len();
        // A vocabulary in which most words have gone tells less and less to be absent.
        if self.language != procedure.language || n_read > 2 * steps.len() + 64 {
            return Self::of(procedure);
        }
        let lexicon = Lexicon::for_language(&procedure.language);
        let mut vocabulary = self.vocabulary.clone();
        for step in between {
            vocabulary.take_in(&step.words);
        }
        let first = known.iter().take(n_first).cloned();
        let read = Saying::of_each(between, lexicon);
        let last = known.iter().skip(known.len() - n_last).cloned();
        let steps = first.chain(read).chain(last).collect();
        Self { language: self.language.clone(), steps, vocabulary, n_read }
    }

    /// By the position of the step.
    pub(super) fn steps(&self) -> &[Arc<Saying>] {
        &self.steps
    }

    /// Those of some phrases in lower case that the words of a step may hold.
    pub(super) fn held<'p>(&self, phrases: &[&'p str]) -> Vec<&'p str> {
        self.vocabulary.held(phrases)
    }
}
