//! Every rule's documentation is run: its first example fires the rule, its second does not.
//!
//! An example stands on one of the maps of `tests/suite/maps`. A line is written notation; with words
//! before a stroke it is a step with those words, all of them saying its actions. Lines without words get
//! sentences that nobody reads, so only examples of the words family have findings about words. `whole`
//! runs to the end of the job, otherwise the job is still going on.

use procedures_schema::check::{Finding, catalogue, check_trace};
use procedures_schema::format;
use procedures_schema::model::{Date, Procedure, Span, Stage, Step};
use procedures_schema::notation;
use procedures_schema::simulate::{Run, simulate};
use putback_tests::suite;
use std::sync::Arc;

/// One example of a rule's documentation.
struct Example {
    procedure: Procedure,
    whole: bool,
}

fn map_named(name: &str) -> Procedure {
    let maps = suite("maps", ".putback.json").expect("maps");
    let file = maps.iter().find(|file| file.path.ends_with(&format!("/{name}.putback.json")));
    let file = file.unwrap_or_else(|| panic!("no map {name}"));
    format::read(file.text.as_bytes()).unwrap_or_else(|error| panic!("{}: {error}", file.path))
}

fn step(line: &str, number: usize) -> Step {
    let (words, written) = line.split_once('|').map_or((line, line), |(words, written)| (words, written));
    let words = words.trim().to_owned();
    let mut actions = notation::parse(written.trim()).unwrap_or_else(|error| panic!("{line}: {error}"));
    let length = u32::try_from(words.chars().count()).expect("a short line");
    for action in &mut actions {
        action.says = vec![Span(0, length)];
    }
    Step { actions, ..Step::new(format!("s{number}").as_str().into(), Stage::Strip, &words) }
}

/// The first code block under a heading.
fn example(documentation: &str, heading: &str) -> Example {
    let section = documentation.split(&format!("## {heading}\n")).nth(1).expect(heading);
    let block = section.split("```text\n").nth(1).and_then(|rest| rest.split("```").next()).expect(heading);
    let mut lines = block.lines();
    let first = lines.next().and_then(|line| line.strip_prefix("map: ")).expect("a map");
    let (map, whole) = first.strip_suffix(", whole").map_or((first, false), |map| (map, true));
    let mut procedure = map_named(map);
    procedure.steps = lines.enumerate().map(|(i, line)| Arc::new(step(line, i + 1))).collect();
    Example { procedure, whole }
}

fn findings(example: &Example) -> Vec<Finding> {
    let all: Vec<usize> = (0..example.procedure.steps.len()).collect();
    let run = if example.whole { Run::of(&example.procedure) } else { Run::of_steps(&all) };
    let trace = simulate(&example.procedure, &run);
    let today = Date::parse("2026-11-25").expect("a date");
    check_trace(&example.procedure, &trace, today).findings
}

fn codes(findings: &[Finding]) -> Vec<String> {
    findings.iter().map(|finding| format!("{} {}", finding.code, finding.title)).collect()
}

/// Findings that an example may have: of its own rule, and about words only in the words family.
fn of_other_rules(code: &str, findings: &[Finding]) -> Vec<String> {
    let family = |code: &str| code.split('/').next().unwrap_or_default().to_owned();
    let others = findings.iter().filter(|finding| {
        finding.code != code && (family(code) == "words" || family(finding.code) != "words")
    });
    codes(&others.cloned().collect::<Vec<_>>())
}

#[test]
fn the_first_example_of_every_rule_fires_it_and_no_other() {
    for rule in catalogue() {
        let found = findings(&example(rule.documentation, "Fires"));
        assert!(found.iter().any(|f| f.code == rule.code), "{}: {:#?}", rule.code, codes(&found));
        assert_eq!(of_other_rules(rule.code, &found), Vec::<String>::new(), "{}", rule.code);
    }
}

#[test]
fn the_second_example_of_every_rule_has_no_finding() {
    for rule in catalogue() {
        let found = findings(&example(rule.documentation, "Does not fire"));
        assert!(!found.iter().any(|f| f.code == rule.code), "{}: {:#?}", rule.code, codes(&found));
        assert_eq!(of_other_rules(rule.code, &found), Vec::<String>::new(), "{}", rule.code);
    }
}

#[test]
fn findings_speak_in_one_clause_that_names_a_step_and_end_without_a_stop() {
    for rule in catalogue() {
        for finding in findings(&example(rule.documentation, "Fires")) {
            let title = &finding.title;
            assert!(title.contains("tep "), "{title}");
            assert!(!title.ends_with('.') && !title.contains(". "), "{title}");
            assert!(title.chars().next().is_some_and(char::is_uppercase), "{title}");
            assert!(!finding.remedy.is_empty(), "{title}");
            assert!(finding.remedy.iter().all(|remedy| !remedy.ends_with('.')), "{title}");
        }
    }
}
