//! A calendar date, given from outside: the core has no clock.

use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// A date of the Gregorian calendar, written `2026-11-25` (ISO 8601).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Date {
    // Invariant: year 1..=9999, month 1..=12, day within the month; checked by `parse`.
    year: u16,
    month: u8,
    day: u8,
}

/// Why a text is no [`Date`].
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DateError {
    /// The text as given.
    pub text: String,
}

impl std::fmt::Display for DateError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "\"{}\" is not a date such as 2026-11-25", self.text)
    }
}

impl std::error::Error for DateError {}

impl Date {
    /// The first day that can be written, 0001-01-01.
    pub const FIRST: Self = Self { year: 1, month: 1, day: 1 };

    /// Reads `YYYY-MM-DD`.
    ///
    /// # Errors
    /// If the text has another form or names a day that does not exist.
    pub fn parse(text: &str) -> Result<Self, DateError> {
        let wrong = || DateError { text: text.to_owned() };
        let bytes = text.as_bytes();
        if bytes.len() != 10 || bytes.get(4) != Some(&b'-') || bytes.get(7) != Some(&b'-') {
            return Err(wrong());
        }
        let number = |from: usize, to: usize| -> Option<u16> {
            let part = text.get(from..to)?;
            part.bytes().all(|b| b.is_ascii_digit()).then(|| part.parse().ok()).flatten()
        };
        let (Some(year), Some(month), Some(day)) = (number(0, 4), number(5, 7), number(8, 10)) else {
            return Err(wrong());
        };
        let leap = year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
        let days = match month {
            1 | 3 | 5 | 7 | 8 | 10 | 12 => 31,
            4 | 6 | 9 | 11 => 30,
            2 if leap => 29,
            2 => 28,
            _ => 0,
        };
        if year == 0 || day == 0 || day > days {
            return Err(wrong());
        }
        match (u8::try_from(month), u8::try_from(day)) {
            (Ok(month), Ok(day)) => Ok(Self { year, month, day }),
            _ => Err(wrong()),
        }
    }
}

impl std::fmt::Display for Date {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{:04}-{:02}-{:02}", self.year, self.month, self.day)
    }
}

impl Serialize for Date {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Date {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Self::parse(&String::deserialize(deserializer)?).map_err(serde::de::Error::custom)
    }
}

#[cfg(feature = "cli")]
impl schemars::JsonSchema for Date {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Date".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({
            "description": "A day that exists, for example 2026-11-25.",
            "type": "string",
            "pattern": "^[0-9]{4}-[0-9]{2}-[0-9]{2}$",
        })
    }
}

#[cfg(test)]
mod tests {
    use super::Date;

    #[test]
    fn only_real_days_are_dates() {
        for good in ["2026-11-25", "2024-02-29", "2000-02-29"] {
            assert_eq!(Date::parse(good).map(|d| d.to_string()), Ok(good.to_owned()));
        }
        for bad in
            ["2026-02-29", "1900-02-29", "2026-13-01", "2026-00-10", "26-1-1", "2026-04-31", "2026-4-30x"]
        {
            assert!(Date::parse(bad).is_err(), "{bad}");
        }
    }
}
