//! The layer below a field that repeats its words unseen and draws the lines under them.
//!
//! It wraps as the field does, because both have the same type and width, and it gives the field its height.
//! It is for the eye alone; the notation says the same in words.

use crate::state::heard::{Mark, Piece};
use leptos::prelude::*;

/// The layer. What is typed mostly changes the text of one piece, and only that is drawn anew then.
pub fn mirror(pieces: impl Fn() -> Vec<Piece> + Send + Sync + 'static) -> impl IntoView {
    let pieces = Memo::new(move |_| pieces());
    let looks = Memo::new(move |_| {
        pieces.with(|pieces| {
            pieces.iter().map(|piece| (piece.mark, piece.is_pending)).enumerate().collect::<Vec<_>>()
        })
    });
    let drawn = move || {
        looks.with(|looks| {
            let alike = looks.chunk_by(|(_, one), (_, next)| one.1 == next.1);
            alike.map(|alike| bracketed(pieces, alike)).collect_view()
        })
    };
    // The blank at the end gives a last empty line its height.
    view! { <div class="mirror" aria-hidden="true">{drawn}" "</div> }
}

/// How a piece looks, by its number.
type Look = (usize, (Mark, bool));

/// Pieces that are alike in whether a value is still to be found out; if so, in brackets.
fn bracketed(pieces: Memo<Vec<Piece>>, alike: &[Look]) -> AnyView {
    let drawn = alike.iter().map(|(at, (mark, _))| drawn(pieces, *at, *mark)).collect_view();
    if alike.first().is_some_and(|(_, (_, is_pending))| *is_pending) {
        view! { <span class="pending">{drawn}</span> }.into_any()
    } else {
        drawn.into_any()
    }
}

fn drawn(pieces: Memo<Vec<Piece>>, at: usize, mark: Mark) -> AnyView {
    let text =
        move || pieces.with(|pieces| pieces.get(at).map(|piece| piece.text.clone()).unwrap_or_default());
    let mark = match mark {
        Mark::None => return text.into_any(),
        Mark::Declined => "declined",
        Mark::Understood => "understood",
        Mark::Practice => "practice",
        Mark::New => "new",
        Mark::Open => "open",
    };
    view! { <span class=mark>{text}</span> }.into_any()
}
