//! What a row of the appliance says of a thing.

use crate::laws::good;
use procedures_schema::check::check;
use procedures_schema::derive::rows::{Row, Rows, columns};
use procedures_schema::model::{
    CircuitKind, Component, Date, Id, Known, Procedure, Rest, Size, ThingKind, Tool, Verb,
};
use procedures_schema::simulate::{Run, simulate};
use procedures_schema::units::{Figure, Measured, Unit};
use std::sync::Arc;

fn demo() -> Procedure {
    good().into_iter().find(|procedure| procedure.title.contains("heating pump P2")).expect("the demo")
}

fn row(procedure: &Procedure, thing: &str) -> Row {
    let rows = Rows::of(procedure, &simulate(procedure, &Run::of(procedure)));
    rows.row(&thing.into()).cloned().expect(thing)
}

fn said(procedure: &Procedure, thing: &str) -> Vec<String> {
    row(procedure, thing).cells.iter().map(ToString::to_string).collect()
}

#[test]
fn a_circuit_says_what_shuts_it_off_what_proves_it_and_what_it_stores() {
    let demo = demo();
    assert_eq!(
        said(&demo, "mains"),
        ["mains electricity", "pump isolator", "box terminals", "no charge", "touched"]
    );
    assert_eq!(
        said(&demo, "heating"),
        ["heating water", "suction valve, discharge valve", "drain cock", "pressure, heat", "touched"]
    );
    assert_eq!(
        said(&demo, "body"),
        ["heating", "suction valve, discharge valve", "drain cock", "4 l", "full"]
    );
    assert_eq!(said(&demo, "mains_p2")[3..], ["-", "live"]);
    assert_eq!(said(&demo, "v_suction")[1], "heating system – pump body");
    // The steps at a section are those of its circuit.
    assert_eq!(row(&demo, "heating").steps, row(&demo, "body").steps);
}

#[test]
fn a_charge_is_told_with_its_wait_and_what_no_table_knows_is_not_told() {
    let mut demo = demo();
    let circuit = |demo: &mut Procedure, kind: CircuitKind, minutes: Option<&str>| {
        let map = Arc::make_mut(&mut demo.map);
        map.circuits[0].kind = kind;
        map.circuits[0].discharge_wait = minutes.map(|minutes| Measured {
            value: Figure::parse(minutes).expect("a figure"),
            unit: Unit::Minute,
            rest: Rest::default(),
        });
    };
    circuit(&mut demo, CircuitKind::DcBus, Some("5"));
    assert_eq!(said(&demo, "mains")[3], "charge · wait 5 min");
    circuit(&mut demo, CircuitKind::ControlElectricity, None);
    assert_eq!(said(&demo, "mains")[2..4], ["box terminals", "no charge"]);
    circuit(&mut demo, CircuitKind::FuelGas, None);
    assert_eq!(said(&demo, "mains")[3], "-");
    circuit(&mut demo, CircuitKind::AirAndFlue, None);
    assert_eq!(said(&demo, "mains_p2")[4], "-");
    demo.steps.clear();
    assert_eq!(said(&demo, "mains")[2], "needs no proof");
}

#[test]
fn a_proof_without_a_place_is_told_by_what_it_reads_and_none_by_a_stroke() {
    let mut demo = demo();
    for step in &mut demo.steps {
        for action in &mut Arc::make_mut(step).actions {
            if action.verb == Verb::Prove {
                action.at = None;
            }
        }
    }
    assert_eq!(said(&demo, "mains")[2], "L to N, L to E, N to E");
    demo.steps.clear();
    assert_eq!(said(&demo, "mains")[2], "-");
    demo.census.clear();
    assert_eq!(said(&demo, "mains")[4], "-");
}

#[test]
fn a_joint_says_what_it_lies_between_its_circuit_size_tool_and_seal() {
    let mut demo = demo();
    assert_eq!(
        said(&demo, "f_suction"),
        ["joint · heating", "pump", "4 × M12", "18 mm", "gasket DN 40, 3 mm, renew"]
    );
    let map = Arc::make_mut(&mut demo.map);
    let joint = map.connections.iter_mut().find(|k| k.id.as_str() == "f_suction").expect("the flange");
    joint.joins.push(Id::new("lid"));
    joint.seals[0].quantity = 2;
    map.seals[0].size = Some(Known::later("the plate"));
    map.seals[0].number = Some(Known::later("the plate"));
    assert_eq!(said(&demo, "f_suction")[1], "pump – lid");
    assert_eq!(said(&demo, "f_suction")[4], "gasket × 2, renew [later: size] [later: number]");
    let tool = Tool {
        id: Id::new("t"),
        name: "spanner".into(),
        size: "18 mm".into(),
        range: None,
        rest: Rest::default(),
    };
    demo.kit.tools.push(tool);
    assert_eq!(said(&demo, "f_suction")[3], "18 mm spanner");
    let map = Arc::make_mut(&mut demo.map);
    let joint = map.connections.iter_mut().find(|k| k.id.as_str() == "f_suction").expect("the flange");
    (joint.size, joint.tight, joint.seals) = (Some(Known::later("x")), Some(Known::later("x")), Vec::new());
    assert_eq!(said(&demo, "f_suction")[2..], ["4 of them [later: size]", "[later: how tight]", "-"]);
    assert_eq!(said(&demo, "drain")[..3], ["drain port · heating", "-", "G 1/2"]);
}

#[test]
fn a_cover_says_what_it_is_behind_and_what_holds_it() {
    let mut demo = demo();
    assert_eq!(said(&demo, "lid"), ["cover", "-", "lid screws 4 × M4", "-", "junction box J2"]);
    assert_eq!(
        said(&demo, "pump"),
        [
            "part",
            "insulation shell",
            "pump plug, suction flange, discharge flange",
            "24 kg",
            "second from the left"
        ]
    );
    let map = Arc::make_mut(&mut demo.map);
    let screws = map.connections.iter_mut().find(|k| k.id.as_str() == "lid_screws").expect("the screws");
    screws.size = Some(Known::Value(Size { tube: None, ..Size::default() }));
    assert_eq!(said(&demo, "lid_screws"), ["fixing", "lid", "4 of them", "-", "-"]);
}

#[test]
fn a_joint_that_nothing_tests_after_it_is_made_says_so() {
    let mut demo = demo();
    assert!(!row(&demo, "f_suction").is_untested);
    demo.steps.retain(|step| step.actions.iter().all(|action| action.verb != Verb::Test));
    assert!(row(&demo, "f_suction").is_untested);
    assert!(!row(&demo, "lid_screws").is_untested);
}

#[test]
fn every_row_has_a_cell_for_each_column_and_what_is_used_nowhere_is_told() {
    for procedure in good() {
        for (kind, id, ..) in procedure.map.things() {
            assert_eq!(row(&procedure, id.as_str()).cells.len(), columns(kind).len(), "{id}");
        }
    }
    let mut demo = demo();
    Arc::make_mut(&mut demo.map).components.push(Component::new(Id::new("spare"), "spare bracket"));
    let spare = row(&demo, "spare");
    assert!(spare.is_nowhere && spare.is_in_no_step(ThingKind::Component));
    assert_eq!(columns(ThingKind::Connection)[1], "Between");
}

#[test]
fn a_finding_that_is_mended_on_the_map_names_its_thing() {
    let mut demo = demo();
    let map = Arc::make_mut(&mut demo.map);
    (map.seals[0].size, map.seals[0].number) = (None, None);
    let today = Date::parse("2026-11-25").expect("a date");
    let found = check(&demo, today).findings;
    let seal = found.iter().find(|finding| finding.code == "seal/size-missing").expect("a finding");
    assert_eq!(seal.thing, Some(Id::new("gasket_s")));
    // What a step is to mend is of no thing.
    demo.steps.retain(|step| step.actions.iter().all(|action| action.verb != Verb::Test));
    let found = check(&demo, today).findings;
    assert_eq!(found.iter().find(|f| f.code == "retest/missing").expect("a finding").thing, None);
}
