//! What a line with a leading word does not say yet, as fields below it: Tab leads into the first, and what is typed
//! there goes into the line.

use super::leading_words::{is_field, name};
use crate::components::drawn::once_drawn;
use crate::state::lines::Line;
use crate::state::{Command, EditorStore};
use leptos::ev::KeyboardEvent;
use leptos::prelude::*;
use procedures_schema::capture::{Gap, leading, with_gap_filled};
use procedures_schema::model::Id;
use wasm_bindgen::JsCast;

/// A line, and where what is kept of it goes.
#[derive(Clone, Copy)]
pub struct GapsOf {
    /// The editor's state.
    pub store: EditorStore,
    /// The line.
    pub line: Line,
    /// The step below which it is.
    pub after: StoredValue<Option<Id>>,
}

/// The gaps of a line that are said in words.
pub fn gaps_of(words: &str) -> Vec<Gap> {
    let gaps = leading(words.trim()).map(|leading| leading.gaps()).unwrap_or_default();
    gaps.into_iter().filter(|gap| is_field(*gap)).collect()
}

/// Sends the keyboard to the first field of a line; says whether there is one.
pub fn enter_first(line: Line) -> bool {
    let field = document().query_selector(&format!(".gap-field[data-line=\"{}\"]", field_of(line)));
    let field = field.ok().flatten().and_then(|field| field.dyn_into::<web_sys::HtmlElement>().ok());
    field.is_some_and(|field| field.focus().is_ok())
}

fn field_of(line: Line) -> &'static str {
    match line {
        Line::Last => "new-line",
        Line::Below => "draft-line",
    }
}

/// The fields; one that is filled goes, and the others stay as they are.
#[component]
pub fn GapFields(
    /// The line.
    of: GapsOf,
) -> impl IntoView {
    let words = of.store.line(of.line);
    let gaps = Memo::new(move |_| words.with(|words| gaps_of(words)));
    view! {
        <div class="gaps">
            <For each=move || gaps.get() key=|gap| name(*gap) children=move |gap| view! { <GapField of gap /> } />
        </div>
    }
}

#[component]
fn GapField(of: GapsOf, gap: Gap) -> impl IntoView {
    let fill = move |text: &str| {
        let words = of.store.line(of.line).get_untracked();
        // Once it has been said, the same field says it no second time.
        let is_open = gaps_of(&words).contains(&gap) && !text.trim().is_empty();
        if is_open {
            of.store.set_line(of.line, with_gap_filled(&words, gap, text));
        }
        is_open
    };
    let key = move |event: KeyboardEvent| {
        let text = event_target_value(&event);
        let goes_on = event.key() == "Tab" && !event.shift_key() && !text.trim().is_empty();
        match event.key().as_str() {
            "Escape" => focus_line(of.line),
            "Enter" if !event.is_composing() => {
                fill(&text);
                keep(of);
            }
            "Tab" if goes_on => {
                fill(&text);
                go_on(of.line, gap);
            }
            _ => return,
        }
        event.prevent_default();
        event.stop_propagation();
    };
    view! {
        <label class="gap">
            {name(gap)}" "
            <input
                type="text" class="gap-field" data-line=field_of(of.line) data-gap=name(gap)
                on:keydown=key on:change=move |event| { fill(&event_target_value(&event)); }
            />
        </label>
    }
}

/// Keeps the line, as Enter in it does.
fn keep(of: GapsOf) {
    let words = of.store.line(of.line).get_untracked().trim().to_owned();
    if !words.is_empty() && !of.store.seat().only_shows().get_untracked() {
        of.store.set_line(of.line, String::new());
        of.store.run(Command::AddStep { after: of.after.get_value(), words });
        if of.line == Line::Last {
            focus_line(of.line);
        }
    }
}

/// To the next gap, or back into the line if there is none.
fn go_on(line: Line, said: Gap) {
    once_drawn(move || {
        let next = format!(".gap-field[data-line=\"{}\"]:not([data-gap=\"{}\"])", field_of(line), name(said));
        let next = document().query_selector(&next).ok().flatten();
        match next.and_then(|field| field.dyn_into::<web_sys::HtmlElement>().ok()) {
            // A field that is gone refuses.
            Some(field) => drop(field.focus()),
            None => focus_line(line),
        }
    });
}

fn focus_line(line: Line) {
    let field = document().get_element_by_id(field_of(line));
    if let Some(field) = field.and_then(|field| field.dyn_into::<web_sys::HtmlElement>().ok()) {
        // A line that is gone refuses.
        let _ = field.focus();
    }
}
