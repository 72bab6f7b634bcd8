//! Number words.

use self::Amount::Exactly;

/// How many of something words speak of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Amount {
    /// This many.
    Exactly(u32),
    /// All there are.
    All,
}

/// The amount that a word in lower case, or a whole figure, says.
pub(super) fn amount(word: &str) -> Option<Amount> {
    // Every word of a text is asked, so few are compared.
    let known: &[(&str, Amount)] = match word.len() {
        3 => &[
            ("all", Amount::All),
            ("one", Exactly(1)),
            ("two", Exactly(2)),
            ("six", Exactly(6)),
            ("ten", Exactly(10)),
        ],
        4 => &[
            ("both", Exactly(2)),
            ("each", Amount::All),
            ("four", Exactly(4)),
            ("five", Exactly(5)),
            ("nine", Exactly(9)),
            ("zero", Exactly(0)),
        ],
        5 => &[("every", Amount::All), ("three", Exactly(3)), ("seven", Exactly(7)), ("eight", Exactly(8))],
        6 => &[("eleven", Exactly(11)), ("twelve", Exactly(12))],
        _ => &[],
    };
    if let Some((_, amount)) = known.iter().find(|(known, _)| word.eq_ignore_ascii_case(known)) {
        return Some(*amount);
    }
    let is_figure = !word.is_empty() && word.bytes().all(|b| b.is_ascii_digit());
    if is_figure { word.parse().ok().map(Exactly) } else { None }
}
