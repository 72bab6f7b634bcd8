//! One value that is still to be found out.

use super::page::Refused;
use crate::components::capital::capital;
use crate::state::EditorStore;
use crate::state::found::Offer;
use leptos::prelude::*;
use procedures_schema::model::{Found, OpenPlace, OpenValue};
use wasm_bindgen::JsCast;

/// What it is, who finds it out, and the field for the answer.
#[component]
pub fn OpenRow(
    /// The editor's state.
    store: EditorStore,
    /// The value.
    value: OpenValue,
    /// What was found on jobs.
    offers: Memo<Vec<(OpenValue, Vec<Offer>)>>,
    /// What was not taken of several answers.
    refused: Refused,
) -> impl IntoView {
    let not_taken = RwSignal::new(None::<String>);
    let field = NodeRef::<leptos::html::Input>::new();
    let (what, hint) = (capital(&value.what), hint(&value.place));
    let who = match value.who.as_str() {
        "" => "nobody is named to find it out".to_owned(),
        who if is_of_a_place(who) => format!("to be found out {who}"),
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
            Err(reason) => not_taken.set(Some(reason)),
        }
    };
    let found = Memo::new(move |_| {
        let of_it = |(value, _): &&(OpenValue, Vec<Offer>)| open.with_value(|open| open == value);
        offers.with(|offers| offers.iter().find(of_it).map(|(_, offers)| offers.clone()).unwrap_or_default())
    });
    let why = move || {
        let of_several = || {
            let is_of_it = |(of, _): &&(Found, String)| {
                found.with(|found| found.iter().any(|offer| offer.found.is_of_the_same(of)))
            };
            refused.with(|refused| refused.iter().find(is_of_it).map(|(_, reason)| reason.clone()))
        };
        not_taken.get().or_else(of_several)
    };
    view! {
        <li>
            <form on:submit=answer>
                <label class="field">
                    <span class="what">{what}</span>
                    <span>{who}</span>
                    <input
                        type="text" spellcheck="false" autocomplete="off" enterkeyhint="next" placeholder=hint
                        node_ref=field aria-invalid=move || not_taken.with(Option::is_some).to_string()
                    />
                </label>
                <button type="submit" class="key">"Keep"</button>
            </form>
            {move || found.get().into_iter().map(|offer| offered(store, offer, not_taken)).collect_view()}
            <p class="refused" role="alert">{move || why().map(|reason| format!("Not taken: {reason}."))}</p>
        </li>
    }
}

/// An answer found on a job, with its key. It stands outside the form, so that Enter in the field never takes it.
fn offered(store: EditorStore, offer: Offer, not_taken: RwSignal<Option<String>>) -> impl IntoView {
    let head = offer.head();
    let answer = offer.found.answer.clone();
    let label = format!("Take it: {answer}");
    let take = move |_| {
        let refused = store.take_found(std::slice::from_ref(&offer.found));
        match refused.into_iter().next() {
            Some((_, reason)) => not_taken.set(Some(reason)),
            None => request_animation_frame(lead_to_head),
        }
    };
    view! {
        <p class="offer">
            <span>{head} ": " <strong>{answer}</strong></span>
            <button type="button" class="key" aria-label=label on:click=take>"Take it"</button>
        </p>
    }
}

/// Whether who finds it out is told by a place: `from the stores`, `on site`.
fn is_of_a_place(who: &str) -> bool {
    ["from ", "on ", "at ", "in "].iter().any(|word| who.starts_with(word))
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
    match fields().into_iter().nth(at) {
        // A field that cannot be focused has just gone.
        Some(field) => drop(field.focus()),
        None => lead_to_head(),
    }
}

/// Puts the keyboard onto the head: what was pressed is gone with its row, and no keyboard has to come up for that.
pub fn lead_to_head() {
    let head = document().get_element_by_id("later-head");
    if let Some(head) = head.and_then(|head| head.dyn_into::<web_sys::HtmlElement>().ok()) {
        // It stands as long as the screen does.
        let _ = head.focus();
    }
}
