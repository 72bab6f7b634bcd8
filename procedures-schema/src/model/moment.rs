//! A moment in time, given from outside: the core has no clock.

use super::{Date, DateError};
use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// A moment of universal time to the second, written `2026-11-25T10:15:00Z` (RFC 3339).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Moment {
    date: Date,
    // Invariant: hour 0..=23, minute and second 0..=59; checked by `parse`.
    hour: u8,
    minute: u8,
    second: u8,
}

/// Why a text is no [`Moment`].
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MomentError {
    /// The text as given.
    pub text: String,
}

impl std::fmt::Display for MomentError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "\"{}\" is not a moment such as 2026-11-25T10:15:00Z", self.text)
    }
}

impl std::error::Error for MomentError {}

impl From<DateError> for MomentError {
    fn from(error: DateError) -> Self {
        Self { text: error.text }
    }
}

impl Moment {
    /// The first moment of the first day.
    pub const FIRST: Self = Self { date: Date::FIRST, hour: 0, minute: 0, second: 0 };

    /// Reads `YYYY-MM-DDThh:mm:ssZ`.
    ///
    /// # Errors
    /// If the text has another form, or names a day or an hour that does not exist.
    pub fn parse(text: &str) -> Result<Self, MomentError> {
        let wrong = || MomentError { text: text.to_owned() };
        let (date, clock) = text.split_once('T').ok_or_else(wrong)?;
        let clock = clock.strip_suffix('Z').ok_or_else(wrong)?;
        let mut parts = clock.split(':');
        let mut part = |below: u8| {
            let digits =
                parts.next().filter(|part| part.len() == 2 && part.bytes().all(|b| b.is_ascii_digit()));
            digits.and_then(|digits| digits.parse().ok()).filter(|number| *number < below).ok_or_else(wrong)
        };
        let moment = Self { date: Date::parse(date)?, hour: part(24)?, minute: part(60)?, second: part(60)? };
        if parts.next().is_none() { Ok(moment) } else { Err(wrong()) }
    }
}

impl std::fmt::Display for Moment {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}T{:02}:{:02}:{:02}Z", self.date, self.hour, self.minute, self.second)
    }
}

impl Serialize for Moment {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Moment {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        Self::parse(&String::deserialize(deserializer)?).map_err(serde::de::Error::custom)
    }
}

#[cfg(feature = "cli")]
impl schemars::JsonSchema for Moment {
    fn schema_name() -> std::borrow::Cow<'static, str> {
        "Moment".into()
    }

    fn json_schema(_: &mut schemars::SchemaGenerator) -> schemars::Schema {
        schemars::json_schema!({
            "description": "A moment of universal time to the second, for example 2026-11-25T10:15:00Z.",
            "type": "string",
            "pattern": "^[0-9]{4}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}Z$",
        })
    }
}

#[cfg(test)]
mod tests {
    use super::Moment;

    #[test]
    fn only_real_moments_are_moments() {
        let good = "2026-11-25T10:15:59Z";
        assert_eq!(Moment::parse(good).map(|moment| moment.to_string()), Ok(good.to_owned()));
        for bad in [
            "2026-11-25",
            "2026-11-25T10:15:59",
            "2026-11-25T24:00:00Z",
            "2026-11-25T10:60:00Z",
            "2026-11-31T10:15:00Z",
            "2026-11-25T10:15Z",
            "2026-11-25T1:15:00Z",
            "2026-11-25T10:15:00:00Z",
        ] {
            assert!(Moment::parse(bad).is_err(), "{bad}");
        }
    }
}
