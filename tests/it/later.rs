//! Values that a sentence leaves for later, and where they are listed.

use super::mended::typed;
use procedures_schema::capture::{block, steps_of_block};
use procedures_schema::model::{Id, NumberedIds, Procedure, open_values};
use procedures_schema::notation::print;

/// What is typed, what its last line is read as, and what is to be found out.
const LATER: &[(&str, &str, &[&str])] = &[
    (
        "Take off the cover: four M5 screws.|Refit the cover: four M5 screws, torque later.",
        "fit cover · make cover-screws",
        &["how tight the cover screws is made"],
    ),
    ("Refit the cover: four M5 screws, torque later.", "fit cover", &["how tight the cover screws is made"]),
    (
        "Take off the cover: four M5 screws.|Refit the cover with its screws, torque later.",
        "fit cover · make cover-screws",
        &["how tight the cover screws is made"],
    ),
    (
        "Take off the cover: four screws, size later.",
        "undo cover-screws · remove cover",
        &["size of the cover screws"],
    ),
    (
        "Close the flow valve of the heating.|Undo the union of the heating pump, size later.",
        "undo heating-pump-union",
        &["size of the heating pump union", "number of the washer"],
    ),
    (
        "renew the check valve, number later",
        "remove check-valve · fit check-valve new",
        &["number of the check valve"],
    ),
    ("Fit a new fan, part number later.", "fit fan new", &["number of the fan"]),
    ("Remove the fan, number later, and clean it.", "remove fan · clean fan", &["number of the fan"]),
    // What is known is not left for later, and what says nothing to do leaves nothing.
    ("Take off the cover: four M5 screws, size later.", "undo cover-screws · remove cover", &[]),
    ("Number later.", "", &[]),
    ("The fan comes later.", "", &[]),
];

#[test]
fn a_pasted_text_leaves_values_for_later_too() {
    let text = "1. Take off the cover: four M5 screws.\n2. Refit the cover: four M5 screws, torque later.";
    let cut = block(text);
    let mut document = Procedure::new(Id::new("p"), "Invented");
    let pasted = steps_of_block(&cut, &document, 0, &mut NumberedIds::default());
    document.map = pasted.map.expect("a map");
    let found: Vec<String> = open_values(&document).into_iter().map(|open| open.what).collect();
    assert_eq!(found, ["how tight the cover screws is made"]);
}

#[test]
fn what_words_leave_for_later_is_to_be_found_out() {
    let mut wrong = Vec::new();
    for (lines, actions, open) in LATER {
        let document = typed(lines);
        let last = document.steps.last().expect("a line");
        let found: Vec<String> = open_values(&document).into_iter().map(|open| open.what).collect();
        if print(&last.actions) != *actions || found != *open {
            wrong.push(format!("{lines}\n   {}\n   {found:?}", print(&last.actions)));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}
