//! "This is two": the second thing gets a name and the steps for which it stands.

use super::finder::Finder;
use super::list::{Open, OpenedTo};
use super::thing_row::to_row;
use crate::components::drawn::once_drawn;
use crate::components::fields::{FlagField, TextField, ThingsField};
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::model::Id;

/// The panel under the keys of a sheet.
#[component]
pub fn TwoOfIt(
    /// The editor's state.
    store: EditorStore,
    /// The open thing.
    id: Id,
    /// Which thing is open.
    open: Open,
    /// Knows which steps name the thing.
    finder: Finder,
) -> impl IntoView {
    let id = StoredValue::new(id);
    let name = RwSignal::new(String::new());
    let chosen = RwSignal::new(Vec::<Id>::new());
    let in_words = RwSignal::new(true);
    let steps = Signal::derive(move || {
        let numbers = finder.steps(&id.get_value());
        store.document().with(|document| {
            let step = |number: &usize| {
                let step = document.steps.get(number.checked_sub(1)?)?;
                Some((step.id.clone(), format!("Step {number}: {}", document.words_of(step))))
            };
            numbers.iter().filter_map(step).collect::<Vec<_>>()
        })
    });
    let split = move |_| {
        // In the order of the document, whatever the order of choosing was.
        let order = steps.get_untracked().into_iter().map(|(step, _)| step);
        let of_second = chosen.with_untracked(|chosen| order.filter(|step| chosen.contains(step)).collect());
        let made =
            store.split_thing(&id.get_value(), &name.get_untracked(), of_second, in_words.get_untracked());
        if let Some(made) = made {
            open.set(Some((made.clone(), OpenedTo::Look)));
            once_drawn(move || to_row(&made));
        }
    };
    let cannot = move || {
        let n = chosen.with(Vec::len);
        name.with(|name| name.trim().is_empty()) || n == 0 || n == steps.with(Vec::len)
    };
    let panel = move || {
        if steps.with(|steps| steps.len() < 2) {
            return view! {
                <p class="none">"It is named in fewer than two steps, so there is nothing to share out between two. Add a thing of its own instead."</p>
            }
            .into_any();
        }
        view! {
            <TextField label="What the second one is called" value=name.into() send=Callback::new(move |typed| name.set(typed)) />
            <ThingsField label="The steps for which it stands" value=chosen.into() options=steps send=Callback::new(move |ids| chosen.set(ids)) />
            <FlagField label="The words of those steps follow" value=in_words.into() send=Callback::new(move |is_so| in_words.set(is_so)) />
            <p class="none">"It begins as a copy. What joins the first one, sits on it or is behind it stays there until its sheet says otherwise."</p>
            <button type="button" class="key" disabled=cannot on:click=split>"Make two of it"</button>
        }
        .into_any()
    };
    view! { <div class="whole">{panel}</div> }
}
