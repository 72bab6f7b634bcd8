//! The lanes beside the rows: of those in sight with each key, of the others by and by once typing has paused.
//!
//! A key in an early step may change the lanes of every row behind it. Nobody sees more than some twenty of them.

use super::judged::row_of;
use leptos::leptos_dom::helpers::{TimeoutHandle, set_timeout_with_handle};
use leptos::prelude::*;
use procedures_schema::derive::lanes::{LaneRow, Lanes};
use procedures_schema::model::Id;
use std::collections::{BTreeSet, HashMap};
use std::sync::Arc;
use std::time::Duration;

/// Procedures of so many steps are drawn with each key whole.
const MOST_AT_ONCE: usize = 60;
/// So many rows out of sight are drawn before the keyboard is listened to again.
const AT_A_TIME: usize = 25;

/// The rows of lanes, each in a signal of its own that is written only if it has changed.
#[derive(Clone, Copy)]
pub struct LaneRows {
    /// What those show who show the lanes of a step, or have shown them.
    shown: StoredValue<HashMap<Id, ArcRwSignal<Option<LaneRow>>>>,
    in_sight: StoredValue<BTreeSet<Id>>,
    now: StoredValue<Arc<Lanes>>,
    /// The position from which on rows may show what was before; none if all show what is now.
    left_from: StoredValue<Option<usize>>,
    timer: StoredValue<Option<TimeoutHandle>>,
}

impl LaneRows {
    /// Those of some lanes.
    pub(super) fn of(lanes: &Arc<Lanes>) -> Self {
        Self {
            shown: StoredValue::new(HashMap::new()),
            in_sight: StoredValue::new(BTreeSet::new()),
            now: StoredValue::new(lanes.clone()),
            left_from: StoredValue::new(None),
            timer: StoredValue::new(None),
        }
    }

    /// The lanes beside a step as they are, and as they will be.
    pub(super) fn row(self, step: &Id) -> ArcRwSignal<Option<LaneRow>> {
        let known = self.shown.with_value(|shown| shown.get(step).cloned());
        known.unwrap_or_else(|| {
            let row = ArcRwSignal::new(self.row_now(step));
            self.shown.update_value(|shown| drop(shown.insert(step.clone(), row.clone())));
            row
        })
    }

    /// Shows other lanes: at once beside the rows in sight.
    pub(super) fn follow(self, lanes: &Arc<Lanes>) {
        self.stop();
        self.now.set_value(lanes.clone());
        let is_short = lanes.rows.len() <= MOST_AT_ONCE;
        self.in_sight.with_value(|in_sight| {
            for row in lanes.rows.iter().filter(|row| is_short || in_sight.contains(&row.step)) {
                self.show(row);
            }
        });
        self.left_from.set_value((!is_short).then_some(0));
    }

    /// Lets the rows out of sight follow, a few at a time.
    pub(super) fn follow_up(self) {
        self.stop();
        if self.left_from.with_value(Option::is_some) {
            let timer = set_timeout_with_handle(move || self.go_on(), Duration::ZERO);
            self.timer.set_value(timer.ok());
        }
    }

    /// Rows come in sight, or go out of it.
    pub fn seen(self, changes: &[(Id, bool)]) {
        for (step, is_in_sight) in changes {
            self.in_sight.update_value(|in_sight| {
                if *is_in_sight {
                    in_sight.insert(step.clone());
                } else {
                    in_sight.remove(step);
                }
            });
            let has_waited = *is_in_sight && self.left_from.with_value(Option::is_some);
            if let Some(row) = has_waited.then(|| self.row_now(step)).flatten() {
                self.show(&row);
            }
        }
    }

    fn row_now(self, step: &Id) -> Option<LaneRow> {
        self.now.with_value(|lanes| row_of(lanes, usize::MAX, step).cloned())
    }

    fn go_on(self) {
        let Some(from) = self.left_from.get_value() else { return };
        let lanes = self.now.get_value();
        let mut n_drawn = 0;
        let mut rows = lanes.rows.iter().enumerate().skip(from);
        let next = rows.find(|(_, row)| {
            n_drawn += usize::from(self.show(row));
            n_drawn >= AT_A_TIME
        });
        self.left_from.set_value(next.map(|(position, _)| position + 1));
        self.follow_up();
    }

    /// Shows a row to those who show one of its step; says whether it is another one.
    fn show(self, row: &LaneRow) -> bool {
        let shown = self.shown.with_value(|shown| shown.get(&row.step).cloned());
        let Some(shown) = shown.filter(|shown| shown.with_untracked(|shown| shown.as_ref() != Some(row)))
        else {
            return false;
        };
        shown.set(Some(row.clone()));
        true
    }

    fn stop(self) {
        if let Some(timer) = self.timer.try_update_value(Option::take).flatten() {
            timer.clear();
        }
    }
}
