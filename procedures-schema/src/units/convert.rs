//! Conversion of a value from one unit to another of the same quantity.
//!
//! Factors are exact where the unit is defined exactly. Sources: The International System of Units (SI
//! Brochure); NIST SP 811, appendix B, for the inch, pound and pound-force; UCUM for the column of water. They are checked against a
//! general-purpose library's figures in `tests/reference`.

use super::{Quantity, Unit};

/// Why a value cannot be converted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ConvertError {
    /// The unit of the value.
    pub from: Unit,
    /// The unit asked for.
    pub to: Unit,
}

impl std::fmt::Display for ConvertError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "a value in {} cannot be given in {}", self.from.shown(), self.to.shown())
    }
}

impl std::error::Error for ConvertError {}

/// Gives `value` in unit `to`.
///
/// # Errors
/// If the two units measure different quantities, or either is outside the list.
pub fn convert(value: f64, from: &Unit, to: &Unit) -> Result<f64, ConvertError> {
    if from == to && from.quantity() != Quantity::Unknown {
        return Ok(value);
    }
    match (scale(from), scale(to)) {
        (Some(a), Some(b)) if from.quantity() == to.quantity() => {
            Ok(((value * a.factor + a.offset) - b.offset) / b.factor)
        }
        _ => Err(ConvertError { from: from.clone(), to: to.clone() }),
    }
}

/// `base = value * factor + offset`.
struct Scale {
    factor: f64,
    offset: f64,
}

/// One inch in metres, exact since 1959.
const INCH_M: f64 = 0.0254;
/// One avoirdupois pound in kilograms, exact since 1959.
const POUND_KG: f64 = 0.453_592_37;
/// One pound-force in newtons: the pound at standard gravity, 9.80665 m/s².
const POUND_FORCE_N: f64 = POUND_KG * 9.806_65;

/// One metre of water column in pascals: 1000 kg/m³ at standard gravity, as UCUM defines `m[H2O]`.
const METRE_OF_WATER_PA: f64 = 9_806.65;

fn scale(unit: &Unit) -> Option<Scale> {
    let factor = match unit {
        Unit::Bar => 1e5,
        Unit::Millibar => 1e2,
        Unit::Kilopascal => 1e3,
        Unit::Psi => POUND_FORCE_N / (INCH_M * INCH_M),
        Unit::InchOfWater => INCH_M * METRE_OF_WATER_PA,
        Unit::PoundForceFoot => POUND_FORCE_N * 12.0 * INCH_M,
        Unit::Millimetre | Unit::Litre => 1e-3,
        Unit::Inch => INCH_M,
        Unit::Pound => POUND_KG,
        Unit::Minute => 60.0,
        Unit::Hour => 3600.0,
        Unit::Megohm => 1e6,
        Unit::LitrePerMinute => 1e-3 / 60.0,
        Unit::CubicMetrePerHour => 1.0 / 3600.0,
        Unit::PerCent => 1e-2,
        Unit::PartsPerMillion => 1e-6,
        Unit::Celsius => return Some(Scale { factor: 1.0, offset: 273.15 }),
        Unit::Fahrenheit => return Some(Scale { factor: 5.0 / 9.0, offset: 459.67 * 5.0 / 9.0 }),
        Unit::Pascal
        | Unit::NewtonMetre
        | Unit::Metre
        | Unit::Kilogram
        | Unit::Second
        | Unit::Volt
        | Unit::Ampere
        | Unit::Ohm
        | Unit::CubicMetre
        | Unit::Kilowatt => 1.0,
        Unit::Other(_) => return None,
    };
    Some(Scale { factor, offset: 0.0 })
}

#[cfg(test)]
mod tests {
    use super::{Unit, convert};

    #[test]
    fn torque_and_pressure_do_not_mix() {
        assert!(convert(1.0, &Unit::NewtonMetre, &Unit::Bar).is_err());
        assert!(convert(1.0, &Unit::Other("x".into()), &Unit::Other("x".into())).is_err());
    }

    #[test]
    fn converting_there_and_back_gives_the_value() {
        for from in Unit::ALL {
            for to in Unit::ALL.iter().filter(|to| to.quantity() == from.quantity()) {
                let there = convert(12.5, from, to).expect("same quantity");
                let back = convert(there, to, from).expect("same quantity");
                assert!((back - 12.5).abs() < 1e-9, "{from:?} {to:?} {back}");
            }
        }
    }
}
