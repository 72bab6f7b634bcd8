//! A check that takes over what the words of the step before said gives the report of a check from nothing.

use crate::laws::{Dice, spoiled};
use crate::undo::{N_KINDS, random_edit};
use procedures_schema::check::{Report, Sayings, check_after, check_trace};
use procedures_schema::edit::{Edit, Session};
use procedures_schema::model::{Date, Procedure, Step};
use procedures_schema::simulate::{Run, simulate};
use std::sync::Arc;

const N_EDITS: u64 = 24;

/// Words of which rules ask, and some of which none does.
const SAYINGS: &[&str] = &[
    "Tighten as required.",
    "Close everything, TBD.",
    "Refit in reverse order.",
    "Öffne das Ventil ±1.",
    "Do not open the drain, then remove the cover.",
    "",
];

fn today() -> Date {
    Date::parse("2026-03-01").expect("a date")
}

fn judged(before: Option<&Sayings>, document: &Procedure) -> (Report, Sayings) {
    let trace = simulate(document, &Run::of(document));
    let (report, sayings) = check_after(before, document, &trace, today());
    assert_eq!(report, check_trace(document, &trace, today()), "{}", document.title);
    (report, sayings)
}

fn typed(dice: &mut Dice, document: &Procedure) -> Option<Edit> {
    let step = document.steps.get(dice.roll(document.steps.len().max(1)))?;
    let words = SAYINGS.get(dice.roll(SAYINGS.len())).copied().unwrap_or_default();
    Some(Edit::SetStep { step: Arc::new(Step { words: words.to_owned(), ..(**step).clone() }) })
}

#[test]
fn a_check_after_another_gives_the_report_of_a_check_from_nothing() {
    let mut dice = Dice(0x5851_F42D_4C95_7F2D);
    let (mut n_edits, mut n_other) = (0, 0);
    for procedure in spoiled().filter(|procedure| !procedure.steps.is_empty()).step_by(5) {
        let mut session = Session::new(Arc::new(procedure));
        let (mut report, mut sayings) = judged(None, session.document());
        for n in 0..N_EDITS {
            let kind = dice.roll(2 * N_KINDS);
            let edit = if kind < N_KINDS {
                random_edit(&mut dice, kind, n, session.document())
            } else {
                typed(&mut dice, session.document()).expect("a step")
            };
            if session.edit(&[edit], "edit", None, n * 10_000).is_err() {
                continue;
            }
            let (next, said) = judged(Some(&sayings), session.document());
            n_edits += 1;
            n_other += usize::from(next != report);
            (report, sayings) = (next, said);
        }
    }
    assert!(n_other * 2 > n_edits, "{n_other} of {n_edits} edits changed the report");
}
