//! Fixes: each mends the finding for which it is offered, and breaks nothing else.

use crate::fixture::Fixture;
use crate::rules::example;
use crate::spoiled::{self, Spoiled};
use procedures_schema::check::{Finding, Fix, Level, Report, catalogue, check, fixes};
use procedures_schema::edit::{Edit, Session};
use procedures_schema::format;
use procedures_schema::model::{Action, Date, Procedure, Reading, Stage, Step, Verb};
use procedures_schema::units::{Figure, Range, Unit};
use putback_tests::text_files;
use std::sync::Arc;

/// The rules whose first example is mended by a fix.
const MENDED: &[&str] = &[
    "gas/fired-before-tested",
    "gas/not-proved",
    "gas/proof-incomplete",
    "gas/proof-lapsed",
    "gas/purged-before-tested",
    "isolation/not-locked",
    "isolation/not-proved",
    "isolation/proof-incomplete",
    "isolation/proof-lapsed",
    "isolation/wait-too-short",
    "pressure/not-locked",
    "pressure/not-proved",
    "pressure/proof-incomplete",
    "pressure/proof-lapsed",
    "putback/blank-inside",
    "putback/left-off",
    "putback/left-open",
    "putback/left-slack",
    "putback/loose-part-left",
    "putback/out-of-reach",
    "putback/supply-off",
    "putback/temp-left",
    "putback/unmarked",
    "reading/not-settled",
    "retest/missing",
    "retest/not-closed",
    "retest/order",
    "seal/not-renewed",
    "words/differs",
    "words/left-out",
    "words/not-typed",
];

/// How many of the spoiled demos have a fix for a finding that rejects them.
const N_MENDED: usize = 90;

fn today() -> Date {
    Date::parse("2026-11-25").expect("a date")
}

/// The document with a fix applied as one entry of the undo.
fn mended(procedure: &Procedure, fix: &Fix) -> Arc<Procedure> {
    let mut session = Session::new(Arc::new(procedure.clone()));
    session.edit(&fix.edits, &fix.label, None, 0).unwrap_or_else(|error| panic!("{}: {error}", fix.label));
    session.document().clone()
}

fn of_code(report: &Report, code: &str) -> usize {
    report.findings.iter().filter(|finding| finding.code == code).count()
}

/// What is wrong with a fix, judged without the means by which it was tried.
fn fault(procedure: &Procedure, before: &Report, finding: &Finding, fix: &Fix) -> Option<String> {
    let mended = mended(procedure, fix);
    let after = check(&mended, today());
    let rejects = usize::from(finding.level == Level::Reject);
    let is_mended = of_code(&after, finding.code) < of_code(before, finding.code);
    let breaks_none = after.n_rejecting() + rejects <= before.n_rejecting();
    // A document that could not be stored would be no mend.
    let text = format::write(&mended);
    let is_kept = format::read(text.as_bytes()).is_ok_and(|read| read == *mended);
    let told: Vec<&String> = after.findings.iter().map(|finding| &finding.title).collect();
    (!is_mended || !breaks_none || !is_kept)
        .then(|| format!("{}: {} left {told:#?}", finding.title, fix.label))
}

#[test]
fn the_example_of_every_rule_that_has_a_fix_is_mended_by_it() {
    assert_eq!(offering(|fixture| fixture), in_order(MENDED));
}

#[test]
fn inside_a_question_a_fix_mends_on_that_answer() {
    assert_eq!(offering(|fixture| fixture.inside_a_question()), in_order(MENDED));
}

fn in_order(codes: &[&'static str]) -> Vec<&'static str> {
    let mut codes = codes.to_vec();
    codes.sort_unstable();
    codes.dedup();
    codes
}

/// The rules for whose first example, changed so, a fix is offered; each is looked at.
fn offering(change: impl Fn(Fixture) -> Fixture) -> Vec<&'static str> {
    let mut offering = Vec::new();
    for rule in catalogue() {
        let procedure = change(example(rule.documentation.text, "Fires")).procedure;
        let report = check(&procedure, today());
        for finding in report.findings.iter().filter(|finding| finding.code == rule.code) {
            for fix in fixes(&procedure, finding, today()) {
                assert_eq!(fault(&procedure, &report, finding, &fix), None);
                let begins_small = fix.label.chars().next().is_some_and(char::is_lowercase);
                assert!(begins_small && !fix.label.ends_with('.'), "{}", fix.label);
                let declines = matches!(rule.code, "words/left-out" | "words/not-typed");
                assert_eq!(fix.declines(&procedure), declines, "{}", fix.label);
                offering.push(rule.code);
            }
        }
    }
    in_order(&offering)
}

/// One spoiled demo: whether some fix is offered for the finding that rejects it, and what is wrong with any.
fn tried(case: &Spoiled) -> (bool, Vec<String>) {
    let report = check(&case.procedure, today());
    let mut faults = Vec::new();
    let mut is_mended = false;
    for finding in &report.findings {
        let offered = fixes(&case.procedure, finding, today());
        for fix in &offered {
            let fault = fault(&case.procedure, &report, finding, fix);
            faults.extend(fault.map(|fault| format!("{}: {fault}", case.what)));
            is_mended |= finding.level == Level::Reject;
        }
    }
    (is_mended, faults)
}

#[test]
fn what_is_offered_for_the_spoiled_demos_mends_them() {
    let cases = spoiled::all();
    // Each finding costs up to 96 checks, so all cores look.
    let results: Vec<(bool, Vec<String>)> = std::thread::scope(|threads| {
        let half = cases.len().div_ceil(2);
        let parts: Vec<_> = cases
            .chunks(half)
            .map(|part| threads.spawn(|| part.iter().map(tried).collect::<Vec<_>>()))
            .collect();
        parts.into_iter().flat_map(|part| part.join().expect("it ends")).collect()
    });
    let faults: Vec<&String> = results.iter().flat_map(|(_, faults)| faults).collect();
    assert!(faults.is_empty(), "{faults:#?}");
    let n_mended = results.iter().filter(|(is_mended, _)| *is_mended).count();
    println!("{n_mended} of {} spoiled demos have a fix that removes a finding that rejects", cases.len());
    for (case, _) in cases.iter().zip(&results).filter(|(_, (is_mended, _))| !is_mended) {
        println!("  by hand: {}", case.what);
    }
    assert_eq!(n_mended, N_MENDED, "of {}", cases.len());
}

/// The demos, with what stands before what as the map says it, and with a map that says nothing of it.
fn demos() -> Vec<Procedure> {
    let files = text_files("public/demo").expect("demos").into_iter().filter(|file| file.is(".putback.json"));
    let told: Vec<Procedure> =
        files.map(|file| format::read(file.text.as_bytes()).expect("a demo")).collect();
    let mut all = told.clone();
    for mut untold in told {
        let map = Arc::make_mut(&mut untold.map);
        map.components.iter_mut().for_each(|part| part.behind.clear());
        map.connections.iter_mut().for_each(|connection| connection.reached_after = None);
        all.push(untold);
    }
    all
}

/// The positions at which fixes add steps that put something back; none for other fixes.
fn put_back_at(procedure: &Procedure, report: &Report) -> Vec<(usize, Fix)> {
    let mut places = Vec::new();
    for finding in &report.findings {
        for fix in fixes(procedure, finding, today()) {
            if let [Edit::InsertStep { at, step }] = fix.edits.as_slice()
                && step.actions.iter().all(|action| matches!(action.verb, Verb::Fit | Verb::Make))
            {
                places.push((*at, fix));
            }
        }
    }
    places
}

#[test]
fn what_was_left_off_goes_back_where_a_person_puts_it() {
    let mut n_put_back = 0;
    for whole in demos() {
        for (at, step) in whole.steps.iter().enumerate() {
            let puts_back = |action: &Action| matches!(action.verb, Verb::Fit | Verb::Make);
            if step.stage < Stage::Refit || !step.actions.iter().all(puts_back) || step.actions.is_empty() {
                continue;
            }
            let mut spoiled = whole.clone();
            spoiled.steps.remove(at);
            for (place, fix) in put_back_at(&spoiled, &check(&spoiled, today())) {
                // Between the two places nothing is taken off, cleaned or looked at.
                let is_work = |action: &Action| {
                    let opens = matches!(action.verb, Verb::Undo | Verb::Slacken | Verb::Remove);
                    opens || matches!(action.verb, Verb::Clean | Verb::Inspect)
                };
                let between = &spoiled.steps[at.min(place)..at.max(place)];
                let work = between.iter().find(|step| step.actions.iter().any(is_work));
                assert_eq!(work.map(|step| &step.words), None, "step {}: {}", at + 1, fix.label);
                n_put_back += 1;
            }
        }
    }
    assert!(n_put_back > 20, "{n_put_back}");
}

#[test]
fn nothing_goes_back_while_things_are_still_taken_off() {
    let mut n_put_back = 0;
    for mut stripped in demos() {
        stripped.steps.retain(|step| step.stage < Stage::Refit);
        let takes_off = |action: &Action| matches!(action.verb, Verb::Undo | Verb::Remove);
        let last = stripped.steps.iter().rposition(|step| step.actions.iter().any(takes_off));
        let last = last.expect("something is taken off");
        let report = check(&stripped, today());
        for (place, fix) in put_back_at(&stripped, &report) {
            assert!(place > last, "{}", fix.label);
            let new = |finding: &&Finding| of_code(&report, finding.code) == 0;
            let after = check(&mended(&stripped, &fix), today());
            assert_eq!(after.findings.iter().find(new), None, "{}", fix.label);
            n_put_back += 1;
        }
    }
    assert!(n_put_back > 3, "{n_put_back}");
}

#[test]
fn the_same_fixes_are_offered_each_time() {
    for case in spoiled::all().iter().step_by(10) {
        for finding in &check(&case.procedure, today()).findings {
            let offered = fixes(&case.procedure, finding, today());
            assert_eq!(offered, fixes(&case.procedure, finding, today()), "{}", case.what);
        }
    }
}

#[test]
fn a_finding_of_another_document_has_no_fix() {
    let document = |code: &str| {
        let rule = catalogue().iter().find(|rule| rule.code == code).expect(code);
        example(rule.documentation.text, "Fires").procedure
    };
    let (open, slack) = (document("putback/left-open"), document("putback/left-slack"));
    for finding in &check(&open, today()).findings {
        if finding.code == "putback/left-open" {
            assert_eq!(fixes(&slack, finding, today()), []);
        }
    }
}

#[test]
fn a_fill_pressure_that_is_tested_by_a_fix_is_the_one_that_a_step_fills_to() {
    let demo = text_files("public/demo").expect("demos");
    let demo = demo.iter().find(|file| file.path.contains("circulation-pump")).expect("the pump");
    let mut demo = format::read(demo.text.as_bytes()).expect("a procedure");
    demo.steps.retain(|step| !step.words.starts_with("Check the fill pressure cold"));
    let at =
        demo.steps.iter().position(|step| step.words.starts_with("Bleed the pump body")).expect("a step");
    let figure = |text: &str| Figure::parse(text).ok();
    let limits = Some(Range::new(figure("1.2"), figure("1.5"), Unit::Bar));
    let mut fill = Action::new(Verb::Charge, vec!["body".into()]);
    fill.readings = vec![Reading { what: "pressure".to_owned(), limits, ..Reading::default() }];
    let words = "Fill the pump body to 1.2 bar to 1.5 bar.";
    let fill = Step { actions: vec![fill], ..Step::new("filled".into(), Stage::Recommission, words) };
    demo.steps.insert(at, Arc::new(fill));
    let report = check(&demo, today());
    let is_it =
        |finding: &&Finding| finding.code == "retest/missing" && finding.title.contains("fill pressure");
    let missing = report.findings.iter().find(is_it).expect("a finding");
    let fix = fixes(&demo, missing, today()).into_iter().next().expect("a fix");
    assert!(fix.label.ends_with("\"Test the fill pressure: 1.2 bar to 1.5 bar.\""), "{}", fix.label);
    let after = check(&mended(&demo, &fix), today());
    assert_eq!(of_code(&after, "reading/nothing-read"), 0);
    assert_eq!(of_code(&after, "words/differs"), 0);
}
