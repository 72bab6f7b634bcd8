//! English: the leading words, and the words by which their text falls into parts.

use super::Kind;
use crate::model::{KitList, SignalWord};

/// A leading word, what it makes of its line, and whether "!" or a dash may stand for its colon.
pub(super) type Word = (&'static str, Kind, bool);

/// The leading words; a longer one stands before one that it begins with.
pub(super) static WORDS: &[Word] = &[
    ("danger", Kind::Message(SignalWord::Danger), true),
    ("warning", Kind::Message(SignalWord::Warning), true),
    ("caution", Kind::Message(SignalWord::Caution), true),
    ("notice", Kind::Message(SignalWord::Notice), true),
    ("read", Kind::Read, false),
    ("wait", Kind::Wait, false),
    ("start", Kind::Start, false),
    ("ask", Kind::Ask, false),
    ("if yes", Kind::If("yes"), false),
    ("if no", Kind::If("no"), false),
    ("hold", Kind::Hold, false),
    ("photo", Kind::Photo, false),
    ("why", Kind::Why, false),
    ("later", Kind::Later, false),
    ("bring", Kind::Bring, false),
    ("back", Kind::Back, false),
];

/// What leads to the text for a value that is out of its limits.
pub(super) const OUT: &str = "out:";

/// What leads to the step before which a running wait must be over.
pub(super) const BEFORE: &str = "before";

/// Nouns that name the person who lifts a hold.
pub(super) const ROLES: &[&str] = &[
    "assistant",
    "boss",
    "caretaker",
    "chargehand",
    "colleague",
    "competent",
    "customer",
    "electrician",
    "engineer",
    "fitter",
    "foreman",
    "inspector",
    "keeper",
    "manager",
    "mate",
    "operator",
    "owner",
    "person",
    "plumber",
    "supervisor",
    "technician",
    "tenant",
];

/// Words before a consequence: "hot water *can* scald".
pub(super) const CAN: &[&str] = &["can", "may", "could"];

/// What something "can be" that tells what follows and not how it is: "can be *fatal*".
pub(super) const DEADLY: &[&str] = &["a", "deadly", "fatal", "injured", "killed", "lethal"];

/// What begins the consequence where no "can" does: "the water is hot*, it* scalds".
pub(super) const FOLLOWS: &[&str] = &[", it ", ", they ", ", which ", ", this "];

/// Beginnings of what to do that are no verb of the appliance.
pub(super) const ORDERS: &[&str] = &[
    "allow", "always", "avoid", "be", "beware", "check", "clear", "cover", "cut", "do", "don't", "ensure",
    "follow", "handle", "hold", "insert", "keep", "leave", "let", "lift", "lower", "make", "mind", "move",
    "never", "observe", "only", "prove", "pull", "push", "put", "replace", "repeat", "rotate", "see",
    "slide", "stand", "stay", "support", "take", "test", "touch", "turn", "use", "wear", "wipe", "work",
    "write",
];

/// Beginnings of what not to do, which may also follow a comma.
pub(super) const FORBIDDING: &[&str] = &["do not ", "don't ", "never "];

/// Words before an instruction that are no part of it.
pub(super) const LEAD_INS: &[&str] = &[
    "after",
    "afterwards",
    "again",
    "also",
    "and",
    "carefully",
    "finally",
    "first",
    "firstly",
    "gently",
    "next",
    "now",
    "please",
    "second",
    "secondly",
    "slowly",
    "that",
    "then",
    "thirdly",
];

/// Words that begin a condition; the instruction follows its comma.
pub(super) const CONDITIONS: &[&str] = &[
    "after", "as", "before", "if", "on", "once", "to", "unless", "until", "when", "while", "with", "without",
];

/// Words that make the figure after them the largest accepted one.
pub(super) const AT_MOST: &[&str] = &[
    "not more than",
    "no more than",
    "not higher than",
    "no higher than",
    "not exceeding",
    "not above",
    "not over",
    "less than",
    "at most",
    "up to",
    "maximum",
    "below",
    "under",
    "max",
    "<=",
    "\u{2264}",
    "<",
];

/// Words that make the figure after them the smallest accepted one.
pub(super) const AT_LEAST: &[&str] = &[
    "not less than",
    "no less than",
    "not lower than",
    "no lower than",
    "not below",
    "not under",
    "more than",
    "at least",
    "minimum",
    "above",
    "over",
    ">=",
    "\u{2265}",
    ">",
];

/// Words before two figures that only say that they are two.
pub(super) const TWO_ENDS: &[&str] = &["between", "from"];

/// What before or after a figure says more than a range can hold: the text stays text.
pub(super) const BEYOND: &[&str] =
    &["-", "\u{2212}", "\u{b1}", "+/-", "+", "~", "about", "approx", "roughly", "not", "no", "never", "than"];

/// What a failed value asks for when the job ends there.
pub(super) const ENDS_THE_JOB: &[&str] = &["stop", "leave safe", "left safe", "make safe", "abandon"];

/// Names that tell on which list of the kit an entry stands, the more telling ones first.
pub(super) static KIT: &[(KitList, &[&str])] = &[
    (
        KitList::Protection,
        &["glasses", "gloves", "goggles", "mask", "visor", "protector", "protectors", "boots", "overalls"],
    ),
    (
        KitList::Consumables,
        &[
            "cloth",
            "cloths",
            "compound",
            "fluid",
            "glue",
            "grease",
            "oil",
            "paper",
            "paste",
            "rag",
            "rags",
            "sealant",
            "spray",
            "tape",
            "thread-seal",
            "tissue",
            "water",
            "wipes",
        ],
    ),
    (
        KitList::Instruments,
        &[
            "analyser",
            "detector",
            "gauge",
            "manometer",
            "meter",
            "multimeter",
            "scale",
            "scales",
            "tester",
            "thermometer",
        ],
    ),
    (
        KitList::Tools,
        &[
            "bit",
            "brush",
            "bucket",
            "driver",
            "hammer",
            "hose",
            "key",
            "ladder",
            "padlock",
            "pliers",
            "screwdriver",
            "socket",
            "spanner",
            "torch",
            "tray",
            "wrench",
        ],
    ),
    (
        KitList::Spares,
        &[
            "electrode",
            "filter",
            "fuse",
            "gasket",
            "gaskets",
            "new",
            "o-ring",
            "o-rings",
            "olive",
            "olives",
            "seal",
            "seals",
            "spare",
            "washer",
            "washers",
        ],
    ),
];
