//! What can be waived, by whom and what is told of it.

use super::{Verdict, check};
use crate::check::Level;
use crate::model::{Date, Procedure, Waiver};
use crate::units::Rest;
use std::sync::Arc;

fn today() -> Date {
    Date::parse("2026-01-01").expect("a date")
}

/// The demo with vague words in one step, which warn, and without its last test, which rejects.
fn doubtful() -> Procedure {
    let text = include_bytes!("../../../../public/demo/circulation-pump.putback.json");
    let mut document = crate::format::read(text).expect("the demo reads");
    let at = document
        .steps
        .iter()
        .position(|step| step.words.starts_with("Undo the four lid screws"))
        .expect("there");
    Arc::make_mut(&mut document.steps[at]).words.push_str(" Do it properly as required.");
    let tests =
        |step: &Arc<crate::model::Step>| step.actions.iter().any(|a| a.verb == crate::model::Verb::Test);
    let last = document.steps.iter().rposition(tests).expect("a test");
    document.steps.remove(last);
    document
}

fn waiver(document: &Procedure, level: Level) -> Waiver {
    let report = check(document, today());
    let finding = report.findings.iter().find(|finding| finding.level == level).expect("one of this level");
    Waiver {
        code: finding.code.to_owned(),
        step: finding.step.clone(),
        reason: "The words are those of the plate.".to_owned(),
        by: "A. Writer (invented)".to_owned(),
        date: Some(today()),
        rest: Rest::default(),
    }
}

#[test]
fn a_warning_is_waived_with_reason_and_name_and_is_told_apart() {
    let mut document = doubtful();
    let before = check(&document, today());
    let waived = waiver(&document, Level::Warn);
    document.waivers.push(waived.clone());
    let after = check(&document, today());
    let [told] = after.waived.as_slice() else { panic!("{:?}", after.waived) };
    assert_eq!((told.finding.code, &told.finding.step, told.waiver), (waived.code.as_str(), &waived.step, 0));
    let mut left = before.findings.clone();
    left.retain(|finding| *finding != told.finding);
    assert_eq!((after.findings, after.verdict, after.standing), (left, before.verdict, before.standing));
}

#[test]
fn without_reason_or_name_or_at_another_step_nothing_is_waived() {
    let document = doubtful();
    let good = waiver(&document, Level::Warn);
    let other = document.steps.first().map(|step| step.id.clone());
    for bad in [
        Waiver { reason: "  ".to_owned(), ..good.clone() },
        Waiver { by: String::new(), ..good.clone() },
        Waiver { step: other, ..good },
    ] {
        let with = Procedure { waivers: vec![bad], ..document.clone() };
        let report = check(&with, today());
        assert_eq!(report.findings, check(&document, today()).findings);
        assert!(report.waived.is_empty());
    }
}

#[test]
fn what_rejects_or_only_advises_is_never_waived() {
    let document = doubtful();
    let mut with = document.clone();
    with.waivers.push(waiver(&document, Level::Reject));
    let report = check(&with, today());
    assert_eq!((report.verdict, report.waived.len()), (Verdict::Rejected, 0));
    assert_eq!(report.findings, check(&document, today()).findings);
}
