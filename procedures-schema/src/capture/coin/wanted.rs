//! Which kind of thing a verb asks for, given the noun behind it.

use super::super::clause::Clause;
use super::circuits::named_kind;
use super::nouns::{Noun, noun, opens};
use super::phrase::{Lead, Phrase};
use crate::model::{Handle, Port, ThingKind, Verb};

/// What kind of thing a phrase would be if it were new.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Wanted {
    /// An isolator.
    Isolator(Handle),
    /// A joint that is opened to let something in or out.
    Port(Port),
    /// A joint.
    Joint,
    /// A fixing.
    Fixing,
    /// A plug or lead; whether it carries mains as far as the words say.
    Connector(bool),
    /// The plug of a component: "unplug the fan".
    PlugOf,
    /// The clip of a component: "unclip the sensor".
    ClipOf,
    /// The thread by which a part is screwed in: "unscrew the safety valve".
    ThreadOf,
    /// A component.
    Component,
    /// A temporary item.
    Temporary,
    /// A setting.
    Setting,
}

impl Wanted {
    /// The kinds of known things that the phrase may name instead.
    pub(super) fn known_as(&self, clause: &Clause) -> Vec<ThingKind> {
        let says = |verbs: &[Verb]| verbs.iter().any(|verb| clause.means.contains(verb));
        let mut kinds = match self {
            Self::Isolator(_) => vec![ThingKind::Isolator],
            Self::Port(_)
            | Self::Joint
            | Self::Fixing
            | Self::Connector(_)
            | Self::PlugOf
            | Self::ClipOf
            | Self::ThreadOf => {
                vec![ThingKind::Connection]
            }
            Self::Component => vec![ThingKind::Component],
            Self::Temporary => vec![ThingKind::Temporary],
            Self::Setting => vec![ThingKind::Setting],
        };
        if says(&[Verb::Undo, Verb::Slacken, Verb::Make, Verb::Tighten, Verb::Inspect, Verb::Clean]) {
            kinds.push(ThingKind::Connection);
        }
        if says(&[Verb::Isolate, Verb::Restore]) && !matches!(self, Self::Component) {
            kinds.push(ThingKind::Isolator);
        }
        // "Sniff for oil at the tap": what shuts off is a place as well.
        if matches!(self, Self::Port(_)) && clause.means == [Verb::Test] {
            kinds.push(ThingKind::Isolator);
        }
        if says(&[Verb::Place, Verb::TakeAway]) {
            kinds.push(ThingKind::Temporary);
        }
        if says(&[Verb::Remove, Verb::Fit, Verb::MoveAside]) && !matches!(self, Self::Isolator(_)) {
            kinds.push(ThingKind::Component);
        }
        kinds
    }
}

/// What a clause asks of its verb.
pub(super) struct Asked<'c> {
    clause: &'c Clause,
    /// The verb as it is written.
    stem: &'c str,
    /// Whether what is pulled is kept: "pull the plug and keep it in your pocket".
    is_kept: bool,
}

impl<'c> Asked<'c> {
    pub(super) fn new(clause: &'c Clause, stem: &'c str, is_kept: bool) -> Self {
        Self { clause, stem, is_kept }
    }

    fn says(&self, verbs: &[Verb]) -> bool {
        verbs.iter().any(|verb| self.clause.means.contains(verb))
    }

    /// Whether it says that something is shut off or comes back.
    pub(super) fn isolates(&self) -> bool {
        self.says(&[Verb::Isolate, Verb::Lock, Verb::Restore])
    }

    fn undoes(&self) -> bool {
        // What is renewed is a part, even if it joins or holds.
        let renews = ["renew", "chang", "exchang", "swap"].iter().any(|begin| self.stem.starts_with(begin));
        !renews && self.says(&[Verb::Undo, Verb::Slacken, Verb::Make, Verb::Tighten])
    }

    fn moves(&self) -> bool {
        self.says(&[Verb::Remove, Verb::MoveAside, Verb::Fit, Verb::Discard])
    }

    /// Whether it says that something comes off or goes on.
    pub(super) fn takes_off_or_fits(&self) -> bool {
        self.says(&[Verb::Remove, Verb::MoveAside, Verb::Fit])
    }

    fn places(&self) -> bool {
        self.says(&[Verb::Place, Verb::TakeAway])
    }

    fn takes_away(&self) -> bool {
        self.says(&[Verb::TakeAway, Verb::Remove]) && !self.says(&[Verb::Place])
    }

    fn looks(&self) -> bool {
        self.clause.means.first() == Some(&Verb::Clean) || self.clause.means == [Verb::Inspect]
    }

    fn sets(&self) -> bool {
        self.says(&[Verb::RecordSetting, Verb::Set])
    }

    fn lets_through(&self) -> bool {
        self.says(&[Verb::Release, Verb::Prove, Verb::Charge, Verb::Purge])
    }

    /// "Unclip", "clip … back": about the clip of what is named.
    fn clips(&self) -> bool {
        self.undoes() && self.stem.trim_start_matches("un").starts_with("clip")
    }

    /// "Unscrew", "slacken", "tighten": about the thread of what is screwed in.
    pub(super) fn screws(&self) -> bool {
        let turns = ["screw", "unscrew", "undo", "slacken", "loosen", "tighten", "crack"];
        self.undoes() && turns.iter().any(|begin| self.stem.starts_with(begin))
    }

    /// Whether the verb is one that opens or shuts whatever it is said of.
    fn is_open_or_shut(&self) -> bool {
        self.says(&[Verb::Isolate, Verb::Restore]) && self.moves()
    }

    /// What a phrase of the clause would be.
    pub(super) fn wanted(&self, phrase: &Phrase) -> Option<Wanted> {
        let direct = phrase.lead == Lead::Direct;
        let stem = phrase.stem();
        // "Shut the flow and return."
        if direct && self.isolates() && matches!(&*phrase.head_word(), "flow" | "return") {
            return Some(Wanted::Isolator(Handle::Valve));
        }
        // "Shut the cold water inlet": what shuts it.
        let says_medium = || named_kind(&phrase.words, true).is_some();
        if direct
            && self.isolates()
            && matches!(&*phrase.head_word(), "inlet" | "main" | "outlet")
            && phrase.words.len() > 1
            && says_medium()
        {
            return Some(Wanted::Isolator(Handle::Valve));
        }
        match noun(&stem) {
            Noun::Isolator(handle) => self.isolator(phrase, handle),
            Noun::Port(port) => self.port(phrase, port),
            Noun::Connector(mains) => self.connector(phrase, mains),
            // A pipe or a bracket comes off as a whole; a union or a screw is undone.
            Noun::Joint | Noun::Fixing if direct && self.moves() && is_whole(&phrase.head_word()) => {
                Some(Wanted::Component)
            }
            Noun::Joint | Noun::Fixing if direct && self.looks() && phrase.head_word() == "clamp" => {
                Some(Wanted::Component)
            }
            Noun::Joint if self.undoes() && direct => Some(Wanted::Joint),
            Noun::Joint if self.says(&[Verb::Prove]) && phrase.head_word() == "terminal" => {
                Some(Wanted::Joint)
            }
            Noun::Fixing if self.undoes() && direct => Some(Wanted::Fixing),
            // "Lay it aside together with its screws."
            Noun::Fixing if self.clause.means == [Verb::MoveAside] => None,
            Noun::Joint | Noun::Fixing if direct && self.moves() => Some(Wanted::Component),
            Noun::Temporary => self.temporary(phrase),
            // "Trim the air."
            Noun::Nothing if self.stem.starts_with("trim") && direct && phrase.head_word() == "air" => {
                Some(Wanted::Setting)
            }
            // Where wires sit is no value that somebody sets.
            Noun::Setting if phrase.head_word() == "position" && phrase.plural() => None,
            Noun::Setting if self.sets() && (direct || phrase.head_word() == "setting") => {
                Some(Wanted::Setting)
            }
            Noun::Part | Noun::Unknown | Noun::Side => self.part(phrase, &noun(&stem)),
            _ => None,
        }
    }

    fn isolator(&self, phrase: &Phrase, handle: Handle) -> Option<Wanted> {
        let direct = phrase.lead == Lead::Direct;
        // "Unplug the gas valve": its plug, and nothing is shut.
        if direct && self.stem.starts_with("unplug") && !matches!(handle, Handle::Plug) {
            return Some(Wanted::PlugOf);
        }
        // "Valve on": it may as well be a part that is put back.
        let is_bare = phrase.start == phrase.from && phrase.words == ["valve"];
        if is_bare && self.says(&[Verb::Restore]) && !self.says(&[Verb::Isolate]) {
            return None;
        }
        if self.isolates() && (direct || phrase.is_after(&["at", "by", "from", "on", "via", "with"])) {
            return Some(Wanted::Isolator(handle));
        }
        self.part(phrase, &Noun::Part)
    }

    fn port(&self, phrase: &Phrase, port: Port) -> Option<Wanted> {
        let direct = phrase.lead == Lead::Direct;
        let through =
            phrase.is_after(&["at", "by", "from", "on", "onto", "through", "to", "via", "with", "in"]);
        let opened = direct && (self.undoes() || self.says(&[Verb::Restore]));
        let taken_at = phrase.is_after(&["at", "through"]) && self.says(&[Verb::Test]);
        let passed =
            taken_at || (through || direct) && (self.lets_through() || self.clause.means == [Verb::Test]);
        let carries = phrase.is_after(&["at", "into", "on", "onto", "to"]) && self.places();
        (opened || passed || carries).then_some(Wanted::Port(port))
    }

    fn connector(&self, phrase: &Phrase, mains: bool) -> Option<Wanted> {
        if phrase.lead != Lead::Direct
            && !(phrase.is_after(&["from", "at"]) && phrase.head_word() == "socket")
        {
            return None;
        }
        let before = phrase.words.split_last().map(|(_, before)| before.to_vec()).unwrap_or_default();
        // "The *supply fan* lead" is that of a fan.
        let is_of_part = noun(&before) == Noun::Part && before.last().is_some_and(|last| last != "supply");
        let of_the_wall = phrase.head_word() == "socket"
            || is_appliance(&before)
            || (self.is_kept && phrase.words.len() == 1)
            || phrase.words.iter().any(|word| matches!(word.as_str(), "mains" | "wall"))
            || (phrase.words.iter().any(|word| word == "supply") && !is_of_part);
        if of_the_wall && self.says(&[Verb::Isolate, Verb::Restore]) {
            return Some(Wanted::Isolator(Handle::Plug));
        }
        (self.undoes() && phrase.lead == Lead::Direct).then_some(Wanted::Connector(mains))
    }

    fn connects(&self) -> bool {
        ["connect", "reconnect"].iter().any(|begin| self.stem.starts_with(begin))
    }

    fn temporary(&self, phrase: &Phrase) -> Option<Wanted> {
        let closes = ["cap", "blank", "plug", "bung"].contains(&phrase.head_word().as_str());
        match phrase.lead {
            Lead::Direct if self.closes_by_its_verb() && !closes => None,
            // "Connect the hoses to the new pump": those that it has.
            Lead::Direct if self.connects() && phrase.words == ["hoses"] => Some(Wanted::Joint),
            Lead::Direct if self.says(&[Verb::Place]) => Some(Wanted::Temporary),
            Lead::Direct if self.undoes() && phrase.head_word() == "hose" => Some(Wanted::Joint),
            // A cap that comes off without having been put on is the appliance's own.
            Lead::Direct if self.undoes() && closes => Some(Wanted::Joint),
            Lead::Direct if self.moves() && closes => Some(Wanted::Component),
            // What was laid or hung for the job, and by words that made no thing of it, is not made to be taken off.
            Lead::Direct if self.takes_away() && is_for_the_job(&phrase.head_word()) => None,
            Lead::Direct if self.places() => Some(Wanted::Temporary),
            // "Rag back": it was laid by words that made no thing of it.
            Lead::Direct if is_for_the_job(&phrase.head_word()) => None,
            // What is measured with is no part.
            Lead::Direct if matches!(&*phrase.head_word(), "analyser" | "gauge" | "manometer" | "probe") => {
                None
            }
            Lead::Direct if self.moves() => Some(Wanted::Component),
            Lead::After(_) if self.closes_by_its_verb() && phrase.is_after(&["with", "by"]) => {
                Some(Wanted::Temporary)
            }
            _ => None,
        }
    }

    /// Whether the verb itself names what closes: "cap the union".
    pub(super) fn closes_by_its_verb(&self) -> bool {
        let names = ["blank", "bond", "bridg", "bung", "cap", "cover", "plug", "clos", "seal"];
        self.places() && names.iter().any(|name| self.stem.starts_with(name))
    }

    fn part(&self, phrase: &Phrase, noun: &Noun) -> Option<Wanted> {
        const VESSELS: &[&str] =
            &["bowl", "exchanger", "filter", "plate", "siphon", "strainer", "sump", "trap", "tray"];
        const SET: &[&str] = &["governor", "programmer", "regulator", "stat", "thermostat", "timer"];
        let head = phrase.head_word();
        let of = phrase.is_after(&["around", "of", "round"]);
        let direct = phrase.lead == Lead::Direct;
        let is_side = *noun == Noun::Side;
        // "Flush the trap": what holds something of its own is cleaned, a main is run.
        let flushes = self.stem.starts_with("flush") && VESSELS.contains(&head.as_str());
        if (flushes || self.looks()) && (direct || of) && !is_side {
            return Some(Wanted::Component);
        }
        let plugs = self.stem.starts_with("unplug") || self.stem.starts_with("plug");
        if direct && plugs && self.isolates() && is_appliance(&phrase.stem()) {
            return Some(Wanted::Isolator(Handle::Plug));
        }
        if !direct || is_appliance(&phrase.stem()) || (is_side && phrase.words.len() < 2) {
            return None;
        }
        if plugs && self.undoes() && !is_side {
            return Some(Wanted::PlugOf);
        }
        if self.clips() && known_part(noun) {
            return Some(Wanted::ClipOf);
        }
        if self.screws() && is_screwed_in(&phrase.stem()) {
            return Some(Wanted::ThreadOf);
        }
        if self.sets() && SET.contains(&head.as_str()) {
            return Some(Wanted::Setting);
        }
        let known_noun = *noun != Noun::Unknown;
        let comes_off = if self.is_open_or_shut() {
            opens(&head)
        } else {
            self.moves() && (known_noun || !self.stem.starts_with("lower"))
        };
        comes_off.then_some(Wanted::Component)
    }
}

/// What is only there while somebody works.
fn is_for_the_job(head: &str) -> bool {
    matches!(
        head,
        "bucket" | "cloth" | "mat" | "notice" | "prop" | "rag" | "sheet" | "sign" | "sling" | "tag" | "wedge"
    )
}

fn known_part(noun: &Noun) -> bool {
    matches!(noun, Noun::Part | Noun::Unknown)
}

/// Small parts that are screwed into what carries the medium.
pub(super) fn is_screwed_in(words: &[String]) -> bool {
    let Some((head, before)) = words.split_last() else { return false };
    match head.as_str() {
        "anode" | "electrode" | "element" | "injector" | "insert" | "jet" | "nozzle" | "probe" | "sensor"
        | "strainer" | "thermostat" | "valve" => true,
        "heater" => before.iter().any(|word| word == "immersion"),
        _ => false,
    }
}

/// What comes off as a whole although it joins or holds.
pub(super) fn is_whole(head: &str) -> bool {
    matches!(
        head,
        "bracket" | "clamp" | "fitting" | "hose" | "knob" | "nipple" | "pipe" | "spigot" | "spring" | "tube"
    )
}

/// Whether words name the appliance itself, which is no component of it.
pub(in crate::capture) fn is_appliance(words: &[String]) -> bool {
    const APPLIANCES: &[&str] =
        &["appliance", "boiler", "furnace", "machine", "plant", "system", "unit", "installation", "building"];
    // "The *ignition* unit" is a part of it.
    const PARTS: &[&str] = &[
        "actuator",
        "control",
        "display",
        "drive",
        "ignition",
        "motor",
        "operating",
        "programming",
        "sensor",
        "timer",
    ];
    match words {
        [.., before, unit] if unit == "unit" => !PARTS.contains(&before.as_str()),
        words => words.last().is_some_and(|head| APPLIANCES.contains(&head.as_str())),
    }
}
