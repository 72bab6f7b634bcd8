//! One reading: what is read, between which limits or what is seen, and where the limits come from.

use crate::components::fields::{ChoiceField, TextField};
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::model::{Action, Country, Id, Reading};
use procedures_schema::units::{Figure, Range, Unit};

/// Its fields.
#[component]
pub fn OneReading(
    /// The editor's state.
    store: EditorStore,
    /// The step.
    id: Id,
    /// The action.
    action: Memo<Option<Action>>,
    /// Its position in the step.
    at: usize,
    /// The position of the reading in it.
    n: usize,
) -> impl IntoView {
    let id = StoredValue::new(id);
    let read = move |of: fn(&Reading) -> String| {
        Signal::derive(move || {
            action.with(|a| a.as_ref().and_then(|a| a.readings.get(n)).map(of).unwrap_or_default())
        })
    };
    let write = move |field: &'static str, set: fn(&mut Reading, String)| {
        Callback::new(move |typed: String| {
            store.change_action(&id.get_value(), at, &format!("{field} of reading {n}"), |action| {
                if let Some(reading) = action.readings.get_mut(n) {
                    set(reading, typed);
                }
            });
        })
    };
    let none = (String::new(), "no figure: something is seen".to_owned());
    let units = Signal::derive(move || {
        let country = store.document().with(|document| document.country.clone());
        let units = in_order(country.as_ref()).into_iter();
        let named = units.map(|unit| (unit.code().to_owned(), unit.shown().to_owned()));
        std::iter::once(none.clone()).chain(named).collect::<Vec<_>>()
    });
    let unit = read(|r| r.limits.as_ref().map(|range| range.unit.code().to_owned()).unwrap_or_default());
    let has_unit = Memo::new(move |_| !unit.get().is_empty());
    let remove = move |_| {
        store.change_action(&id.get_value(), at, "readings", |action| {
            if n < action.readings.len() {
                action.readings.remove(n);
            }
        });
    };
    let limits = move || {
        view! {
            <TextField label="At least" value=read(|r| end(r, |range| range.min.as_ref())) send=write("least", set_least) is_figure=true />
            <TextField label="At most" value=read(|r| end(r, |range| range.max.as_ref())) send=write("most", set_most) is_figure=true />
        }
        .into_any()
    };
    let seen = move || {
        view! { <TextField label="What must be seen" value=read(|r| r.seen.clone()) send=write("seen", |r, text| r.seen = text) hint="no bubbles" /> }
            .into_any()
    };
    view! {
        <div class="sheet open of-reading">
            <TextField label="What is read" value=read(|r| r.what.clone()) send=write("what", |r, text| r.what = text) hint="drop in 2 min" />
            <ChoiceField label="In" value=unit options=units send=write("unit", set_unit) />
            {move || if has_unit.get() { limits() } else { seen() }}
            <TextField label="Where the limits come from" value=read(|r| r.source.clone()) send=write("source", |r, text| r.source = text) hint="standard and edition, or the plate" />
            <div class="strip"><button type="button" class="quiet" on:click=remove>"Take this reading out"</button></div>
        </div>
    }
}

/// The units, those in which people of a country measure before the others.
fn in_order(country: Option<&Country>) -> Vec<&'static Unit> {
    let is_usual = |unit: &Unit| {
        country.is_some_and(|country| country.unit_of(unit.quantity()).is_some_and(|usual| usual == *unit))
    };
    let (mut units, others): (Vec<_>, Vec<_>) = Unit::ALL.iter().partition(|unit| is_usual(unit));
    units.extend(others);
    units
}

fn end(reading: &Reading, of: fn(&Range) -> Option<&Figure>) -> String {
    reading.limits.as_ref().and_then(of).map(ToString::to_string).unwrap_or_default()
}

fn set_unit(reading: &mut Reading, code: String) {
    if code.is_empty() {
        reading.limits = None;
        return;
    }
    let unit = Unit::from_code(&code);
    match &mut reading.limits {
        Some(range) => range.unit = unit,
        None => reading.limits = Some(Range::new(None, None, unit)),
    }
}

fn set_least(reading: &mut Reading, typed: String) {
    if let (Some(range), true) = (&mut reading.limits, is_limit(&typed)) {
        range.min = Figure::parse(&typed).ok();
    }
}

fn set_most(reading: &mut Reading, typed: String) {
    if let (Some(range), true) = (&mut reading.limits, is_limit(&typed)) {
        range.max = Figure::parse(&typed).ok();
    }
}

/// Whether what was typed says a limit, or that there is none; what is no figure yet says nothing.
fn is_limit(typed: &str) -> bool {
    typed.trim().is_empty() || Figure::parse(typed).is_ok()
}
