//! The country that a document is written for, and what follows from it for people: whom to call, units, competence.
//! The limits that differ by country stand in `simulate/country_limits`.

use super::words::words;
use crate::units::{Quantity, Unit};

words! {
    /// The country that a document is written for: emergency number, units, words of competence and paper follow, and the
    /// limits that differ from country to country.
    Country {
        /// Great Britain and Northern Ireland.
        UnitedKingdom = "GB",
        /// Ireland.
        Ireland = "IE",
        /// Germany.
        Germany = "DE",
        /// United States of America.
        UnitedStates = "US",
        /// Another one: where limits differ from country to country, only the author's own apply.
        Elsewhere = "other",
    }
}

impl Country {
    /// The numbers to call in danger, for people; none where they are not known.
    ///
    /// Source: 112 in the European Union by Directive (EU) 2018/1972, article 109; 999 and 911 by the national numbering
    /// plans (all from memory).
    pub fn emergency_numbers(&self) -> Option<&'static str> {
        match self {
            Self::UnitedKingdom => Some("999 or 112"),
            Self::Ireland => Some("112 or 999"),
            Self::Germany => Some("112"),
            Self::UnitedStates => Some("911"),
            Self::Elsewhere | Self::Other(_) => None,
        }
    }

    /// The unit in which people there read or set something; none for a quantity without a unit of its own.
    ///
    /// Common practice, no source.
    pub fn unit_of(&self, quantity: Quantity) -> Option<Unit> {
        let is_imperial = *self == Self::UnitedStates;
        let (metric, imperial) = match quantity {
            Quantity::Pressure => (Unit::Bar, Unit::Psi),
            Quantity::Torque => (Unit::NewtonMetre, Unit::PoundForceFoot),
            Quantity::Length => (Unit::Millimetre, Unit::Inch),
            Quantity::Mass => (Unit::Kilogram, Unit::Pound),
            Quantity::Temperature => (Unit::Celsius, Unit::Fahrenheit),
            Quantity::Time => (Unit::Minute, Unit::Minute),
            Quantity::Voltage => (Unit::Volt, Unit::Volt),
            Quantity::Current => (Unit::Ampere, Unit::Ampere),
            Quantity::Resistance => (Unit::Ohm, Unit::Ohm),
            Quantity::Volume => (Unit::Litre, Unit::Litre),
            Quantity::VolumeFlow => (Unit::LitrePerMinute, Unit::LitrePerMinute),
            Quantity::Power => (Unit::Kilowatt, Unit::Kilowatt),
            Quantity::Fraction | Quantity::Unknown => return None,
        };
        Some(if is_imperial { imperial } else { metric })
    }

    /// What people there call those who are competent for such work, for a writer to choose from.
    ///
    /// Source: electrically skilled person, EN 50110-1; certificate of category I, Regulation (EU) 2015/2067; qualified
    /// person, 29 CFR 1910.399; certificate of type II, 40 CFR 82.161 (all from memory). The others are common practice,
    /// no source.
    pub fn competence(&self) -> &'static [&'static str] {
        match self {
            Self::UnitedKingdom => &[
                "registered gas engineer",
                "electrically skilled person",
                "unvented hot water",
                "F-gas certificate, category I",
            ],
            Self::Ireland => &[
                "registered gas installer",
                "registered electrical contractor",
                "F-gas certificate, category I",
            ],
            Self::Germany => &[
                "listed gas and water fitter",
                "electrically skilled person",
                "F-gas certificate, category I",
            ],
            Self::UnitedStates => {
                &["licensed gas fitter", "qualified person, electrical", "refrigerant certificate, type II"]
            }
            Self::Elsewhere | Self::Other(_) => &[],
        }
    }
}

#[cfg(test)]
mod tests {
    use super::Country;
    use crate::units::{Quantity, Unit};

    #[test]
    fn each_unit_measures_what_it_is_asked_for() {
        let all: Vec<Quantity> = Unit::ALL.iter().map(Unit::quantity).collect();
        for country in Country::ALL {
            for quantity in &all {
                let unit = country.unit_of(*quantity);
                assert!(unit.is_none_or(|unit| unit.quantity() == *quantity), "{country} {quantity:?}");
            }
        }
        assert_eq!(Country::UnitedStates.unit_of(Quantity::Torque), Some(Unit::PoundForceFoot));
        assert_eq!(Country::Ireland.unit_of(Quantity::Torque), Some(Unit::NewtonMetre));
    }

    #[test]
    fn a_country_that_nobody_knows_has_no_number() {
        assert_eq!(Country::Other("XX".into()).emergency_numbers(), None);
        assert_eq!(Country::Elsewhere.emergency_numbers(), None);
        assert!(Country::ALL.iter().filter(|country| country.emergency_numbers().is_some()).count() == 4);
    }
}
