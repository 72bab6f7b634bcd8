//! The fields of a sheet. Each shows what the document says now and sends what a person makes of it.

use super::drawn::once_drawn;
use leptos::prelude::*;
use procedures_schema::model::Id;

/// What a field does with what was typed.
pub type Send<T> = Callback<T>;

/// A line of text.
#[component]
pub fn TextField(
    /// What it is called.
    #[prop(into)]
    label: Signal<String>,
    /// What the document says.
    value: Signal<String>,
    /// What becomes of what is typed.
    send: Send<String>,
    /// An example, or what is typed in it.
    #[prop(optional, into)]
    hint: MaybeProp<String>,
    /// Whether figures are typed, so that a tablet shows its keypad.
    #[prop(optional)]
    is_figure: bool,
    /// Whether the keyboard goes there at once.
    #[prop(optional)]
    comes_first: bool,
    /// Whether it is sent only when the field is left or Enter is pressed, since half of it says something
    /// else. What was not taken does not stay in the field.
    #[prop(optional)]
    at_end: bool,
) -> impl IntoView {
    let field = NodeRef::<leptos::html::Input>::new();
    let take = move |typed: String| {
        send.run(typed);
        if let Some(field) = field.get_untracked() {
            field.set_value(&value.get_untracked());
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
    view! {
        <label class="field">
            <span>{label}</span>
            <input
                type="text" spellcheck="false" autocomplete="off" placeholder=move || hint.get() node_ref=field
                inputmode=is_figure.then_some("decimal")
                prop:value=value
                on:input=move |event| if !at_end { send.run(event_target_value(&event)) }
                on:change=move |event| if at_end { take(event_target_value(&event)) }
            />
        </label>
    }
}

/// A sentence or several, in a field as high as they are. It is one line of text all the same: Enter does nothing.
#[component]
pub fn LongField(
    /// What it is called.
    #[prop(into)]
    label: String,
    /// What the document says.
    value: Signal<String>,
    /// What becomes of what is typed.
    send: Send<String>,
    /// An example.
    #[prop(into)]
    hint: String,
) -> impl IntoView {
    let keydown = move |event: leptos::ev::KeyboardEvent| {
        if event.key() == "Enter" && !event.is_composing() {
            event.prevent_default();
        }
    };
    let typed = move |event| send.run(event_target_value(&event).replace(['\r', '\n'], " "));
    view! {
        <label class="field long">
            <span>{label}</span>
            <textarea
                rows="1" spellcheck="false" autocomplete="off" placeholder=hint
                prop:value=value on:keydown=keydown on:input=typed
            ></textarea>
        </label>
    }
}

/// One of several.
#[component]
pub fn ChoiceField(
    /// What it is called.
    #[prop(into)]
    label: String,
    /// The value that is chosen.
    value: Signal<String>,
    /// Values and their names.
    options: Signal<Vec<(String, String)>>,
    /// What becomes of the choice.
    send: Send<String>,
) -> impl IntoView {
    let option = move |(key, name): (String, String)| {
        let is_chosen = value.get() == key;
        view! { <option value=key selected=is_chosen>{name}</option> }
    };
    view! {
        <label class="field">
            <span>{label}</span>
            <select on:change=move |event| send.run(event_target_value(&event))>
                {move || options.get().into_iter().map(option).collect_view()}
            </select>
        </label>
    }
}

/// Yes or no.
#[component]
pub fn FlagField(
    /// What it is called.
    #[prop(into)]
    label: String,
    /// Whether it is so.
    value: Signal<bool>,
    /// What becomes of the answer.
    send: Send<bool>,
) -> impl IntoView {
    view! {
        <label class="flag">
            <input type="checkbox" prop:checked=value on:change=move |event| send.run(event_target_checked(&event)) />
            <span>{label}</span>
        </label>
    }
}

/// Any of several things.
#[component]
pub fn ThingsField(
    /// What it is called.
    #[prop(into)]
    label: String,
    /// The things that are chosen.
    value: Signal<Vec<Id>>,
    /// Things and their names.
    options: Signal<Vec<(Id, String)>>,
    /// What becomes of the choice.
    send: Send<Vec<Id>>,
) -> impl IntoView {
    let toggle = move |id: &Id, is_chosen: bool| {
        let mut chosen = value.get_untracked();
        chosen.retain(|known| known != id);
        if is_chosen {
            chosen.push(id.clone());
        }
        send.run(chosen);
    };
    let flag = move |(id, name): (Id, String)| {
        let (mine, toggled) = (id.clone(), id);
        let is_chosen = Signal::derive(move || value.with(|chosen| chosen.contains(&mine)));
        let send = Callback::new(move |chosen| toggle(&toggled, chosen));
        view! { <FlagField label=name value=is_chosen send /> }
    };
    let flags = move || {
        let options = options.get();
        if options.is_empty() {
            return view! { <span class="none">"nothing to choose yet"</span> }.into_any();
        }
        options.into_iter().map(flag).collect_view().into_any()
    };
    view! { <fieldset class="field things"><legend>{label}</legend>{flags}</fieldset> }
}
