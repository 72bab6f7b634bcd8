//! What wants a look after a text was pasted: what is asked, and what was not understood.

use super::alike::Asked;
use super::attention::Focus;
use super::doubts::{AskedFrom, Open, open_doubts};
use super::editor_store::EditorStore;
use super::ids::RandomIds;
use super::judged::Judged;
use super::making::Act;
use super::shelf::UNTITLED;
use leptos::prelude::*;
use procedures_schema::capture::Pasted;
use procedures_schema::edit::{Edit, Session};
use procedures_schema::model::{Id, IdSource, Stage, Step};
use std::sync::Arc;

/// What came of a pasted text.
#[derive(Clone, Debug, PartialEq)]
pub struct Review {
    /// The head: "30 lines, 34 steps, …".
    pub head: String,
    /// The steps that want a look, in order.
    pub steps: Vec<ToLookAt>,
    /// The first line of the text, if it became the name of the procedure.
    pub title: Option<String>,
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
}

impl Review {
    /// Of what was pasted, and the title that was taken off it.
    pub(super) fn of(pasted: &Pasted, title: Option<String>, n_done: usize) -> Self {
        let is_asked = |step: &Step| {
            pasted.decisions.iter().any(|one| one.step == step.id)
                || pasted.asked.iter().any(|(id, _)| *id == step.id)
        };
        let was_not_understood = |step: &Step| pasted.not_understood.iter().any(|one| one.step == step.id);
        let wants = pasted.steps.iter().filter(|step| is_asked(step) || was_not_understood(step));
        let steps =
            wants.map(|step| ToLookAt { step: Arc::new(step.clone()), is_asked: is_asked(step) }).collect();
        let first = pasted.steps.first().map(|step| step.id.clone());
        Self { head: head(pasted), steps, title, first, n_done }
    }
}

impl ToLookAt {
    /// Whether it still wants a look: nobody has touched it, or something is still asked in it.
    fn is_open(&self, judged: &Judged) -> bool {
        let Some(at) = judged.document.position(&self.step.id) else { return false };
        let now = judged.document.steps.get(at);
        let is_untouched = now.is_some_and(|now| **now == *self.step);
        is_untouched || (self.is_asked && !open_doubts(judged, &self.step.id).is_empty())
    }
}

fn head(pasted: &Pasted) -> String {
    let counts = pasted.counts;
    let to_decide = match (counts.to_decide, n_different(pasted)) {
        (n, 1) if n > 1 => "to decide, in one question".to_owned(),
        (n, different) if n > different => format!("to decide, in {different} questions"),
        _ => "to decide".to_owned(),
    };
    let mut parts = vec![format!("{} lines", counts.lines), format!("{} steps", counts.steps)];
    let more = [
        (pasted.made.len(), "new on the appliance"),
        (counts.to_decide, &to_decide),
        (counts.not_understood, "not understood"),
        (counts.later, "to be found out later"),
    ];
    parts.extend(more.into_iter().filter(|(n, _)| *n > 0).map(|(n, what)| format!("{n} {what}")));
    parts.join(" · ")
}

/// How many different questions there are.
fn n_different(pasted: &Pasted) -> usize {
    let words = |id: &Id| {
        pasted.steps.iter().find(|step| step.id == *id).map(|step| step.words.as_str()).unwrap_or_default()
    };
    let things =
        pasted.decisions.iter().map(|one| Asked::of(&Open::Thing(one.doubt.clone()), words(&one.step)));
    let circuits = pasted.asked.iter().map(|(id, one)| Asked::of(&Open::Making(one.clone()), words(id)));
    let mut different: Vec<Asked> = Vec::new();
    for asked in things.chain(circuits) {
        if !different.contains(&asked) {
            different.push(asked);
        }
    }
    different.len()
}

impl EditorStore {
    /// The steps of the pasted text that still want a look, once typing has paused.
    pub fn left_of_review(self) -> Memo<Vec<Id>> {
        let (review, settled) = (self.review(), self.settled());
        Memo::new(move |_| {
            let left = |review: &Review| settled.with(|judged| left(review, judged));
            review.with(|review| review.as_ref().map(left).unwrap_or_default())
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
        let left = left(&review, &judged);
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

fn left(review: &Review, judged: &Judged) -> Vec<Id> {
    let open = review.steps.iter().filter(|one| one.is_open(judged));
    let mut places: Vec<(usize, &Id)> =
        open.filter_map(|one| Some((judged.document.position(&one.step.id)?, &one.step.id))).collect();
    places.sort_unstable();
    places.into_iter().map(|(_, step)| step.clone()).collect()
}
