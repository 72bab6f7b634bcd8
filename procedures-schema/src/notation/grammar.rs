//! The grammar: for each verb its written token, what it acts on, and the details that it takes.
//!
//! The order of the details is the order in which they are printed; on reading any order is accepted.
//! A detail that is not in a verb's line is refused on reading.

use super::detail::Detail;
use crate::model::ThingKind::{
    self, Circuit, Component, Connection, Isolator, Seal, Section, Setting, Temporary,
};
use crate::model::Verb;

/// What a verb acts on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Things {
    /// The kinds of things; whether an id names one of them is for others to judge.
    pub kinds: &'static [ThingKind],
    /// The smallest number of them.
    pub least: usize,
    /// The largest number of them.
    pub most: usize,
}

/// How a detail is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Form {
    /// The first word after the verb; must be there.
    First,
    /// A bare figure.
    Figure,
    /// One of these plain words; any other value is written with its key.
    Word(&'static [&'static str]),
    /// `key=value`.
    Key,
}

/// A detail that a verb takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Slot {
    /// The detail.
    pub detail: Detail,
    /// The key under which it is written where a key is needed.
    pub key: &'static str,
    /// Other keys under which it is read.
    pub also: &'static [&'static str],
    /// How it is written.
    pub form: Form,
}

impl Slot {
    /// Whether this key names the detail.
    pub fn is_called(&self, key: &str) -> bool {
        self.key == key || self.also.contains(&key)
    }
}

/// The line of the grammar for one verb.
#[derive(Debug)]
pub struct Entry {
    /// The verb.
    pub verb: Verb,
    /// How it is written.
    pub token: &'static str,
    /// What it acts on.
    pub things: Things,
    /// The details that it takes.
    pub slots: &'static [Slot],
}

/// The line of the grammar for this verb; none for a verb of a newer version.
pub fn entry(verb: &Verb) -> Option<&'static Entry> {
    GRAMMAR.iter().find(|entry| entry.verb == *verb)
}

const fn key(detail: Detail, key: &'static str) -> Slot {
    Slot { detail, key, also: &[], form: Form::Key }
}

const fn word(detail: Detail, key: &'static str, words: &'static [&'static str]) -> Slot {
    Slot { detail, key, also: &[], form: Form::Word(words) }
}

const fn some(kinds: &'static [ThingKind]) -> Things {
    Things { kinds, least: 1, most: usize::MAX }
}

const fn any(kinds: &'static [ThingKind]) -> Things {
    Things { kinds, least: 0, most: usize::MAX }
}

const NOTHING: Things = Things { kinds: &[], least: 0, most: 0 };
const ISOLATORS: Things = some(&[Isolator]);
const SECTIONS: Things = some(&[Section, Circuit]);
const CONNECTIONS: Things = some(&[Connection]);
const COMPONENTS: Things = some(&[Component]);
const TEMPORARY: Things = some(&[Temporary]);
const SETTINGS: Things = some(&[Setting]);
const FACES: Things = some(&[Component, Connection, Seal]);
const COVERED: Things = any(&[Connection, Component, Section, Circuit, Isolator, Setting, Temporary]);
const EVERYTHING: Things =
    any(&[Component, Connection, Isolator, Section, Circuit, Seal, Setting, Temporary]);

const COUNT: Slot = Slot { detail: Detail::Count, key: "n", also: &[], form: Form::Figure };
const TEST: Slot = Slot { detail: Detail::Test, key: "kind", also: &[], form: Form::First };
const QUESTION: Slot = Slot { detail: Detail::Ask, key: "ask", also: &[], form: Form::First };
const MINUTES: Slot = Slot { detail: Detail::Duration, key: "for", also: &[], form: Form::Figure };
const SEAL: Slot = key(Detail::Seal, "seal");
const TORQUE: Slot = key(Detail::Torque, "torque");
const PATTERN: Slot = key(Detail::Pattern, "pattern");
const WHAT: Slot = key(Detail::What, "what");
const MEANS: Slot = key(Detail::By, "by");
// Cutting, soldering, brazing: the method of *undo* and *make* shares the field of the medium.
const METHOD: Slot = key(Detail::With, "by");
const THROUGH: Slot = key(Detail::Through, "through");
const VENT: Slot = key(Detail::Vent, "vent");
const AT: Slot = Slot { detail: Detail::At, key: "at", also: &["on"], form: Form::Key };
const WITH: Slot = key(Detail::With, "with");
const TO: Slot = key(Detail::To, "to");
const MODE: Slot = key(Detail::Mode, "mode");
const RATE: Slot = word(Detail::Mode, "mode", &["max", "min", "heat", "hot-water", "cool", "load"]);
const ENDING: Slot = word(Detail::Mode, "mode", &["in-service", "safe", "left-safe"]);
const PART: Slot = word(Detail::Part, "part", &["new", "same"]);
const MOST: Slot = key(Detail::AtMost, "most");
const BEFORE: Slot = key(Detail::Until, "before");
const ONE_OF: Slot = key(Detail::OneOf, "one-of");
const WITH_NEW: Slot = key(Detail::WithNew, "with-new");
const UNATTENDED: Slot = word(Detail::Unattended, "unattended", &["unattended"]);
const TEMPERATURE: Slot = key(Detail::Temperature, "temp");
const SOAK: Slot = key(Detail::Duration, "for");
const LIVE: Slot = key(Detail::Live, "live");
const CRITERION: Slot = key(Detail::Criterion, "criterion");
const ANSWERS: Slot = key(Detail::Ask, "ask");
const WHO: Slot = key(Detail::Text, "who");
const OF: Slot = key(Detail::Text, "of");
const REASON: Slot = key(Detail::Reason, "reason");
const TEXT: Slot = key(Detail::Text, "text");
const READING: Slot = key(Detail::Readings, "reading");

const fn line(verb: Verb, token: &'static str, things: Things, slots: &'static [Slot]) -> Entry {
    Entry { verb, token, things, slots }
}

/// Every verb, in the order of the model.
pub static GRAMMAR: &[Entry] = &[
    line(Verb::Start, "start", NOTHING, &[RATE]),
    line(Verb::ShutDown, "shutdown", NOTHING, &[]),
    line(Verb::Finish, "finish", NOTHING, &[ENDING]),
    line(Verb::Isolate, "isolate", ISOLATORS, &[]),
    line(Verb::Lock, "lock", ISOLATORS, &[]),
    line(Verb::Restore, "restore", ISOLATORS, &[LIVE]),
    line(Verb::Release, "release", SECTIONS, &[WHAT, MEANS, THROUGH, VENT, TEMPERATURE, TO, READING]),
    line(Verb::Prove, "prove", SECTIONS, &[AT, LIVE, READING]),
    line(Verb::Charge, "charge", SECTIONS, &[WITH, THROUGH, TO, LIVE, READING]),
    line(Verb::Purge, "purge", SECTIONS, &[WITH, THROUGH, TO, LIVE, READING]),
    line(Verb::Test, "test", COVERED, &[TEST, AT, MODE, LIVE, READING]),
    line(Verb::Slacken, "slacken", CONNECTIONS, &[COUNT, PATTERN, LIVE]),
    line(Verb::Undo, "undo", CONNECTIONS, &[COUNT, METHOD, ONE_OF, LIVE]),
    line(Verb::Make, "make", CONNECTIONS, &[COUNT, TO, SEAL, TORQUE, PATTERN, METHOD, LIVE]),
    line(Verb::Tighten, "tighten", CONNECTIONS, &[COUNT, TORQUE, PATTERN, LIVE]),
    line(Verb::Remove, "remove", COMPONENTS, &[REASON]),
    line(Verb::MoveAside, "aside", COMPONENTS, &[]),
    line(Verb::Fit, "fit", COMPONENTS, &[PART, WITH_NEW]),
    line(Verb::Discard, "discard", COMPONENTS, &[REASON]),
    line(Verb::Clean, "clean", FACES, &[WITH, SOAK, MOST]),
    line(Verb::Inspect, "inspect", FACES, &[CRITERION, ANSWERS, READING]),
    line(Verb::Place, "place", TEMPORARY, &[LIVE]),
    line(Verb::TakeAway, "take", TEMPORARY, &[LIVE]),
    line(Verb::RecordSetting, "record", SETTINGS, &[READING]),
    line(Verb::Set, "set", SETTINGS, &[TO]),
    line(Verb::Read, "read", EVERYTHING, &[AT, LIVE, READING]),
    line(Verb::Wait, "wait", NOTHING, &[MINUTES, MOST, BEFORE, UNATTENDED]),
    line(Verb::Photograph, "photograph", EVERYTHING, &[OF]),
    line(Verb::Tell, "tell", NOTHING, &[WHO]),
    line(Verb::Hold, "hold", NOTHING, &[WHO, CRITERION]),
    line(Verb::Ask, "ask", NOTHING, &[QUESTION, TEXT]),
];
