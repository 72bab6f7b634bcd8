//! A safety message as a band over the full width: triangle, signal word, text.

use leptos::prelude::*;
use procedures_schema::model::{SafetyMessage, SignalWord};

/// The class of a signal word in the style sheet.
fn class(word: &SignalWord) -> &'static str {
    match word {
        SignalWord::Danger | SignalWord::Other(_) => "danger",
        SignalWord::Warning => "warning",
        SignalWord::Caution => "caution",
        SignalWord::Notice => "notice",
    }
}

/// Whether people can be hurt, which is what the triangle says; NOTICE concerns things.
fn has_triangle(word: &SignalWord) -> bool {
    *word != SignalWord::Notice
}

/// The message; hazard, consequence and avoidance as sentences.
pub fn safety_band(message: &SafetyMessage) -> impl IntoView + use<> {
    let word = message.word.word().to_owned();
    let parts = [&message.hazard, &message.consequence, &message.avoidance];
    let text: Vec<String> =
        parts.into_iter().filter(|part| !part.is_empty()).map(|part| sentence(part)).collect();
    let triangle = has_triangle(&message.word).then(|| {
        view! {
            <svg class="triangle" viewBox="0 0 20 18" aria-hidden="true" focusable="false">
                <path d="M10 1L19 17H1Z" />
                <path class="stroke" d="M10 6.5v5M10 13.2v1.8" />
            </svg>
        }
    });
    view! {
        <div class=format!("band {}", class(&message.word))>
            <strong class="word">{triangle}{word}</strong>
            <span class="text">{text.join(" ")}</span>
        </div>
    }
}

/// The part as a sentence: a capital in front, a full stop behind.
fn sentence(part: &str) -> String {
    let part = part.trim();
    let mut chars = part.chars();
    let Some(first) = chars.next() else { return String::new() };
    let mut text: String = first.to_uppercase().chain(chars).collect();
    if !text.ends_with(['.', '!', '?']) {
        text.push('.');
    }
    text
}
