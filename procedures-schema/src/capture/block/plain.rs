//! Text as other programs leave it, made plain.

/// The lines of a text with their numbers, whatever ends them; empty ones too.
pub(super) fn lines(text: &str) -> impl Iterator<Item = (usize, &str)> {
    let mut rest = Some(text);
    let lines = std::iter::from_fn(move || {
        let text = rest?;
        let Some(at) = text.find(is_line_end) else {
            rest = None;
            return Some(text);
        };
        let (line, more) = text.split_at_checked(at)?;
        let mut after = more.chars();
        let end = after.next();
        rest = Some(match end {
            Some('\r') => after.as_str().strip_prefix('\n').unwrap_or(after.as_str()),
            _ => after.as_str(),
        });
        Some(line)
    });
    lines.enumerate().map(|(i, line)| (i + 1, line))
}

/// Line ends of all sorts, with those that word processors put inside a paragraph and between pages.
fn is_line_end(c: char) -> bool {
    matches!(c, '\n' | '\r' | '\u{b}' | '\u{c}' | '\u{85}' | '\u{2028}' | '\u{2029}')
}

/// The words of a stretch: no soft hyphens or zero-width signs, one plain blank between words, plain
/// quotation marks.
pub(super) fn plain(text: &str) -> String {
    let mut plain = String::with_capacity(text.len());
    for c in text.chars().filter(|c| !is_unseen(*c)) {
        match c {
            c if c.is_whitespace() => {
                if !plain.is_empty() && !plain.ends_with(' ') {
                    plain.push(' ');
                }
            }
            '\u{2018}' | '\u{2019}' | '\u{201b}' => plain.push('\''),
            '\u{201c}' | '\u{201d}' | '\u{201e}' | '\u{201f}' => plain.push('"'),
            '\u{2010}' | '\u{2011}' => plain.push('-'),
            c => plain.push(c),
        }
    }
    plain.truncate(plain.trim_end().len());
    plain
}

/// Whether a character is there for the layout alone.
pub(super) fn is_unseen(c: char) -> bool {
    matches!(c, '\u{ad}' | '\u{200b}'..='\u{200f}' | '\u{2060}' | '\u{feff}')
}
