//! What a person expects of each line, from its words alone.
//!
//! A word is a verb on one thing ("isolate isolate": two isolators); `|` parts verbs that are as good, `?` stands
//! before what may be there and need not. Fasteners of one sort are one thing. `message` is a safety message.
//! What a maker's fitter would not write down as an action (hold the manifold, count the tools, pick out a
//! washer) is expected to say nothing.

/// The scripts with a line for each of theirs.
pub(super) const SCRIPTS: &[(&str, &[&str])] =
    &[("air-vent", AIR_VENT), ("heat-exchanger", HEAT_EXCHANGER), ("trap-and-fan", TRAP_AND_FAN)];

const AIR_VENT: &[&str] = &[
    // The new parts are looked at, the customer told.
    "?inspect ?inspect tell",
    "read record",
    "shutdown ?wait",
    // The key belongs to the lock.
    "isolate lock place",
    "undo remove",
    // The tester on its proving unit is part of a proof, if it is anything; never a test of the appliance.
    "undo remove ?prove",
    "prove",
    "read|prove ?prove make fit",
    "message",
    "?inspect",
    "isolate isolate place",
    "place release|undo",
    "release",
    "read|prove",
    "undo|remove read make|fit",
    "place place",
    "undo remove ?discard",
    "slacken undo|remove",
    "undo|remove ?remove",
    "clean ?clean ?clean",
    "make|fit ?tighten",
    "fit make inspect",
    "fit|make fit|make ?undo",
    // The hose and the tags.
    "make restore restore take take ?take",
    "make|place charge purge",
    "test charge undo|take ?make ?place",
    "read|test ?test",
    "take take take restore",
    "start ?wait inspect|test ?inspect ?inspect ?read",
    "fit make set ?record ?read ?tell",
];

const HEAT_EXCHANGER: &[&str] = &[
    "tell",
    "?inspect",
    "read ?record ?record ?record",
    "shutdown ?wait",
    "?shutdown isolate lock place",
    // The hooks hold it and are not undone; what is left alone is not touched.
    "undo remove",
    "?prove aside prove",
    "read|prove ?prove fit place",
    "isolate isolate ?inspect",
    // A tag on each of three valves.
    "isolate place|lock ?lock ?lock",
    "message",
    "undo|release",
    "place undo|release ?slacken|undo",
    "undo|release",
    "read|prove",
    "undo|remove|aside ?undo undo",
    "slacken|undo ?wait",
    "undo remove",
    // Seals that go in new say so where they are put in.
    "?discard",
    "clean ?inspect",
    "undo remove clean fit make",
    "?take ?remove",
    "fit make ?tighten ?inspect",
    "make|fit make ?make ?inspect ?inspect",
    "make restore purge ?make|isolate ?clean ?wait",
    // Water that comes at the vent shows that the air is out.
    "make take restore restore make|place charge ?purge tighten|make|undo undo|take ?place ?undo",
    "read|test ?test",
    "take take ?take ?inspect ?restore start|restore",
    "?start ?wait ?read ?set test",
    "fit make ?set ?record ?read finish ?discard",
];

const TRAP_AND_FAN: &[&str] = &[
    "tell place",
    "start ?wait read|test ?read make",
    "test ?read make",
    "shutdown",
    "isolate ?isolate lock place",
    "isolate lock|place",
    "undo remove ?aside",
    "?prove aside prove",
    "read|prove ?prove fit",
    "slacken|undo place release",
    "read|prove take make|tighten",
    "message",
    "?place ?undo undo|remove",
    "remove ?undo ?release ?discard",
    "place",
    "photograph undo ?undo undo",
    "undo place",
    "undo|remove ?inspect",
    "undo remove ?remove place ?discard",
    "clean ?clean inspect ?inspect",
    "clean ?inspect ?inspect",
    "take ?clean fit ?fit make",
    "take make",
    "make|fit make make ?make ?inspect",
    "take ?charge fit make|fit ?make",
    "?take restore ?wait test purge make",
    "test take restore ?restore ?start",
    "start test ?inspect fit make",
    // "After 10 minutes at full load" waits.
    "?wait read|test make ?make|fit",
    "?record ?read test finish",
];
