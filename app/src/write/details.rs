//! What a step holds beside its words: stage, people, reason, safety messages, readings.

use super::message_fields::Messages;
use super::reading_fields::Readings;
use crate::components::fields::{ChoiceField, LongField, TextField};
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::model::{Id, Stage, Step};
use std::sync::Arc;

/// The fields.
#[component]
pub fn Details(
    /// The editor's state.
    store: EditorStore,
    /// The step.
    id: Id,
    /// Its contents.
    step: Memo<Option<Arc<Step>>>,
) -> impl IntoView {
    let id = StoredValue::new(id);
    let read = move |of: fn(&Step) -> String| {
        Signal::derive(move || step.with(|step| step.as_deref().map(of).unwrap_or_default()))
    };
    let write = move |field: &'static str, set: fn(&mut Step, String)| {
        Callback::new(move |typed: String| store.change_step(&id.get_value(), field, |step| set(step, typed)))
    };
    let stages = Stage::ALL.iter().map(|stage| (stage.word().to_owned(), stage.word().to_owned()));
    let stages = Signal::stored(stages.collect::<Vec<_>>());
    let set_stage = write("stage", |step, word| step.stage = Stage::from_word(&word));
    let people = read(|step| step.people.map(|people| people.to_string()).unwrap_or_default());
    view! {
        <div class="details">
            <div class="sheet open">
                <ChoiceField label="Stage" value=read(|step| step.stage.word().to_owned()) options=stages send=set_stage />
                <TextField label="People it takes" value=people send=write("people", set_people) hint="1" is_figure=true />
                <LongField label="Why" value=read(|step| step.why.clone()) send=write("why", |step, why| step.why = why) hint="if that helps" />
                <LongField label="For the way back" value=read(|step| step.back.clone()) send=write("back", |step, back| step.back = back) hint="The arrow points down" />
            </div>
            <Messages store id=id.get_value() step />
            <Readings store id=id.get_value() step />
        </div>
    }
}

/// One person is not said; what is no number of people is left as it was.
fn set_people(step: &mut Step, typed: String) {
    match typed.trim().parse::<u32>() {
        Ok(0 | 1) => step.people = None,
        Ok(people) if people <= 20 => step.people = Some(people),
        Err(_) if typed.trim().is_empty() => step.people = None,
        _ => {}
    }
}
