//! Three jobs besides those of `blind`: a pump in plain sentences, a boiler in talk, and a heat pump in shorthand.
//! What a person expects of each line, written like `table`.
//!
//! Written down by somebody who had not seen the recogniser, with what a colleague would do on hearing each line; the
//! expectations follow that. What is only done on a condition is not expected, and nothing may be heard falsely.

/// The scripts in `further/` with a line for each of theirs.
pub(super) const SCRIPTS: &[(&str, &str, &[&str])] = &[
    ("booster-seal", include_str!("further/booster-seal.txt"), BOOSTER_SEAL),
    ("diverter", include_str!("further/diverter.txt"), DIVERTER),
    ("water-side", include_str!("further/water-side.txt"), WATER_SIDE),
];

const BOOSTER_SEAL: &[&str] = &[
    "tell",
    "shutdown ?set|isolate",
    "isolate lock ?place",
    "undo remove prove",
    // The tester, not the pump.
    "?prove|test",
    "isolate isolate",
    "place",
    "slacken release ?prove|read",
    "?hold",
    "undo|remove release ?remove",
    "photograph undo ?undo ?undo ?undo ?record",
    // Two halves, or one guard.
    "undo remove ?remove ?aside ?aside",
    "",
    "undo remove remove ?remove",
    "undo remove ?place",
    "aside ?place",
    "slacken",
    "undo|remove ?remove discard ?discard",
    "inspect",
    "clean ?clean",
    "fit|make ?make|tighten",
    "fit make|tighten ?make|tighten",
    "fit fit ?fit ?make",
    "place make|tighten take ?make",
    "make|tighten",
    "inspect|test",
    "fit ?fit make make ?make ?make ?make fit make",
    "fit|make ?fit|make ?tighten take",
    "restore charge|release|purge ?charge|release|purge make|tighten|isolate restore",
    // The lock comes off; "close" switches on.
    "?restore|take|remove ?take|remove restore start|set|restore ?start|set ?wait test|inspect read|record ?read|record",
];

const DIVERTER: &[&str] = &[
    "",
    "tell",
    // The fuse sits in the spur, and in the pocket it is as good as a lock.
    "shutdown isolate ?isolate|remove ?lock ?aside",
    "undo remove ?aside",
    "prove ?read",
    "",
    "isolate isolate isolate",
    "",
    "place place ?place",
    "",
    "place slacken|undo|release ?release|undo ?prove|read",
    "release|undo|restore ?release|undo",
    "wait make|tighten|isolate take|undo|remove",
    "photograph",
    "undo undo|remove remove",
    "?aside discard",
    "undo ?slacken",
    // A clip and not a nut.
    "undo|remove ?undo|remove",
    "undo",
    "remove ?release",
    // They are counted.
    "?inspect",
    "clean inspect",
    "?fit ?make ?discard",
    "fit make ?tighten",
    "make|fit ?make|fit make ?tighten ?fit",
    "fit make|fit make take ?take",
    "restore restore restore make|isolate ?release|purge",
    "charge release|purge",
    "wait test|inspect ?test|inspect ?inspect ?inspect take fit make ?fit|make|restore restore",
    "start read|test ?read|test ?record tell",
];

const WATER_SIDE: &[&str] = &[
    "",
    "shutdown wait",
    "isolate lock isolate lock ?place ?place",
    "undo remove undo remove ?aside ?aside",
    "wait ?release",
    "prove ?read|test",
    "",
    "isolate isolate",
    "place place",
    "place ?place",
    "release|undo ?release|undo slacken ?prove|read",
    "",
    "make|isolate|tighten",
    "undo ?record",
    "undo|remove ?remove discard ?discard",
    "inspect",
    "undo ?remove",
    "remove discard",
    "fit fit|make ?make|tighten ?tighten",
    "undo ?undo",
    // Only the tube; the unions were said.
    "undo",
    "undo remove ?aside",
    "remove discard clean ?clean",
    "fit fit make|tighten ?make|tighten",
    "make ?make make|fit ?tighten ?tighten",
    "fit|make ?make|tighten make ?fit",
    "undo|remove ?undo|remove fit|make charge make|fit ?read",
    // The drain is opened to fill through it.
    "restore restore ?undo|restore charge release|purge make|tighten",
    "?charge test ?wait ?read release make|isolate|tighten take|undo take take ?take",
    "fit ?fit make ?make ?restore|take|remove ?take|remove restore restore start ?wait read|test ?read|test ?record",
];
