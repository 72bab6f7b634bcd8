//! Which blocks stand on which page.

use std::ops::Range;

/// What is known of a block.
#[derive(Clone, Copy, Debug)]
pub struct Piece {
    /// Its height, in the unit of the room.
    pub height: f64,
    /// Whether it must not be the last on its page: a heading.
    pub leads: bool,
    /// Whether it makes the head of its page say how the lanes are called.
    pub has_lanes: bool,
}

/// The room of a page, in the unit of the heights.
#[derive(Clone, Copy, Debug)]
pub struct Room {
    /// Where no lanes stand.
    pub plain: f64,
    /// Below the names of lanes.
    pub with_lanes: f64,
}

impl Room {
    fn of(self, pieces: &[Piece]) -> f64 {
        if pieces.iter().any(|piece| piece.has_lanes) { self.with_lanes } else { self.plain }
    }
}

/// The blocks of each page, in order. A block higher than a page has one to itself.
pub fn divide(pieces: &[Piece], room: Room) -> Vec<Range<usize>> {
    let mut pages = Vec::new();
    let (mut from, mut used) = (0, 0.0);
    for (at, piece) in pieces.iter().enumerate() {
        let room = room.of(pieces.get(from..=at).unwrap_or_default());
        if at > from && used + piece.height > room {
            let end = end_of_page(pieces, from, at);
            pages.push(from..end);
            from = end;
            used = pieces.get(end..at).unwrap_or_default().iter().map(|piece| piece.height).sum();
        }
        used += piece.height;
    }
    if from < pieces.len() {
        pages.push(from..pieces.len());
    }
    pages
}

/// Where a page ends before a block that it has no room for: before the headings that would stand last.
fn end_of_page(pieces: &[Piece], from: usize, at: usize) -> usize {
    let leads =
        |end: &usize| end.checked_sub(1).and_then(|last| pieces.get(last)).is_some_and(|last| last.leads);
    let mut end = at;
    while end > from && leads(&end) {
        end -= 1;
    }
    if end > from { end } else { at }
}

#[cfg(test)]
mod tests {
    use super::{Piece, Room};
    use std::ops::Range;
    use wasm_bindgen_test::wasm_bindgen_test;

    fn pieces(heights: &[i32]) -> Vec<Piece> {
        // A negative height stands for a heading.
        heights
            .iter()
            .map(|h| Piece { height: f64::from(h.abs()), leads: *h < 0, has_lanes: *h == 5 })
            .collect()
    }

    fn divide(pieces: &[Piece], plain: f64) -> Vec<Range<usize>> {
        super::divide(pieces, Room { plain, with_lanes: plain })
    }

    #[wasm_bindgen_test]
    fn a_page_with_lanes_has_less_room() {
        let room = Room { plain: 10.0, with_lanes: 8.0 };
        assert_eq!(super::divide(&pieces(&[4, 5, 3, 3, 4]), room), [0..1, 1..3, 3..5]);
        assert_eq!(super::divide(&pieces(&[4, 6, 3, 7]), room), [0..2, 2..4]);
    }

    #[wasm_bindgen_test]
    fn pages_are_filled_and_never_end_with_a_heading() {
        assert!(divide(&pieces(&[]), 10.0).is_empty());
        assert_eq!(divide(&pieces(&[4, 6, 1]), 10.0), [0..2, 2..3]);
        assert_eq!(divide(&pieces(&[5, -1, 5, 5]), 10.0), [0..1, 1..3, 3..4]);
        assert_eq!(divide(&pieces(&[5, -1, -1, 5]), 10.0), [0..1, 1..4]);
    }

    #[wasm_bindgen_test]
    fn what_is_higher_than_a_page_stands_alone() {
        assert_eq!(divide(&pieces(&[3, 25, 3]), 10.0), [0..1, 1..2, 2..3]);
        assert_eq!(divide(&pieces(&[-3, 25]), 10.0), [0..1, 1..2]);
    }
}
