//! The keys of one action: other readings, another name for its thing, that its thing is another one, and that it is
//! no action.

use super::other_name::OtherName;
use crate::route::{Screen, go};
use crate::state::attention::Focus;
use crate::state::readings::AskedAt;
use crate::state::{Command, EditorStore};
use leptos::prelude::*;
use procedures_schema::model::{Action, ApplianceMap, Id, ThingKind};

/// The keys, and the field for a name once it is asked for.
#[component]
pub fn TokenKeys(
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
    let decline = move |_| store.run(Command::Decline { step: id.get_value(), action: at });
    let others = move |_| store.run(Command::AskReadings(id.get_value(), AskedAt::Action(at)));
    let only =
        Memo::new(move |_| store.map().with(|map| action.with(|action| thing_of(action.as_ref(), map))));
    let done = Callback::new(move |()| {
        naming.set(false);
        store.go_on_at(Focus::Token(id.get_value(), at));
    });
    let name = move || {
        let thing = only.get().filter(|_| naming.get())?;
        let called = store.called(&id.get_value(), at).unwrap_or_default();
        Some(view! { <OtherName store thing called done /> })
    };
    let of_thing = move || {
        only.get().map(|thing| {
            let same = move |_| {
                store.want_thing(&thing, true);
                go(Screen::Appliance);
            };
            view! {
                <button
                    type="button" class="quiet" title="N" aria-expanded=move || naming.get().to_string()
                    on:click=move |_| naming.update(|naming| *naming = !*naming)
                >"Another name …"</button>
                <button type="button" class="quiet" on:click=same>"Same as …"</button>
            }
        })
    };
    view! {
        {name}
        <div class="strip">
            <button type="button" class="quiet" title="Ctrl+." on:click=others>"Other readings"</button>
            {of_thing}
            <button type="button" class="quiet" on:click=decline>"Not an action"</button>
        </div>
    }
}

/// The only thing of an action, if it can have other names.
fn thing_of(action: Option<&Action>, map: &ApplianceMap) -> Option<Id> {
    let [only] = action?.on.as_slice() else { return None };
    let kind = map.thing_kind(only)?;
    (!matches!(kind, ThingKind::Circuit | ThingKind::Section)).then(|| only.clone())
}
