//! One value that is still to be found out.

use crate::components::capital::capital;
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::model::{OpenPlace, OpenValue};
use wasm_bindgen::JsCast;

/// What it is, who finds it out, and the field for the answer.
#[component]
pub fn OpenRow(
    /// The editor's state.
    store: EditorStore,
    /// The value.
    value: OpenValue,
) -> impl IntoView {
    let refused = RwSignal::new(None::<String>);
    let field = NodeRef::<leptos::html::Input>::new();
    let (what, hint) = (capital(&value.what), hint(&value.place));
    let who = match value.who.as_str() {
        "" => "nobody is named to find it out".to_owned(),
        who if who.starts_with("from ") => format!("to be found out {who}"),
        who => format!("to be found out by {who}"),
    };
    let open = StoredValue::new(value);
    let answer = move |event: web_sys::SubmitEvent| {
        event.prevent_default();
        let Some(field) = field.get_untracked() else { return };
        let at = place_of(&field);
        let typed = field.value();
        if typed.trim().is_empty() {
            focus_row(at + 1);
            return;
        }
        match open.with_value(|open| store.answer_open(open, &typed)) {
            // The row goes, so the next one stands in its place once the page has been redrawn.
            Ok(()) => request_animation_frame(move || focus_row(at)),
            Err(reason) => refused.set(Some(reason)),
        }
    };
    view! {
        <li>
            <form on:submit=answer>
                <label class="field">
                    <span class="what">{what}</span>
                    <span>{who}</span>
                    <input
                        type="text" spellcheck="false" autocomplete="off" enterkeyhint="next" placeholder=hint
                        node_ref=field aria-invalid=move || refused.with(Option::is_some).to_string()
                    />
                </label>
                <button type="submit" class="key">"Keep"</button>
            </form>
            <p class="refused" role="alert">{move || refused.get().map(|reason| format!("Not taken: {reason}."))}</p>
        </li>
    }
}

/// An example of what goes there.
fn hint(place: &OpenPlace) -> &'static str {
    match place {
        OpenPlace::Size(_) => "G 1, 22 mm tube, 6.3 mm blade",
        OpenPlace::Tight(_) => "25 to 30 N·m, or in words",
        OpenPlace::SealSize(_) => "30 mm x 21 mm x 2 mm",
        OpenPlace::SealNumber(_) | OpenPlace::ComponentNumber(_) | OpenPlace::SpareNumber(_) => {
            "as it is ordered"
        }
        OpenPlace::Limits { .. } => "0.8 to 1.2 bar",
        OpenPlace::Input { .. } => "12 l",
        OpenPlace::Listed(_) => "goes into the remark of the document",
    }
}

/// The fields of the form, in order.
fn fields() -> Vec<web_sys::HtmlElement> {
    let Ok(list) = document().query_selector_all(".later-walk input") else { return Vec::new() };
    (0..list.length()).filter_map(|at| list.item(at)).filter_map(|node| node.dyn_into().ok()).collect()
}

fn place_of(field: &web_sys::HtmlInputElement) -> usize {
    let field: &web_sys::HtmlElement = field.unchecked_ref();
    fields().iter().position(|other| other == field).unwrap_or(0)
}

/// Puts the keyboard into a field; past the last one, onto the head that says how many are left.
pub(super) fn focus_row(at: usize) {
    let head = || document().get_element_by_id("later-head").and_then(|head| head.dyn_into().ok());
    if let Some(target) = fields().into_iter().nth(at).or_else(head) {
        // A field that cannot be focused has just gone.
        let _ = target.focus();
    }
}
