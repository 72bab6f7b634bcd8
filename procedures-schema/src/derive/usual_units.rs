//! Default limits in the units of a country, as its gauges and thermometers show them.
//!
//! A limit is rounded to what is written there, and never to a laxer one.

use crate::model::{Country, Reading};
use crate::units::{Figure, Range, Unit, convert};

/// Gives a reading its limits in the units of a country; says whether they are others now.
///
/// Where others read a few millibar, those who read pounds read inches of water.
pub fn in_usual_units(country: Option<&Country>, reading: &mut Reading) -> bool {
    let usual = |limits: &Range| {
        let unit = country?.unit_of(limits.unit.quantity())?;
        match limits.unit {
            Unit::Millibar => (unit == Unit::Psi).then_some(Unit::InchOfWater),
            Unit::Bar | Unit::Celsius => (unit != limits.unit).then_some(unit),
            _ => None,
        }
    };
    let other = reading.limits.as_ref().and_then(|limits| in_unit(limits, usual(limits)?));
    let is_other = other.is_some();
    if is_other {
        reading.limits = other;
    }
    is_other
}

/// The widest range in this unit that lies within a range, as it is written; none, if there is none.
fn in_unit(limits: &Range, unit: Unit) -> Option<Range> {
    let end = |figure: &Figure, is_most: bool| {
        let limit = figure.value();
        let value = convert(limit, &limits.unit, &unit).ok()?;
        // Tenths of a pound below ten, hundredths of an inch of water below one; whole pounds and degrees else.
        let (parts, places) = match unit {
            Unit::InchOfWater if value.abs() < 1.0 => (100.0, 2),
            Unit::InchOfWater => (10.0, 1),
            Unit::Psi if value.abs() < 10.0 => (10.0, 1),
            _ => (1.0, 0),
        };
        let nearest = (value * parts).round();
        let inward = if is_most { -1.0 } else { 1.0 };
        let is_within = |steps: &f64| {
            let back = convert(*steps / parts, &unit, &limits.unit);
            back.is_ok_and(|back| if is_most { back <= limit } else { back >= limit })
        };
        let steps = [nearest, nearest + inward].into_iter().find(is_within)?;
        let text = format!("{:.places$}", steps / parts);
        let short = if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.') } else { &text };
        Figure::parse(short).ok()
    };
    let (min, max) = (limits.min.as_ref(), limits.max.as_ref());
    let (min, max) = (min.map(|min| end(min, false)), max.map(|max| end(max, true)));
    let is_whole = min != Some(None) && max != Some(None);
    is_whole.then(|| Range::new(min.flatten(), max.flatten(), unit))
}

#[cfg(test)]
mod tests {
    use super::in_usual_units;
    use crate::model::{CircuitKind, Country, Reading};
    use crate::simulate::kind_row;
    use crate::units::{Figure, Range, Unit, convert};

    fn reading(min: &str, max: &str, unit: Unit) -> Reading {
        let figure = |text: &str| Figure::parse(text).ok();
        Reading { limits: Some(Range::new(figure(min), figure(max), unit)), ..Reading::default() }
    }

    fn usual(country: &Country, mut reading: Reading) -> String {
        in_usual_units(Some(country), &mut reading);
        reading.limits.map_or_else(String::new, |limits| limits.to_string())
    }

    #[test]
    fn limits_are_written_as_the_country_reads_them() {
        let states = Country::UnitedStates;
        assert_eq!(usual(&states, reading("0.0", "0.1", Unit::Bar)), "0 psi to 1.4 psi");
        assert_eq!(usual(&states, reading("0", "0", Unit::Bar)), "0 psi");
        assert_eq!(usual(&states, reading("1.2", "1.5", Unit::Bar)), "18 psi to 21 psi");
        assert_eq!(usual(&states, reading("0", "43", Unit::Celsius)), "32 °F to 109 °F");
        assert_eq!(usual(&states, reading("0", "60", Unit::Celsius)), "32 °F to 140 °F");
        assert_eq!(usual(&states, reading("0", "0.2", Unit::Millibar)), "0 inWC to 0.08 inWC");
        assert_eq!(usual(&states, reading("8.7", "20", Unit::Millibar)), "3.5 inWC to 8 inWC");
        assert_eq!(usual(&states, reading("0", "5", Unit::Volt)), "0 V to 5 V");
        assert_eq!(usual(&Country::Germany, reading("0.0", "0.1", Unit::Bar)), "0.0 bar to 0.1 bar");
    }

    #[test]
    fn no_limit_of_any_kind_becomes_laxer() {
        for asked in CircuitKind::ALL.iter().filter_map(kind_row).flat_map(|row| row.proof) {
            let Some(before) = asked.range() else { continue };
            let mut reading = Reading { limits: Some(before.clone()), ..Reading::default() };
            if !in_usual_units(Some(&Country::UnitedStates), &mut reading) {
                continue;
            }
            let after = reading.limits.expect("limits");
            let end = |figure: &Option<Figure>| {
                let figure = figure.as_ref().expect("an end");
                convert(figure.value(), &after.unit, &before.unit).expect("the same quantity")
            };
            let least = before.min.as_ref().map_or(f64::MIN, Figure::value);
            let most = before.max.as_ref().map_or(f64::MAX, Figure::value);
            assert!(end(&after.min) >= least && end(&after.max) <= most, "{after} of {before}");
        }
    }
}
