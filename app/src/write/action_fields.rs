//! The few fields of one action: which thing, how many, whether the seal is new, the limits of what is read, size, torque
//! and circuit of the joint; and its keys.

use super::limit_fields::LimitFields;
use super::token_keys::TokenKeys;
use super::torque_fields::torque_fields;
use crate::components::fields::{ChoiceField, TextField};
use crate::frame::sheet::Sheet;
use crate::frame::tight_fields::{manner, size_fields, tightness};
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::model::{Action, ApplianceMap, Connection, Id, Renewal, ThingKind, Verb};

/// The fields.
#[component]
pub fn ActionFields(
    /// The editor's state.
    store: EditorStore,
    /// The step.
    id: Id,
    /// The position of the action in it.
    at: usize,
    /// The action.
    action: Memo<Option<Action>>,
    /// Whether its thing is being named.
    naming: RwSignal<bool>,
) -> impl IntoView {
    let id = StoredValue::new(id);
    let read = move |of: fn(&Action) -> String| {
        Signal::derive(move || action.with(|action| action.as_ref().map(of).unwrap_or_default()))
    };
    let write = move |field: &'static str, set: fn(&mut Action, String)| {
        Callback::new(move |typed: String| {
            store.change_action(&id.get_value(), at, field, |action| set(action, typed));
        })
    };
    let things =
        Signal::derive(move || store.map().with(|map| action.with(|action| alike(action.as_ref(), map))));
    let has_thing = Memo::new(move |_| things.with(|things| things.len() > 1));
    let has_count = Memo::new(move |_| action.with(|action| action.as_ref().is_some_and(takes_count)));
    let has_seal =
        Memo::new(move |_| action.with(|action| action.as_ref().is_some_and(|a| a.verb == Verb::Make)));
    let is_read =
        Memo::new(move |_| action.with(|action| action.as_ref().is_some_and(|a| a.verb.takes_readings())));
    let seals = Signal::stored(
        [("", "as the map says"), ("new", "with a new seal"), ("same", "with the seal reused")]
            .map(|(key, name)| (key.to_owned(), name.to_owned()))
            .to_vec(),
    );
    let joint =
        Memo::new(move |_| store.map().with(|map| action.with(|action| joint_of(action.as_ref(), map))));
    let states_torque =
        Memo::new(move |_| action.with(|action| action.as_ref().is_some_and(|a| a.torque.is_some())));
    let thing = move || {
        let value = read(|action| action.on.first().map(ToString::to_string).unwrap_or_default());
        view! { <ChoiceField label="Which" value options=things send=write("thing", set_thing) /> }
    };
    let count = move || {
        let value = read(|action| action.count.map(|count| count.to_string()).unwrap_or_default());
        view! { <TextField label="How many" value send=write("count", set_count) hint="all" is_figure=true /> }
    };
    let seal = move || {
        let value = read(|action| seal_word(action).to_owned());
        view! { <ChoiceField label="Seal" value options=seals send=write("seal", set_seal) /> }
    };
    view! {
        <div class="sheet open of-token">
            {move || has_thing.get().then(thing)}
            {move || has_count.get().then(count)}
            {move || has_seal.get().then(seal)}
            {move || is_read.get().then(|| view! { <LimitFields store id=id.get_value() at action /> })}
            {move || joint.get().map(|(joint, is_made)| {
                let own = states_torque.get().then(|| torque_fields(store, id, at, action));
                joint_fields(Sheet::new(store, joint), is_made, own)
            })}
            <TokenKeys store id=id.get_value() at action naming />
        </div>
    }
}

/// The only connection of an action, and whether the action makes it tight.
fn joint_of(action: Option<&Action>, map: &ApplianceMap) -> Option<(Id, bool)> {
    let action = action?;
    let [only] = action.on.as_slice() else { return None };
    let is_made = matches!(action.verb, Verb::Make | Verb::Tighten);
    map.connections.iter().any(|connection| connection.id == *only).then(|| (only.clone(), is_made))
}

/// What the map says of a connection and the words of a step commonly do: size, torque, circuit.
fn joint_fields(sheet: Sheet<Connection>, is_made: bool, own_torque: Option<AnyView>) -> AnyView {
    // The torque that the step states stands in its words; the map's is changed where it counts.
    let tight = match own_torque {
        Some(torque) if is_made => view! { {torque}{manner(sheet)} }.into_any(),
        _ => is_made.then(|| tightness(sheet)).into_any(),
    };
    view! {
        {size_fields(sheet)}
        {tight}
        {sheet.one_of("Carries what is in", &[ThingKind::Section], |k| k.section.clone(), |k, id| k.section = id)}
    }
    .into_any()
}

/// The things of the same kind as the only one that the action is done to.
fn alike(action: Option<&Action>, map: &ApplianceMap) -> Vec<(String, String)> {
    let Some([only]) = action.map(|action| action.on.as_slice()) else { return Vec::new() };
    let Some(kind) = map.thing_kind(only) else { return Vec::new() };
    let same = map.things().filter(|(known, ..)| *known == kind);
    same.map(|(_, id, name, _)| (id.to_string(), name.to_owned())).collect()
}

fn takes_count(action: &Action) -> bool {
    matches!(action.verb, Verb::Slacken | Verb::Undo | Verb::Make | Verb::Tighten)
}

fn set_thing(action: &mut Action, id: String) {
    action.on = vec![Id::new(&id)];
}

/// What is no number says nothing; none is all of them.
fn set_count(action: &mut Action, typed: String) {
    match typed.trim().parse::<u32>() {
        Ok(count) if count > 0 => action.count = Some(count),
        Err(_) if typed.trim().is_empty() => action.count = None,
        _ => {}
    }
}

fn seal_word(action: &Action) -> &'static str {
    match action.seal {
        Some(Renewal::New) => "new",
        Some(Renewal::Same) => "same",
        _ => "",
    }
}

fn set_seal(action: &mut Action, word: String) {
    action.seal = match word.as_str() {
        "new" => Some(Renewal::New),
        "same" => Some(Renewal::Same),
        _ => None,
    };
}
