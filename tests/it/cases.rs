//! Thirty cases that come out as stated: each file of `tests/suite/cases` says what it expects.
//!
//! A case passes if its code appears at its step and there is no finding of another cause; `none` is no
//! finding at all. Rules about words do not run: cases have none.

use crate::fixture::{Fixture, of_the_spine, told};
use putback_tests::suite;

#[test]
fn every_case_comes_out_as_stated() {
    let files = suite("cases", ".txt").expect("cases");
    assert_eq!(files.len(), 30);
    let mut wrong = Vec::new();
    for file in files {
        let mut lines = file.text.lines();
        let title = lines.next().expect("a title").to_owned();
        let map = lines.next().expect("a map");
        let expected = lines.next().and_then(|line| line.strip_prefix("expected: ")).expect("an expectation");
        let steps: Vec<&str> = lines.collect();
        let fixture = Fixture::read(&format!("{map}\n{}", steps.join("\n")));
        let found = of_the_spine(fixture.findings());
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
                let step = only.step.as_ref().and_then(|step| fixture.procedure.position(step));
                let words = step.map(|at| fixture.procedure.steps[at].words.as_str());
                only.code == code && (at_the_end || words == Some(place))
            }
        };
        if !fits {
            wrong.push(format!("{} {title}\n  expected {expected}\n  {:#?}", file.path, told(&found)));
        }
    }
    assert!(wrong.is_empty(), "{} cases\n{}", wrong.len(), wrong.join("\n"));
}
