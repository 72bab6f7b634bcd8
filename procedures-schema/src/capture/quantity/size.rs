//! Threads, nominal sizes in inches, and what seals measure.

use super::{Figures, Finder, Found};

/// Words for seals, which alone are named by two measures: "18 x 2.5 O-ring". A third measure needs no such word.
const SEALS: &[&str] =
    &["gasket", "gaskets", "o-ring", "o-rings", "ring", "rings", "seal", "seals", "washer", "washers"];

impl Finder<'_> {
    /// `M6`, `M10 x 1`, `M10x1`, `G 1 1/2`, `G1`, `R 3/4`, `Rc 1/2`.
    pub(super) fn thread(&self, i: usize) -> Option<Found> {
        let raw = self.raw(i);
        let digits = |text: &str| !text.is_empty() && text.starts_with(|c: char| c.is_ascii_digit());
        if let Some(size) = raw.strip_prefix('M').filter(|size| digits(size)) {
            // "Both M5s."
            let size = size.strip_suffix('s').unwrap_or(size).replace('x', " x ");
            if self.text(i + 1) == "x" && digits(self.text(i + 2)) {
                return Some((i + 3, Figures::Size(format!("M{size} x {}", self.text(i + 2)))));
            }
            return Some((i + 1, Figures::Size(format!("M{size}"))));
        }
        // A screw that taps its own thread.
        if let Some(size) = raw.strip_prefix("ST").filter(|size| digits(size)) {
            let length = (self.text(i + 1) == "x" && digits(self.text(i + 2))).then(|| self.text(i + 2));
            let length = length.map(|length| format!(" x {length}")).unwrap_or_default();
            let to = if length.is_empty() { i + 1 } else { i + 3 };
            return Some((to, Figures::Size(format!("ST{size}{length}"))));
        }
        let letters = ["Rc", "Rp", "R", "G"].into_iter().find(|letters| raw.starts_with(letters))?;
        let joined = raw.strip_prefix(letters).unwrap_or("");
        if !joined.is_empty() && !is_inches(joined) {
            return None;
        }
        let mut inches: Vec<&str> = Some(joined).filter(|joined| !joined.is_empty()).into_iter().collect();
        let mut to = i + 1;
        // A whole number of inches, a fraction, or both.
        while inches.len() < 2
            && is_inches(self.text(to))
            && !inches.last().is_some_and(|last| last.contains('/'))
        {
            if !inches.is_empty() && !self.text(to).contains('/') {
                break;
            }
            inches.push(self.text(to));
            to += 1;
        }
        (!inches.is_empty()).then(|| (to, Figures::Size(format!("{letters} {}", inches.join(" ")))))
    }

    /// `1/2"`, `1 1/2 inch`, `1-1/4 in`, `half inch`, `three-quarter inch`, `an inch and a half`, `1 inch`.
    pub(super) fn inches(&self, i: usize) -> Option<Found> {
        let size = |inches: String, to: usize| Some((to, Figures::Size(format!("{inches} in"))));
        if let Some((inches, to)) = self.inches_in_words(i) {
            return size(inches, to);
        }
        let first = Some(self.text(i)).filter(|text| is_inches(text))?;
        let (inches, last) = match self.text(i + 1) {
            part if is_fraction(part) && !is_fraction(first) => (format!("{first} {part}"), i + 1),
            _ => (first.to_owned(), i),
        };
        let says_inch = matches!(self.text(last + 1), "inch" | "inches") && !self.parts(last + 1);
        // "3/4 in union": of a whole number "in" may lead to where it is.
        let short = is_fraction(self.text(last)) && self.text(last + 1) == "in" && !self.parts(last + 1);
        if says_inch || short {
            return size(inches, last + 2);
        }
        self.is_marked(last).then(|| size(inches, last + 1)).flatten()
    }

    fn inches_in_words(&self, i: usize) -> Option<(String, usize)> {
        let is_inch = |at: usize| matches!(self.text(at), "inch" | "inches");
        let of_word = |word: &str| match word {
            "half" => Some("1/2"),
            "quarter" => Some("1/4"),
            "three-quarter" | "three-quarters" => Some("3/4"),
            "three-eighths" => Some("3/8"),
            _ => None,
        };
        let text = self.text(i);
        if let Some(word) = text.strip_suffix("-inch").and_then(of_word) {
            return Some((word.to_owned(), i + 1));
        }
        if let Some(word) = of_word(text).filter(|_| is_inch(i + 1)) {
            return Some((word.to_owned(), i + 2));
        }
        if text == "three" && matches!(self.text(i + 1), "quarter" | "quarters") && is_inch(i + 2) {
            return Some(("3/4".to_owned(), i + 3));
        }
        let and_half = [1, 2, 3].map(|n| self.text(i + n)) == ["and", "a", "half"];
        let and_quarter = [1, 2, 3].map(|n| self.text(i + n)) == ["and", "a", "quarter"];
        match (text, and_half, and_quarter) {
            ("inch", true, _) => Some(("1 1/2".to_owned(), i + 4)),
            ("inch", _, true) => Some(("1 1/4".to_owned(), i + 4)),
            ("one", ..) if is_inch(i + 1) => Some(("1".to_owned(), i + 2)),
            ("two", ..) if is_inch(i + 1) => Some(("2".to_owned(), i + 2)),
            _ => None,
        }
    }

    /// `24 x 16 x 2 mm`, and `18 x 2.5` beside a word for a seal.
    pub(super) fn dimensions(&self, i: usize) -> Option<Found> {
        let number = |at: usize| Some(self.text(at)).filter(|text| is_number(text));
        let mut all = vec![number(i)?];
        let mut to = i + 1;
        while all.len() < 3 && matches!(self.text(to), "x" | "by") {
            let Some(next) = number(to + 1).or_else(|| number_in_mm(self.text(to + 1))) else { break };
            all.push(next);
            to += 2;
        }
        let last_has_unit = self.text(to - 1).ends_with("mm");
        let says_mm = self.text(to) == "mm";
        to += usize::from(says_mm);
        let around = (i.saturating_sub(3)..i).chain(to..to + 2);
        let is_seal = around.into_iter().any(|at| SEALS.contains(&self.text(at)));
        let is_size = all.len() == 3 || (all.len() == 2 && is_seal);
        let unit = if says_mm || last_has_unit { " mm" } else { "" };
        is_size.then(|| (to, Figures::Dimensions(format!("{}{unit}", all.join(" x ")))))
    }

    /// Whether the sign for inches stands behind a token.
    fn is_marked(&self, i: usize) -> bool {
        let end = self.span(i).1 as usize;
        let next = self.words.chars().nth(end);
        matches!(next, Some('"' | '\u{2033}' | '\u{201d}'))
    }

    /// Whether more than a blank or a hyphen stands before a token.
    fn parts(&self, i: usize) -> bool {
        self.between(i).chars().any(|c| !c.is_whitespace() && c != '-')
    }
}

/// Whether a text is a number of inches: `1`, `3/4`.
fn is_inches(text: &str) -> bool {
    !text.is_empty()
        && text.len() <= 5
        && text.chars().all(|c| c.is_ascii_digit() || c == '/')
        && !text.ends_with('/')
}

fn is_fraction(text: &str) -> bool {
    is_inches(text) && text.contains('/')
}

fn is_number(text: &str) -> bool {
    let digits = text.bytes().filter(u8::is_ascii_digit).count();
    digits > 0 && text.bytes().all(|b| b.is_ascii_digit() || b == b'.' || b == b',')
}

fn number_in_mm(text: &str) -> Option<&str> {
    text.strip_suffix("mm").filter(|number| is_number(number))
}
