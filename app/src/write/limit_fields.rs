//! The limits of an action's readings, among the few fields of its token: of its own readings, or of those that are taken
//! where it states none. Whoever changes a limit of these writes them down.

use crate::components::fields::TextField;
use crate::frame::sheet::in_unit;
use crate::state::EditorStore;
use crate::state::typed_measure::typed_measure;
use leptos::prelude::*;
use procedures_schema::model::{Action, Id, Reading};
use procedures_schema::simulate::default_readings;
use procedures_schema::units::{Figure, Range, Unit};

/// The limits, two fields a reading; none where nothing is measured.
#[component]
pub fn LimitFields(
    /// The editor's state.
    store: EditorStore,
    /// The step.
    id: Id,
    /// The position of the action in it.
    at: usize,
    /// The action.
    action: Memo<Option<Action>>,
) -> impl IntoView {
    let id = StoredValue::new(id);
    let readings = Memo::new(move |_| {
        let of = |action: &Action| store.document().with(|document| default_readings(document, action));
        action.with(|action| action.as_ref().map(of).unwrap_or_default())
    });
    let measured = Memo::new(move |_| {
        readings.with(|readings| {
            let named = readings.iter().enumerate().filter(|(_, reading)| reading.limits.is_some());
            named.map(|(n, reading)| (n, reading.what.clone())).collect::<Vec<_>>()
        })
    });
    let limits = move |n: usize, what: &str| {
        let (least, most) = (named(what, "at least"), named(what, "at most"));
        let field = move |label: String, end: End| one_end(store, id, at, readings, n, label, end);
        view! { <div class="pair">{field(least, LEAST)}{field(most, MOST)}</div> }
    };
    move || measured.get().iter().map(|(n, what)| limits(*n, what)).collect_view()
}

/// What the field of one end of a range is called.
fn named(what: &str, end: &str) -> String {
    let mut letters = format!("{what} {end}").trim().chars().collect::<Vec<_>>().into_iter();
    letters.next().map(|first| first.to_uppercase().chain(letters).collect()).unwrap_or_default()
}

/// One end of a range.
#[derive(Clone, Copy)]
struct End {
    get: fn(&Range) -> Option<&Figure>,
    set: fn(&mut Range, Option<Figure>),
}

const LEAST: End = End { get: |range| range.min.as_ref(), set: |range, figure| range.min = figure };
const MOST: End = End { get: |range| range.max.as_ref(), set: |range, figure| range.max = figure };

fn one_end(
    store: EditorStore,
    id: StoredValue<Id>,
    at: usize,
    readings: Memo<Vec<Reading>>,
    n: usize,
    label: String,
    end: End,
) -> AnyView {
    let range =
        Memo::new(move |_| readings.with(|readings| readings.get(n).and_then(|one| one.limits.clone())));
    let unit = Signal::derive(move || range.get().map_or(Unit::Other("".into()), |range| range.unit));
    let value = Signal::derive(move || {
        range.with(|range| range.as_ref().and_then(end.get).map(ToString::to_string)).unwrap_or_default()
    });
    let field = label.clone();
    let send = Callback::new(move |typed: String| {
        let (before, quantity) = (unit.get_untracked(), unit.get_untracked().quantity());
        let measured = typed_measure(&typed, &before, quantity);
        if measured.is_none() && !typed.trim().is_empty() {
            return;
        }
        let mut all = readings.get_untracked();
        if let Some(range) = all.get_mut(n).and_then(|reading| reading.limits.as_mut()) {
            range.unit = measured.as_ref().map_or(before, |measured| measured.unit.clone());
            (end.set)(range, measured.map(|measured| measured.value));
        }
        store.change_action(&id.get_value(), at, &field, |action| action.readings = all);
    });
    view! { <TextField label=in_unit(label, unit) value send is_figure=true /> }.into_any()
}

#[cfg(test)]
mod tests {
    use super::named;
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test]
    fn a_field_is_called_by_what_is_read_and_by_its_end() {
        assert_eq!(named("drop in 2 min", "at most"), "Drop in 2 min at most");
        assert_eq!(named("", "at least"), "At least");
    }
}
