//! Figures as they are said: "one point two", "nought point five", "twenty-five", "a hundred and fifty", "two and a
//! half". A figure of which only the last word is understood would be another one, and a wrong one.

use super::text::{Break, Token};
use super::word_set::WordSet;

/// "Nought" and the numbers up to nineteen, in their order.
const SMALL: [&str; 20] = [
    "nought",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
];

/// From twenty on.
const TENS: [&str; 8] = ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];

/// The parts that "and" adds to a number, as its decimals.
const PARTS: [(&str, &str); 2] = [("half", ".5"), ("quarter", ".25")];

/// The words with which a figure may begin, beside those that have a hyphen.
const FIRST: [&str; SMALL.len() + TENS.len() + 3] = {
    let mut words = [""; SMALL.len() + TENS.len() + 3];
    let mut at = 0;
    while at < SMALL.len() {
        words[at] = SMALL[at];
        at += 1;
    }
    while at < SMALL.len() + TENS.len() {
        words[at] = TENS[at - SMALL.len()];
        at += 1;
    }
    (words[at], words[at + 1], words[at + 2]) = ("zero", "hundred", "point");
    words
};

static BEGINNINGS: WordSet = WordSet::of(&FIRST);

/// Whether a figure may begin at a token; nearly all others are told by one look.
pub(super) fn may_begin(token: &Token<'_>) -> bool {
    let is_joined = || TENS.iter().any(|ten| token.text.starts_with(ten));
    BEGINNINGS.may_have(token) || (token.raw.contains('-') && is_joined())
}

/// A figure in words that begins at a token, in digits, and the token behind it.
pub(crate) fn spoken(tokens: &[Token<'_>], at: usize) -> Option<(String, usize)> {
    Spoken { tokens }.figure(at)
}

struct Spoken<'t, 'w> {
    tokens: &'t [Token<'w>],
}

impl Spoken<'_, '_> {
    fn figure(&self, i: usize) -> Option<(String, usize)> {
        let (whole, at) = match self.whole(i) {
            Some((whole, at)) => (whole.to_string(), at),
            None if self.is_bare_point(i) => ("0".to_owned(), i),
            None => return None,
        };
        let (decimals, at) = self.decimals(at).or_else(|| self.and_a_part(at)).unwrap_or((String::new(), at));
        (at > i).then(|| (whole + &decimals, at))
    }

    /// "Not more than *point two*", but not "at the test *point 2* bar".
    fn is_bare_point(&self, i: usize) -> bool {
        const LEADS: &[&str] = &[
            "about", "above", "and", "at", "below", "by", "is", "of", "only", "or", "over", "than", "to",
            "under",
        ];
        let is_lead = |before: usize| LEADS.contains(&self.text(before));
        self.text(i) == "point"
            && (!self.goes_on(i) || i.checked_sub(1).is_none_or(is_lead))
            && !self.text(i + 1).starts_with(|c: char| c.is_ascii_digit())
    }

    fn text(&self, i: usize) -> &str {
        self.tokens.get(i).map_or("", |token| token.text.as_ref())
    }

    /// "Twenty", "twenty-five", "twenty five", "a hundred and fifty", "two hundred", and "1" of "1 point 2".
    fn whole(&self, i: usize) -> Option<(u32, usize)> {
        let Some((n, at)) = self.below_hundred(i) else {
            return (self.text(i) == "hundred").then(|| self.behind_hundred(100, i + 1));
        };
        let is_hundred = self.goes_on(at) && self.text(at) == "hundred" && n < 10;
        Some(if is_hundred { self.behind_hundred(n * 100, at + 1) } else { (n, at) })
    }

    /// "And fifty" behind a number of hundreds.
    fn behind_hundred(&self, hundreds: u32, at: usize) -> (u32, usize) {
        let and = usize::from(self.text(at) == "and");
        match self.below_hundred(at + and).filter(|_| self.goes_on(at)) {
            Some((n, behind)) => (hundreds + n, behind),
            None => (hundreds, at),
        }
    }

    fn below_hundred(&self, i: usize) -> Option<(u32, usize)> {
        let small = |word: &str| SMALL.iter().zip(0..).find(|(known, _)| **known == word).map(|(_, n)| n);
        let tens = |word: &str| TENS.iter().zip(2..).find(|(known, _)| **known == word).map(|(_, n)| n * 10);
        let text = self.text(i);
        if let Some(n) = small(text).or_else(|| (text == "zero").then_some(0)) {
            return Some((n, i + 1));
        }
        if let Some((ten, one)) = text.split_once('-') {
            return Some((tens(ten)? + small(one).filter(|one| (1..10).contains(one))?, i + 1));
        }
        if let Some(ten) = tens(text) {
            let one = small(self.text(i + 1)).filter(|one| (1..10).contains(one) && self.goes_on(i + 1));
            return Some(one.map_or((ten, i + 1), |one| (ten + one, i + 2)));
        }
        let is_figure = text.len() < 4 && !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit());
        let says_point = is_figure && self.text(i + 1) == "point" && self.goes_on(i + 1);
        if says_point { text.parse().ok().map(|n| (n, i + 1)) } else { None }
    }

    /// "Point two five".
    fn decimals(&self, at: usize) -> Option<(String, usize)> {
        if self.text(at) != "point" {
            return None;
        }
        let digit = |word: &str| match word {
            "zero" | "oh" | "nought" => Some(0),
            _ if word.len() == 1 => word.parse().ok().filter(|n: &usize| *n < 10),
            _ => SMALL.iter().take(10).position(|known| *known == word),
        };
        let (mut decimals, mut end) = (String::from("."), at + 1);
        while let Some(n) = digit(self.text(end)).filter(|_| self.goes_on(end)) {
            decimals.push_str(&n.to_string());
            end += 1;
        }
        (end > at + 1).then_some((decimals, end))
    }

    /// "And a half".
    fn and_a_part(&self, at: usize) -> Option<(String, usize)> {
        let leads = self.text(at) == "and" && self.text(at + 1) == "a" && self.goes_on(at);
        let (_, decimals) = PARTS.iter().find(|(part, _)| *part == self.text(at + 2)).filter(|_| leads)?;
        Some(((*decimals).to_owned(), at + 3))
    }

    /// Whether a word follows the one before it without a comma.
    fn goes_on(&self, i: usize) -> bool {
        self.tokens.get(i).is_some_and(|token| token.before == Break::None)
    }
}

#[cfg(test)]
mod tests {
    use super::spoken;
    use crate::lexicon::tokens;

    #[test]
    fn a_figure_is_read_as_a_whole() {
        for (words, figure, n_behind) in [
            ("one point two bar", "1.2", 3),
            ("point five", "0.5", 2),
            ("nought point oh five", "0.05", 4),
            ("twenty-five", "25", 1),
            ("twenty five minutes", "25", 2),
            ("twenty, five", "20", 1),
            ("hundred and fifty parts", "150", 3),
            ("two hundred", "200", 2),
            ("two and a half", "2.5", 4),
            ("1 point 2", "1.2", 3),
            ("four screws", "4", 1),
        ] {
            assert_eq!(spoken(&tokens(words), 0), Some((figure.to_owned(), n_behind)), "{words}");
        }
        for words in ["point of the probe", "point 2", "a half", "12", "and a half"] {
            assert_eq!(spoken(&tokens(words), 0), None, "{words}");
        }
    }
}
