//! Which replaced demands count, and what they make of the readings that an action takes by default.
//!
//! What they make of the machine's tables is `plant`'s business.

use crate::model::{Action, CircuitKind, Demand, DemandOverride, Id, Procedure, Reading};

/// What became of a demand that a document replaces.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Replacement {
    /// It changed at least one demand.
    Applied,
    /// Nothing says in words what takes its place.
    NoWords,
    /// Nothing says what allows it.
    NoSource,
    /// It cites an entry that is not among the sources.
    SourceNotListed,
    /// It is confined to what the appliance map does not know.
    NotOnMap,
    /// Nothing can take the place of a demand of this sort.
    NotReplaceable,
    /// There is no such demand here, or what takes its place does not fit it.
    NothingToReplace,
}

/// Whether a replaced demand counts: it says what takes its place and what allows that, and an entry of
/// `sources` that it cites is there.
fn is_supported(procedure: &Procedure, replaced: &DemandOverride) -> bool {
    fault_in_writing(procedure, replaced).is_none()
}

/// What is missing in the writing of a replaced demand, whatever the appliance is.
pub(super) fn fault_in_writing(procedure: &Procedure, replaced: &DemandOverride) -> Option<Replacement> {
    let is_listed = |id: &Id| procedure.sources.iter().any(|source| source.id == *id);
    match replaced.demand {
        Demand::ShutDown
        | Demand::Release
        | Demand::Prove
        | Demand::Contents
        | Demand::BeforeStart
        | Demand::Other(_) => Some(Replacement::NotReplaceable),
        _ if replaced.words.trim().is_empty() => Some(Replacement::NoWords),
        _ if replaced.source.trim().is_empty() => Some(Replacement::NoSource),
        _ if replaced.cites.as_ref().is_some_and(|id| !is_listed(id)) => Some(Replacement::SourceNotListed),
        _ => None,
    }
}

/// Whether two names of readings are the same.
pub(super) fn same_reading(one: &str, other: &str) -> bool {
    one.trim().to_lowercase() == other.trim().to_lowercase()
}

/// Gives a default reading of a proof of a kind of circuit the limits that take the place of its own.
pub(super) fn limit_proof(procedure: &Procedure, action: &Action, kind: &CircuitKind, reading: &mut Reading) {
    let of_kind = |replaced: &DemandOverride| {
        let named = action.on.iter().filter(|id| kind_of(procedure, id) == Some(kind));
        replaced.demand == Demand::ProofReading
            && replaced.kind.as_ref().is_none_or(|wanted| wanted == kind)
            && named.into_iter().all(|id| is_within(procedure, id, replaced))
    };
    limit(procedure, of_kind, reading);
}

/// Gives a default reading of a test the limits that take the place of its own.
pub(super) fn limit_test(procedure: &Procedure, action: &Action, reading: &mut Reading) {
    let of_test = |replaced: &DemandOverride| {
        // A test that names nothing covers whatever it loads, more than any confined limit holds for.
        let is_confined = action.on.is_empty() && !replaced.on.is_empty();
        replaced.demand == Demand::TestLimit
            && replaced.test == action.test
            && !is_confined
            && action.on.iter().all(|id| is_within(procedure, id, replaced))
    };
    limit(procedure, of_test, reading);
}

fn limit(procedure: &Procedure, holds: impl Fn(&DemandOverride) -> bool, reading: &mut Reading) {
    let Some(own) = &reading.limits else { return };
    let found = procedure.overrides.iter().find(|replaced| {
        let limits = replaced.limits.as_ref();
        limits.is_some_and(|limits| limits.unit.quantity() == own.unit.quantity())
            && same_reading(&replaced.reading, &reading.what)
            && is_supported(procedure, replaced)
            && holds(replaced)
    });
    if let Some(replaced) = found {
        reading.limits.clone_from(&replaced.limits);
        reading.source.clone_from(&replaced.source);
        reading.cites.clone_from(&replaced.cites);
    }
}

/// Whether an id is one to which an override is confined, or lies in a circuit that is.
fn is_within(procedure: &Procedure, id: &Id, replaced: &DemandOverride) -> bool {
    let circuit = || procedure.map.sections().find(|(_, section)| section.id == *id).map(|(c, _)| &c.id);
    replaced.on.is_empty()
        || replaced.on.contains(id)
        || circuit().is_some_and(|circuit| replaced.on.contains(circuit))
}

fn kind_of<'p>(procedure: &'p Procedure, id: &Id) -> Option<&'p CircuitKind> {
    let mut circuits = procedure.map.circuits.iter();
    let found = circuits.find(|c| c.id == *id || c.sections.iter().any(|section| section.id == *id));
    found.map(|circuit| &circuit.kind)
}

#[cfg(test)]
mod tests {
    use super::Replacement;
    use crate::format;
    use crate::model::{DemandOverride, Procedure};
    use crate::notation;
    use crate::simulate::{Plant, default_readings};

    const PUMP: &str = include_str!("../../../tests/suite/maps/pump.putback.json");

    fn procedure(overrides: &[&str]) -> Procedure {
        let mut procedure: Procedure = format::read(PUMP.as_bytes()).expect("a map");
        let read = |text: &&str| {
            let whole = format!("{{{text}, \"words\": \"other\", \"source\": \"paper\"}}");
            serde_json::from_str::<DemandOverride>(&whole).expect(text)
        };
        procedure.overrides = overrides.iter().map(read).collect();
        procedure
    }

    fn limits(procedure: &Procedure, action: &str, what: &str) -> String {
        let action = notation::parse(action).expect(action).remove(0);
        let readings = default_readings(procedure, &action);
        let reading = readings.iter().find(|reading| reading.what == what).expect(what);
        format!("{} {}", reading.limits.as_ref().expect("limits"), reading.source)
    }

    #[test]
    fn what_cannot_be_applied_says_why() {
        let limits = "\"limits\": {\"max\": \"2\", \"unit\": \"V\"}";
        for (written, became) in [
            (r#""demand": "lock""#.to_owned(), Replacement::Applied),
            (r#""demand": "lock", "kind": "steam""#.to_owned(), Replacement::NothingToReplace),
            (r#""demand": "lock", "on": ["nobody"]"#.to_owned(), Replacement::NotOnMap),
            (r#""demand": "lock", "cites": "nothing""#.to_owned(), Replacement::SourceNotListed),
            (r#""demand": "prove""#.to_owned(), Replacement::NotReplaceable),
            (r#""demand": "sing""#.to_owned(), Replacement::NotReplaceable),
            (r#""demand": "life of the proof""#.to_owned(), Replacement::NothingToReplace),
            (format!(r#""demand": "proof reading", "reading": "L to N", {limits}"#), Replacement::Applied),
            (
                format!(r#""demand": "proof reading", "reading": "gauge", {limits}"#),
                Replacement::NothingToReplace,
            ),
            (
                r#""demand": "test", "test": "leak hot", "instead": "combustion""#.to_owned(),
                Replacement::NothingToReplace,
            ),
        ] {
            assert_eq!(Plant::of(&procedure(&[&written])).replacements(), [became], "{written}");
        }
        let mut without = procedure(&[r#""demand": "lock""#]);
        without.overrides[0].words.clear();
        assert_eq!(Plant::of(&without).replacements(), [Replacement::NoWords]);
        without.overrides[0] = procedure(&[r#""demand": "lock""#]).overrides.remove(0);
        without.overrides[0].source.clear();
        assert_eq!(Plant::of(&without).replacements(), [Replacement::NoSource]);
    }

    #[test]
    fn the_first_that_holds_for_a_thing_counts() {
        let both = procedure(&[
            r#""demand": "life of the proof", "on": ["M"], "duration": {"value": "5", "unit": "min"}"#,
            r#""demand": "life of the proof", "duration": {"value": "2", "unit": "h"}"#,
        ]);
        let plant = Plant::of(&both);
        let life = |id: &str| {
            let section = plant.section_named(&id.into()).expect(id);
            plant.demands_on(section).and_then(|demands| demands.life_minutes)
        };
        assert_eq!((life("M_all"), life("body")), (Some(5), Some(120)));
        assert_eq!(plant.replacements(), [Replacement::Applied, Replacement::Applied]);
    }

    #[test]
    fn default_readings_take_the_limits_of_the_document() {
        let tighter = r#""demand": "proof reading", "kind": "mains electricity", "reading": "L to N",
            "limits": {"min": "0", "max": "2", "unit": "V"}"#;
        let plain = procedure(&[]);
        let replaced = procedure(&[tighter]);
        assert_ne!(limits(&plain, "prove M", "L to N"), limits(&replaced, "prove M", "L to N"));
        assert!(limits(&replaced, "prove M", "L to N").ends_with("paper"));
        assert_eq!(limits(&plain, "prove M", "L to E"), limits(&replaced, "prove M", "L to E"));
        let confined = procedure(&[&tighter.replace("\"reading\"", "\"on\": [\"H\"], \"reading\"")]);
        assert_eq!(limits(&plain, "prove M", "L to N"), limits(&confined, "prove M", "L to N"));
    }
}
