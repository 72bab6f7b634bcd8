//! What the census asks for first.

use procedures_schema::check::{Finding, check};
use procedures_schema::model::{CensusAnswer, CensusEntry, CircuitKind, Component, Date, Id, Procedure};
use procedures_schema::units::Rest;
use std::sync::Arc;

fn unanswered(procedure: &Procedure) -> Option<Finding> {
    let today = Date::parse("2026-11-25").expect("a date");
    check(procedure, today).findings.into_iter().find(|finding| finding.code == "control/census-unanswered")
}

#[test]
fn what_a_component_comes_with_is_asked_for_first() {
    let mut procedure = Procedure::new(Id::new("p"), "Renew the burner");
    let asked = unanswered(&procedure).expect("nothing is answered");
    assert_eq!(asked.because, []);
    let map = Arc::make_mut(&mut procedure.map);
    map.components.push(Component::new(Id::new("b"), "burner of the second stage"));
    let asked = unanswered(&procedure).expect("nothing is answered");
    for kind in ["fuel gas", "mains electricity", "condensate"] {
        assert!(asked.title.contains(kind) || asked.because[0].text.contains(kind), "{asked:?}");
    }
    assert_eq!(
        asked.because[0].text,
        "\"burner of the second stage\" is on the map, which mostly comes with fuel gas, mains electricity, \
         combustion air and flue and condensate"
    );
    // What is answered, even as absent, is not asked for again.
    let absent = |kind: &CircuitKind| CensusEntry {
        kind: kind.clone(),
        answer: CensusAnswer::Absent,
        rest: Rest::default(),
    };
    procedure.census.push(absent(&CircuitKind::FuelGas));
    let asked = unanswered(&procedure).expect("the others are not answered");
    assert!(!asked.because[0].text.contains("fuel gas"), "{asked:?}");
    procedure.census = CircuitKind::ALL.iter().map(absent).collect();
    assert_eq!(unanswered(&procedure), None);
}
