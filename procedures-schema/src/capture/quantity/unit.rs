//! Words for units.

use super::Finder;
use crate::units::Unit;

impl Finder<'_> {
    /// The unit that begins at a token, and the token behind it; some are written in two or three words.
    pub(super) fn unit(&self, i: usize) -> Option<(Unit, usize)> {
        let at = |n: usize| self.text(i + n);
        let of_several = match (at(0), at(1), at(2)) {
            ("foot" | "ft", "lb" | "lbs" | "pound" | "pounds", _)
            | ("lb" | "lbf" | "lbs" | "pound" | "pounds", "feet" | "foot" | "ft", _) => {
                Some((Unit::PoundForceFoot, 2))
            }
            ("newton", "meter" | "meters" | "metre" | "metres", _) => Some((Unit::NewtonMetre, 2)),
            ("pound" | "pounds", "per", "square") if at(3) == "inch" => Some((Unit::Psi, 4)),
            // "3.5 in. w.c.", "3.5 inches of water column."
            ("in" | "inch" | "inches", "h2o" | "w.c" | "w.g" | "wc" | "wg", _) => {
                Some((Unit::InchOfWater, 2))
            }
            ("inch" | "inches", "of", "water") => {
                let n = if matches!(at(3), "column" | "gauge") { 4 } else { 3 };
                Some((Unit::InchOfWater, n))
            }
            ("inch" | "inches", "water", "column" | "gauge") => Some((Unit::InchOfWater, 3)),
            ("per", "cent", _) => Some((Unit::PerCent, 2)),
            ("degrees" | "deg", "c" | "celsius" | "centigrade", _) => Some((Unit::Celsius, 2)),
            ("degrees" | "deg", "f" | "fahrenheit", _) => Some((Unit::Fahrenheit, 2)),
            ("l" | "liter" | "liters" | "litre" | "litres", "a" | "per", "min" | "minute") => {
                Some((Unit::LitrePerMinute, 3))
            }
            _ => None,
        };
        let one = || of_word(self.raw(i)).map(|unit| (unit, 1));
        of_several.or_else(one).map(|(unit, n)| (unit, i + n))
    }
}

/// The unit that one word names.
pub(super) fn of_word(raw: &str) -> Option<Unit> {
    let lower = raw.to_lowercase();
    // "Five minutes' wait."
    let named = match lower.trim_end_matches(['\'', '\u{2019}']) {
        "nm" | "n·m" | "n.m" => Unit::NewtonMetre,
        "lbf·ft" | "lbf.ft" | "lbft" | "ft·lb" | "ft.lb" | "ft-lb" | "lb-ft" => Unit::PoundForceFoot,
        "bar" => Unit::Bar,
        "mbar" | "millibar" | "millibars" => Unit::Millibar,
        "psi" => Unit::Psi,
        "in-wc" | "inh2o" | "inh₂o" | "inwc" | "inwg" => Unit::InchOfWater,
        "kpa" => Unit::Kilopascal,
        "pa" => Unit::Pascal,
        "mm" | "millimetre" | "millimetres" => Unit::Millimetre,
        "kg" | "kilo" | "kilos" => Unit::Kilogram,
        "lb" => Unit::Pound,
        "°c" | "degrees" | "celsius" => Unit::Celsius,
        "°f" | "fahrenheit" => Unit::Fahrenheit,
        "s" | "sec" | "secs" | "second" | "seconds" => Unit::Second,
        "min" | "mins" | "minute" | "minutes" => Unit::Minute,
        "h" | "hr" | "hrs" | "hour" | "hours" => Unit::Hour,
        "v" | "volt" | "volts" => Unit::Volt,
        "amp" | "ampere" | "amperes" | "amps" => Unit::Ampere,
        "a" if raw == "A" => Unit::Ampere,
        "ω" | "ohm" | "ohms" => Unit::Ohm,
        "mω" | "megohm" | "megohms" => Unit::Megohm,
        "l" | "liter" | "liters" | "litre" | "litres" => Unit::Litre,
        "l/min" => Unit::LitrePerMinute,
        "m³" | "m3" => Unit::CubicMetre,
        "m³/h" | "m3/h" => Unit::CubicMetrePerHour,
        "kw" | "kilowatt" | "kilowatts" => Unit::Kilowatt,
        "%" | "percent" => Unit::PerCent,
        "ppm" => Unit::PartsPerMillion,
        _ => return None,
    };
    Some(named)
}
