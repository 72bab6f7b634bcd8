//! Three more jobs in three voices: plain sentences, talk, and shorthand. What a person expects of each line, written
//! like `table`.
//!
//! Written down by somebody who had not seen the recogniser, and not taught line by line: much of it is not heard, and
//! nothing of it may be heard falsely.

/// The scripts in `further/` with a line for each of theirs.
pub(super) const SCRIPTS: &[(&str, &str, &[&str])] = &[
    ("gas-block", include_str!("further/gas-block.txt"), GAS_BLOCK),
    ("unvented-cylinder", include_str!("further/unvented-cylinder.txt"), UNVENTED_CYLINDER),
    ("fan-and-trap", include_str!("further/fan-and-trap.txt"), FAN_AND_TRAP),
];

const GAS_BLOCK: &[&str] = &[
    "tell read|record ?read|record ?start",
    "shutdown ?wait ?release",
    // The locking cap is part of the lock.
    "isolate ?isolate|remove lock place",
    "prove",
    "isolate ?inspect",
    "test ?test|read ?wait",
    "undo remove",
    "?undo aside",
    "photograph",
    "undo ?release",
    "undo inspect",
    "undo",
    "?discard ?remove",
    "undo",
    "undo remove|aside",
    "place",
    "undo ?remove remove",
    "?inspect inspect",
    "fit fit|make ?make|tighten",
    "fit make ?fit",
    "make|tighten make|tighten",
    // The cap is the one that was placed.
    "take ?clean make ?fit",
    "make make",
    "?inspect restore ?wait isolate test",
    "take make|tighten restore test",
    // The box comes back and is not put aside.
    "?fit ?take ?take restore ?restore",
    "start wait test",
    "test|read ?set",
    // Paint holds nothing; at minimum.
    "start|set test|read",
    "?finish fit make ?record|read",
];

const UNVENTED_CYLINDER: &[&str] = &[
    "",
    "isolate isolate lock",
    "shutdown|isolate isolate ?isolate",
    "undo remove|undo",
    "prove",
    "isolate",
    // A tap that runs dry starts nothing.
    "undo|release|restore ?release",
    // Nobody feels the cock.
    "place release|undo ?release",
    "release|undo",
    "",
    "",
    "undo|slacken ?aside|undo",
    "undo|remove ?remove",
    "remove",
    "inspect clean",
    "inspect",
    // The relief valve, not the drain cock that stands open.
    "make|fit ?make",
    "fit|make make ?make",
    "?inspect photograph undo undo ?undo ?undo",
    "remove",
    "undo|slacken ?undo|remove",
    "remove remove clean",
    "?inspect read|test read|test",
    "fit|make make ?make|tighten",
    // Two newton metres are for the nut.
    "fit|make make make ?make set",
    "make take|undo restore purge make|isolate",
    "read|test test",
    "test",
    // The lock comes off.
    "fit make ?take restore ?restore restore read ?start ?test ?read",
    "start inspect|test ?read restore record",
];

const FAN_AND_TRAP: &[&str] = &[
    "shutdown wait ?read",
    "isolate lock place",
    "prove ?read",
    "isolate isolate isolate",
    "undo remove inspect",
    "place place",
    "undo",
    "undo|remove ?record",
    // Left is no thing.
    "undo remove",
    "undo ?discard",
    "undo",
    "remove place",
    "undo remove",
    "inspect",
    "undo undo|remove ?remove",
    // The clip is pushed back and no gas is drained.
    "?undo|slacken undo|remove release",
    "undo|slacken remove",
    "remove clean",
    "fit|make fit ?make",
    "charge|fit make make ?fit ?inspect",
    "fit make ?make ?read|test",
    "fit make ?tighten",
    "take clean fit make ?fit",
    "make",
    "fit make make ?make ?make",
    "restore restore charge restore test",
    "restore ?take ?take start test ?inspect",
    "read|test ?read|test ?read|test",
    "?place test|read ?test|read ?read ?read",
    "make|place fit make ?test|read ?record tell",
];
