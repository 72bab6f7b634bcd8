//! What would mend a finding, looked for while nobody types.
//!
//! Looking costs a check for every place that is tried. So it waits until the texts of the findings have
//! stood for a moment, takes one finding at a time, and leaves it to the person to ask once it has been slow.

use super::attention::Focus;
use super::clock;
use super::editor_store::EditorStore;
use super::judged::Judged;
use leptos::leptos_dom::helpers::{TimeoutHandle, set_timeout_with_handle};
use leptos::prelude::*;
use procedures_schema::check::{Finding, Fix, fixes};
use procedures_schema::model::Id;
use std::sync::Arc;
use std::time::Duration;

/// How long the findings stand before their remedies are looked for.
const PAUSE: Duration = Duration::from_millis(400);
/// A look of this length is felt.
const SLOW_MS: u64 = 150;

/// What is known of the remedy of a finding.
#[derive(Clone, Debug, Default, PartialEq)]
pub enum Remedy {
    /// Not looked for yet.
    #[default]
    Open,
    /// Not looked for, because that was slow last time.
    Slow,
    /// Somebody asked, and there is none that is ready.
    None,
    /// One of these mends it; there are several where only the writer knows which.
    Ready(Vec<Fix>),
}

/// The remedy of one finding, as long as the finding is shown.
#[derive(Clone, Copy)]
pub struct Looking {
    store: EditorStore,
    finding: StoredValue<Finding>,
    remedy: RwSignal<Remedy>,
    looked_at: StoredValue<Option<Arc<Judged>>>,
}

impl Looking {
    /// Begins to look for the remedy of a finding; stops when the view that asks is gone.
    pub fn new(store: EditorStore, finding: &Finding) -> Self {
        let looking = Self {
            store,
            finding: StoredValue::new(finding.clone()),
            remedy: RwSignal::default(),
            looked_at: StoredValue::new(None),
        };
        let timer: StoredValue<Option<TimeoutHandle>> = StoredValue::new(None);
        let stop = move || {
            if let Some(timer) = timer.try_update_value(Option::take).flatten() {
                timer.clear();
            }
        };
        let settled = store.settled();
        Effect::new(move |_| {
            settled.track();
            stop();
            if store.is_slow_to_mend() {
                looking.remedy.set(Remedy::Slow);
            } else {
                looking.remedy.set(Remedy::Open);
                timer.set_value(set_timeout_with_handle(move || looking.look_unasked(), PAUSE).ok());
            }
        });
        on_cleanup(stop);
        looking
    }

    /// What is known.
    pub fn remedy(self) -> ReadSignal<Remedy> {
        self.remedy.read_only()
    }

    /// Looks while nobody waits; finding nothing is not worth a word then.
    fn look_unasked(self) {
        self.look();
        if self.remedy.try_get_untracked() == Some(Remedy::None) {
            self.remedy.set(Remedy::Open);
        }
    }

    /// Looks now.
    pub fn look(self) {
        let Some(shown) = self.finding.try_get_value() else { return };
        let judged = self.store.settled().get_untracked();
        let began = clock::now_ms();
        // Shown is what it says; what else it holds may have changed since.
        let is_shown = |f: &&Finding| f.code == shown.code && f.step == shown.step && f.title == shown.title;
        let finding = judged.report.findings.iter().find(is_shown);
        let found = finding.map(|finding| fixes(&judged.document, finding, clock::today()));
        self.store.took_to_mend(clock::now_ms().saturating_sub(began) > SLOW_MS);
        self.looked_at.set_value(Some(judged));
        let found = found.filter(|found| !found.is_empty());
        self.remedy.set(found.map_or(Remedy::None, Remedy::Ready));
    }

    /// Applies a remedy, by its position, as it is for the document as it stands. Whoever did that by the keyboard, whose
    /// key goes with the finding, goes on at its step.
    pub fn apply(self, at: usize, is_by_keyboard: bool) {
        let is_for_this = |judged: &Option<Arc<Judged>>| {
            judged.as_ref().is_some_and(|judged| Arc::ptr_eq(&judged.document, &self.store.document_now()))
        };
        if !self.looked_at.with_value(is_for_this) {
            self.look();
        }
        if let Remedy::Ready(found) = self.remedy.get_untracked()
            && let Some(fix) = found.get(at)
        {
            let step = self.finding.with_value(|finding| finding.step.clone());
            if self.store.apply_fix(fix) && is_by_keyboard {
                self.store.look_at(step.map_or(Focus::End, Focus::Row));
            }
        }
    }
}

impl EditorStore {
    /// Applies the first remedy of the findings of a step; says so if there is none. To leave words unread is none: that
    /// throws away what somebody wrote, and only its own key does it.
    pub(super) fn mend(self, step: &Id) {
        let judged = self.judged_now();
        let found = judged.findings_at(Some(step));
        let mut found = found.iter().flat_map(|finding| fixes(&judged.document, finding, clock::today()));
        match found.find(|fix| !fix.declines(&judged.document)) {
            // A row that moves loses the keyboard on the way.
            Some(fix) if self.apply_fix(&fix) => self.stay_at(step),
            Some(_) => {}
            None => self
                .notice()
                .set(Some("Nothing ready would mend this step; its findings say what to do.".to_owned())),
        }
    }

    /// The same for the step before a line: the one that is given, or the last.
    pub(super) fn mend_before(self, step: Option<Id>) {
        let last = || self.document_now().steps.last().map(|step| step.id.clone());
        if let Some(step) = step.or_else(last) {
            self.mend(&step);
        }
    }

    fn apply_fix(self, fix: &Fix) -> bool {
        self.edit(&fix.edits, &fix.label, None)
    }
}
