//! A number written as another one was in its place.

/// A number as it stands there: in figures, or as a word with the same first letter, small or large.
pub fn number_like(n: u32, was: &str) -> String {
    const WORDS: [&str; 13] = [
        "no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
        "twelve",
    ];
    let is_figure = was.starts_with(|first: char| first.is_ascii_digit());
    let word = usize::try_from(n).ok().and_then(|n| WORDS.get(n)).filter(|_| !is_figure);
    let Some(word) = word else { return n.to_string() };
    let is_large = was.starts_with(char::is_uppercase);
    match word.split_at_checked(1).filter(|_| is_large) {
        Some((first, rest)) => first.to_uppercase() + rest,
        None => (*word).to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::number_like;

    #[test]
    fn a_number_is_written_as_the_one_was_in_whose_place_it_stands() {
        for (n, was, is) in
            [(6, "four", "six"), (6, "4", "6"), (2, "Four", "Two"), (13, "four", "13"), (0, "one", "no")]
        {
            assert_eq!(number_like(n, was), is, "{was}");
        }
    }
}
