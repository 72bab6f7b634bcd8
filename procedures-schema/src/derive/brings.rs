//! The kinds of circuits that a component mostly comes with: a burner has gas, electricity, air and flue, and what
//! condenses. They are asked for and never taken for granted.

use crate::model::{ApplianceMap, CircuitKind, Component, Role};

/// By the role of a component or its noun what it mostly comes with. Common practice, no source.
const BRINGS: &[(&str, &[CircuitKind])] = &[
    (
        "burner",
        &[
            CircuitKind::FuelGas,
            CircuitKind::MainsElectricity,
            CircuitKind::AirAndFlue,
            CircuitKind::Condensate,
        ],
    ),
    ("fan", &[CircuitKind::MainsElectricity, CircuitKind::AirAndFlue]),
    ("pump", &[CircuitKind::MainsElectricity, CircuitKind::HeatingWater]),
    ("compressor", &[CircuitKind::MainsElectricity, CircuitKind::Refrigerant]),
    ("evaporator", &[CircuitKind::Refrigerant]),
    ("condenser", &[CircuitKind::Refrigerant]),
    ("cylinder", &[CircuitKind::DomesticWater, CircuitKind::StoredHeat]),
    ("heater", &[CircuitKind::MainsElectricity]),
    ("element", &[CircuitKind::MainsElectricity]),
    ("gas valve", &[CircuitKind::FuelGas]),
    ("trap", &[CircuitKind::Condensate]),
    ("siphon", &[CircuitKind::Condensate]),
];

/// A kind of circuit with the component that it comes with.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Brought<'m> {
    /// The kind.
    pub kind: &'static CircuitKind,
    /// The name of the component.
    pub by: &'m str,
}

/// What the components of a map bring, each kind once, in the order of the components.
pub fn brought(map: &ApplianceMap) -> Vec<Brought<'_>> {
    let mut all: Vec<Brought<'_>> = Vec::new();
    for component in &map.components {
        for kind in of(component) {
            if all.iter().all(|known| known.kind != kind) {
                all.push(Brought { kind, by: &component.name });
            }
        }
    }
    all
}

fn of(component: &Component) -> &'static [CircuitKind] {
    let role = component.role.as_ref().map(Role::word);
    let is_it = |noun: &str| BRINGS.iter().find(|(known, _)| noun.eq_ignore_ascii_case(known));
    let found = role.and_then(is_it).or_else(|| is_it(noun(&component.name)));
    found.map_or(&[], |(_, kinds)| kinds)
}

/// The noun of a name: the last word before what it is of, for or in.
fn noun(name: &str) -> &str {
    let is_inner = |word: &&str| !matches!(*word, "of" | "for" | "in" | "on" | "at" | "with" | "from");
    name.split_whitespace().take_while(is_inner).last().unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::brought;
    use crate::model::{ApplianceMap, CircuitKind, Component};

    #[test]
    fn a_component_is_told_by_its_noun() {
        let mut map = ApplianceMap::default();
        for name in ["burner door", "Pump of the burner", "gas burner", "fan"] {
            map.components.push(Component::new(name.into(), name));
        }
        let kinds: Vec<(&str, &CircuitKind)> = brought(&map).iter().map(|one| (one.by, one.kind)).collect();
        assert_eq!(
            kinds,
            [
                ("Pump of the burner", &CircuitKind::MainsElectricity),
                ("Pump of the burner", &CircuitKind::HeatingWater),
                ("gas burner", &CircuitKind::FuelGas),
                ("gas burner", &CircuitKind::AirAndFlue),
                ("gas burner", &CircuitKind::Condensate),
            ]
        );
    }
}
