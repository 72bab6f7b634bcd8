//! The keys of Write and of every screen beside it, as the sheets name them.

use crate::components::keys_dialog::{Key, KeyGroup, KeysDialog, open_sheet};
use leptos::prelude::*;

/// Where keys do something: the heading on Write, that on another screen, and the keys.
type Group = (&'static str, &'static str, &'static [Key]);

const OF_WRITE: [Group; 3] = [
    (
        "In the line",
        "On Write, in the line",
        &[
            ("Enter", "keep the line as a step, and go on"),
            (
                "1 to 9",
                "answer what is asked; Tab goes to the next question, Esc leaves it open, and makes plain rows of a pasted text",
            ),
            ("Shift+Enter", "a second line for the same step"),
            (
                "warning: · read: · wait · why: · photo: · ask: · hold: · later: · bring: · back:",
                "begin a line that adds to a step",
            ),
            ("Ctrl+V of several lines", "each becomes a step"),
            ("Ctrl+Shift+V", "as plain rows, of which nothing is read"),
            ("Tab", "to what is asked or not said yet, then to what it means"),
            ("Esc in the line at the end", "takes back what was typed, and once more brings it again"),
        ],
    ),
    (
        "On a row",
        "On Write, on a row",
        &[
            ("Up, Down", "the step above or below; with Shift several steps"),
            (
                "Enter",
                "into its words; at their end a line for the next step, within them it cuts the step in two",
            ),
            ("Backspace at the start of words", "joins them to the step before"),
            ("Tab", "to the leading words, along which arrows lead, then to what it means"),
            (
                "Esc",
                "in words: takes back what was typed there; on what it means: into the words; elsewhere: to the row, and then lets go of it",
            ),
            (
                "On what it means",
                "Enter opens its fields, N: another name for its thing, Backspace: not an action",
            ),
            ("Ctrl+.", "other readings of the words at the caret, of marked words, or of what it means"),
            ("Ctrl+Enter", "a new step below; from anywhere else into the line at the end"),
            ("Alt+Up, Alt+Down", "hold the selected steps elsewhere; Enter drops them, Esc puts them back"),
            ("Ctrl+C, X, V, D", "copy, cut, paste, double whole steps or stages"),
            ("Delete", "take the selected steps out"),
            ("Ctrl+A, Ctrl+Shift+A", "select all steps, the steps of this stage; so does its heading"),
        ],
    ),
    (
        "Findings",
        "On Write, findings",
        &[(
            "Alt+Enter",
            "do what would mend the first finding of the row; words are left unread by their own key alone",
        )],
    ),
];

const EVERYWHERE: KeyGroup = KeyGroup {
    heading: "Everywhere",
    keys: &[
        ("Ctrl+Z, Ctrl+Y", "undo, redo, across all screens and after a reload"),
        ("Ctrl+S, Ctrl+O", "save as a file, open a file"),
        ("F8, Shift+F8", "the next or the last finding; what is mended on the map is shown on Appliance"),
        ("F9", "all findings, as the stamp opens them; once more leads back to the one gone to last"),
        ("F1", "this sheet"),
    ],
};

/// The lines at words that are typed: their class in the style sheet, and what they say.
const LINES: [(&str, &str, &str); 6] = [
    ("understood", "Plain", "understood"),
    ("new", "Dashed", "a thing that is named for the first time"),
    ("practice", "Dotted", "understood; practice adds what the words leave out"),
    ("open", "Double", "can mean more than one thing, or is not known"),
    ("declined", "Dotted above", "somebody has said that it is no action"),
    ("pending", "In brackets", "a value is still to be found out"),
];

/// The key that opens the sheet, and the sheet, as they stand on Write.
#[component]
pub fn KeysSheet() -> impl IntoView {
    let groups = OF_WRITE.map(|(heading, _, keys)| KeyGroup { heading, keys });
    let groups = groups.into_iter().chain([EVERYWHERE]).collect();
    view! {
        <button type="button" class="quiet" title="F1" on:click=move |_| open_sheet()>"Keys"</button>
        <KeysDialog title="Keys of Write" groups><Lines /></KeysDialog>
    }
}

/// The sheet of another screen: first what does something there.
#[component]
pub fn KeysBeside() -> impl IntoView {
    let of_write = OF_WRITE.map(|(_, heading, keys)| KeyGroup { heading, keys });
    let groups = [EVERYWHERE].into_iter().chain(of_write).collect();
    view! { <KeysDialog title="Keys here, and those of Write" groups /> }
}

/// What the lines at words say.
#[component]
fn Lines() -> impl IntoView {
    let line = |(class, name, says): (&'static str, &'static str, &'static str)| {
        view! { <dt><span class=class>{name}</span></dt><dd>{says}</dd> }
    };
    view! { <section class="legend"><h3>"Lines at the words"</h3><dl>{LINES.map(line)}</dl></section> }
}
