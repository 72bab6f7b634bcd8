//! What is typed into a field for a figure.

use procedures_schema::capture::one_value;
use procedures_schema::units::{Figure, Measured, Quantity, Unit};

/// A figure in a unit, or a figure that was typed with its own unit, if that measures the same.
pub fn typed_measure(typed: &str, unit: &Unit, quantity: Quantity) -> Option<Measured> {
    let bare = || Figure::parse(typed).ok().map(|figure| Measured::new(figure, unit.clone()));
    // The recogniser takes a lone "in" for a preposition and knows other spellings.
    let measured = bare().or_else(|| with_unit(typed)).or_else(|| one_value(typed).ok());
    measured.filter(|measured| measured.unit == *unit || measured.unit.quantity() == quantity)
}

/// A figure before a unit as it is shown or as files hold it.
fn with_unit(typed: &str) -> Option<Measured> {
    let named = |unit: &Unit, name: &str| {
        let figure = typed.trim().strip_suffix(name)?;
        let is_whole = !figure.ends_with(char::is_alphabetic);
        Figure::parse(figure).ok().filter(|_| is_whole).map(|figure| Measured::new(figure, unit.clone()))
    };
    Unit::ALL.iter().find_map(|unit| named(unit, unit.shown()).or_else(|| named(unit, unit.code())))
}

#[cfg(test)]
mod tests {
    use super::{Quantity, Unit, typed_measure};
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test]
    fn a_unit_that_is_typed_counts_if_it_measures_the_same() {
        let torque = |typed: &str| {
            typed_measure(typed, &Unit::NewtonMetre, Quantity::Torque).map(|measured| measured.to_string())
        };
        assert_eq!(torque("24").as_deref(), Some("24 N·m"));
        assert_eq!(torque("24 lbf·ft").as_deref(), Some("24 lbf·ft"));
        assert_eq!(torque("24 l"), None);
        assert_eq!(torque("24 to"), None);
        assert_eq!(torque("hand tight"), None);
        let length = |typed: &str| typed_measure(typed, &Unit::Millimetre, Quantity::Length);
        assert_eq!(length("1.5 in").map(|measured| measured.unit), Some(Unit::Inch));
        assert_eq!(length("15mm").map(|measured| measured.unit), Some(Unit::Millimetre));
    }
}
