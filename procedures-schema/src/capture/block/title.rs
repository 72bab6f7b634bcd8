//! The title of a pasted text: "Replace the expansion vessel" says what the whole is for and is no step before the
//! isolation.

use super::{Piece, PieceKind};

/// A title has no more words than this.
const MOST_WORDS: usize = 8;

/// Whether the first piece is set apart from the others as a title is: without a mark at its end, while they are
/// numbered, stand together below a blank line, or are sentences that end with one.
pub(super) fn begins_with_title(pieces: &[Piece]) -> bool {
    let Some((first, rest)) = pieces.split_first() else { return false };
    let [second, _, ..] = rest else { return false };
    let is_short = first.words.split(' ').count() <= MOST_WORDS;
    if first.kind != PieceKind::Step
        || is_item(first)
        || ends(first)
        || !is_short
        || second.line == first.line
    {
        return false;
    }
    let below = |pair: &[Piece]| matches!(pair, [one, other] if other.line > one.line + 1);
    let stands_apart = second.line > first.line + 1 && !rest.windows(2).any(below);
    let mut steps = rest.iter().filter(|piece| piece.kind == PieceKind::Step).peekable();
    let has_steps = steps.peek().is_some();
    let items = is_item(second) || matches!(second.kind, PieceKind::Heading(_));
    items || stands_apart || (has_steps && steps.all(ends))
}

/// Whether a number or bullet stands before the words.
fn is_item(piece: &Piece) -> bool {
    piece.kind == PieceKind::Step
        && !piece.source.trim_start().starts_with(piece.words.get(..1).unwrap_or_default())
}

fn ends(piece: &Piece) -> bool {
    piece.words.ends_with(['.', '!', '?', ':', ';'])
}
