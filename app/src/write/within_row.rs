//! Ways of the keyboard within the selected row: from it to the leading words, from its words to what is asked about
//! them or to what they mean, and from anywhere in it back to it.
//!
//! What stands between, the handle and the words, is reached by Shift+Tab, and the words by Enter.

use super::leaving::focus_on;
use leptos::prelude::document;
use procedures_schema::model::Id;
use wasm_bindgen::JsCast;

/// Goes to the leading words; says whether they are to be seen, which they are not where the line is docked.
pub(super) fn into_leading_words(step: &Id) -> bool {
    goes_to(find(step, ".leading-keys [tabindex=\"0\"]"))
}

/// Goes to what is asked about the words, or else to what they mean; says whether there is anything.
pub(super) fn into_meaning(step: &Id) -> bool {
    let asked = [format!("choice-{step}"), format!("reading-{step}")];
    let asked = asked.iter().find_map(|id| document().get_element_by_id(id));
    goes_to(asked.and_then(|asked| asked.dyn_into().ok()).or_else(|| find(step, ".tokens button")))
}

/// Goes to the row itself.
pub(super) fn back_to(step: &Id) {
    focus_on(&format!("row-{step}"));
}

fn find(step: &Id, selector: &str) -> Option<web_sys::HtmlElement> {
    let row = document().get_element_by_id(&format!("row-{step}"))?;
    row.query_selector(selector).ok().flatten()?.dyn_into().ok()
}

fn goes_to(element: Option<web_sys::HtmlElement>) -> bool {
    let seen = element.filter(|element| element.offset_height() > 0);
    // Only an element that is gone refuses.
    seen.is_some_and(|element| element.focus().is_ok())
}
