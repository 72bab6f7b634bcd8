//! A decimal figure that keeps the digits as typed.
//!
//! "0.10" stays "0.10": how many digits an engineer wrote says how exact the value is meant.
//! A decimal comma is accepted and kept as a point, the form that the file uses.

use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// A finite decimal figure, for example `-0.25`, `12`, `1.50`.
#[derive(Clone, Debug, PartialEq, Eq, Hash)]
pub struct Figure {
    // Invariant: matches `-?[0-9]{1,15}(\.[0-9]{1,15})?`; checked by `parse`.
    text: Box<str>,
}

/// Why a text is no [`Figure`].
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FigureError {
    /// The text as given.
    pub text: String,
}

impl std::fmt::Display for FigureError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self.text.split_once(',').filter(|_| may_be_thousands(&self.text)) {
            Some((whole, rest)) => write!(
                f,
                "\"{}\" can be {whole}{rest} or {whole}.{rest}; write the one that is meant",
                self.text
            ),
            None => write!(f, "\"{}\" is not a decimal figure such as 12, 0.5 or -3", self.text),
        }
    }
}

impl std::error::Error for FigureError {}

/// Whether a text is a figure whose comma may be read in two ways: 1,200 is twelve hundred to some and one and a fifth to
/// others, a thousandfold in a wait or a limit. Before a zero it is a decimal comma.
pub fn may_be_thousands(text: &str) -> bool {
    let digits = |part: &str| part.bytes().all(|b| b.is_ascii_digit());
    let text = text.trim().trim_start_matches(['-', '\u{2212}']);
    text.split_once(',').is_some_and(|(whole, rest)| {
        let first = (1..=3).contains(&whole.len()) && digits(whole) && !whole.starts_with('0');
        first && rest.len() == 3 && digits(rest)
    })
}

/// Digits allowed before and after the point; enough for any reading, few enough to stay exact in a `f64`.
const MOST_DIGITS: usize = 15;

impl Figure {
    /// Reads a figure, with a decimal point or a decimal comma.
    ///
    /// # Errors
    /// If the text is not an optional minus sign (`-` or `−`), 1 to 15 digits and, after one point or
    /// comma, 1 to 15 digits; or if its comma may set thousands apart: `1,200`.
    pub fn parse(text: &str) -> Result<Self, FigureError> {
        if may_be_thousands(text) {
            return Err(FigureError { text: text.to_owned() });
        }
        let normal: String = text
            .trim()
            .chars()
            .map(|c| match c {
                ',' => '.',
                '\u{2212}' => '-',
                other => other,
            })
            .collect();
        let digits = normal.strip_prefix('-').unwrap_or(&normal);
        let (whole, fraction) = match digits.split_once('.') {
            Some((whole, fraction)) => (whole, Some(fraction)),
            None => (digits, None),
        };
        let is_run = |run: &str| {
            !run.is_empty() && run.len() <= MOST_DIGITS && run.bytes().all(|b| b.is_ascii_digit())
        };
        if is_run(whole) && fraction.is_none_or(is_run) {
            Ok(Self { text: normal.into_boxed_str() })
        } else {
            Err(FigureError { text: text.to_owned() })
        }
    }

    /// The figure with the digits as typed and a decimal point.
    pub fn as_str(&self) -> &str {
        &self.text
    }

    /// The nearest `f64`; always finite.
    pub fn value(&self) -> f64 {
        // The invariant makes this parse; zero is the harmless answer if it ever did not.
        self.text.parse().unwrap_or(0.0)
    }
}

impl std::fmt::Display for Figure {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.text)
    }
}

impl Serialize for Figure {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(&self.text)
    }
}

impl<'de> Deserialize<'de> for Figure {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        let figure = Self::parse(&text).map_err(serde::de::Error::custom)?;
        // People may type a comma; a file that held one would be changed by merely saving it.
        if *figure.text == *text { Ok(figure) } else { Err(serde::de::Error::custom(FigureError { text })) }
    }
}

#[cfg(feature = "cli")]
impl schemars::JsonSchema for Figure {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Figure".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({
            "description": "A decimal figure with the digits as typed, for example \"-0.25\", \"12\", \"1.50\".",
            "type": "string",
            "pattern": format!("^-?[0-9]{{1,{MOST_DIGITS}}}([.][0-9]{{1,{MOST_DIGITS}}})?$"),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::Figure;

    #[test]
    fn digits_stay_as_typed() {
        for (typed, kept) in [("0.10", "0.10"), ("1,5", "1.5"), (" 12 ", "12"), ("\u{2212}3", "-3")] {
            assert_eq!(Figure::parse(typed).map(|f| f.as_str().to_owned()), Ok(kept.to_owned()));
        }
    }

    #[test]
    fn what_is_no_figure_is_refused() {
        for typed in ["", "-", ".5", "5.", "1e3", "NaN", "1.2.3", "12 bar", "1234567890123456"] {
            assert!(Figure::parse(typed).is_err(), "{typed}");
        }
    }

    #[test]
    fn a_comma_before_three_digits_is_asked_about() {
        for typed in ["1,200", "12,000", "-1,050"] {
            let error = Figure::parse(typed).expect_err(typed).to_string();
            assert!(error.contains("write the one that is meant"), "{error}");
        }
        assert!(Figure::parse("1,200").is_err_and(|error| error.to_string().contains("1200 or 1.200")));
        for typed in ["0,125", "1,20", "1,2000", "1.200"] {
            assert!(Figure::parse(typed).is_ok(), "{typed}");
        }
    }
}
