//! The isolators that somebody can shut, and how each stands now.

use procedures_schema::derive::stands::position;
use procedures_schema::model::{Handle, Id, Isolator, Procedure};
use procedures_schema::simulate::{Place, Trace};

/// An isolator as it stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct IsolatorNow {
    /// Its identity.
    pub id: Id,
    /// Its name.
    pub name: String,
    /// Where it is.
    pub location: String,
    /// Whether it lets through.
    pub is_open: bool,
    /// How it stands, in words.
    pub words: String,
}

/// The isolators worked by hand, those that still let through first.
pub fn isolators_now(procedure: &Procedure, trace: &Trace, now: Place) -> Vec<IsolatorNow> {
    let by_hand =
        |isolator: &&Isolator| !matches!(isolator.handle, Handle::Automatic | Handle::Relief | Handle::None);
    let stands = |isolator: &Isolator| {
        let state = trace.plant().isolator_named(&isolator.id).and_then(|cell| trace.at(&cell, now))?;
        Some(IsolatorNow {
            id: isolator.id.clone(),
            name: isolator.name.clone(),
            location: isolator.location.clone(),
            is_open: state.open,
            words: in_words(&isolator.handle, state.open, state.locked),
        })
    };
    let mut found: Vec<_> = procedure.map.isolators.iter().filter(by_hand).filter_map(stands).collect();
    found.sort_by_key(|isolator| !isolator.is_open);
    found
}

fn in_words(handle: &Handle, is_open: bool, is_locked: bool) -> String {
    let words = position(handle, is_open);
    if is_locked { format!("{words}, locked") } else { words.to_owned() }
}

#[cfg(test)]
mod tests {
    use super::{Handle, in_words};
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test]
    fn a_lock_is_told_beside_the_position() {
        assert_eq!(in_words(&Handle::Switch, false, true), "off, locked");
        assert_eq!(in_words(&Handle::Valve, false, false), "closed");
        assert_eq!(in_words(&Handle::Plug, true, false), "in");
    }
}
