//! Writing a document that was written before: of what is the very same, the text is taken over.
//!
//! While somebody types, all is kept again and again, and one step is another.

use super::write::{put, put_items, put_key};
use crate::model::{ApplianceMap, Procedure, Step};
use serde::Serialize;
use serde_json::Value;
use std::collections::BTreeMap;
use std::sync::Arc;

/// Where the steps stand in the text, and where the map does.
const DEPTH_OF_STEPS: usize = 2;
const DEPTH_OF_MAP: usize = 1;

/// The texts of what was written last.
#[derive(Debug, Default)]
pub struct Rewriter {
    map: Option<(Arc<ApplianceMap>, String)>,
    steps: Vec<(Arc<Step>, String)>,
}

impl Rewriter {
    /// What [`write`](super::write()) gives for a document.
    pub fn write(&mut self, procedure: &Procedure) -> String {
        self.take_in(procedure);
        let mut text = String::with_capacity(self.n_bytes());
        let head = serde_json::to_value(procedure.head()).unwrap_or(Value::Null);
        let fields = head.as_object().into_iter().flatten();
        put_items('{', '}', fields, 0, &mut text, |(key, value), text| {
            put_key(key, text);
            match (key.as_str(), &self.map) {
                ("map", Some((_, map))) => text.push_str(map),
                ("steps", _) if !self.steps.is_empty() => {
                    let steps = self.steps.iter().map(|(_, step)| step.as_str());
                    put_items('[', ']', steps, 1, text, |step, text| text.push_str(step));
                }
                _ => put(value, 1, text),
            }
        });
        text.push('\n');
        text
    }

    /// Writes what is new.
    fn take_in(&mut self, procedure: &Procedure) {
        if self.map.as_ref().is_none_or(|(known, _)| !Arc::ptr_eq(known, &procedure.map)) {
            self.map = Some((procedure.map.clone(), text_of(&procedure.map, DEPTH_OF_MAP)));
        }
        let mut known: BTreeMap<*const Step, (Arc<Step>, String)> = BTreeMap::new();
        for one in std::mem::take(&mut self.steps) {
            known.insert(Arc::as_ptr(&one.0), one);
        }
        let written = |step: &Arc<Step>| (step.clone(), text_of(step, DEPTH_OF_STEPS));
        let steps = procedure.steps.iter();
        self.steps =
            steps.map(|step| known.remove(&Arc::as_ptr(step)).unwrap_or_else(|| written(step))).collect();
    }

    fn n_bytes(&self) -> usize {
        let steps: usize = self.steps.iter().map(|(_, step)| step.len() + 8).sum();
        steps + self.map.as_ref().map_or(0, |(_, map)| map.len()) + 4096
    }
}

fn text_of<T: Serialize>(part: &T, depth: usize) -> String {
    let mut text = String::new();
    put(&serde_json::to_value(part).unwrap_or(Value::Null), depth, &mut text);
    text
}
