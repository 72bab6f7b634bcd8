//! The sheet that names all keys of Write.

use leptos::prelude::*;
use wasm_bindgen::JsCast;

const SHEET: &str = "keys-sheet";

/// What is pressed, and what it does.
const KEYS: [(&str, &[(&str, &str)]); 4] = [
    (
        "In the line",
        &[
            ("Enter", "keep the line as a step, and go on"),
            ("1 to 9", "answer what is asked; Esc leaves it open"),
            ("Shift+Enter", "a second line for the same step"),
            ("warning: read: wait why: photo: ask: hold: later: bring:", "begin a line that adds to a step"),
            ("Ctrl+V of several lines", "each becomes a step"),
            ("Tab", "to what is asked, then to what it means"),
        ],
    ),
    (
        "On a row",
        &[
            ("Up, Down", "the step above or below; with Shift several steps"),
            (
                "Enter",
                "into its words; at their end a line for the next step, within them it cuts the step in two",
            ),
            ("Esc in words", "takes back what was typed there"),
            (
                "On what it means",
                "Enter opens its fields, N: another name for its thing, Backspace: not an action",
            ),
            ("Ctrl+.", "other readings of the words at the caret, of marked words, or of what it means"),
            ("Ctrl+Enter", "a new step below; from anywhere else into the line at the end"),
            ("Alt+Up, Alt+Down", "hold the selected steps elsewhere; Enter drops them, Esc puts them back"),
            ("Ctrl+C, X, V, D", "copy, cut, paste, double whole steps or stages"),
            ("Delete", "take the selected steps out"),
            ("Ctrl+A, Ctrl+Shift+A", "select all steps, the steps of this stage; so does its heading"),
        ],
    ),
    (
        "Findings",
        &[
            ("F8, Shift+F8", "the next or the last finding"),
            ("Alt+Enter", "do what would mend the first finding of the row"),
        ],
    ),
    (
        "Everywhere",
        &[
            ("Ctrl+Z, Ctrl+Y", "undo, redo, across all screens and after a reload"),
            ("Ctrl+S, Ctrl+O", "save as a file, open a file"),
            ("F1", "this sheet"),
        ],
    ),
];

/// The lines under words that are typed: their class in the style sheet, and what they say.
const LINES: [(&str, &str, &str); 5] = [
    ("understood", "Plain", "understood"),
    ("new", "Dashed", "a thing that is named for the first time"),
    ("practice", "Dotted", "understood; practice adds what the words leave out"),
    ("open", "Double", "can mean more than one thing, or is not known"),
    ("pending", "In brackets", "a value is still to be found out"),
];

/// Opens the sheet.
pub fn open_sheet() {
    let sheet = document()
        .get_element_by_id(SHEET)
        .and_then(|sheet| sheet.dyn_into::<web_sys::HtmlDialogElement>().ok());
    if let Some(sheet) = sheet {
        // It is refused only while it is open already.
        let _ = sheet.show_modal();
    }
}

/// The key that opens the sheet, and the sheet.
#[component]
pub fn KeysSheet() -> impl IntoView {
    view! {
        <button type="button" class="quiet" title="F1" on:click=move |_| open_sheet()>"Keys"</button>
        <KeysDialog />
    }
}

/// The sheet.
#[component]
pub fn KeysDialog() -> impl IntoView {
    let sheet = NodeRef::<leptos::html::Dialog>::new();
    let close = move |_| {
        if let Some(sheet) = sheet.get_untracked() {
            sheet.close();
        }
    };
    let row = |(keys, does): &(&'static str, &'static str)| {
        view! { <dt>{*keys}</dt><dd>{*does}</dd> }
    };
    let group = move |(heading, keys): (&'static str, &'static [(&'static str, &'static str)])| {
        view! { <section><h3>{heading}</h3><dl>{keys.iter().map(row).collect_view()}</dl></section> }
    };
    let line = |(class, name, says): (&'static str, &'static str, &'static str)| {
        view! { <dt><span class=class>{name}</span></dt><dd>{says}</dd> }
    };
    view! {
        <dialog class="keys-sheet" id=SHEET node_ref=sheet aria-labelledby="keys-title">
            <div class="keys-head">
                <h2 id="keys-title">"Keys of Write"</h2>
                <button type="button" class="key" on:click=close>"Close"</button>
            </div>
            <div class="keys-groups">
                {KEYS.map(group)}
                <section class="legend"><h3>"Under the words"</h3><dl>{LINES.map(line)}</dl></section>
            </div>
        </dialog>
    }
}
