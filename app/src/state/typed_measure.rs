//! What is typed into a field for a figure.

use procedures_schema::capture::one_value;
use procedures_schema::units::{Figure, Measured, Quantity, Unit};

/// A figure in a unit, or a figure that was typed with its own unit, if that measures the same.
pub fn typed_measure(typed: &str, unit: &Unit, quantity: Quantity) -> Option<Measured> {
    let bare = Figure::parse(typed).ok().map(|figure| Measured::new(figure, unit.clone()));
    bare.or_else(|| one_value(typed).ok().filter(|measured| measured.unit.quantity() == quantity))
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
    }
}
