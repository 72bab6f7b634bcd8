//! What the rows show, each part in a signal of its own that is written only if that part has changed.
//!
//! A memo a row that looks at the whole document would be asked at every key, in a long procedure for far
//! longer than the check takes. So whoever changes the document says so once, and what differs is spread to
//! those who show it.

use super::judged::{Judged, most_apart};
use super::lane_rows::LaneRows;
use super::told::Told;
use leptos::prelude::*;
use procedures_schema::derive::lanes::{LaneHead, Lanes};
use procedures_schema::edit::Session;
use procedures_schema::model::{ApplianceMap, Id, Procedure, Question, Stage, Step};
use std::collections::{BTreeSet, HashMap};
use std::sync::Arc;

/// The names of what undo and redo would do.
pub(super) type UndoLabels = (Option<String>, Option<String>);

/// The parts of a document and of its picture.
#[derive(Clone, Copy)]
pub(super) struct Spread {
    pub(super) told: RwSignal<Told>,
    pub(super) map: RwSignal<Arc<ApplianceMap>>,
    /// The ids of the steps in order.
    pub(super) places: RwSignal<Arc<Vec<Id>>>,
    /// By position the stage that begins with a step.
    pub(super) stages: RwSignal<Arc<Vec<Option<Stage>>>>,
    pub(super) questions: RwSignal<Arc<Vec<Question>>>,
    pub(super) lanes: RwSignal<Arc<Lanes>>,
    pub(super) heads: RwSignal<Arc<Vec<LaneHead>>>,
    pub(super) most_apart: RwSignal<u32>,
    pub(super) undo_labels: RwSignal<UndoLabels>,
    pub(super) lane_rows: LaneRows,
    /// The steps that somebody shows or has shown; none where one has gone.
    steps: StoredValue<HashMap<Id, ArcRwSignal<Option<Arc<Step>>>>>,
    /// The document that was spread last.
    last: StoredValue<Arc<Procedure>>,
}

impl Spread {
    pub(super) fn of(judged: &Judged, session: &Session) -> Self {
        let document = &judged.document;
        Self {
            told: RwSignal::new(Told::of(judged)),
            map: RwSignal::new(document.map.clone()),
            places: RwSignal::new(Arc::new(places(document))),
            stages: RwSignal::new(Arc::new(begun_stages(document))),
            questions: RwSignal::new(Arc::new(document.questions.clone())),
            lanes: RwSignal::new(judged.lanes.clone()),
            heads: RwSignal::new(Arc::new(judged.lanes.heads.clone())),
            most_apart: RwSignal::new(most_apart(&judged.lanes)),
            undo_labels: RwSignal::new(labels(session)),
            lane_rows: LaneRows::of(&judged.lanes),
            steps: StoredValue::new(HashMap::new()),
            last: StoredValue::new(document.clone()),
        }
    }

    /// Writes what has changed.
    pub(super) fn follow(self, judged: &Judged, session: &Session) {
        let is_named = |(undo, redo): &UndoLabels| {
            undo.as_deref() == session.undo_label() && redo.as_deref() == session.redo_label()
        };
        if !self.undo_labels.with_untracked(is_named) {
            self.undo_labels.set(labels(session));
        }
        let told = Told::of(judged);
        if self.told.with_untracked(|shown| *shown != told) {
            self.told.set(told);
        }
        let document = &judged.document;
        if !self.map.with_untracked(|map| Arc::ptr_eq(map, &document.map)) {
            self.map.set(document.map.clone());
        }
        if self.questions.with_untracked(|questions| **questions != document.questions) {
            self.questions.set(Arc::new(document.questions.clone()));
        }
        self.follow_steps(document);
        if !self.lanes.with_untracked(|lanes| Arc::ptr_eq(lanes, &judged.lanes)) {
            if self.heads.with_untracked(|shown| **shown != judged.lanes.heads) {
                self.heads.set(Arc::new(judged.lanes.heads.clone()));
            }
            let most = most_apart(&judged.lanes);
            if self.most_apart.get_untracked() != most {
                self.most_apart.set(most);
            }
            self.lanes.set(judged.lanes.clone());
            self.lane_rows.follow(&judged.lanes);
        }
    }

    fn follow_steps(self, document: &Arc<Procedure>) {
        let before = self.last.try_update_value(|last| std::mem::replace(last, document.clone()));
        let Some(before) = before.filter(|before| !Arc::ptr_eq(before, document)) else { return };
        let pairs = || before.steps.iter().zip(&document.steps).filter(|(old, new)| !Arc::ptr_eq(old, new));
        let is_same_order =
            before.steps.len() == document.steps.len() && pairs().all(|(old, new)| old.id == new.id);
        self.steps.with_value(|shown| {
            if is_same_order {
                for (_, step) in pairs() {
                    shown.get(&step.id).into_iter().for_each(|shown| show(shown, Some(step)));
                }
            } else {
                let there: BTreeSet<&Id> = document.steps.iter().map(|step| &step.id).collect();
                let gone = before.steps.iter().filter(|step| !there.contains(&step.id));
                let all = gone.map(|step| (&step.id, None));
                let all = all.chain(document.steps.iter().map(|step| (&step.id, Some(step))));
                for (id, step) in all {
                    shown.get(id).into_iter().for_each(|shown| show(shown, step));
                }
            }
        });
        if !is_same_order {
            self.places.set(Arc::new(places(document)));
        }
        if !is_same_order || pairs().any(|(old, new)| old.stage != new.stage) {
            self.stages.set(Arc::new(begun_stages(document)));
        }
    }

    /// One step as it is, and as it will be.
    pub(super) fn step(self, id: &Id, document: &Procedure) -> ArcRwSignal<Option<Arc<Step>>> {
        let known = self.steps.with_value(|steps| steps.get(id).cloned());
        known.unwrap_or_else(|| {
            let now = document.position(id).and_then(|at| document.steps.get(at).cloned());
            let step = ArcRwSignal::new(now);
            self.steps.update_value(|steps| drop(steps.insert(id.clone(), step.clone())));
            step
        })
    }
}

fn show(signal: &ArcRwSignal<Option<Arc<Step>>>, step: Option<&Arc<Step>>) {
    let is_shown = signal.with_untracked(|shown| match (shown, step) {
        (Some(shown), Some(step)) => Arc::ptr_eq(shown, step),
        (None, None) => true,
        _ => false,
    });
    if !is_shown {
        signal.set(step.cloned());
    }
}

fn labels(session: &Session) -> UndoLabels {
    (session.undo_label().map(str::to_owned), session.redo_label().map(str::to_owned))
}

fn places(document: &Procedure) -> Vec<Id> {
    document.steps.iter().map(|step| step.id.clone()).collect()
}

fn begun_stages(document: &Procedure) -> Vec<Option<Stage>> {
    let mut before: Option<&Stage> = None;
    let begins =
        |step: &Arc<Step>, before: Option<&Stage>| (before != Some(&step.stage)).then(|| step.stage.clone());
    let mut stages = Vec::with_capacity(document.steps.len());
    for step in &document.steps {
        stages.push(begins(step, before));
        before = Some(&step.stage);
    }
    stages
}
