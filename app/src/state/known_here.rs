//! What is true where a line stands, kept while the run, the map and the place are the same: a key changes none of them.

use super::judged::Judged;
use super::rereading;
use leptos::prelude::{SetValue, StoredValue, WithValue};
use procedures_schema::capture::Here;
use procedures_schema::model::ApplianceMap;
use procedures_schema::simulate::Trace;
use std::sync::Arc;

/// What was true there when somebody asked last.
#[derive(Clone, Copy)]
pub struct KnownHere(StoredValue<Option<Known>>);

struct Known {
    trace: Arc<Trace>,
    map: Arc<ApplianceMap>,
    at: usize,
    here: Arc<Here>,
}

impl Default for KnownHere {
    fn default() -> Self {
        Self(StoredValue::new(None))
    }
}

impl KnownHere {
    /// What is true before the step at a position.
    pub(super) fn at(self, judged: &Judged, at: usize) -> Arc<Here> {
        let (trace, map) = (&judged.trace, &judged.document.map);
        let is_it = |known: &&Known| {
            known.at == at && Arc::ptr_eq(&known.trace, trace) && Arc::ptr_eq(&known.map, map)
        };
        let known = self.0.with_value(|known| known.as_ref().filter(is_it).map(|known| known.here.clone()));
        known.unwrap_or_else(|| {
            let here = rereading::here(judged, at);
            let (trace, map) = (trace.clone(), map.clone());
            self.0.set_value(Some(Known { trace, map, at, here: here.clone() }));
            here
        })
    }
}
