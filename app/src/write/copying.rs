//! Whole steps and the clipboard of the device: as words for other programs, and as what they are for another tab.

use crate::state::{Command, EditorStore};
use crate::storage::copies;
use leptos::prelude::{Set, document};
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};

/// What steps on the clipboard are marked as.
const STEPS: &str = "application/vnd.putback+json";

/// What is said where the browser keeps its clipboard to itself.
const REFUSED: &str = "Copied, but the browser does not let this page write to the clipboard of the device. \"Paste\" here \
    has it, in another procedure too; other tabs and programs do not.";

/// The steps that a paste brings, if it brings steps of ours.
pub fn copied_steps(event: &web_sys::ClipboardEvent) -> Option<String> {
    let data = event.clipboard_data()?;
    let steps = data.get_data(STEPS).ok().filter(|steps| !steps.is_empty());
    steps.or_else(|| copies::of_words(&data.get_data("text/plain").ok()?))
}

/// The words that a paste brings, if it brings any.
fn pasted_words(event: &web_sys::ClipboardEvent) -> Option<String> {
    let words = event.clipboard_data()?.get_data("text/plain").ok()?;
    (!words.trim().is_empty()).then_some(words)
}

/// The text of a paste, if it has several lines.
pub fn several_lines(event: &web_sys::ClipboardEvent) -> Option<String> {
    let text = pasted_words(event)?;
    (text.lines().filter(|line| !line.trim().is_empty()).count() > 1).then_some(text)
}

/// Copies, cuts or pastes whole steps while the keyboard is on a row; in a text the browser does it.
pub fn on_clipboard(store: EditorStore, event: &web_sys::Event) {
    let Some(event) = event.dyn_ref::<web_sys::ClipboardEvent>() else { return };
    let is_on_row = document().active_element().is_some_and(|element| element.class_list().contains("row"));
    // What a text has taken is done with, wherever the keyboard is by now.
    if !is_on_row || event.default_prevented() {
        return;
    }
    if event.type_() == "paste" {
        let came = copied_steps(event);
        if !came.is_some_and(|text| store.paste_steps(store.end_of_selection(), &text)) {
            let after = store.end_of_selection();
            // Words of another program are written below, as in the line there.
            let words = pasted_words(event).map(|words| Command::AddStep { after, words });
            store.run(words.unwrap_or(Command::PasteCopied));
        }
    } else {
        let Some(copy) = store.copy_selection() else { return };
        // A clipboard that takes nothing leaves the copy in the page's memory.
        hand_over(event, &copy);
        if event.type_() == "cut" {
            store.run(Command::RemoveSelection);
        }
    }
    event.prevent_default();
}

/// Copies the selected steps by a key of the page, to the clipboard too; says so where the browser refuses that.
pub fn copy_by_key(store: EditorStore) {
    if let Some(copy) = store.copy_selection()
        && !put_on_clipboard(copy)
    {
        store.notice().set(Some(REFUSED.to_owned()));
    }
}

/// Copies them, then takes them out.
pub fn cut_by_key(store: EditorStore) {
    copy_by_key(store);
    store.run(Command::RemoveSelection);
}

/// Gives words and steps to a clipboard; says whether it took both.
fn hand_over(event: &web_sys::ClipboardEvent, (text, steps): &(String, String)) -> bool {
    copies::keep(text, steps);
    event
        .clipboard_data()
        .is_some_and(|data| data.set_data("text/plain", text).is_ok() && data.set_data(STEPS, steps).is_ok())
}

/// Has the browser copy as if it were its own key, since only then it asks for both kinds; says whether it did.
fn put_on_clipboard(copy: (String, String)) -> bool {
    let was_taken = Rc::new(Cell::new(false));
    let taken = was_taken.clone();
    let on_copy = Closure::<dyn FnMut(web_sys::Event)>::new(move |event: web_sys::Event| {
        if let Some(event) = event.dyn_ref::<web_sys::ClipboardEvent>() {
            taken.set(hand_over(event, &copy));
            event.prevent_default();
            event.stop_immediate_propagation();
        }
    });
    let page = document();
    let heard = on_copy.as_ref().unchecked_ref();
    if page.add_event_listener_with_callback_and_bool("copy", heard, true).is_err() {
        return false;
    }
    let was_done = with_something_marked(|| command(&page, "copy"));
    // It goes away with this function in any case, and would only be heard in vain.
    let _ = page.remove_event_listener_with_callback_and_bool("copy", heard, true);
    was_done && was_taken.get()
}

/// Some browsers copy only where something is marked: a field that nobody sees, for as long as it takes.
fn with_something_marked(act: impl FnOnce() -> bool) -> bool {
    let page = document();
    let before = page.active_element().and_then(|element| element.dyn_into::<web_sys::HtmlElement>().ok());
    let field = page.create_element("textarea").ok();
    let field = field.and_then(|field| field.dyn_into::<web_sys::HtmlTextAreaElement>().ok());
    let (Some(field), Some(body)) = (field, page.body()) else { return act() };
    field.set_class_name("hidden");
    field.set_value("steps");
    if body.append_child(&field).is_err() {
        return act();
    }
    field.select();
    let was_done = act();
    field.remove();
    if let Some(before) = before {
        // A key that cannot be focused has just gone.
        let _ = before.focus();
    }
    was_done
}

/// The commands of editing are not in the bindings, since they are on their way out; nothing has come in their place
/// that hands over a kind of our own.
fn command(page: &web_sys::Document, name: &str) -> bool {
    let function = js_sys::Reflect::get(page, &JsValue::from_str("execCommand"));
    let function = function.ok().and_then(|function| function.dyn_into::<js_sys::Function>().ok());
    let done = function.and_then(|function| function.call1(page, &JsValue::from_str(name)).ok());
    done.is_some_and(|done| done.is_truthy())
}
