//! Why a thing was taken and not another that the words can name.

use super::{Typed, type_all};
use procedures_schema::capture::{Here, Reason, reason};
use procedures_schema::model::Stage;
use procedures_schema::simulate::{Place, Run, simulate};

/// The reason for the last action of the last line.
fn told(lines: &str) -> Option<Reason> {
    let (Typed { document }, _) = type_all(lines);
    let last = document.steps.last().expect("a line");
    let action = last.actions.last().expect("an action");
    let trace = simulate(&document, &Run::of(&document));
    let before = document.steps.len().checked_sub(2).map_or(Place::START, Place::after);
    let here = Here::from_trace(&document.map, &trace, before);
    reason(&last.words, &document.map, here, &Stage::Strip, action)
}

const OFF: &str =
    "Take off the front cover.|Take off the rear cover.|Close the flow valve.|Close the return valve.";

#[test]
fn of_several_things_the_only_one_that_it_can_be_done_to() {
    let lines = |last: &str| format!("{OFF}|{last}");
    assert_eq!(told(&lines("Refit the front cover.|Refit the cover.")), Some(Reason::OnlyPossible { of: 2 }));
    // Also where the same line has done it to the other.
    assert_eq!(
        told(&lines("Refit the front cover, then refit the cover.")),
        Some(Reason::OnlyPossible { of: 2 })
    );
    assert_eq!(told(&lines("Open the flow valve.|Open the valve.")), Some(Reason::OnlyPossible { of: 2 }));
}

#[test]
fn what_the_words_name_themselves_has_no_reason() {
    for last in ["Refit the rear cover.", "Refit the covers.", "Open the return valve."] {
        assert_eq!(told(&format!("{OFF}|{last}")), None, "{last}");
    }
}

#[test]
fn of_several_that_are_possible_the_one_that_was_touched_last() {
    assert_eq!(
        told(&format!("{OFF}|Clean the rear cover.|Refit the cover.")),
        Some(Reason::TouchedLast { of: 2 })
    );
}
