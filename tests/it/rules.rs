//! Every rule's documentation is run: its first example fires the rule, its second does not, and inside a
//! question the first fires on that answer alone. Leaving any rule out lets some example pass.

use crate::fixture::{Fixture, is_found_by_running, told};
use procedures_schema::check::{Finding, Level, Rule, catalogue};

/// The first code block under a heading.
pub(crate) fn example(documentation: &str, heading: &str) -> Fixture {
    let section = documentation.split(&format!("## {heading}\n")).nth(1).expect(heading);
    let block = section.split("```text\n").nth(1).and_then(|rest| rest.split("```").next()).expect(heading);
    Fixture::read(block.trim_end())
}

/// Findings that an example may not have: of other rules, except about words outside the words family, and
/// warnings beside what it shows.
fn of_other_rules(rule: &Rule, also: &[String], findings: &[Finding]) -> Vec<String> {
    let family = |code: &str| code.split('/').next().unwrap_or_default().to_owned();
    let others = findings.iter().filter(|finding| {
        finding.code != rule.code
            && !also.iter().any(|code| code == finding.code)
            && finding.level == Level::Reject
            && (family(rule.code) == "words" || family(finding.code) != "words")
    });
    told(&others.cloned().collect::<Vec<_>>())
}

#[test]
fn the_first_example_of_every_rule_fires_it_and_no_other() {
    let mut wrong = Vec::new();
    for rule in catalogue() {
        let fixture = example(rule.documentation.text, "Fires");
        let found = fixture.findings();
        let fired = found.iter().any(|f| f.code == rule.code);
        let others = of_other_rules(rule, &fixture.also, &found);
        if !fired || !others.is_empty() {
            wrong.push(format!("{} fired: {fired}\n  {:#?}", rule.code, told(&found)));
        }
    }
    assert!(wrong.is_empty(), "{} rules\n{}", wrong.len(), wrong.join("\n"));
}

#[test]
fn the_second_example_of_every_rule_has_no_finding() {
    let mut wrong = Vec::new();
    for rule in catalogue() {
        let found = example(rule.documentation.text, "Does not fire").findings();
        let fired = found.iter().any(|f| f.code == rule.code);
        let others = of_other_rules(rule, &[], &found);
        if fired || !others.is_empty() {
            wrong.push(format!("{} fired: {fired}\n  {:#?}", rule.code, told(&found)));
        }
    }
    assert!(wrong.is_empty(), "{} rules\n{}", wrong.len(), wrong.join("\n"));
}

#[test]
fn inside_a_question_a_rule_fires_on_that_answer_alone() {
    for rule in catalogue().iter().filter(|rule| is_of_the_spine(rule)) {
        let inside = example(rule.documentation.text, "Fires").inside_a_question();
        let found = inside.findings();
        let of_rule: Vec<&Finding> = found.iter().filter(|f| f.code == rule.code).collect();
        // A goal is missed on the other answer too, where nothing is done at all.
        let everywhere = rule.code == "putback/not-renewed";
        let on_the_answer =
            |f: &&&Finding| everywhere || f.answers.iter().any(|answer| answer.ends_with("yes"));
        assert!(!of_rule.is_empty(), "{}: {:#?}", rule.code, told(&found));
        assert_eq!(of_rule.iter().filter(on_the_answer).count(), of_rule.len(), "{}", rule.code);
    }
}

fn is_of_the_spine(rule: &Rule) -> bool {
    is_found_by_running(rule.code)
}

/// A cause that one rule does not tell may be told by another, which the finding names under `also`; what no
/// other names must be accepted without the rule.
#[test]
fn leaving_any_rule_out_lets_an_example_pass() {
    let mut wrong = Vec::new();
    for left_out in catalogue() {
        let fixture = example(left_out.documentation.text, "Fires");
        let before = fixture.findings();
        let rules: Vec<&'static Rule> =
            catalogue().iter().copied().filter(|rule| rule.code != left_out.code).collect();
        let mut also: Vec<String> = before.iter().flat_map(|finding| finding.also.clone()).collect();
        also.extend(fixture.also.clone());
        let after = fixture.findings_by(&rules);
        let others = of_other_rules(left_out, &also, &after);
        if before.is_empty() || !others.is_empty() {
            wrong.push(format!("{} left out: {others:#?}", left_out.code));
        }
    }
    assert!(wrong.is_empty(), "{} rules\n{}", wrong.len(), wrong.join("\n"));
}

#[test]
fn findings_speak_in_one_clause_that_names_a_step_and_end_without_a_stop() {
    for rule in catalogue() {
        for finding in example(rule.documentation.text, "Fires").findings() {
            let title = &finding.title;
            let names = title.contains("tep") || title.contains("since the start") || title.contains("goal");
            assert!(names, "{title}");
            assert!(!title.ends_with('.') && !title.replace("d.c. bus", "").contains(". "), "{title}");
            assert!(title.chars().next().is_some_and(char::is_uppercase), "{title}");
            assert!(!finding.remedy.is_empty(), "{title}");
            assert!(finding.remedy.iter().all(|remedy| !remedy.ends_with('.')), "{title}");
        }
    }
}
