//! The demos with one mistake each, as people make them: each must be rejected by the rule that it breaks.
//!
//! A spoiled version is a demo and the changes that make the mistake, in `tests/suite/spoiled`; so each stays
//! as readable as its mistake, and a demo that is improved takes its spoiled versions with it. Changes: `drop`
//! a step; `move` a step before another; `add` a step before another; `in` a step or thing, `at` a JSON pointer
//! (RFC 6901), `to` another value, or take it out if there is none.

use procedures_schema::check::{Level, Verdict, check};
use procedures_schema::format;
use procedures_schema::model::{Date, Procedure};
use putback_tests::{repository, suite};
use serde_json::Value;
use std::collections::BTreeSet;

/// What people do wrong when they take things out and put them back. Most of all they leave something out
/// (Reason, Qual Saf Health Care 2002; CAA Paper 2009/05, from summaries of them).
const MISTAKES: &[&str] = &[
    "a step left out",
    "second feed forgotten",
    "wrong order",
    "fasteners incomplete",
    "seal not renewed",
    "something not fitted",
    "measuring point left open",
    "measuring point not checked",
    "temporary item left",
    "test left out",
    "test covers nothing",
    "test in the wrong state",
    "test too early",
    "test stale",
    "energy back too early",
    "left alone open",
    "proof too old",
    "supply left off",
    "setting lost",
    "words and data differ",
    "reading without a limit",
    "limits wider than they may be",
    "limits doubtful",
    "goal missed",
];

/// The fewest spoiled versions of one demo.
const FEWEST: usize = 20;

fn position(list: &[Value], id: &Value) -> usize {
    list.iter().position(|item| item["id"] == *id).unwrap_or_else(|| panic!("nothing is called {id}"))
}

fn steps(document: &mut Value) -> &mut Vec<Value> {
    document["steps"].as_array_mut().expect("steps")
}

fn apply(document: &mut Value, change: &Value) {
    let steps = steps(document);
    if let Some(id) = change.get("drop") {
        steps.remove(position(steps, id));
    } else if let Some(step) = change.get("add") {
        steps.insert(position(steps, &change["before"]), step.clone());
    } else if let Some(id) = change.get("move") {
        let step = steps.remove(position(steps, id));
        steps.insert(position(steps, &change["before"]), step);
    } else {
        set(named(document, &change["in"]), change["at"].as_str().expect("a pointer"), &change["to"]);
    }
}

/// The step or thing of an id.
fn named<'d>(document: &'d mut Value, id: &Value) -> &'d mut Value {
    let is_step = document["steps"].as_array().expect("steps").iter().any(|step| step["id"] == *id);
    let list = if is_step {
        steps(document)
    } else {
        let lists = document["map"].as_object_mut().expect("a map").values_mut();
        let mut lists = lists.filter_map(Value::as_array_mut);
        lists.find(|list| list.iter().any(|thing| thing["id"] == *id)).expect("a thing of that id")
    };
    let at = position(list, id);
    &mut list[at]
}

fn set(value: &mut Value, pointer: &str, to: &Value) {
    let (parent, last) = pointer.rsplit_once('/').expect("a pointer");
    match value.pointer_mut(parent) {
        Some(Value::Array(items)) if to.is_null() => drop(items.remove(last.parse().expect("a position"))),
        Some(Value::Array(items)) => items[last.parse::<usize>().expect("a position")] = to.clone(),
        Some(Value::Object(fields)) if to.is_null() => {
            fields.shift_remove(last).unwrap_or_else(|| panic!("nothing at {pointer}"));
        }
        Some(Value::Object(fields)) => drop(fields.insert(last.to_owned(), to.clone())),
        _ => panic!("nothing at {pointer}"),
    }
}

/// A demo with one mistake.
pub(crate) struct Spoiled {
    /// The demo and the mistake in words, for a message.
    pub(crate) what: String,
    /// The rule that must reject it.
    rule: String,
    mistake: String,
    pub(crate) procedure: Procedure,
}

/// All spoiled versions of all demos.
pub(crate) fn all() -> Vec<Spoiled> {
    let files = suite("spoiled", ".json").expect("spoiled versions");
    assert_eq!(files.len(), 3, "one file for each demo");
    files.iter().flat_map(|file| of_demo(&serde_json::from_str(&file.text).expect("JSON"))).collect()
}

fn of_demo(file: &Value) -> Vec<Spoiled> {
    let demo = repository().join(file["of"].as_str().expect("a demo"));
    let demo: Value = serde_json::from_slice(&std::fs::read(demo).expect("a demo")).expect("JSON");
    let spoiled = file["spoiled"].as_array().expect("spoiled versions");
    assert!(spoiled.len() >= FEWEST, "{}: {} spoiled versions", file["of"], spoiled.len());
    let version = |case: &Value| {
        let mut document = demo.clone();
        case["change"].as_array().expect("changes").iter().for_each(|c| apply(&mut document, c));
        let text = document.to_string();
        Spoiled {
            what: format!("{} {}", file["of"], case["what"]),
            rule: case["rule"].as_str().expect("a rule").to_owned(),
            mistake: case["mistake"].as_str().expect("a mistake").to_owned(),
            procedure: format::read(text.as_bytes()).unwrap_or_else(|e| panic!("{}: {e}", case["what"])),
        }
    };
    spoiled.iter().map(version).collect()
}

/// Whether a report rejects by a rule, and what it found.
fn is_rejected_by(procedure: &Procedure, rule: &str) -> (bool, Vec<String>) {
    let report = check(procedure, Date::parse("2026-11-25").expect("a date"));
    let by_rule = report.findings.iter().any(|finding| {
        finding.level == Level::Reject
            && (finding.code == rule || finding.also.iter().any(|code| code == rule))
    });
    let told = report.findings.iter().map(|f| format!("{} {}", f.code, f.title)).collect();
    (by_rule && report.verdict == Verdict::Rejected, told)
}

#[test]
fn every_mistake_is_rejected_by_the_rule_that_it_breaks() {
    let mut wrong = Vec::new();
    let mut made = BTreeSet::new();
    for case in all() {
        let (is_rejected, told) = is_rejected_by(&case.procedure, &case.rule);
        if !is_rejected {
            wrong.push(format!("{}: not {}\n  {told:#?}", case.what, case.rule));
        }
        made.insert(case.mistake);
    }
    assert!(wrong.is_empty(), "{} versions\n{}", wrong.len(), wrong.join("\n"));
    let known: BTreeSet<String> = MISTAKES.iter().map(ToString::to_string).collect();
    assert_eq!(made, known, "each kind of mistake is made, and each is listed");
}
