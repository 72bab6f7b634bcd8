//! The name of a thing. It is taken when the field is left or Enter is pressed, since half a name is none,
//! and the words of the steps follow if that is wanted.

use crate::components::drawn::once_drawn;
use crate::components::fields::FlagField;
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::edit::occurrences;
use procedures_schema::model::Id;

/// The field, and whether the words follow.
#[component]
pub fn NameField(
    /// The editor's state.
    store: EditorStore,
    /// The thing.
    id: Id,
    /// Its name, as the document says it.
    value: Signal<String>,
    /// Whether the keyboard goes there at once.
    comes_first: bool,
) -> impl IntoView {
    let id = StoredValue::new(id);
    let field = NodeRef::<leptos::html::Input>::new();
    let in_words = RwSignal::new(true);
    let n_steps =
        Memo::new(move |_| store.document().with(|document| occurrences(document, &id.get_value())));
    let take = move |typed: String| {
        store.rename_thing(&id.get_value(), &typed, in_words.get_untracked());
        // What was refused does not stay in the field as if it were the name.
        if let Some(field) = field.get_untracked() {
            field.set_value(&value.get_untracked());
        }
    };
    // The first Esc takes back what was typed; the next one is the sheet's.
    let take_back = move |event: &web_sys::KeyboardEvent| {
        let Some(field) = field.get_untracked().filter(|_| event.key() == "Escape") else { return };
        let name = value.get_untracked();
        if field.value() != name {
            field.set_value(&name);
            event.prevent_default();
        }
    };
    if comes_first {
        Effect::new(move |_| {
            if let Some(field) = field.get() {
                // Its text is put in after this, and would take the marking away.
                once_drawn(move || {
                    // A field that cannot be focused has just gone.
                    let _ = field.focus();
                    field.select();
                });
            }
        });
    }
    let follow = move || {
        let label = match n_steps.get() {
            0 => return ().into_any(),
            1 => "A new name goes into the words of one step too".to_owned(),
            n => format!("A new name goes into the words of {n} steps too"),
        };
        let send = Callback::new(move |is_so| in_words.set(is_so));
        view! { <FlagField label value=in_words.into() send /> }.into_any()
    };
    view! {
        <div class="field naming">
            <label class="field">
                <span>"Name"</span>
                <input
                    type="text" spellcheck="false" autocomplete="off" node_ref=field
                    prop:value=value
                    on:change=move |event| take(event_target_value(&event))
                    on:keydown=move |event| take_back(&event)
                />
            </label>
            {follow}
        </div>
    }
}
