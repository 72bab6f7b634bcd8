//! What the steps need, held against what somebody counts who reads the sentences.

use procedures_schema::derive::kit::{Needed, needed};
use procedures_schema::format;
use procedures_schema::model::{KitList, Procedure};

fn read(text: &str) -> Procedure {
    format::read(text.as_bytes()).expect("a procedure")
}

fn demo(name: &str) -> Procedure {
    let path = format!("{}/../public/demo/{name}.putback.json", env!("CARGO_MANIFEST_DIR"));
    read(&std::fs::read_to_string(path).expect("a demo"))
}

/// The lines of one list, each with its steps.
fn lines(procedure: &Procedure, list: &KitList) -> Vec<String> {
    let of_list = needed(procedure).into_iter().filter(|needed| needed.list == *list);
    of_list.map(|needed: Needed| format!("{needed} {:?}", needed.steps)).collect()
}

#[test]
fn what_the_sentences_of_the_demos_name_is_brought() {
    // Counted by reading the sentences: bolts of 18 mm at both flanges, 40 to 45 N·m, a gasket each.
    let pump = demo("circulation-pump");
    let tools = ["spanner · 18 mm [17, 18, 19, 24, 25]", "torque spanner · 40 N·m to 45 N·m [24, 25]"];
    assert_eq!(lines(&pump, &KitList::Tools)[..2], tools);
    let spares = ["pump [23]", "gasket · DN 40, 3 mm · 2 of them · P2-40-A (invented) [24, 25]"];
    assert_eq!(lines(&pump, &KitList::Spares), spares);
    // 1.8 to 2.0 and 60 to 70 N·m are two tools: none is set to both.
    let store = lines(&demo("hot-water-store"), &KitList::Tools);
    let spanners: Vec<&String> = store.iter().filter(|line| line.starts_with("torque")).collect();
    assert_eq!(
        spanners,
        ["torque spanner · 1.8 N·m to 2.0 N·m [29]", "torque spanner · 60 N·m to 70 N·m [28]"]
    );
    // A width of 4 mm is that of a key; foam is used up; the tester shows what the proof reads.
    let gas = demo("gas-valve");
    assert!(lines(&gas, &KitList::Tools).contains(&"hex key · 4 mm [20, 25]".to_owned()));
    assert_eq!(lines(&gas, &KitList::Consumables), ["leak detection fluid [37]"]);
    let tester = "two-pole voltage tester · 0 V to 5 V [10]".to_owned();
    assert!(lines(&gas, &KitList::Instruments).contains(&tester));
    let manometer = "manometer · 0 mbar to 21 mbar · to the nearest 0.1 mbar [5, 12, 33]".to_owned();
    assert!(lines(&gas, &KitList::Instruments).contains(&manometer));
}

/// Two joints with a washer each and a ring each of two; two questions.
fn asked(steps: &str) -> Procedure {
    read(&format!(
        r#"{{"putback":0,"id":"p","title":"t","map":{{
            "circuits":[{{"id":"h","name":"h","kind":"heating water","sections":[{{"id":"s","name":"s"}}]}}],
            "seals":[{{"id":"w","name":"washer","size":"1 in","policy":"always renew"}},
                {{"id":"v","name":"washer","size":"1 in","policy":"always renew"}},
                {{"id":"o","name":"ring","size":{{"later":"the writer"}},"policy":"always renew"}}],
            "connections":[
                {{"id":"a","name":"a","family":"joint","section":"s","seals":[{{"seal":"w"}}]}},
                {{"id":"b","name":"b","family":"joint","section":"s","seals":[{{"seal":"v","quantity":2}}]}},
                {{"id":"c","name":"c","family":"joint","section":"s","count":3,"grouping":"each","seals":[{{"seal":"o"}}]}}]}},
            "questions":[{{"id":"q","words":"Worn?"}},{{"id":"r","words":"Which?","answers":["one","two","three"]}}],
            "steps":[{steps}]}}"#
    ))
}

fn make(id: &str, on: &str, when: &str) -> String {
    format!(
        r#"{{"id":"{id}","stage":"refit","words":"Make it.","when":[{when}],
            "actions":[{{"do":"make","on":[{on}],"seal":"new"}}]}}"#
    )
}

#[test]
fn seals_are_counted_on_the_way_that_takes_most() {
    let yes = r#"{"question":"q","answer":"yes"}"#;
    let no = r#"{"question":"q","answer":"no"}"#;
    let two = r#"{"question":"r","answer":"two"}"#;
    // Always one; on yes two more, on no one more; beside that on "two" one more: 1 + 2 + 1. Both washers are the same.
    let steps = [
        make("1", r#""a""#, ""),
        make("2", r#""b""#, yes),
        make("3", r#""a""#, no),
        make("4", r#""a""#, two),
        make("5", r#""c""#, &format!("{yes},{two}")),
    ];
    let spares = lines(&asked(&steps.join(",")), &KitList::Spares);
    assert_eq!(spares, ["washer · 1 in · 4 of them [1, 2, 3, 4]", "ring · [later: size] · 3 of them [5]"]);
    // What no answer leads to is not brought.
    let never = make("1", r#""a""#, r#"{"question":"q","answer":"perhaps"}"#);
    assert_eq!(lines(&asked(&never), &KitList::Spares), Vec::<String>::new());
    // Two answers to one question stand beside each other.
    let either = [make("1", r#""a""#, &format!("{yes},{no}")), make("2", r#""a""#, yes)];
    assert_eq!(lines(&asked(&either.join(",")), &KitList::Spares), ["washer · 1 in · 2 of them [1, 2]"]);
}

#[test]
fn of_joints_that_a_failed_test_points_at_one_is_sealed_anew() {
    let after = |one_of: bool| {
        format!(
            r#"{{"id":"t","stage":"recommission","words":"Look.","actions":[{{"do":"test","test":"leak cold","on":["a","b"],
                "on_fail":{{"steps":[
                    {{"id":"u","stage":"recommission","words":"Undo.","actions":[{{"do":"undo","on":["a","b"],"one_of":{one_of}}}]}},
                    {}]}}}}]}}"#,
            make("m", r#""a","b""#, "")
        )
    };
    let with = |one_of| {
        lines(&asked(&format!("{},{}", make("1", r#""a","b""#, ""), after(one_of))), &KitList::Spares)
    };
    // Three in the joints; of the two joints the one with two rings may be the one.
    assert_eq!(with(true), ["washer · 1 in · 5 of them [1, 2]"]);
    assert_eq!(with(false), ["washer · 1 in · 6 of them [1, 2]"]);
}

#[test]
fn what_the_writer_lists_is_not_worked_out_again() {
    let mut pump = demo("circulation-pump");
    let kit = r#"{"tools":[{"id":"k1","name":"18 mm spanner"},
            {"id":"k2","name":"torque spanner","range":{"min":"20","max":"100","unit":"N.m"}}],
        "instruments":[{"id":"k3","name":"Voltage tester"}],
        "spares":[{"id":"k4","name":"the pump as ordered","thing":"pump"},{"id":"k5","name":"Gasket DN 40, 3 mm","quantity":2}]}"#;
    pump.kit = serde_json::from_str(kit).expect("a kit");
    let left: Vec<String> = needed(&pump).iter().map(|needed| needed.name.clone()).collect();
    assert_eq!(left, ["notice", "drain hose", "thermometer", "resistance meter"]);
    pump.kit.tools[0] =
        serde_json::from_str(r#"{"id":"k1","name":"ring spanner","size":"18mm"}"#).expect("a tool");
    assert!(lines(&pump, &KitList::Tools).iter().all(|line| !line.starts_with("spanner")));
    // A torque spanner that does not reach stands for none.
    pump.kit.tools[1].range =
        serde_json::from_str(r#"{"min":"5","max":"25","unit":"N.m"}"#).expect("a range");
    assert!(lines(&pump, &KitList::Tools).iter().any(|line| line.starts_with("torque spanner")));
}

#[test]
fn nothing_written_needs_nothing() {
    assert_eq!(needed(&asked("")), Vec::new());
}
