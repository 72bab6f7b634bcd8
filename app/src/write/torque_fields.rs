//! The torque that a step itself states, among the few fields of its token. Where it states none the joint's own counts.

use crate::components::fields::TextField;
use crate::frame::sheet::in_unit;
use crate::state::EditorStore;
use crate::state::typed_measure::typed_measure;
use leptos::prelude::*;
use procedures_schema::model::{Action, Id};
use procedures_schema::units::{Figure, Quantity, Range, Unit};

/// Both ends of the torque.
pub(super) fn torque_fields(
    store: EditorStore,
    id: StoredValue<Id>,
    at: usize,
    action: Memo<Option<Action>>,
) -> AnyView {
    let torque = Memo::new(move |_| action.with(|action| action.as_ref()?.torque.clone()));
    let end = move |label: &'static str,
                    get: fn(&Range) -> Option<&Figure>,
                    set: fn(&mut Range, Option<Figure>)| {
        let unit = Signal::derive(move || torque.get().map_or(Unit::NewtonMetre, |torque| torque.unit));
        let value = Signal::derive(move || {
            torque.with(|torque| torque.as_ref().and_then(get).map(ToString::to_string)).unwrap_or_default()
        });
        let send = Callback::new(move |typed: String| {
            let measured = typed_measure(&typed, &unit.get_untracked(), Quantity::Torque);
            if measured.is_none() && !typed.trim().is_empty() {
                return;
            }
            let Some(mut range) = torque.get_untracked() else { return };
            if let Some(measured) = &measured {
                range.unit = measured.unit.clone();
            }
            set(&mut range, measured.map(|measured| measured.value));
            // Taken back to nothing, the step says no torque, which is the map's to say then.
            let range = Some(range).filter(|range| range.min.is_some() || range.max.is_some());
            store.change_action(&id.get_value(), at, label, |action| action.torque = range);
        });
        view! { <TextField label=in_unit(label, unit) value send is_figure=true /> }
    };
    view! {
        {end("Torque from", |range| range.min.as_ref(), |range, figure| range.min = figure)}
        {end("Torque to", |range| range.max.as_ref(), |range, figure| range.max = figure)}
    }
    .into_any()
}
