//! What the words of each step say and where nothing was found, for one check and for the next one.
//!
//! While somebody writes, a check follows each key and one step differs from the check before. What the words
//! of the others say is taken over, which is about half of what a check costs; and a step of which nothing was found
//! is not looked at again, where the rest of what it is judged by is the same.

use super::finding::Finding;
use super::lower::Lower;
use super::stated::Stating;
use crate::capture::may_leave_out;
use crate::lexicon::{Lexicon, Lowered, Own, Said, Vocabulary, tokens, tokens_into};
use crate::model::{ApplianceMap, Procedure, Renewal, Step};
use crate::simulate::Trace;
use std::sync::Arc;

/// So many words and pairs a vocabulary may gather beside twice what it began with: one in sixteen of those that it has room
/// for.
const MANY_WORDS: usize = 4096;

/// What the words of all steps of a document say, and of which steps nothing was found.
pub struct Sayings {
    map: Arc<ApplianceMap>,
    /// The document without steps and map.
    head: Arc<Procedure>,
    steps: Vec<Arc<Step>>,
    /// By the position of the step, whether a check found nothing of it that is written; none, if there was none.
    pub(super) clean: Vec<bool>,
    /// What a check found in a run, with the run.
    pub(super) unmet: Option<(Arc<Trace>, Arc<[Finding]>)>,
    pub(super) heard: Heard,
    /// How many words and pairs the vocabulary had when it was begun.
    n_words_at_first: usize,
}

/// What the words of some steps say, without the steps.
pub(super) struct Heard {
    /// The verb phrases of all steps; found once, for several rules ask for them.
    said: Vec<Said>,
    /// By the position of the step where its verb phrases end.
    ends: Vec<usize>,
    /// The words of all steps in lower case.
    lower: Lowered,
    /// By the position of the step whether its words say that a seal is new; asked only where one has to be.
    new_seals: Vec<bool>,
    /// By the position of the step whether its words may name more than its actions hold.
    may_leave_out: Vec<bool>,
    /// By the position of the step what its words state.
    stating: Vec<Option<Arc<Stating>>>,
    /// The words of all steps and of their messages together, and of some that have gone.
    vocabulary: Vocabulary,
}

impl Sayings {
    /// Those of a document.
    pub fn of(procedure: &Procedure) -> Self {
        Self::with_head(procedure, Arc::new(procedure.head()))
    }

    fn with_head(procedure: &Procedure, head: Arc<Procedure>) -> Self {
        let said = Heard::of(procedure);
        Self {
            map: procedure.map.clone(),
            head,
            steps: procedure.steps.clone(),
            clean: Vec::new(),
            unmet: None,
            n_words_at_first: said.vocabulary.n_words(),
            heard: said,
        }
    }

    /// The positions of the steps that have to be looked at, since it is not known that nothing is found of them.
    pub(super) fn open(&self) -> Vec<usize> {
        let is_open = |at: &usize| !self.clean.get(*at).copied().unwrap_or(false);
        (0..self.steps.len()).filter(is_open).collect()
    }

    /// What is found in the run of a document, if that is the run in which it was found: the documents differ in words
    /// then, and a finding of theirs only in where its action is said.
    pub(super) fn found_in(&self, procedure: &Procedure, trace: &Arc<Trace>) -> Option<Arc<[Finding]>> {
        let (known, findings) = self.unmet.as_ref()?;
        let is_same = Arc::ptr_eq(known, trace)
            && Arc::ptr_eq(&self.map, &procedure.map)
            && self.steps.len() == procedure.steps.len()
            && procedure.has_head_of(&self.head);
        if !is_same {
            return None;
        }
        let mut findings = findings.clone();
        let steps = self.steps.iter().zip(&procedure.steps);
        for (_, step) in steps.filter(|(known, step)| !Arc::ptr_eq(known, step)) {
            let is_here = |finding: &Finding| finding.step.as_ref() == Some(&step.id);
            if !findings.iter().any(is_here) {
                continue;
            }
            for finding in Arc::make_mut(&mut findings).iter_mut().filter(|finding| is_here(finding)) {
                let action = finding.action.and_then(|action| step.actions.get(action));
                finding.span = action.and_then(|action| action.says.first().copied());
            }
        }
        Some(findings)
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
        let is_same_scope = procedure.has_head_of(&self.head);
        let scope = if is_same_scope { self.head.clone() } else { Arc::new(procedure.head()) };
        // A vocabulary in which most words have gone tells less and less to be absent.
        let is_stale = self.heard.vocabulary.n_words() > 2 * self.n_words_at_first + MANY_WORDS
            || known.len() > 2 * steps.len() + 64;
        let has_same_phrases = self.map.phrases == procedure.map.phrases;
        if self.head.language != procedure.language || !has_same_phrases || is_stale {
            return Self::with_head(procedure, scope);
        }
        let mut clean = Vec::new();
        if is_same_scope && Arc::ptr_eq(&self.map, &procedure.map) && self.clean.len() == known.len() {
            clean.extend_from_slice(self.clean.get(..n_first).unwrap_or_default());
            clean.resize(steps.len() - n_last, false);
            clean.extend_from_slice(self.clean.get(known.len() - n_last..).unwrap_or_default());
        }
        let mut heard = Heard::none(self.heard.vocabulary.clone());
        heard.take_over(&self.heard, 0..n_first);
        heard.hear(between, &self.head.language, &procedure.map);
        heard.take_over(&self.heard, known.len() - n_last..known.len());
        Self {
            map: procedure.map.clone(),
            head: scope,
            steps: steps.clone(),
            clean,
            unmet: None,
            heard,
            n_words_at_first: self.n_words_at_first,
        }
    }
}

impl Heard {
    /// What the words of a document say.
    pub(super) fn of(procedure: &Procedure) -> Self {
        let mut heard = Self::none(Vocabulary::new());
        heard.hear(&procedure.steps, &procedure.language, &procedure.map);
        heard
    }

    /// What no step says.
    fn none(vocabulary: Vocabulary) -> Self {
        Self {
            said: Vec::new(),
            ends: Vec::new(),
            lower: Lowered::default(),
            new_seals: Vec::new(),
            may_leave_out: Vec::new(),
            stating: Vec::new(),
            vocabulary,
        }
    }

    /// Adds what steps say; nothing but their vocabulary, if there is no lexicon for the language.
    fn hear(&mut self, steps: &[Arc<Step>], language: &str, map: &ApplianceMap) {
        let lexicon = Lexicon::for_language(language);
        let own = Own::of(&map.phrases);
        let n_before = self.ends.len();
        self.lower.add_all(steps.iter().map(|step| step.words.as_str()));
        let mut cut = Vec::new();
        // Most sentences say one thing or two.
        self.said.reserve(2 * steps.len());
        for (step, lower) in steps.iter().zip(self.lower.iter().skip(n_before)) {
            tokens_into(&step.words, lower, &mut cut);
            self.vocabulary.take_in(lower, &cut);
            if let Some(lexicon) = lexicon {
                lexicon.phrases_into(&cut, &own, &mut self.said);
            }
            let has_new_seal = step.actions.iter().any(|action| action.seal == Some(Renewal::New));
            let says_new = |lexicon: &Lexicon| lexicon.says_new_in(&cut, &[]);
            self.new_seals.push(has_new_seal && lexicon.is_some_and(says_new));
            self.may_leave_out.push(lexicon.is_some() && may_leave_out(&step.words, &step.actions));
            self.ends.push(self.said.len());
            self.stating.push(Stating::of(lexicon, &cut).map(Arc::new));
            for message in &step.messages {
                self.vocabulary.take_in(&message.avoidance.to_lowercase(), &tokens(&message.avoidance));
            }
        }
    }

    /// Adds what some steps of others say.
    fn take_over(&mut self, others: &Self, steps: std::ops::Range<usize>) {
        self.lower.take_over(&others.lower, steps.clone());
        self.stating.extend_from_slice(others.stating.get(steps.clone()).unwrap_or_default());
        self.new_seals.extend_from_slice(others.new_seals.get(steps.clone()).unwrap_or_default());
        self.may_leave_out.extend_from_slice(others.may_leave_out.get(steps.clone()).unwrap_or_default());
        let ends = others.ends.get(steps.clone()).unwrap_or_default();
        let from = others.begin(steps.start);
        let said = ends.last().and_then(|end| others.said.get(from..*end)).unwrap_or_default();
        let n_before = self.said.len();
        self.said.extend_from_slice(said);
        self.ends.extend(ends.iter().map(|end| n_before + end - from));
    }

    /// Where the verb phrases of the step at a position begin.
    fn begin(&self, position: usize) -> usize {
        position.checked_sub(1).and_then(|before| self.ends.get(before)).copied().unwrap_or(0)
    }

    /// The verb phrases of the step at a position; none, if there is no lexicon for the language.
    pub(super) fn said(&self, position: usize) -> &[Said] {
        let from = self.begin(position);
        self.ends.get(position).and_then(|end| self.said.get(from..*end)).unwrap_or_default()
    }

    /// Whether the words of the step at a position, of which an action makes with a new seal, say that one is new.
    pub(super) fn says_new_seal(&self, position: usize) -> bool {
        self.new_seals.get(position).copied().unwrap_or_default()
    }

    /// Whether the words of the step at a position may name more than its actions hold.
    pub(super) fn may_leave_out(&self, position: usize) -> bool {
        self.may_leave_out.get(position).copied().unwrap_or_default()
    }

    /// What the words of the step at a position state.
    pub(super) fn stating(&self, position: usize) -> Option<&Stating> {
        self.stating.get(position)?.as_deref()
    }

    /// The words in lower case of the step at a position.
    pub(super) fn lower_at(&self, position: usize) -> Option<Lower<'_>> {
        self.lower.get(position).map(Lower)
    }

    /// Those of some phrases in lower case that the words of a step or of its messages may hold.
    pub(super) fn held<'p>(&self, phrases: &[&'p str]) -> Vec<&'p str> {
        self.vocabulary.held(phrases)
    }
}
