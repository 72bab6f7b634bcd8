//! Numbers, bullets, checkboxes and quotation marks before the words of a line.

use super::english::NUMBERED;
use super::plain::is_unseen;
use crate::capture::leading::begins_with_quantity;

/// What stands before the words of a line.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Marked<'a> {
    /// The words.
    pub(super) words: &'a str,
    /// Whether a number, bullet or checkbox stood before them.
    pub(super) is_item: bool,
    /// Whether `#` made it a heading.
    pub(super) is_heading: bool,
    /// Whether it is indented.
    pub(super) is_indented: bool,
}

/// Marks that begin an item; the last row is what word processors put for a bullet of a symbol font.
const BULLETS: &[char] = &[
    '\u{2022}', '\u{2023}', '\u{25e6}', '\u{25aa}', '\u{25ab}', '\u{25cf}', '\u{25cb}', '\u{25a0}',
    '\u{25a1}', '\u{2043}', '\u{2219}', '\u{b7}', '\u{27a2}', '\u{27a4}', '\u{2794}', '\u{2192}', '\u{25ba}',
    '\u{25b6}', '\u{2713}', '\u{2714}', '\u{2610}', '\u{2611}', '\u{2612}', '\u{f0b7}', '\u{f0a7}',
    '\u{f0d8}', '\u{f0a8}', '\u{f0fc}',
];

/// Marks that begin an item only if a blank follows them.
const SPACED: &[char] = &['-', '*', '+', '\u{2013}', '\u{2014}'];

/// At most this many marks stand before the words: quotation, bullet, checkbox, number.
const MOST_MARKS: usize = 6;

/// Takes the marks off a line.
pub(super) fn marked(line: &str) -> Marked<'_> {
    let is_blank = |c: char| c.is_whitespace() || is_unseen(c);
    let mut words = line.trim_start_matches(is_blank);
    let mut marked = Marked { is_indented: words.len() < line.len(), ..Marked::default() };
    for _ in 0..MOST_MARKS {
        let (rest, is_item) = if let Some(rest) = quotation(words) {
            (rest, false)
        } else if let Some(rest) = hashes(words) {
            marked.is_heading = true;
            (rest, false)
        } else if let Some(rest) = bullet(words).or_else(|| checkbox(words)).or_else(|| number(words)) {
            (rest, true)
        } else {
            break;
        };
        words = rest.trim_start_matches(is_blank);
        marked.is_item |= is_item;
    }
    Marked { words: words.trim_end_matches(is_blank), ..marked }
}

fn quotation(text: &str) -> Option<&str> {
    text.strip_prefix('>').or_else(|| text.strip_prefix("| "))
}

fn hashes(text: &str) -> Option<&str> {
    let rest = text.trim_start_matches('#');
    (rest.len() < text.len() && rest.starts_with(char::is_whitespace)).then_some(rest)
}

fn bullet(text: &str) -> Option<&str> {
    if let Some(rest) = text.strip_prefix(BULLETS) {
        return Some(rest);
    }
    // A small letter o before a tab is a bullet of a word processor.
    let spaced =
        text.strip_prefix(SPACED).filter(|rest| rest.is_empty() || rest.starts_with(char::is_whitespace));
    spaced.or_else(|| text.strip_prefix('o').filter(|rest| rest.starts_with('\t')))
}

fn checkbox(text: &str) -> Option<&str> {
    ["[ ]", "[x]", "[X]", "[]"].iter().find_map(|mark| text.strip_prefix(mark))
}

/// `1.`, `1)`, `(1)`, `1.2`, `(a)`, `a)`, `iv.`, `Step 4:`.
fn number(text: &str) -> Option<&str> {
    if let Some(rest) = named(text) {
        return Some(rest);
    }
    if let Some(inside) = text.strip_prefix('(') {
        let (label, rest) = inside.split_once(')')?;
        return is_label(label).then_some(rest);
    }
    let end = text.find(|c: char| !c.is_ascii_alphanumeric() && c != '.').unwrap_or(text.len());
    let (label, rest) = text.split_at_checked(end)?;
    let ended = |rest: &str| rest.is_empty() || rest.starts_with(char::is_whitespace);
    if let Some(after) = rest.strip_prefix([')', ':']).filter(|after| ended(after)) {
        let counts = rest.starts_with(')') || label.bytes().all(|b| b.is_ascii_digit());
        return (counts && is_label(label)).then_some(after);
    }
    if !ended(rest) {
        return None;
    }
    if let Some(label) = label.strip_suffix('.') {
        return is_label(label).then_some(rest);
    }
    let is_number = is_label(label) && label.starts_with(|c: char| c.is_ascii_digit());
    let is_cell = rest.starts_with('\t') || rest.is_empty();
    // "1.2 Undo" is a number, "1.5 bar" is not, and neither is "4 bolts".
    let is_chapter = label.contains('.') && !begins_with_quantity(text) && begins_upper(rest);
    (is_number && (is_cell || is_chapter)).then_some(rest)
}

fn begins_upper(text: &str) -> bool {
    text.trim_start().starts_with(char::is_uppercase)
}

/// `Step 4:`, `Step 4 -`, `Step 4.`
fn named(text: &str) -> Option<&str> {
    NUMBERED.iter().find_map(|name| {
        let (start, rest) = text.split_at_checked(name.len())?;
        let rest = rest.strip_prefix([' ', '\u{a0}']).filter(|_| start.eq_ignore_ascii_case(name))?;
        let end = rest.find(|c: char| !c.is_ascii_digit())?;
        let (digits, after) = rest.split_at_checked(end)?;
        let after = after.trim_start_matches([' ', '\u{a0}']);
        let mark = after.strip_prefix([':', '.', ')', '-', '\u{2013}', '\u{2014}', '\t'])?;
        (!digits.is_empty()).then_some(mark)
    })
}

/// Digits with points between, one letter, or a small Roman number.
fn is_label(label: &str) -> bool {
    let groups = label.split('.');
    let is_count = |group: &str| (1..=3).contains(&group.len()) && group.bytes().all(|b| b.is_ascii_digit());
    let is_letter = label.len() == 1 && label.bytes().all(|b| b.is_ascii_alphabetic());
    let is_roman = (1..=4).contains(&label.len()) && label.bytes().all(|b| matches!(b, b'i' | b'v' | b'x'));
    groups.into_iter().all(is_count) || is_letter || is_roman
}
