//! The earlier versions of the open procedure, read one after the other so that the screen is there at once.

use crate::state::EditorStore;
use crate::state::versions::{self, Stamp};
use leptos::prelude::*;
use leptos::task::spawn_local;
use procedures_schema::compare::changes;
use procedures_schema::model::{Id, Procedure};
use std::collections::BTreeMap;
use std::sync::Arc;

/// A version, or why it cannot be read.
pub type Read = Result<Arc<Procedure>, String>;

/// What has been found.
#[derive(Clone, Copy)]
pub struct Found {
    /// The versions there are, the newest first; none until the device has been asked.
    pub stamps: RwSignal<Option<Result<Vec<Stamp>, String>>>,
    read: RwSignal<BTreeMap<Stamp, Read>>,
}

impl Found {
    /// Begins to look.
    pub fn of(store: EditorStore) -> Self {
        let found = Self { stamps: RwSignal::new(None), read: RwSignal::new(BTreeMap::new()) };
        let id = Memo::new(move |_| store.document().with(|document| document.id.clone()));
        Effect::new(move |_| {
            let id = id.get();
            spawn_local(found.look(id));
        });
        found
    }

    async fn look(self, id: Id) {
        let stamps = versions::earlier(&id).await;
        // The screen may have been left meanwhile.
        if self.stamps.try_set(Some(stamps.clone())).is_some() {
            return;
        }
        for stamp in stamps.unwrap_or_default() {
            let read = versions::version(&id, stamp).await;
            if self.read.try_update(|all| all.insert(stamp, read)).is_none() {
                return;
            }
        }
    }

    /// A version, once it has been read.
    pub fn version(self, stamp: Stamp) -> Option<Read> {
        self.read.with(|read| read.get(&stamp).cloned())
    }

    /// What differs in a later state from a version, in words; none while that is not known.
    pub fn since(self, stamp: Stamp, later: &Procedure) -> Option<Vec<String>> {
        match self.version(stamp)? {
            Ok(before) => Some(changes(&before, later).lines()),
            Err(_) => None,
        }
    }
}
