//! The row of a thing: its name, which opens its sheet, what is said of it, the steps that name it, and what is found.

use super::drag::Dragging;
use super::finder::Finder;
use super::list::{Open, OpenedTo};
use crate::frame::pointer_drag::has_just_ended;
use crate::route::{Screen, go};
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::derive::rows::{Cell, Row, columns};
use procedures_schema::model::{Id, ThingKind};
use wasm_bindgen::JsCast;

/// So many steps stand in a row; of more the first ones and the last.
pub const MOST_STEPS: usize = 6;

/// The row on the page, which takes the keyboard.
pub fn row_of_thing(thing: &Id) -> Option<web_sys::HtmlElement> {
    let row = document().get_element_by_id(&format!("thing-{thing}"))?;
    row.query_selector(".thing-row").ok().flatten()?.dyn_into().ok()
}

/// Puts the keyboard onto the row of a thing.
pub fn to_row(thing: &Id) {
    if let Some(row) = row_of_thing(thing) {
        // A row that cannot be focused has just gone.
        let _ = row.focus();
    }
}

/// The row.
#[component]
pub fn ThingRow(
    /// The editor's state.
    store: EditorStore,
    /// The kind of the thing.
    kind: ThingKind,
    /// The thing.
    id: StoredValue<Id>,
    /// Whether its sheet is open.
    is_open: Memo<bool>,
    /// Which thing is open.
    open: Open,
    /// What is looked for.
    finder: Finder,
    /// What is dragged onto what.
    dragging: Dragging,
) -> impl IntoView {
    let name = Memo::new(move |_| store.document().with(|d| d.map.name_of(&id.get_value()).to_owned()));
    let row = Memo::new(move |_| finder.row(&id.get_value()));
    let toggle = move |event: web_sys::MouseEvent| {
        // A press by the keyboard has no clicks to count and never ends a drag.
        if event.detail() == 0 || !has_just_ended() {
            open.set((!is_open.get_untracked()).then(|| (id.get_value(), OpenedTo::Look)));
        }
    };
    let take_out = move || {
        let label = format!("Take out the {}", name.get());
        let remove = move |_| store.remove_thing(&id.get_value());
        view! { <button type="button" class="quiet out" aria-label=label on:click=remove>"Take out"</button> }
    };
    let can_merge = !matches!(kind, ThingKind::Circuit | ThingKind::Section);
    let begin = move |event: web_sys::PointerEvent| {
        if can_merge {
            dragging.begin(id.get_value(), &event);
        }
    };
    let cells = move || row.with(|row| columns(kind).iter().zip(&row.cells).map(cell).collect_view());
    view! {
        <div class="thing-line" class:dragged=move || dragging.is_held(&id.get_value())>
            {can_merge.then(|| handle(name, id, open, dragging))}
            <button
                type="button" class="thing-row" aria-expanded=move || is_open.get().to_string()
                on:pointerdown=begin on:click=toggle
            ><strong>{name}</strong></button>
            {cells}
            <span class="cell steps">{move || row.with(|row| steps(store, kind, row))}</span>
            {move || (finder.shows_unused() && row.with(|row| row.is_nowhere)).then(take_out)}
        </div>
        <Found store id />
    }
}

/// The handle: dragged onto the thing that it is, or pressed to choose that from a list.
fn handle(name: Memo<String>, id: StoredValue<Id>, open: Open, dragging: Dragging) -> impl IntoView {
    let press = move |event: web_sys::MouseEvent| {
        if event.detail() == 0 || !has_just_ended() {
            open.set(Some((id.get_value(), OpenedTo::Merge(None))));
        }
    };
    // The keyboard has the same in the sheet, and need not pass a handle in every row.
    view! {
        <button
            type="button" class="handle" tabindex="-1" title="Drag it onto the thing that it is"
            aria-label=move || format!("Make one of the {} and another thing", name.get())
            on:pointerdown=move |event| dragging.begin(id.get_value(), &event) on:click=press
        >
            <svg viewBox="0 0 10 16" aria-hidden="true" focusable="false">
                {[3, 8, 13].map(|y| view! { <circle cx="2.5" cy=y r="1.5" /><circle cx="7.5" cy=y r="1.5" /> })}
            </svg>
        </button>
    }
}

/// What a column says: its name stands before it where the columns have no room beside each other.
fn cell((heading, cell): (&&'static str, &Cell)) -> AnyView {
    if heading.is_empty() {
        return view! { <span class="cell"></span> }.into_any();
    }
    let later =
        cell.later.iter().map(|what| view! { " " <span class="later">{format!("[later: {what}]")}</span> });
    let words = if cell.is_unknown() { cell.to_string() } else { cell.words.clone() };
    view! {
        <span class="cell" class:unknown=cell.is_unknown()>
            <span class="what">{*heading} " "</span>
            <span class="says">{words} {later.collect_view()}</span>
        </span>
    }
    .into_any()
}

/// The steps that name it, each a way to it, and that a test is missing.
fn steps(store: EditorStore, kind: ThingKind, row: &Row) -> AnyView {
    let untested = row.is_untested.then(|| view! { " " <strong class="untested">"no test"</strong> });
    let said = match row.steps.as_slice() {
        [] if !row.is_in_no_step(kind) => "-",
        [] if row.is_nowhere => "used nowhere",
        [] => "in no step yet",
        numbers => return view! { {step_links(store, numbers, MOST_STEPS)} {untested} }.into_any(),
    };
    view! { <span class="what">"Steps "</span><span class="says">{said}</span> {untested} }.into_any()
}

/// Numbers of steps as ways to them; of too many the first ones and the last.
pub fn step_links(store: EditorStore, numbers: &[usize], most: usize) -> AnyView {
    let n = numbers.len();
    let is_left_out = |at: usize| n > most && at + 2 > most && at + 1 < n;
    let link = |(at, number): (usize, &usize)| {
        if is_left_out(at) {
            // One stroke stands for all that are left out.
            return (!is_left_out(at.wrapping_sub(1)))
                .then(|| view! { <span class="more">"…"</span> }.into_any());
        }
        let number = *number;
        let show = move |_| {
            store.select_numbered(number);
            go(Screen::Write);
        };
        let label = format!("Step {number}");
        Some(view! { <button type="button" class="link step" aria-label=label on:click=show>{number}</button> }.into_any())
    };
    let links: Vec<AnyView> = numbers.iter().enumerate().filter_map(link).collect();
    let what = if n == 1 { "Step " } else { "Steps " };
    view! { <span class="what">{what}</span><span class="says links">{links}</span> }.into_any()
}

/// What is found of the thing, with the way to the step where it shows.
#[component]
fn Found(store: EditorStore, id: StoredValue<Id>) -> impl IntoView {
    let findings = store.findings_of_thing(&id.get_value());
    move || {
        let found = findings.get().into_iter().map(|finding| {
            let remedy = finding.remedy.first().map(|remedy| format!(" → {remedy}. "));
            let at = finding.step.as_ref().and_then(|step| store.document().with(|d| d.position(step)));
            let way = at.map(|at| step_links(store, &[at + 1], 1));
            let class = format!("found-here {}", finding.level.word());
            view! { <p class=class><strong>{finding.title}</strong>{remedy}{way}</p> }
        });
        found.collect_view()
    }
}
