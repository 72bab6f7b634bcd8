//! Limits of default readings that differ from country to country.
//!
//! Most default limits hold as common practice everywhere. Those here come from rules of one country; for another one
//! that the document names, its own are taken if they are known, and else there are none: the writer gives them.

use crate::model::{Country, Reading, TestKind};
use crate::units::{Figure, Range, Unit};

/// A default reading whose limits are of one country, and what they are elsewhere.
struct Differing {
    test: TestKind,
    what: &'static str,
    /// Whose limits the table of the tests has.
    of: Country,
    elsewhere: &'static [(Country, Limits)],
}

/// Smallest and largest value, unit and source.
type Limits = (&'static str, &'static str, Unit, &'static str);

/// 230 V with 10 % either way.
const EUROPEAN: Limits = ("207", "253", Unit::Volt, "230 V +10/-10 %: EN 50160 (from memory)");

static DIFFERING: &[Differing] = &[
    Differing {
        test: TestKind::Polarity,
        what: "L to N",
        of: Country::UnitedKingdom,
        elsewhere: &[
            (Country::Ireland, EUROPEAN),
            (Country::Germany, EUROPEAN),
            (
                Country::UnitedStates,
                ("114", "126", Unit::Volt, "120 V +5/-5 %: ANSI C84.1, range A (from memory)"),
            ),
        ],
    },
    Differing {
        test: TestKind::Tightness,
        what: "drop in 2 min",
        of: Country::UnitedKingdom,
        // Elsewhere pressure, time and drop are others, and hang on the installation.
        elsewhere: &[],
    },
];

/// Gives a default reading of a test the limits of a country; none, where those of that country are not known. Where no
/// country is named, the limits stay.
pub(super) fn follow_country(country: Option<&Country>, test: Option<&TestKind>, reading: &mut Reading) {
    let Some(country) = country else { return };
    let is_it = |row: &&Differing| Some(&row.test) == test && row.what == reading.what && row.of != *country;
    let Some(row) = DIFFERING.iter().find(is_it) else { return };
    let known = row.elsewhere.iter().find(|(known, _)| known == country);
    (reading.limits, reading.source) = match known {
        Some((_, (min, max, unit, source))) => {
            let figure = |text: &str| Figure::parse(text).ok();
            (Some(Range::new(figure(min), figure(max), unit.clone())), (*source).to_owned())
        }
        None => (None, String::new()),
    };
}

#[cfg(test)]
mod tests {
    use super::{Country, DIFFERING, TestKind};
    use crate::format;
    use crate::model::{Action, Procedure, Verb};
    use crate::simulate::{default_readings, test_row};

    fn limits(country: Option<Country>, test: &TestKind) -> Vec<Option<String>> {
        let map = include_str!("../../../tests/suite/maps/pump.putback.json");
        let map: Procedure = format::read(map.as_bytes()).expect("a map");
        let action = Action { test: Some(test.clone()), ..Action::new(Verb::Test, Vec::new()) };
        let readings = default_readings(&Procedure { country, ..map }, &action);
        readings.iter().map(|reading| reading.limits.as_ref().map(ToString::to_string)).collect()
    }

    #[test]
    fn every_row_is_of_a_reading_that_a_test_takes() {
        for row in DIFFERING {
            let readings = test_row(&row.test).expect("a test").readings;
            assert!(readings.iter().any(|reading| reading.what == row.what && reading.limits.is_some()));
            assert!(row.elsewhere.iter().all(|(country, _)| *country != row.of));
        }
    }

    #[test]
    fn a_voltage_is_that_of_the_country() {
        let first = |country| limits(country, &TestKind::Polarity).swap_remove(0);
        assert_eq!(first(None), first(Some(Country::UnitedKingdom)));
        assert_eq!(first(Some(Country::Germany)).as_deref(), Some("207 V to 253 V"));
        assert_eq!(first(Some(Country::UnitedStates)).as_deref(), Some("114 V to 126 V"));
        assert_eq!(first(Some(Country::Elsewhere)), None);
        // What is common practice stays.
        assert_eq!(limits(Some(Country::Elsewhere), &TestKind::Polarity)[1].as_deref(), Some("0 V to 5 V"));
    }

    #[test]
    fn a_tightness_limit_of_one_country_is_not_taken_in_another() {
        let first = |country| limits(country, &TestKind::Tightness).swap_remove(0);
        assert!(first(Some(Country::UnitedKingdom)).is_some());
        assert_eq!(first(Some(Country::Germany)), None);
    }
}
