//! A measured value and a range of accepted values.

use super::{Figure, Rest, Unit, convert};
use serde::{Deserialize, Serialize};

/// A figure with its unit, exactly as typed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Measured {
    /// The figure as typed.
    pub value: Figure,
    /// Its unit.
    pub unit: Unit,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

impl Measured {
    /// The figure in this unit.
    pub fn new(value: Figure, unit: Unit) -> Self {
        Self { value, unit, rest: Rest::default() }
    }
}

impl std::fmt::Display for Measured {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{} {}", self.value, self.unit.shown())
    }
}

/// Accepted values: both ends belong to the range; an end that is absent is open.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Range {
    /// The smallest accepted figure.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub min: Option<Figure>,
    /// The largest accepted figure.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub max: Option<Figure>,
    /// The unit of both.
    pub unit: Unit,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

impl Range {
    /// The range from `min` to `max`.
    pub fn new(min: Option<Figure>, max: Option<Figure>, unit: Unit) -> Self {
        Self { min, max, unit, rest: Rest::default() }
    }

    /// Whether a value lies in the range; `None` if its unit measures something else.
    pub fn accepts(&self, value: &Measured) -> Option<bool> {
        let given = convert(value.value.value(), &value.unit, &self.unit).ok()?;
        let above = self.min.as_ref().is_none_or(|min| given >= min.value());
        let below = self.max.as_ref().is_none_or(|max| given <= max.value());
        Some(above && below)
    }

    /// The range as a sentence says it, in the place of words that have this unit, which stays as it was written if it
    /// is the same.
    pub fn in_words(&self, unit: &Unit, was: &str) -> String {
        let behind_figures = was.rfind(|c: char| c.is_ascii_digit()).and_then(|last| was.get(last + 1..));
        let own =
            behind_figures.filter(|text| self.unit == *unit && text.chars().any(|c| !c.is_whitespace()));
        let unit = own.map_or_else(|| format!(" {}", self.unit.shown()), str::to_owned);
        match (&self.min, &self.max) {
            (Some(min), Some(max)) if min == max => format!("{min}{unit}"),
            (Some(min), Some(max)) => format!("{min} to {max}{unit}"),
            (Some(min), None) => format!("at least {min}{unit}"),
            (None, Some(max)) => format!("at most {max}{unit}"),
            (None, None) => was.to_owned(),
        }
    }
}

impl std::fmt::Display for Range {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let unit = self.unit.shown();
        match (&self.min, &self.max) {
            (Some(min), Some(max)) if min == max => write!(f, "{min} {unit}"),
            (Some(min), Some(max)) => write!(f, "{min} {unit} to {max} {unit}"),
            (Some(min), None) => write!(f, "at least {min} {unit}"),
            (None, Some(max)) => write!(f, "at most {max} {unit}"),
            (None, None) => write!(f, "any value in {unit}"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Figure, Measured, Range, Unit};

    fn figure(text: &str) -> Figure {
        Figure::parse(text).expect("a figure")
    }

    #[test]
    fn both_ends_belong_to_a_range() {
        let range = Range::new(Some(figure("0")), Some(figure("0.1")), Unit::Bar);
        for (value, unit, inside) in [
            ("0", Unit::Bar, Some(true)),
            ("0.1", Unit::Bar, Some(true)),
            ("0.11", Unit::Bar, Some(false)),
            ("100", Unit::Millibar, Some(true)),
            ("-0.1", Unit::Bar, Some(false)),
            ("0.1", Unit::Volt, None),
        ] {
            assert_eq!(range.accepts(&Measured::new(figure(value), unit)), inside, "{value}");
        }
    }
}
