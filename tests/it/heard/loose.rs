//! Three jobs more, in the loose words of people who dictate: what a person expects of each line, written like
//! `table`.
//!
//! Written down by somebody who had seen neither the recogniser nor the other jobs, with what each line means in
//! their own words; the expectations follow those. Many lines leave verbs out or tell things beside the order.

/// The scripts in `loose/` with a line for each of theirs.
pub(super) const SCRIPTS: &[(&str, &str, &[&str])] = &[
    ("plate", include_str!("loose/plate.txt"), PLATE),
    ("oil", include_str!("loose/oil.txt"), OIL),
    ("prv", include_str!("loose/prv.txt"), PRV),
];

const PLATE: &[&str] = &[
    "shutdown wait",
    // The fuse sits in the spur: one isolator.
    "isolate ?isolate|remove lock ?lock ?place",
    "isolate place|lock",
    "undo remove",
    "undo aside",
    // That the cover comes off is not said.
    "undo ?remove prove",
    "isolate isolate isolate",
    "undo|release|restore ?release ?wait",
    "place undo|release ?undo|release",
    "read|prove",
    "message",
    "undo|remove remove ?undo",
    "undo undo",
    "undo ?discard",
    "undo|remove remove remove ?record ?read",
    "undo",
    "remove ?release",
    "?undo ?remove ?discard clean",
    "",
    "?fit ?make",
    "fit make ?tighten",
    "clean fit fit|make make|fit",
    "make make make",
    "?charge fit make|fit",
    "make|isolate restore make|isolate test|read ?wait",
    // Caps of the loop are its own.
    "restore restore charge purge|release take|undo ?place ?place",
    // The sheet was laid by a message.
    "?take fit make fit ?make inspect fit make",
    "restore ?take ?take ?take ?restore|fit restore",
    "start read|test ?read ?test",
    "",
];

const OIL: &[&str] = &[
    // How long the post-purge takes is not said.
    "set|shutdown ?set|shutdown ?wait",
    "isolate lock",
    "message",
    // The fire valve is left alone.
    "isolate place|lock",
    "undo remove",
    "undo|isolate prove",
    "wait ?place ?release|prove|read|test",
    "place place",
    "undo|slacken|release ?release make|tighten",
    "slacken|undo remove|aside ?aside",
    "photograph read|record",
    "remove|undo undo ?aside",
    "undo ?undo",
    "undo place",
    "slacken|undo remove",
    "undo remove",
    "slacken|undo remove|undo inspect",
    "remove|undo ?undo|remove ?release",
    "clean clean ?clean",
    "?inspect|read make|fit ?make ?tighten",
    "",
    "fit|make ?set ?read make|tighten",
    "fit make ?inspect|test|read",
    "fit make|tighten make make ?make",
    "?clean make fit|make",
    // The gasket goes in with the burner.
    "?undo ?make ?fit fit make|tighten",
    "place|make place|make restore make|restore restore ?take ?start",
    "start purge|release read|test ?test",
    "?wait ?start test|read ?read ?test set",
    "remove|undo ?place ?test|inspect|read fit|make wait ?set ?start take|undo take|undo place|make ?place|make fit make",
];

const PRV: &[&str] = &[
    "?inspect ?read ?inspect",
    "?shutdown isolate isolate lock lock ?place ?place",
    // How cover and lid stand, and what is done then.
    "?remove|undo ?aside prove",
    "message",
    "isolate place|lock",
    "undo|release|restore ?undo|release|restore ?release",
    "test|release|prove ?prove ?read|inspect",
    "place undo|release ?undo|release",
    "isolate isolate ?place release|undo ?release prove|read ?wait",
    "undo ?discard",
    "undo aside|remove ?undo",
    "undo undo remove",
    // On a condition, which is a question's business.
    "",
    // The olives come off on a condition too.
    "clean ?clean",
    "",
    "purge|release|restore ?restore|purge isolate ?wait",
    "",
    "fit make ?make ?make ?tighten",
    "make charge",
    // It was swung aside.
    "make|fit ?fit ?make inspect",
    // A core each, or all as one.
    "?record|read undo ?undo ?undo ?undo ?undo ?remove",
    "remove|undo undo ?remove ?release",
    "fit make|tighten make|fit",
    "?fit make ?make ?make ?make ?make ?test|inspect",
    "test|read ?read ?test",
    "make|isolate take|undo restore make|isolate ?make|isolate ?purge",
    "wait test|read ?read ?test ?inspect",
    "charge purge|release make|isolate restore restore fit fit restore ?restore ?take ?take ?start",
    "start ?wait read|test ?read ?test ?inspect",
    "test|release ?inspect ?record ?read",
];
