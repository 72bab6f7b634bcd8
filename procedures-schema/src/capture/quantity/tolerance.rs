//! A figure and how far off it may be: `9.0 % ± 0.3` is 8.7 % to 9.3 %.

use super::Finder;
use crate::units::{Figure, Range, Unit};

impl Finder<'_> {
    /// The range of a figure whose tolerance begins at a token, and the token behind it. One word may stand
    /// between: "3.0 bar static plus or minus 0.3".
    pub(super) fn tolerance(
        &self,
        figure: &Figure,
        unit: Option<&Unit>,
        at: usize,
    ) -> Option<(Range, usize)> {
        let (off_by, own, to) = self.figure(self.behind_tolerance(at, unit.is_some())?)?;
        let unit = match (unit, own) {
            (Some(unit), None) => unit.clone(),
            (Some(unit), Some(own)) if *unit == own => own,
            (None, Some(own)) => own,
            _ => return None,
        };
        let (least, most) = ends(figure, &off_by)?;
        Some((Range::new(Some(least), Some(most), unit), to))
    }

    /// Whether words for a tolerance stand behind a figure.
    pub(super) fn has_tolerance(&self, at: usize, has_unit: bool) -> bool {
        self.behind_tolerance(at, has_unit).is_some()
    }

    fn behind_tolerance(&self, at: usize, has_unit: bool) -> Option<usize> {
        let is_word = has_unit && self.text(at).chars().all(char::is_alphabetic);
        self.behind_sign(at).or_else(|| self.behind_sign(at + 1).filter(|_| is_word))
    }

    /// The token behind "plus or minus", or the one before which `±` stands.
    fn behind_sign(&self, at: usize) -> Option<usize> {
        let between = self.between(at);
        if between.contains('\u{b1}') || between.contains("+/-") {
            return Some(at);
        }
        match (self.text(at), self.text(at + 1), self.text(at + 2)) {
            ("plus", "or", "minus") | ("give", "or", "take") => Some(at + 3),
            ("plus", "minus", _) => Some(at + 2),
            _ => None,
        }
    }
}

/// The ends of a range around a figure, exact, with as many decimals as the finer of the two has.
fn ends(figure: &Figure, off_by: &Figure) -> Option<(Figure, Figure)> {
    let decimals = |figure: &Figure| figure.as_str().split_once('.').map_or(0, |(_, behind)| behind.len());
    let n = decimals(figure).max(decimals(off_by));
    let scaled = |figure: &Figure| {
        let missing = n - decimals(figure);
        let digits = figure.as_str().replace('.', "") + &"0".repeat(missing);
        digits.parse::<i128>().ok()
    };
    let (middle, off_by) = (scaled(figure)?, scaled(off_by)?.abs());
    Some((of_scaled(middle - off_by, n)?, of_scaled(middle + off_by, n)?))
}

fn of_scaled(scaled: i128, n_decimals: usize) -> Option<Figure> {
    let digits = format!("{:0width$}", scaled.abs(), width = n_decimals + 1);
    let (whole, behind) = digits.split_at_checked(digits.len() - n_decimals)?;
    let sign = if scaled < 0 { "-" } else { "" };
    let point = if behind.is_empty() { "" } else { "." };
    Figure::parse(&format!("{sign}{whole}{point}{behind}")).ok()
}

#[cfg(test)]
mod tests {
    use super::ends;
    use crate::units::Figure;

    #[test]
    fn ends_are_exact_decimals() {
        for (middle, off_by, least, most) in [
            ("9.0", "0.3", "8.7", "9.3"),
            ("8.6", "0.25", "8.35", "8.85"),
            ("5", "1", "4", "6"),
            ("0.1", "0.2", "-0.1", "0.3"),
            ("-12", "0.5", "-12.5", "-11.5"),
            ("1.00", "0.05", "0.95", "1.05"),
        ] {
            let figure = |text| Figure::parse(text).expect(text);
            let (low, high) = ends(&figure(middle), &figure(off_by)).expect("in reach");
            assert_eq!((low.as_str(), high.as_str()), (least, most), "{middle} and {off_by}");
        }
    }
}
