//! States looked up in traces, on a small map of a pump between two valves.

use super::{
    Cell, Contents, Lapse, Place, Proof, Reason, Run, SupplyCell, TestCell, Thing, Trace, Wanted,
    Whereabouts, simulate,
};
use crate::format;
use crate::model::{Id, Procedure, Stage, Step, TestKind};
use crate::notation;
use std::sync::Arc;

const MAP: &str = include_str!("../../../tests/suite/maps/pump.putback.json");
const GAS: &str = include_str!("../../../tests/suite/maps/gas.putback.json");
const BURNER: &str = include_str!("../../../tests/suite/maps/burner.putback.json");
const SAFE: &str = "shutdown · isolate spur · lock spur · undo cover_screws · remove cover · prove M";
const ZERO: &str = "isolate va vb · release body what=pressure by=vent vent=vent · prove body";

/// Runs lines of notation, one step each, on a map.
fn run(map: &str, lines: &[&str]) -> Trace {
    let mut procedure: Procedure = format::read(map.as_bytes()).expect("a map");
    procedure.steps = lines
        .iter()
        .enumerate()
        .map(|(i, line)| {
            Arc::new(Step {
                actions: notation::parse(line).expect(line),
                ..Step::new(Id::new(&i.to_string()), Stage::Strip, line)
            })
        })
        .collect();
    let all: Vec<usize> = (0..lines.len()).collect();
    simulate(&procedure, &Run::of_steps(&all))
}

fn now<C: Cell>(trace: &Trace, cell: Option<C>) -> C::State
where
    C::State: Clone,
{
    trace.at(&cell.expect("a cell"), Place::END).expect("a state").clone()
}

fn section(trace: &Trace, id: &str) -> super::SectionState {
    now(trace, trace.plant().section_named(&id.into()))
}

fn connection(trace: &Trace, id: &str) -> (u32, u32, u32) {
    let state = now(trace, trace.plant().connection_named(&id.into()));
    (state.made, state.slack, state.open)
}

fn passed(trace: &Trace, kind: TestKind, id: &str) -> bool {
    let thing = trace.plant().connection_named(&id.into()).map(Thing::Connection).expect("a connection");
    let test = Wanted { kind, mode: None };
    trace.at(&TestCell { test, thing }, Place::END).is_some_and(|state| state.passed.is_some())
}

fn reasons(trace: &Trace) -> Vec<&Reason> {
    trace.unmet().iter().map(|unmet| &unmet.reason).collect()
}

#[test]
fn a_good_ladder_leaves_nothing_unmet() {
    let trace = run(MAP, &[SAFE, ZERO, "undo plug · undo head · remove pump"]);
    assert_eq!(reasons(&trace), Vec::<&Reason>::new());
    assert!(section(&trace, "body").proof.holds());
    assert_eq!(section(&trace, "body").contents, Contents::Air);
    assert_eq!(section(&trace, "sys").proof, Proof::None);
}

#[test]
fn each_place_has_its_own_state() {
    let trace = run(MAP, &["undo head 2", "slacken head 1", "undo head", "make head 3"]);
    let cell = trace.plant().connection_named(&"head".into()).expect("head");
    let at = |place| trace.at(&cell, place).map(|s| (s.made, s.slack, s.open));
    assert_eq!(at(Place::START), Some((4, 0, 0)));
    assert_eq!(at(Place::after(0)), Some((2, 0, 2)));
    assert_eq!(at(Place::after(1)), Some((1, 1, 2)));
    assert_eq!(at(Place::after(2)), Some((0, 0, 4)));
    assert_eq!(at(Place::END), Some((3, 0, 1)));
}

#[test]
fn undoing_takes_slack_fasteners_first() {
    let trace = run(MAP, &["slacken head 1 · undo head 2"]);
    assert_eq!(connection(&trace, "head"), (2, 0, 2));
}

#[test]
fn tightening_some_leaves_the_others_slack() {
    let trace = run(MAP, &["slacken head · tighten head 3"]);
    assert_eq!(connection(&trace, "head"), (3, 1, 0));
}

#[test]
fn a_port_that_is_opened_on_the_way_disturbs_its_seal_as_any_other() {
    let trace = run(MAP, &[SAFE, ZERO]);
    let vent = now(&trace, trace.plant().connection_named(&"vent".into()));
    assert!(vent.seals_disturbed);
    assert_eq!(vent.most_open, vent.open);
}

/// A relief device is shut in service and nobody locks it; with one on the body the lock still counts.
#[test]
fn a_relief_device_asks_for_no_lock() {
    let relief = r#""isolators": [{"id": "rv", "name": "relief valve", "between": ["body", "supply"],
        "handle": "relief", "normal": "closed"},"#;
    let map = MAP.replacen(r#""isolators": ["#, relief, 1);
    assert_ne!(map, MAP);
    let trace = run(&map, &["isolate va vb · lock va vb"]);
    assert!(now(&trace, trace.plant().section_named(&"body".into()).map(SupplyCell)).locked);
}

#[test]
fn a_part_that_was_taken_off_its_carrier_does_not_come_back_with_it() {
    let away = run(BURNER, &["remove electrode", "remove door", "fit door"]);
    let electrode = |trace: &Trace| now(trace, trace.plant().component_named(&"electrode".into()));
    assert_eq!(electrode(&away).whereabouts, Whereabouts::Off);
    let over = run(BURNER, &["remove door", "remove electrode", "fit electrode", "fit door new"]);
    assert_eq!(electrode(&over).whereabouts, Whereabouts::Fitted);
    assert!(!electrode(&over).new, "the old one was put over");
    let with = run(BURNER, &["remove door", "fit door new with-new=electrode"]);
    assert!(electrode(&with).new);
    let gone = run(BURNER, &["remove door", "discard electrode reason=cracked"]);
    assert_eq!(electrode(&gone).whereabouts, Whereabouts::Discarded);
}

/// Without gas mixed ahead of the burner the figures say nothing of a joint behind the automatic valve.
#[test]
fn combustion_figures_show_joints_of_a_premix_burner_alone() {
    let premix = GAS.replacen(r#""kind": "fuel gas","#, r#""kind": "fuel gas", "premix": true,"#, 1);
    assert_ne!(premix, GAS);
    for (map, shown) in [(GAS, false), (premix.as_str(), true)] {
        let trace =
            run(map, &["undo flange · make flange", "start max · wait 10 · test combustion mode=max"]);
        assert_eq!(passed(&trace, TestKind::Combustion, "flange"), shown);
        assert!(!passed(&trace, TestKind::Combustion, "union"));
    }
}

#[test]
fn a_section_is_fed_until_the_last_valve_is_shut() {
    for (line, fed) in [("isolate va", true), ("isolate va vb", false), ("isolate vb · isolate va", false)] {
        let trace = run(MAP, &[line]);
        let body = trace.plant().section_named(&"body".into()).map(SupplyCell);
        assert_eq!(now(&trace, body).fed, fed, "{line}");
    }
}

#[test]
fn a_lock_counts_only_if_every_closed_isolator_has_one() {
    let locked = |line: &str| {
        let trace = run(MAP, &[line]);
        now(&trace, trace.plant().section_named(&"body".into()).map(SupplyCell)).locked
    };
    assert!(!locked("isolate va vb"));
    assert!(!locked("isolate va vb · lock va"));
    assert!(locked("isolate va vb · lock va vb"));
    assert!(!locked("lock va vb"));
}

#[test]
fn proofs_lapse_when_energy_can_come_back() {
    for (line, lapse) in [
        ("restore va", Lapse::Restored),
        ("charge body", Lapse::Filled),
        ("purge body through=vent", Lapse::Filled),
        ("wait 60 unattended", Lapse::LeftAlone),
    ] {
        let trace = run(MAP, &[SAFE, ZERO, line]);
        assert_eq!(section(&trace, "body").proof, Proof::Lapsed(lapse), "{line}");
    }
    let trace = run(MAP, &[SAFE, ZERO, "wait 60", "undo plug", "remove pump"]);
    assert!(section(&trace, "body").proof.holds());
}

#[test]
fn opening_a_valve_brings_pressure_and_mixes_air_in() {
    let trace = run(MAP, &[SAFE, ZERO, "undo head · make head seal=new", "make vent · restore va"]);
    let body = section(&trace, "body");
    assert!(body.stored.pressure && !body.stored.heat);
    assert_eq!(body.contents, Contents::Mixed);
    let bled =
        run(MAP, &[SAFE, ZERO, "undo head · make head seal=new", "restore va", "purge body through=vent"]);
    assert_eq!(section(&bled, "body").contents, Contents::Medium);
}

#[test]
fn a_leak_check_covers_only_what_is_full_and_can_be_seen() {
    let made = [SAFE, ZERO, "undo head · make head seal=new · make vent"];
    let after = |more: &[&str], kind: TestKind| {
        let trace = run(MAP, &[&made[..], more].concat());
        passed(&trace, kind, "head")
    };
    assert!(!after(&["test leak-cold"], TestKind::LeakCold), "the valves are shut");
    assert!(after(&["restore va", "test leak-cold"], TestKind::LeakCold));
    assert!(!after(&["restore va", "test leak-hot"], TestKind::LeakHot), "it was not hot since");
    assert!(after(&["restore va", "start max", "test leak-hot"], TestKind::LeakHot));
    let covered = ["restore va", "fit cover · make cover_screws", "test leak-cold"];
    let trace = run(MAP, &[&made[..], &covered].concat());
    assert!(!passed(&trace, TestKind::LeakCold, "vent"), "behind the cover");
    assert!(!passed(&trace, TestKind::LeakCold, "head"), "behind the cover");
    let narrowed = run(MAP, &[&made[..], &["restore va", "test leak-cold vent"]].concat());
    assert!(passed(&narrowed, TestKind::LeakCold, "vent"));
    assert!(!passed(&narrowed, TestKind::LeakCold, "head"), "the author named the vent alone");
}

#[test]
fn a_tightness_test_reaches_as_far_as_the_open_valves() {
    let off = ["shutdown", "undo case_door · remove case", "undo union flange · make union flange"];
    for (line, union, flange) in [
        ("test tightness at=tp", true, false),
        ("isolate av · test tightness at=tp", false, false),
        ("isolate av · test tightness at=house", false, false),
        ("start max · test tightness at=tp", false, false),
    ] {
        let trace = run(GAS, &[&off[..], &[line]].concat());
        assert_eq!(passed(&trace, TestKind::Tightness, "union"), union, "{line}");
        assert_eq!(passed(&trace, TestKind::Tightness, "flange"), flange, "{line}");
        assert!(!passed(&trace, TestKind::Tightness, "tp"), "the port it is taken at: {line}");
    }
    let fluid = |line: &str| passed(&run(GAS, &[&off[..], &[line]].concat()), TestKind::LeakFluid, "flange");
    assert!(!fluid("test leak-fluid"));
    assert!(fluid("start max · test leak-fluid"), "firing opens the automatic valve");
}

#[test]
fn a_function_test_needs_the_appliance_running() {
    let shown = |line: &str| passed(&run(MAP, &["undo plug · make plug", line]), TestKind::Function, "plug");
    assert!(shown("test function"), "a job begins with the appliance running");
    assert!(!shown("shutdown · test function"));
    assert!(shown("shutdown · start heat · test function pump"));
    assert!(!shown("test function cover"));
    assert!(
        !passed(&run(MAP, &["test function"]), TestKind::Function, "plug"),
        "untouched, it needs no stamp"
    );
}

#[test]
fn parts_go_and_come_back() {
    let whereabouts = |line: &str| {
        let trace = run(MAP, &[line]);
        let state = now(&trace, trace.plant().component_named(&"pump".into()));
        (state.whereabouts, state.new)
    };
    assert_eq!(whereabouts("remove pump"), (Whereabouts::Off, false));
    assert_eq!(whereabouts("aside pump"), (Whereabouts::Aside, false));
    assert_eq!(whereabouts("remove pump · fit pump new"), (Whereabouts::Fitted, true));
    assert_eq!(whereabouts("remove pump · fit pump same"), (Whereabouts::Fitted, false));
}

#[test]
fn live_parts_beside_the_hands_are_unmet() {
    let lines = ["isolate va vb · release body what=pressure by=vent vent=vent · prove body", "undo head"];
    let trace = run(MAP, &lines);
    let fed = trace.unmet().iter().find(|unmet| matches!(unmet.reason, Reason::StillFed { .. }));
    let fed = fed.expect("the plug is live");
    assert_eq!(fed.place, Place::of_action(1, 0));
    assert_eq!(fed.since, Place::START);
}

#[test]
fn what_cannot_be_judged_is_said_and_the_rest_goes_on() {
    let trace = run(MAP, &["undo nothing_of_this_name · undo head"]);
    assert_eq!(trace.cannot_judge().len(), 1);
    assert_eq!(connection(&trace, "head"), (0, 0, 4));
}
