//! What the words of a step have just put on the appliance; with the way to its sheet, and to make it one with what
//! was there before.

use crate::route::{Screen, go};
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::model::Id;

/// The names, and the way to their sheets; gone with the next step that makes something.
#[component]
pub fn FreshThings(
    /// The editor's state.
    store: EditorStore,
    /// The step.
    id: Id,
) -> impl IntoView {
    let here = Memo::new(move |_| {
        store.fresh().with(|fresh| {
            let here = fresh.as_ref().filter(|fresh| fresh.step == id);
            here.map(|fresh| (fresh.names.join(", "), fresh.names.len() == 1, fresh.thing.clone()))
        })
    });
    let open = move |thing: &Id, merges: bool| {
        store.want_thing(thing, merges);
        go(Screen::Appliance);
    };
    move || {
        here.get().map(|(names, is_one, thing)| {
            let looked_at = thing.clone();
            // Of several that came together nobody can say for which of them a known one is meant.
            let same = is_one.then(|| view! {
                <button type="button" class="quiet" on:click=move |_| open(&thing, true)>"Same as …"</button>
            });
            view! {
                <p class="notation fresh" role="status">
                    "New on the appliance: " {names}
                    <button type="button" class="quiet" on:click=move |_| open(&looked_at, false)>"Look"</button>
                    {same}
                </p>
            }
        })
    }
}
