//! Small jobs on which a planning library gave its verdict: ours is the same, from the same step on.
//!
//! The files and verdicts of `tests/suite/judge` are made by `./dev reference`, which compares hundreds; this
//! test needs no Python. Compared are order, put-back and retest; words, figures and papers are not.

use procedures_schema::check::{Finding, Level, check};
use procedures_schema::format;
use procedures_schema::model::{Date, Procedure};
use putback_tests::suite;
use serde_json::Value;
use std::collections::BTreeSet;

/// What is compared. A test in a state in which it shows nothing is a matter of order.
const COMPARED: &[&str] = &["isolation/", "pressure/", "gas/", "putback/", "retest/", "reading/wrong-state"];

/// Found at the end of the job and reported at the step that left it.
const OMISSIONS: &[&str] = &[
    "putback/left-open",
    "putback/left-slack",
    "putback/left-off",
    "putback/temp-left",
    "putback/temp-gone",
    "putback/supply-off",
    "putback/left-on",
    "retest/missing",
];

/// What is wrong first with a job: the step in which it fails, none for its end, and the reasons.
type First = (Option<usize>, BTreeSet<String>);

fn first_wrong(procedure: &Procedure) -> Option<First> {
    let findings = check(procedure, Date::parse("2026-11-25").expect("a date")).findings;
    let compared = |finding: &&Finding| {
        finding.level == Level::Reject && COMPARED.iter().any(|family| finding.code.starts_with(family))
    };
    let wrong: Vec<&Finding> = findings.iter().filter(compared).collect();
    let step = |finding: &Finding| {
        finding.step.as_ref().and_then(|id| procedure.position(id)).map_or(0, |position| position + 1)
    };
    let fails: Vec<&Finding> = wrong.iter().copied().filter(|f| !OMISSIONS.contains(&f.code)).collect();
    let first = fails.iter().map(|finding| step(finding)).min();
    let there = match first {
        Some(first) => fails.into_iter().filter(|finding| step(finding) == first).collect(),
        None => wrong,
    };
    let codes: BTreeSet<String> = there.iter().map(|finding| finding.code.to_owned()).collect();
    (!codes.is_empty()).then_some((first, codes))
}

/// What the planning library found first.
fn judged(case: &Value) -> Option<First> {
    let codes = case["codes"].as_array().expect("reasons").iter().filter_map(Value::as_str);
    let step = case["step"].as_u64().and_then(|step| usize::try_from(step).ok());
    (case["valid"] == false).then(|| (step, codes.map(str::to_owned).collect()))
}

#[test]
fn a_planning_library_says_the_same_of_small_jobs() {
    let files = suite("judge", ".putback.json").expect("cases");
    let verdicts = suite("judge", "verdicts.json").expect("verdicts").remove(0);
    let verdicts: Value = serde_json::from_str(&verdicts.text).expect("JSON");
    let cases = verdicts["cases"].as_array().expect("cases");
    assert_eq!((files.len(), cases.len()), (12, 12));
    let mut wrong = Vec::new();
    for case in cases {
        let name = case["file"].as_str().expect("a file name");
        let file = files.iter().find(|file| file.path.ends_with(name)).expect(name);
        let procedure = format::read(file.text.as_bytes()).expect(name);
        let (theirs, ours) = (judged(case), first_wrong(&procedure));
        // Ours may name more that is wrong with the same step.
        let agree = match (&theirs, &ours) {
            (Some((their_step, reasons)), Some((our_step, codes))) => {
                their_step == our_step && reasons.is_subset(codes)
            }
            (theirs, ours) => theirs.is_none() && ours.is_none(),
        };
        if !agree {
            wrong.push(format!("{name}: {}\n  judge {theirs:?}\n  ours  {ours:?}", procedure.title));
        }
    }
    assert!(wrong.is_empty(), "{} cases\n{}", wrong.len(), wrong.join("\n"));
}
