//! Sizes of paper.

use super::divide::Room;
use procedures_schema::model::Country;

/// A size of paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// ISO 216 A4, 210 mm by 297 mm.
    A4,
    /// ANSI Letter, 8.5 in by 11 in: 215.9 mm by 279.4 mm.
    Letter,
}

/// Millimetres of a page above and below what changes: margins and foot, and the head, in which the names of lanes lie
/// or stand upright where there are some; as in `print.css`.
const TAKEN_MM: f64 = 2.0 * 12.0 + 10.0;
const HEAD_MM: f64 = 21.0;
const HEAD_WITH_NAMES_MM: f64 = 34.0;
const HEAD_WITH_UPRIGHT_NAMES_MM: f64 = 54.0;

/// The rule below the head, in CSS pixels.
const RULE: f64 = 1.0;

impl Paper {
    /// Both.
    pub const ALL: [Self; 2] = [Self::A4, Self::Letter];

    /// That of a country.
    pub fn of_country(country: Option<&Country>) -> Self {
        if country.is_some_and(|country| *country == Country::UnitedStates) { Self::Letter } else { Self::A4 }
    }

    /// Its name.
    pub fn name(self) -> &'static str {
        match self {
            Self::A4 => "A4",
            Self::Letter => "Letter",
        }
    }

    /// Its class in the style sheet.
    pub fn class(self) -> &'static str {
        match self {
            Self::A4 => "a4",
            Self::Letter => "letter",
        }
    }

    /// The room for blocks on a page, in CSS pixels of 1/96 in.
    pub fn room(self, has_lanes: bool, has_upright_names: bool) -> Room {
        let names = if has_upright_names { HEAD_WITH_UPRIGHT_NAMES_MM } else { HEAD_WITH_NAMES_MM };
        let plain = self.below(HEAD_MM);
        Room { plain, with_lanes: if has_lanes { self.below(names) } else { plain } }
    }

    /// The room below a head of this height.
    fn below(self, head_mm: f64) -> f64 {
        let height_mm = match self {
            Self::A4 => 297.0,
            Self::Letter => 279.4,
        };
        (height_mm - TAKEN_MM - head_mm) * 96.0 / 25.4 - RULE
    }
}
