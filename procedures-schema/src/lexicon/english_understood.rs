//! English: verbs that are understood where words leave them out: "cover on", "isolator off", "both valves shut".
//!
//! What is understood follows from the sort of thing and from the word behind it. A sort that is not here says
//! nothing without a verb.

use super::word_set::WordSet;

/// A sort of things and what is done to one that is said to be "off", "on" and so on.
pub(super) struct Sort {
    /// Its nouns, in the singular.
    pub(super) nouns: &'static [&'static str],
    /// How they come to be, and the verb that is understood.
    pub(super) states: &'static [(&'static [&'static str], &'static str)],
    /// Whether a place may follow: "tray under the burner", "six screws back in the cover".
    pub(super) has_place: bool,
    /// Whether it is only there for the job, so that it is put where it is said to be.
    pub(super) is_for_the_job: bool,
}

/// The sorts.
pub(super) static SORTS: &[Sort] = &[
    Sort {
        nouns: &["breaker", "disconnector", "dp", "isolator", "mcb", "rcbo", "rcd", "spur", "switch"],
        states: &[
            (&["on"], "restore"),
            (&["down", "off"], "isolate"),
            (&["up"], "put"),
            (&["closed", "shut"], "shut"),
            (&["open"], "open"),
        ],
        has_place: false,
        is_for_the_job: false,
    },
    Sort {
        nouns: &["cock", "flow", "return", "stopcock", "tap"],
        states: &[
            (&["off"], "isolate"),
            (&["on"], "restore"),
            (&["closed", "shut"], "shut"),
            (&["open"], "open"),
        ],
        has_place: false,
        is_for_the_job: false,
    },
    Sort {
        nouns: &["valve"],
        states: &[
            (&["off"], "isolate"),
            (&["on"], "restore"),
            (&["closed", "shut"], "shut"),
            (&["open"], "open"),
            (&["out"], "take"),
            (&["in"], "put"),
        ],
        has_place: false,
        is_for_the_job: false,
    },
    Sort {
        nouns: &["electric", "gas", "mains", "oil", "power", "steam", "supply", "water"],
        states: &[(&["off", "on"], "turn")],
        has_place: false,
        is_for_the_job: false,
    },
    Sort {
        nouns: &["appliance", "boiler", "heating", "programmer", "system", "unit"],
        states: &[(&["off", "on"], "switch")],
        has_place: false,
        is_for_the_job: false,
    },
    Sort {
        nouns: &["immersion"],
        states: &[(&["off", "on"], "switch"), (&["out"], "take"), (&["in"], "put")],
        has_place: false,
        is_for_the_job: false,
    },
    Sort {
        // They are switched as well, so that "off" may be either.
        nouns: &[
            "blower",
            "compressor",
            "condenser",
            "controller",
            "display",
            "evaporator",
            "heater",
            "igniter",
            "meter",
            "module",
            "regulator",
            "transducer",
            "transformer",
            "transmitter",
        ],
        states: &[(&["out"], "take"), (&["in"], "put")],
        has_place: false,
        is_for_the_job: false,
    },
    Sort {
        nouns: &["fuse"],
        states: &[(&["out"], "take"), (&["in"], "insert")],
        has_place: false,
        is_for_the_job: false,
    },
    Sort {
        nouns: &["hasp", "lock", "padlock"],
        states: &[(&["off"], "take"), (&["on"], "put")],
        has_place: true,
        is_for_the_job: true,
    },
    Sort {
        nouns: &[
            "blank",
            "basin",
            "bucket",
            "bung",
            "cap",
            "cloth",
            "gauge",
            "hose",
            "manometer",
            "mat",
            "notice",
            "rag",
            "sheet",
            "tag",
            "tray",
        ],
        states: &[(&["off", "out"], "take"), (&["down", "in", "on", "under"], "put")],
        has_place: true,
        is_for_the_job: true,
    },
    Sort {
        nouns: &["bolt", "catch", "clamp", "clip", "latch", "nut", "pin", "screw", "strap", "stud", "union"],
        states: &[(&["off", "out"], "take"), (&["in", "on"], "put"), (&["loose", "slack"], "slacken")],
        has_place: true,
        is_for_the_job: false,
    },
    Sort {
        nouns: &["lid"],
        // Up is open, wherever it was.
        states: &[(&["off", "out"], "take"), (&["in", "on"], "put"), (&["up"], "open"), (&["down"], "close")],
        has_place: false,
        is_for_the_job: false,
    },
    Sort {
        nouns: &["bowl", "siphon", "trap"],
        states: &[(&["down", "off", "out"], "take"), (&["in", "on", "up"], "put")],
        has_place: false,
        is_for_the_job: false,
    },
    Sort {
        nouns: &["cable", "connector", "lead", "pipe", "plug", "spade", "tube", "wire"],
        states: &[(&["off", "out"], "take"), (&["in", "on"], "put")],
        has_place: true,
        is_for_the_job: false,
    },
    Sort {
        nouns: &[
            "actuator",
            "anode",
            "assembly",
            "baffle",
            "basket",
            "belt",
            "board",
            "burner",
            "capacitor",
            "cartridge",
            "case",
            "casing",
            "coil",
            "cover",
            "damper",
            "door",
            "drawer",
            "duct",
            "elbow",
            "electrode",
            "element",
            "exchanger",
            "fan",
            "filter",
            "flue",
            "front",
            "gearbox",
            "grille",
            "guard",
            "hatch",
            "head",
            "hood",
            "impeller",
            "injector",
            "insulation",
            "jacket",
            "magnet",
            "motor",
            "nozzle",
            "panel",
            "pcb",
            "photocell",
            "plate",
            "pump",
            "rotor",
            "sensor",
            "shell",
            "silencer",
            "strainer",
            "thermistor",
            "thermocouple",
            "thermostat",
            "turret",
            "venturi",
            "vessel",
        ],
        states: &[(&["off", "out"], "take"), (&["in", "on", "up"], "put")],
        has_place: false,
        is_for_the_job: false,
    },
];

/// What may stand between the noun and how it is to be: "spur *back* on", "both valves *round to* off".
pub(super) static BETWEEN: WordSet = WordSet::of(&["back", "fully", "right", "round", "straight", "to"]);

/// How things come to be, and "back" by itself.
pub(super) static STATES: WordSet = WordSet::of(&[
    "back", "closed", "down", "in", "loose", "off", "on", "open", "out", "shut", "slack", "under", "up",
]);

/// What may follow without a comma: how it is done, how far, till when.
pub(super) static BEHIND: WordSet = WordSet::of(&[
    "a", "again", "and", "at", "by", "finger", "first", "for", "from", "half", "hand", "last", "on", "one",
    "onto", "quarter", "same", "till", "until", "with",
]);

/// What may follow where a thing is put or taken from: "hose off *the* pump".
pub(super) static PLACES: WordSet = WordSet::of(&["it", "its", "the", "their", "them", "your"]);

/// Words that say where a thing is: "both valves *on* the pump off".
pub(super) static WHERE: WordSet = WordSet::of(&["at", "in", "of", "on", "to", "under"]);

/// What stands before an order and belongs to none.
pub(super) static LEAD_INS: WordSet =
    WordSet::of(&["also", "finally", "first", "last", "next", "now", "plus", "so", "then"]);

/// What no name holds that stands without a verb.
pub(super) static NO_NAMES: WordSet = WordSet::of(&[
    "after", "are", "as", "because", "before", "but", "can", "comes", "goes", "has", "have", "he", "i", "if",
    "is", "it", "keep", "leave", "may", "must", "never", "no", "not", "once", "she", "should", "stays",
    "that", "there", "they", "this", "till", "unless", "until", "was", "we", "were", "what", "when", "where",
    "whether", "which", "while", "will", "with", "without", "you",
]);

/// What a name may begin with and not hold further on.
pub(super) static ARTICLES: WordSet = WordSet::of(&["a", "an", "its", "the", "their", "your"]);
