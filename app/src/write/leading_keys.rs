//! The leading words as keys: each puts its word at the start of the line where the caret is.
//!
//! The keys leave the keyboard where it is, so that a tablet's does not go away. For Tab they are one stop.

use crate::components::one_stop::{goes_along, stop};
use leptos::ev::KeyboardEvent;
use leptos::prelude::*;
use wasm_bindgen::JsCast;

/// What the keys say, and what they put in.
const WORDS: [(&str, &str); 9] = [
    ("warning", "warning: "),
    ("read", "read: "),
    ("wait", "wait "),
    ("ask", "ask: "),
    ("hold", "hold: "),
    ("photo", "photo: "),
    ("why", "why: "),
    ("later", "later: "),
    ("bring", "bring: "),
];

/// The keys.
#[component]
pub fn LeadingKeys(
    /// The id of the field.
    field: Signal<String>,
    /// The step whose words the field has, by its number: the sentence stays, and the word begins a line below it.
    step: Signal<Option<usize>>,
    /// Whether it is told where the words go.
    #[prop(optional)]
    tells_where: bool,
) -> impl IntoView {
    let press = move |word: &'static str| {
        let found = document().get_element_by_id(&field.get_untracked());
        let Some(area) = found.and_then(|field| field.dyn_into::<web_sys::HtmlTextAreaElement>().ok()) else {
            return;
        };
        let caret = area.selection_start().ok().flatten().unwrap_or(u32::MAX);
        let (text, caret) = with_word(&area.value(), caret, word, step.get_untracked().is_some());
        area.set_value(&text);
        // The field tells of it as if it had been typed; then it takes keyboard and caret, unless it has gone.
        if let Ok(typed) = document().create_event("Event") {
            typed.init_event_with_bubbles("input", true);
            let _ = area.dispatch_event(&typed);
        }
        let _ = area.focus();
        let _ = area.set_selection_range(caret, caret);
    };
    let key = move |(at, (name, word)): (usize, (&'static str, &'static str))| {
        view! {
            <button
                type="button" class="quiet" tabindex=stop(at) data-along="" on:click=move |_| press(word)
                on:pointerdown=|event| event.prevent_default() on:mousedown=|event| event.prevent_default()
            >{name}</button>
        }
    };
    let place = move || step.get().map_or("new step".to_owned(), |number| format!("step {number}"));
    let told = tells_where.then(|| view! { <span class="place">{place}</span> });
    let label =
        move || if tells_where { format!("Leading words, {}", place()) } else { "Leading words".to_owned() };
    let along = |event: KeyboardEvent| {
        goes_along(&event);
    };
    let keys = WORDS.into_iter().enumerate().map(key).collect_view();
    view! { <div class="leading-keys" role="toolbar" aria-label=label on:keydown=along>{told}{keys}</div> }
}

/// The text with the word at the start of the caret's line, in the place of another leading word there; and where
/// the caret is then. Both count UTF-16 units, as fields do.
fn with_word(text: &str, caret: u32, word: &str, is_below: bool) -> (String, u32) {
    let units: Vec<u16> = text.encode_utf16().collect();
    let caret = usize::try_from(caret).unwrap_or(usize::MAX).min(units.len());
    let (before, after) = units.split_at(caret);
    let is_end = |unit: &u16| *unit == u16::from(b'\n');
    let from = before.iter().rposition(is_end).map_or(0, |at| at + 1);
    let to = after.iter().position(is_end).map_or(units.len(), |at| caret + at);
    let part = |range: std::ops::Range<usize>| String::from_utf16_lossy(units.get(range).unwrap_or_default());
    let (head, line, tail) = (part(0..from), part(from..to), part(to..units.len()));
    let known = WORDS.iter().find(|(_, known)| line.to_lowercase().starts_with(known.trim_end()));
    let own = match known {
        Some((_, known)) => line.get(known.trim_end().len()..).unwrap_or_default().trim_start(),
        None => line.trim_start(),
    };
    let begun = if is_below && known.is_none() && !own.is_empty() {
        format!("{head}{line}\n{word}")
    } else {
        format!("{head}{word}{own}")
    };
    let caret = u32::try_from(begun.encode_utf16().count()).unwrap_or(u32::MAX);
    (format!("{begun}{tail}"), caret)
}

#[cfg(test)]
mod tests {
    use super::with_word;
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test]
    fn the_word_begins_the_line_of_the_caret() {
        assert_eq!(with_word("", 0, "read: ", false), ("read: ".into(), 6));
        assert_eq!(with_word("20 to 40 °C", 3, "read: ", false), ("read: 20 to 40 °C".into(), 17));
        assert_eq!(with_word("Löse.\nheiß\nEnde", 8, "why: ", false), ("Löse.\nwhy: heiß\nEnde".into(), 15));
    }

    #[wasm_bindgen_test]
    fn another_leading_word_gives_way() {
        assert_eq!(with_word("Warning: hot", 12, "why: ", false), ("why: hot".into(), 8));
        assert_eq!(with_word("why: hot", 2, "warning: ", true), ("warning: hot".into(), 12));
    }

    #[wasm_bindgen_test]
    fn the_sentence_of_a_step_stays() {
        assert_eq!(with_word("Undo it.", 4, "why: ", true), ("Undo it.\nwhy: ".into(), 14));
        assert_eq!(with_word("Undo it.\n", 9, "why: ", true), ("Undo it.\nwhy: ".into(), 14));
    }
}
