//! The layer below a field that repeats its words unseen and draws the lines under them.
//!
//! It wraps as the field does, because both have the same type and width, and it gives the field its height.
//! It is for the eye alone; the notation says the same in words.

use crate::state::heard::{Mark, Piece};
use leptos::prelude::*;

/// The layer.
pub fn mirror(pieces: impl Fn() -> Vec<Piece> + Send + 'static) -> impl IntoView {
    let drawn = move || {
        let pieces = pieces();
        let alike = pieces.chunk_by(|one, next| one.is_pending == next.is_pending);
        alike.map(bracketed).collect_view()
    };
    // The blank at the end gives a last empty line its height.
    view! { <div class="mirror" aria-hidden="true">{drawn}" "</div> }
}

/// Pieces that are alike in whether a value is still to be found out; if so, in brackets.
fn bracketed(pieces: &[Piece]) -> AnyView {
    let drawn = pieces.iter().map(drawn).collect_view();
    if pieces.first().is_some_and(|piece| piece.is_pending) {
        view! { <span class="pending">{drawn}</span> }.into_any()
    } else {
        drawn.into_any()
    }
}

fn drawn(piece: &Piece) -> AnyView {
    let text = piece.text.clone();
    let mark = match piece.mark {
        Mark::None => return text.into_any(),
        Mark::Understood => "understood",
        Mark::Practice => "practice",
        Mark::New => "new",
        Mark::Open => "open",
    };
    view! { <span class=mark>{text}</span> }.into_any()
}
