//! A sheet that names keys; there is one on each screen but Follow.

use leptos::prelude::*;
use wasm_bindgen::JsCast;

const SHEET: &str = "keys-sheet";

/// What is pressed, and what it does.
pub type Key = (&'static str, &'static str);

/// Keys under a heading.
#[derive(Clone, Copy, Debug)]
pub struct KeyGroup {
    /// Where they do something.
    pub heading: &'static str,
    /// The keys.
    pub keys: &'static [Key],
}

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

/// The sheet.
#[component]
pub fn KeysDialog(
    /// Its heading.
    title: &'static str,
    /// Its groups, in order.
    groups: Vec<KeyGroup>,
    /// What stands behind them.
    #[prop(optional)]
    children: Option<Children>,
) -> impl IntoView {
    let sheet = NodeRef::<leptos::html::Dialog>::new();
    let close = move |_| {
        if let Some(sheet) = sheet.get_untracked() {
            sheet.close();
        }
    };
    let row = |(keys, does): &Key| {
        view! { <dt>{*keys}</dt><dd>{*does}</dd> }
    };
    let group = move |KeyGroup { heading, keys }| {
        view! { <section><h3>{heading}</h3><dl>{keys.iter().map(row).collect_view()}</dl></section> }
    };
    view! {
        <dialog class="keys-sheet" id=SHEET node_ref=sheet aria-labelledby="keys-title">
            <div class="keys-head">
                <h2 id="keys-title">{title}</h2>
                <button type="button" class="key" on:click=close>"Close"</button>
            </div>
            <div class="keys-groups">
                {groups.into_iter().map(group).collect_view()}
                {children.map(|children| children())}
            </div>
        </dialog>
    }
}
