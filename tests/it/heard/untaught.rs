//! Four more jobs: two in plain sentences, one as talk, one in shorthand. What a person expects of each line, written
//! like `table`.
//!
//! Written down by somebody who had not seen the recogniser, and not taught line by line: much of it is not heard, and
//! nothing of it may be heard falsely.

/// The scripts in `further/` with a line for each of theirs.
pub(super) const SCRIPTS: &[(&str, &str, &[&str])] = &[
    ("substation", include_str!("further/substation.txt"), SUBSTATION),
    ("inlet-group", include_str!("further/inlet-group.txt"), INLET_GROUP),
    ("fan-coil", include_str!("further/fan-coil.txt"), FAN_COIL),
    ("warm-air", include_str!("further/warm-air.txt"), WARM_AIR),
];

const SUBSTATION: &[&str] = &[
    // Nobody shuts down yet.
    "tell",
    "photograph",
    "read|record ?record|read ?record",
    "isolate|shutdown ?isolate lock ?place",
    // A pump that stands still is no second proof.
    "prove",
    "isolate isolate lock ?lock",
    // These valves stay open.
    "",
    "isolate ?isolate isolate",
    "wait|hold ?read",
    "place make|place release|undo|restore ?release|undo",
    // It stops only if the pressure creeps up.
    "prove|read|test ?wait|hold ?read ?hold ?finish",
    "release ?undo|restore ?undo|restore",
    "undo ?undo remove|undo|aside",
    "undo aside ?remove",
    // A way of doing it, not a nut that is undone.
    "?hold",
    "slacken|undo ?release",
    "undo ?hold|place ?ask|tell",
    // The bucket stands there already.
    "remove aside ?release",
    "discard ?remove",
    "clean inspect",
    "undo clean fit|make ?remove ?make|fit ?make|fit",
    // Nothing is fitted yet.
    "inspect|read ?inspect|read",
    "fit make|tighten",
    "fit|make ?make|fit",
    // To run on and to tighten is to make with a torque.
    "make tighten|make ?tighten",
    "isolate|make charge release|purge ?isolate|make ?restore|make",
    // The lock comes off.
    "restore restore ?take|undo|remove ?take|undo|remove ?charge",
    "wait|hold test|inspect ?test|inspect ?tighten",
    "fit fit|make restore|start ?fit|make ?take|undo|remove",
    "wait|start|test read take ?wait ?record",
];

const INLET_GROUP: &[&str] = &[
    "ask tell",
    "read|test",
    // The heaters are off, and so are both switches.
    "isolate|shutdown ?isolate|shutdown ?isolate|shutdown",
    // They cannot be locked.
    "remove|undo|isolate ?remove|undo|isolate ?aside ?aside",
    // The boiler stays on and the store is not started.
    "set",
    "prove ?test",
    // A tap that runs starts nothing.
    "release|wait ?wait|read|release ?restore|undo",
    // The label is hung on it.
    "isolate ?lock|place",
    "release|undo|restore ?release|undo",
    // Not the whole store.
    "release ?place ?undo|restore",
    "wait",
    "place",
    "slacken|undo|set ?record",
    "undo ?hold",
    "aside aside aside ?remove ?remove ?remove",
    "remove",
    "?remove|undo",
    // The group is replaced only if its seat is worn.
    "inspect ?fit ?remove",
    "clean|purge isolate ?restore|undo|release ?wait",
    // No word for grease, and no cartridge is fitted yet.
    "?clean",
    "fit fit|make fit|make fit|make",
    "tighten|make",
    // Where it sits.
    "",
    "undo ?hold ?aside|undo|remove",
    "record|inspect|read remove|undo",
    // The new O-ring may be said with the valve.
    "fit|make ?fit|make",
    "make ?tighten ?fit|make",
    "isolate|make restore isolate|make ?release|purge|charge ?wait",
    "set read|test ?test|inspect|read ?wait",
    "clean test|inspect fit|make|restore restore|start set take take ?clean ?fit|make|restore ?restore",
];

const FAN_COIL: &[&str] = &[
    // What it is all about.
    "?fit ?fit ?remove ?remove",
    "tell remove",
    "shutdown wait",
    "isolate lock ?place|aside",
    "prove ?read",
    // The screwdriver is not used.
    "release ?tell",
    "",
    "isolate",
    "place place",
    // Before anything is undone.
    "release|clean",
    // Seven, not eight.
    "undo",
    "remove aside",
    // The picture is not taken away and no wire is undone.
    "photograph",
    // The grey one stays.
    "undo",
    "undo place ?undo ?undo ?undo",
    "undo|remove undo|remove ?hold",
    "undo remove",
    "remove discard",
    // The weight is not taken away.
    "undo ?hold|place ?ask|tell",
    "remove aside ?remove ?aside",
    // It stays in.
    "slacken",
    "remove ?wait",
    "clean inspect",
    // Nothing is fitted yet.
    "inspect|read ?inspect ?aside|discard",
    "fit tighten|make",
    "fit tighten|make test|inspect|start ?make|fit",
    "clean fit|make make|fit ?make|fit",
    "fit make|tighten|fit make|fit take|remove|undo make ?make|fit ?make|fit ?make|fit",
    // The lock comes off.
    "restore restore charge test|read|inspect|start ?take|undo|remove ?read",
    "start|test read fit take take ?record ?make|tighten",
];

const WARM_AIR: &[&str] = &[
    "set wait",
    "isolate|shutdown lock ?isolate ?place",
    "prove",
    "isolate remove|undo aside",
    // It is not burnt off.
    "release ?undo|slacken",
    "make|place|fit prove|read|test wait|hold ?hold ?finish",
    "undo remove aside",
    "photograph",
    "undo|remove ?undo|remove",
    // A bare mains plug may as well be that of the wall.
    "undo|remove|isolate ?undo|remove",
    "undo remove",
    // Nothing is fitted yet.
    "inspect|read ?inspect|read ?tell|ask",
    "remove ?undo",
    "undo|remove",
    "clean",
    "read|set|inspect ?inspect|read",
    // The tube stays on.
    "",
    "fit|make ?fit|make",
    "discard ?aside",
    "clean",
    "fit tighten|make make make",
    "make make ?read|inspect|set|test ?make",
    "take|undo|remove tighten|make|isolate ?tighten|make|isolate",
    // The cock stays shut.
    "fit|make",
    // A lockout is no lock, and the gas stays off.
    "restore start|test ?test|read|inspect ?read|inspect ?take|undo|remove",
    "wait restore ?set|start",
    "test",
    "start read",
    // The valve drops out and stays in place.
    "remove|undo test|read fit|make ?start",
    "fit set record|read ?record ?make|tighten",
];
