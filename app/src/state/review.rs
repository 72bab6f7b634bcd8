//! What wants a look after a text was pasted: what is asked, and what was not understood.

use super::alike::Asked;
use super::attention::Focus;
use super::doubts::{AskedFrom, Open, open_doubts};
use super::editor_store::EditorStore;
use super::ids::RandomIds;
use super::judged::Judged;
use super::making::Act;
use super::plain_rows::plain_steps;
use super::shelf::UNTITLED;
use leptos::prelude::*;
use procedures_schema::capture::{Counts, Pasted, SourceLine};
use procedures_schema::edit::{Edit, Session};
use procedures_schema::model::{Id, IdSource, Procedure, Stage, Step};
use std::sync::Arc;

/// What came of a pasted text.
#[derive(Clone, Debug, PartialEq)]
pub struct Review {
    /// The steps that want a look, in order.
    pub steps: Vec<ToLookAt>,
    /// The first line of the text, if it became the name of the procedure.
    pub title: Option<String>,
    /// The text as it was pasted.
    pub(super) text: Arc<str>,
    /// The procedure as it was before, and where in it the text went.
    pub(super) before: (Arc<Procedure>, usize),
    counts: Counts,
    n_new: usize,
    /// The first step of the text.
    first: Option<Id>,
    /// How many entries of undo lay behind the document once it was there.
    n_done: usize,
}

/// A step that wants a look.
#[derive(Clone, Debug, PartialEq)]
pub struct ToLookAt {
    /// As it was pasted.
    pub step: Arc<Step>,
    /// Whether something is asked in it; otherwise it was not understood.
    pub is_asked: bool,
    /// The line of the text that it comes from.
    pub source: Option<SourceLine>,
    /// Why it was not understood.
    pub reason: Option<String>,
    /// What is asked in it as it was pasted.
    asked: Vec<Asked>,
}

/// What of a pasted text still wants a look.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Left {
    /// The steps, in order.
    pub steps: Vec<Id>,
    /// How many places there are to decide.
    pub n_to_decide: usize,
    /// How many different questions that are.
    pub n_questions: usize,
    /// How many steps are not understood.
    pub n_not_understood: usize,
}

impl Review {
    /// Of what was pasted, and the title that was taken off it.
    pub(super) fn of(
        pasted: &Pasted,
        title: Option<String>,
        n_done: usize,
        text: &Arc<str>,
        before: (Arc<Procedure>, usize),
    ) -> Self {
        let of_step = |step: &Step| ToLookAt::of(step, pasted);
        Self {
            steps: pasted.steps.iter().filter_map(of_step).collect(),
            title,
            text: text.clone(),
            before,
            counts: pasted.counts,
            n_new: pasted.made.len(),
            first: pasted.steps.first().map(|step| step.id.clone()),
            n_done,
        }
    }

    /// The head, "30 lines · 34 steps · …", with what is left of it.
    pub fn head(&self, left: &Left) -> String {
        let to_decide = match (left.n_to_decide, left.n_questions) {
            (n, 1) if n > 1 => "to decide, in one question".to_owned(),
            (n, different) if n > different => format!("to decide, in {different} questions"),
            _ => "to decide".to_owned(),
        };
        let counts = self.counts;
        let mut parts = vec![format!("{} lines", counts.lines), format!("{} steps", counts.steps)];
        let more = [
            (self.n_new, "new on the appliance"),
            (left.n_to_decide, to_decide.as_str()),
            (left.n_not_understood, "not understood"),
            (counts.later, "to be found out later"),
        ];
        parts.extend(more.into_iter().filter(|(n, _)| *n > 0).map(|(n, what)| format!("{n} {what}")));
        let is_decided = counts.to_decide > 0 && left.n_to_decide == 0;
        parts.extend(is_decided.then(|| "nothing left to decide".to_owned()));
        parts.join(" · ")
    }

    /// What is left of it. A step that nobody has touched asks what it asked when it was pasted.
    fn left(&self, judged: &Judged) -> Left {
        // Until the page has come to rest, the steps are not in what is judged there.
        let is_there = self.first.as_ref().is_some_and(|first| judged.document.position(first).is_some());
        let mut left = Left::default();
        let mut places: Vec<(usize, &Id)> = Vec::new();
        let mut different: Vec<Asked> = Vec::new();
        for (nth, one) in self.steps.iter().enumerate() {
            let place = if is_there { judged.document.position(&one.step.id) } else { Some(nth) };
            let Some(place) = place else { continue };
            let now = judged.document.steps.get(place).filter(|_| is_there);
            let is_untouched = now.is_none_or(|now| **now == *one.step);
            let asked = one.asked_now(judged, now.filter(|_| !is_untouched));
            if is_untouched || !asked.is_empty() {
                places.push((place, &one.step.id));
            }
            left.n_not_understood += usize::from(is_untouched && !one.is_asked);
            left.n_to_decide += asked.len();
            for asked in asked {
                if !different.contains(&asked) {
                    different.push(asked);
                }
            }
        }
        places.sort_unstable();
        left.steps = places.into_iter().map(|(_, step)| step.clone()).collect();
        left.n_questions = different.len();
        left
    }
}

impl ToLookAt {
    /// A step of a pasted text, if it wants a look.
    fn of(step: &Step, pasted: &Pasted) -> Option<Self> {
        let things = pasted.decisions.iter().filter(|one| one.step == step.id);
        let things = things.map(|one| Asked::of(&Open::Thing(one.doubt.clone()), &step.words));
        let made = pasted.asked.iter().filter(|(id, _)| *id == step.id);
        let made = made.map(|(_, one)| Asked::of(&Open::Making(one.clone()), &step.words));
        let asked: Vec<Asked> = things.chain(made).collect();
        let not_understood = pasted.not_understood.iter().find(|one| one.step == step.id);
        (!asked.is_empty() || not_understood.is_some()).then(|| Self {
            step: Arc::new(step.clone()),
            is_asked: !asked.is_empty(),
            source: pasted.sources.iter().find(|source| source.step == step.id).cloned(),
            reason: not_understood.map(|one| one.reason.clone()),
            asked,
        })
    }

    /// What is asked in it; `touched` is the step if somebody has changed it.
    fn asked_now(&self, judged: &Judged, touched: Option<&Arc<Step>>) -> Vec<Asked> {
        match touched {
            None => self.asked.clone(),
            Some(_) if !self.is_asked => Vec::new(),
            Some(now) => {
                let open = open_doubts(judged, &self.step.id);
                open.iter().map(|open| Asked::of(open, &now.words)).collect()
            }
        }
    }
}

impl EditorStore {
    /// What of the pasted text still wants a look, once typing has paused.
    pub fn left_of_review(self) -> Memo<Left> {
        let (review, settled) = (self.review(), self.settled());
        Memo::new(move |_| {
            let left = |review: &Review| settled.with(|judged| review.left(judged));
            review.with(|review| review.as_ref().map(left).unwrap_or_default())
        })
    }

    /// The line of the pasted text that a step comes from, and why it was not understood.
    pub fn source_in_review(self, step: &Id) -> Option<(SourceLine, Option<String>)> {
        self.review().with(|review| {
            let one = review.as_ref()?.steps.iter().find(|one| one.step.id == *step)?;
            Some((one.source.clone()?, one.reason.clone()))
        })
    }

    /// How many edits have been made since a text was pasted; none once it has been taken back.
    pub fn since_review(self) -> Memo<Option<usize>> {
        let (review, order, session) = (self.review(), self.order(), self.parts().session);
        Memo::new(move |_| {
            let (first, then) =
                review.with(|review| Some((review.as_ref()?.first.clone()?, review.as_ref()?.n_done)))?;
            let is_there = order.with(|order| order.contains(&first));
            is_there.then(|| session.with(Session::n_done).saturating_sub(then))
        })
    }

    /// The steps of the pasted text in which something was asked.
    pub(super) fn asked_in_review(self) -> Vec<Id> {
        let asked = |review: &Review| {
            let asked = review.steps.iter().filter(|one| one.is_asked);
            asked.map(|one| one.step.id.clone()).collect()
        };
        self.review().with_untracked(|review| review.as_ref().map(asked).unwrap_or_default())
    }

    /// Whether a step is one of those.
    pub(super) fn is_in_review(self, step: &Id) -> bool {
        self.asked_in_review().contains(step)
    }

    /// Goes to the next step of the pasted text that wants a look, round the end.
    pub(super) fn next_of_review(self) {
        let Some(review) = self.review().get_untracked() else { return };
        let judged = self.judged_now();
        let left = review.left(&judged).steps;
        let position = |step: &Id| judged.document.position(step);
        let here = self.selected_now().and_then(|step| position(&step));
        let next = left.iter().find(|step| here.is_none_or(|here| position(step) > Some(here)));
        if let Some(step) = next.or(left.first())
            && !self.ask(step, AskedFrom::Review)
        {
            self.select(Some(step.clone()));
        }
    }

    /// Takes the pasted text back, with what has been answered and changed since; nothing, if undo does not reach so
    /// far back any more.
    pub(super) fn undo_review(self) {
        let Some(review) = self.review().get_untracked() else { return };
        let (n_done, n_undo) = self.parts().session.with_untracked(|now| (now.n_done(), now.n_undo()));
        let n = (n_done + 1).saturating_sub(review.n_done);
        if n > n_undo {
            let words = "Nothing was taken back: undo does not reach back to the pasted text any more.";
            self.notice().set(Some(words.to_owned()));
            return;
        }
        self.review().set(None);
        (0..n).for_each(|_| self.undo());
        self.look_at(Focus::LastLine);
    }

    /// Puts the lines of the pasted text in its place as they are, without a reading of their words. What has been
    /// answered and changed since goes with it, and one undo brings all of it back.
    pub(super) fn plain_review(self) {
        let Some(review) = self.review().get_untracked() else { return };
        let Some(n_since) = self.since_review().get_untracked() else { return };
        let (before, at) = &review.before;
        let steps = plain_steps(before, *at, &review.text);
        let mut document = Procedure::clone(before);
        let at = (*at).min(document.steps.len());
        let first = steps.first().map(|step| step.id.clone());
        document.steps.splice(at..at, steps);
        let edit = Edit::Replace(Arc::new(document));
        if self.edit(&[edit], "take the text as plain rows", None) {
            self.asked_from().set_value(None);
            self.select(first);
            let since = match n_since {
                0 => "Undo brings back what was read.",
                1 => "One change since went with it; undo brings both back.",
                _ => "What was changed since went with it; undo brings all of it back.",
            };
            self.notice().set(Some(format!("The text stands as plain rows. {since}")));
        }
    }

    /// Goes to the first question of the pasted text; says whether there is one.
    pub(super) fn ask_first_of_review(self) -> bool {
        let Some(review) = self.review().get_untracked() else { return false };
        let mut asked = review.steps.iter().filter(|one| one.is_asked);
        asked.any(|one| self.ask(&one.step.id, AskedFrom::Review))
    }

    /// Selects the first step of the pasted text that wants a look; says whether there is one.
    pub(super) fn select_first_of_review(self) -> bool {
        let first =
            self.review().with_untracked(|review| Some(review.as_ref()?.steps.first()?.step.id.clone()));
        let is_any = first.is_some();
        if is_any {
            self.select(first);
        }
        is_any
    }

    /// Makes a step of the line that became the name of the procedure, above the others; it has no name then.
    pub(super) fn title_is_step(self) {
        let Some(review) = self.review().get_untracked() else { return };
        let Some(title) = &review.title else { return };
        let document = self.document_now();
        let at = review.first.as_ref().and_then(|first| document.position(first)).unwrap_or(0);
        let stage = document.steps.get(at).map_or(Stage::Prepare, |step| step.stage.clone());
        let id = RandomIds.next_id("step");
        let step = Arc::new(Step::new(id.clone(), stage, title));
        let act = Act::about(&id, "make a step of the title".to_owned());
        let edits = [Edit::SetTitle(UNTITLED.to_owned()), Edit::InsertStep { at, step }];
        if self.edit(&edits, &act.label, act.group.as_deref()) {
            self.make_things(&id, &[], Some(&act));
            self.close_group();
            self.review().set(Some(Review { title: None, first: Some(id.clone()), ..review }));
            self.select(Some(id));
        }
    }

    /// Goes to the next question of the pasted text behind a step, round the end; says whether there is one.
    pub(super) fn ask_next_of_review(self, here: &Id) -> bool {
        let Some(review) = self.review().get_untracked() else { return false };
        let document = self.document_now();
        let place = document.position(here);
        let asked = review.steps.iter().filter(|one| one.is_asked).map(|one| &one.step.id);
        let (behind, before): (Vec<&Id>, Vec<&Id>) = asked.partition(|step| document.position(step) > place);
        behind.into_iter().chain(before).any(|step| self.ask(step, AskedFrom::Review))
    }
}
