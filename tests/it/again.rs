//! A check that takes over what the words of the step before said gives the report of a check from nothing.

use crate::laws::{Dice, spoiled};
use crate::undo::{N_KINDS, random_edit};
use procedures_schema::check::{Report, Sayings, check_after, check_trace};
use procedures_schema::edit::{Edit, Session};
use procedures_schema::model::{Date, Procedure, Step};
use procedures_schema::simulate::{Run, Trace, runs_alike, simulate};
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

/// A document that was checked.
struct Judged {
    document: Arc<Procedure>,
    trace: Arc<Trace>,
    report: Report,
    sayings: Sayings,
}

impl Judged {
    /// Checked after another, whose run is taken over where it is the same.
    fn after(before: Option<&Self>, document: &Arc<Procedure>) -> Self {
        let alike = before.filter(|before| runs_alike(&before.document, document));
        let run = || Arc::new(simulate(document, &Run::of(document)));
        let trace = alike.map_or_else(run, |before| before.trace.clone());
        let said = before.map(|before| &before.sayings);
        let (report, sayings) = check_after(said, document, &trace, today());
        assert_eq!(report, check_trace(document, &trace, today()), "{}", document.title);
        Self { document: document.clone(), trace, report, sayings }
    }
}

fn typed(dice: &mut Dice, document: &Procedure) -> Option<Edit> {
    let step = document.steps.get(dice.roll(document.steps.len().max(1)))?;
    let words = SAYINGS.get(dice.roll(SAYINGS.len())).copied().unwrap_or_default();
    Some(Edit::SetStep { step: Arc::new(Step { words: words.to_owned(), ..(**step).clone() }) })
}

#[test]
fn a_check_after_another_gives_the_report_of_a_check_from_nothing() {
    let mut dice = Dice(0x5851_F42D_4C95_7F2D);
    let (mut n_edits, mut n_other, mut n_alike) = (0, 0, 0);
    for procedure in spoiled().filter(|procedure| !procedure.steps.is_empty()).step_by(5) {
        let mut session = Session::new(Arc::new(procedure));
        let mut judged = Judged::after(None, session.document());
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
            let next = Judged::after(Some(&judged), session.document());
            n_edits += 1;
            n_other += usize::from(next.report != judged.report);
            n_alike += usize::from(Arc::ptr_eq(&next.trace, &judged.trace));
            judged = next;
        }
    }
    assert!(n_other * 2 > n_edits, "{n_other} of {n_edits} edits changed the report");
    assert!(n_alike * 4 > n_edits, "{n_alike} of {n_edits} edits left the run as it was");
}
