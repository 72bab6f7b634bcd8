//! Three jobs more: a hot water store in plain sentences, a boiler in talk, and a compressor in shorthand. What a
//! person expects of each line, written like `table`.
//!
//! Written down by somebody who had not seen the recogniser, with what a colleague would do on hearing each line; the
//! expectations follow that. What is only done on a condition is not expected, and nothing may be heard falsely.

/// The scripts in `further/` with a line for each of theirs.
pub(super) const SCRIPTS: &[(&str, &str, &[&str])] = &[
    ("immersion", include_str!("further/immersion.txt"), IMMERSION),
    ("burner-electrode", include_str!("further/burner-electrode.txt"), BURNER_ELECTRODE),
    ("intake-valve", include_str!("further/intake-valve.txt"), INTAKE_VALVE),
];

const IMMERSION: &[&str] = &[
    "tell",
    "shutdown|isolate ?isolate lock",
    // The boiler stays on.
    "set",
    "undo remove ?aside",
    "prove ?test ?read",
    "",
    "photograph",
    "undo undo ?undo ?undo",
    // Locked only if somebody else is there.
    "isolate",
    "release|undo|restore ?release|undo|restore wait",
    "prove|read ?prove|read",
    "place|make release|undo ?release|undo",
    // A warning, and not marked as one.
    "",
    "make|isolate|tighten",
    "place place",
    "slacken wait",
    "undo|remove ?undo|remove",
    "discard ?aside",
    "undo|remove undo|remove ?remove",
    "clean ?clean",
    "inspect ?inspect",
    "fit|make ?make ?discard",
    "make|tighten fit|make ?make|tighten",
    "read|test ?read|test",
    "fit|make make ?make ?make set",
    "take take",
    // The tap is closed, not the stopcock.
    "restore|charge ?restore|charge ?release|purge make|isolate",
    "?wait ?read test|inspect ?test|inspect ?inspect",
    "fit make ?take|undo|remove restore|start ?restore|start read|test",
    "take set ?record|read",
];

const BURNER_ELECTRODE: &[&str] = &[
    // The customer has been told.
    "?tell",
    "isolate|shutdown ?isolate|remove|undo ?shutdown ?lock",
    "isolate place",
    "wait ?read",
    "undo|slacken remove ?aside",
    "prove ?test",
    "",
    "undo undo",
    "undo undo",
    "undo",
    "?discard ?remove",
    // The cap, not the rag.
    "place",
    "slacken undo",
    "remove ?aside ?place",
    "inspect",
    "undo remove ?remove discard ?discard",
    "?aside",
    "?remove|discard clean ?discard",
    "clean ?inspect",
    "",
    "fit ?fit make|tighten ?make|tighten",
    "read|test|inspect",
    "?fit ?make",
    "fit make ?tighten",
    "take make ?fit ?tighten",
    // A tug is a test of the joint, if it is anything.
    "make ?make make make ?test|inspect",
    "restore test ?inspect",
    "?fit|make|restore restore set|start ?set|start wait",
    "read|test set|start ?read|test ?set|start",
    "test|inspect ?test|inspect fit make|tighten take take ?record|read",
];

const INTAKE_VALVE: &[&str] = &[
    "?set start|wait ?start|wait shutdown",
    "isolate lock ?place",
    "prove ?read",
    "isolate lock",
    "wait ?release prove|read slacken",
    "make|tighten",
    "",
    "undo ?undo remove ?remove ?aside ?aside",
    // The clamp is only slackened.
    "slacken remove|undo ?remove|undo ?aside ?aside",
    "",
    "photograph ?place|record",
    "undo undo|remove inspect",
    "undo ?undo undo",
    "place ?place ?place",
    "undo slacken",
    "undo remove ?aside",
    "place",
    "?remove ?discard ?aside",
    "?record",
    "clean ?clean inspect ?inspect",
    "take inspect place",
    "read|test",
    "fit ?fit make|tighten make|tighten ?make|tighten",
    "take fit ?fit ?make",
    "make|tighten ?make|tighten",
    "take ?take ?take make|tighten make ?make ?tighten",
    "make ?make|tighten fit ?fit|make make|tighten",
    // A new washer in any case, oil only if it is short.
    "read|inspect|test make|tighten|fit ?undo|remove ?make|tighten ?fit",
    // The outlet stays shut, though its lock comes off.
    "?take|remove ?take|remove ?take restore start ?wait test ?inspect",
    "start|set read|test ?read|test|inspect ?inspect restore fit ?fit ?make ?make ?record|read",
];
