//! Cases that come out as stated: each file of `tests/suite/cases` says what it expects.
//!
//! A case passes if its code appears at its step and there is no finding of another cause; `none` is no
//! finding at all. Rules about words do not run: cases have none.

use crate::fixture::{Fixture, is_found_by_running, told};
use procedures_schema::check::Finding;
use putback_tests::suite;

/// The findings of a case: of the rules that word what the simulator found, and of replaced demands.
fn judged(fixture: &Fixture) -> Vec<Finding> {
    let mut found = fixture.findings();
    found.retain(|f| is_found_by_running(f.code) || f.code == "control/override-unsupported");
    found
}

#[test]
fn every_case_comes_out_as_stated() {
    let files = suite("cases", ".txt").expect("cases");
    assert_eq!(files.len(), 41);
    let mut wrong = Vec::new();
    for file in files {
        let mut lines = file.text.lines();
        let title = lines.next().expect("a title").to_owned();
        let map = lines.next().expect("a map");
        let expected = lines.next().and_then(|line| line.strip_prefix("expected: ")).expect("an expectation");
        let steps: Vec<&str> = lines.collect();
        let fixture = Fixture::read(&format!("{map}\n{}", steps.join("\n")));
        let found = judged(&fixture);
        let fits = match expected.split_once(" at ") {
            None => found.is_empty(),
            Some((code, place)) => {
                let [only] = found.as_slice() else {
                    wrong.push(format!(
                        "{} {title}\n  expected {expected}\n  {:#?}",
                        file.path,
                        told(&found)
                    ));
                    continue;
                };
                let at_the_end = place == "the end";
                let of_the_document = place == "the document" && only.step.is_none();
                let step = only.step.as_ref().and_then(|step| fixture.procedure.position(step));
                let words = step.map(|at| fixture.procedure.steps[at].words.as_str());
                only.code == code && (at_the_end || of_the_document || words == Some(place))
            }
        };
        if !fits {
            wrong.push(format!("{} {title}\n  expected {expected}\n  {:#?}", file.path, told(&found)));
        }
    }
    assert!(wrong.is_empty(), "{} cases\n{}", wrong.len(), wrong.join("\n"));
}

#[test]
fn without_what_it_replaces_a_case_comes_out_the_other_way() {
    let mut n_replaced = 0;
    for file in suite("cases", ".txt").expect("cases") {
        let lines: Vec<&str> = file.text.lines().collect();
        let mut fixture = Fixture::read(&[&lines[1..2], &lines[3..]].concat().join("\n"));
        if fixture.procedure.overrides.is_empty() {
            continue;
        }
        let with = judged(&fixture);
        fixture.procedure.overrides.clear();
        assert_ne!(with.is_empty(), judged(&fixture).is_empty(), "{}", file.path);
        n_replaced += 1;
    }
    assert_eq!(n_replaced, 6, "cases that replace a demand");
}
