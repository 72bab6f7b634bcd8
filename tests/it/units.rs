//! Unit conversion against the figures of an independent library, kept in `tests/reference/units.json`.
//!
//! `./dev reference` makes the figures again and compares; this test needs no Python.

use procedures_schema::units::{Unit, convert};
use serde_json::Value;
use std::collections::BTreeSet;

/// Two `f64` calculations of the same figure, in another order of steps, may differ by this much of it.
const RELATIVE_TOLERANCE: f64 = 1e-12;
/// And by this much near zero, where degrees cross it.
const ABSOLUTE_TOLERANCE: f64 = 1e-11;

fn reference() -> Value {
    let path = putback_tests::repository().join("tests/reference/units.json");
    serde_json::from_slice(&std::fs::read(path).unwrap()).unwrap()
}

#[test]
fn conversion_agrees_with_an_independent_library() {
    let reference = reference();
    let cases = reference["cases"].as_array().unwrap();
    assert!(cases.len() > 100, "only {} cases", cases.len());
    for case in cases {
        let [value, expected] = ["value", "result"].map(|key| case[key].as_f64().unwrap());
        let [from, to] = ["from", "to"].map(|key| Unit::from_code(case[key].as_str().unwrap()));
        let given = convert(value, &from, &to).unwrap_or_else(|error| panic!("{case}: {error}"));
        let tolerance = (expected.abs() * RELATIVE_TOLERANCE).max(ABSOLUTE_TOLERANCE);
        assert!((given - expected).abs() <= tolerance, "{case}: {given}");
    }
}

#[test]
fn every_unit_has_reference_figures() {
    let reference = reference();
    let covered: BTreeSet<&str> =
        reference["cases"].as_array().unwrap().iter().filter_map(|case| case["from"].as_str()).collect();
    let listed: BTreeSet<&str> = Unit::ALL.iter().map(Unit::code).collect();
    assert_eq!(covered, listed);
}
