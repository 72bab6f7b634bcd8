//! Rows of a copied table: tabs between the cells of a line.

use super::english::{COLUMNS, OTHER_COLUMNS, STEP_COLUMNS};
use super::marker::marked;
use super::plain::plain;

/// What the cells of a column are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Column {
    /// Steps, their numbers, or further words of them.
    Words,
    /// What this leading word would lead to.
    Leading(&'static str),
}

/// A cell of a row: its column, and its stretch of the line with the number before it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct CellOf<'a> {
    pub(super) column: usize,
    pub(super) source: &'a str,
}

/// The cells of a line with words in them; a number or bullet cell belongs to the cell behind it.
pub(super) fn cells(line: &str) -> Vec<CellOf<'_>> {
    let mut cells = Vec::new();
    let (mut from, mut at) = (0, 0);
    for (column, cell) in line.split('\t').enumerate() {
        let end = at + cell.len();
        at = end + 1;
        // With its tab, because some marks are marks only before one.
        let with_tab = line.get(end - cell.len()..at).unwrap_or(cell);
        let is_mark = marked(with_tab).words.is_empty() || is_bare_number(&plain(cell));
        if !is_mark {
            cells.push(CellOf { column, source: line.get(from..end).unwrap_or_default() });
            from = end;
        }
    }
    // Whatever is left behind the last cell goes with it, so that nothing is lost.
    if let Some(last) = cells.last_mut() {
        let start = from.saturating_sub(last.source.len());
        last.source = line.get(start..).unwrap_or(last.source);
    }
    cells
}

fn is_bare_number(cell: &str) -> bool {
    !cell.is_empty() && cell.len() <= 4 && cell.bytes().all(|b| b.is_ascii_digit() || b == b'.')
}

/// The columns that a row names, if all of its cells are heads of columns.
pub(super) fn columns(line: &str) -> Option<Vec<Column>> {
    let names: Vec<String> = line.split('\t').map(|cell| plain(cell).to_lowercase()).collect();
    let column = |name: &String| {
        let name = name.trim_end_matches(':');
        let known = COLUMNS.iter().find(|(head, _)| *head == name);
        let words = name.is_empty() || STEP_COLUMNS.contains(&name) || OTHER_COLUMNS.contains(&name);
        known.map(|(_, word)| Column::Leading(word)).or_else(|| words.then_some(Column::Words))
    };
    let n_named = names.iter().filter(|name| !name.is_empty()).count();
    let found: Option<Vec<Column>> = names.iter().map(column).collect();
    found.filter(|_| n_named >= 2)
}
