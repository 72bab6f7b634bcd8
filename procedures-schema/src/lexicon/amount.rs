//! Number words.

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
    const WORDS: [&str; 13] = [
        "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
        "twelve",
    ];
    // Every word of a text is asked.
    let is = |known: &str| word.eq_ignore_ascii_case(known);
    if is("both") {
        return Some(Amount::Exactly(2));
    }
    if ["all", "each", "every"].into_iter().any(is) {
        return Some(Amount::All);
    }
    if let Some(n) = WORDS.into_iter().position(is) {
        return u32::try_from(n).ok().map(Amount::Exactly);
    }
    let is_figure = !word.is_empty() && word.bytes().all(|b| b.is_ascii_digit());
    if is_figure { word.parse().ok().map(Amount::Exactly) } else { None }
}
