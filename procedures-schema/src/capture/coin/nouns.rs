//! Noun tables: what the last word of a name, and the words before it, say about the kind of a thing.

use super::noun_words::{
    CONNECTORS, ELECTRICAL, FIXINGS, JOINTS, LOW_VOLTAGE, NO_OUTLETS, NOT_BY_HAND, NOTHINGS, PARTS, SEALS,
    SENSING, SETTINGS, SIDES, SWITCHES, TEMPORARY, VALVES,
};
use super::wanted::is_appliance;
use crate::lexicon::Amount;
use crate::model::{Handle, Port, Role};

/// What a name says that a thing is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(in crate::capture) enum Noun {
    /// Worked to shut something off.
    Isolator(Handle),
    /// Opened to drain, vent, test, sample or fill.
    Port(Port),
    /// Carries a medium, or as terminals mains current.
    Joint,
    /// Only holds.
    Fixing,
    /// Electrical plug or lead; `bool`: whether it carries mains as far as the words say.
    Connector(bool),
    /// Placed for the job and taken away again.
    Temporary,
    /// A seal; it belongs to a joint and is never a thing that comes off by itself.
    Seal,
    /// A value that is set.
    Setting,
    /// A part that is known by its name to come off or go on.
    Part,
    /// A side of a part: its face, its inside.
    Side,
    /// No thing of an appliance: people, dirt, care.
    Nothing,
    /// A word of which nothing is known.
    Unknown,
}

impl Noun {
    /// Whether it is a thing of an appliance that hands work on: opened, undone, taken off or looked at.
    pub(in crate::capture) fn is_worked_on(&self) -> bool {
        matches!(
            self,
            Self::Connector(_) | Self::Fixing | Self::Isolator(_) | Self::Joint | Self::Part | Self::Port(_)
        )
    }
}

/// "Pressure", and "high-pressure" as well.
fn is_not_by_hand(word: &str) -> bool {
    NOT_BY_HAND.contains(&word) || word.rsplit_once('-').is_some_and(|(_, last)| NOT_BY_HAND.contains(&last))
}

/// Whether a word is the mark of a valve on a drawing.
pub(super) fn is_numbered_valve(word: &str) -> bool {
    let digits = word.strip_prefix('v').unwrap_or_default();
    (1..=2).contains(&digits.len()) && digits.bytes().all(|b| b.is_ascii_digit())
}

/// What the words of a name say; in lower case, the last one in the singular.
pub(in crate::capture) fn noun(words: &[String]) -> Noun {
    let Some((head, before)) = words.split_last() else { return Noun::Nothing };
    let head = head.as_str();
    let last = before.last().map_or("", String::as_str);
    let said = |list: &[&str]| before.iter().any(|word| list.contains(&word.as_str()));
    if matches!(head, "bleeder" | "vent") && said(&["auto", "automatic"]) {
        // Nobody opens or shuts it.
        return Noun::Part;
    }
    if let Some(port) = port(before, head) {
        return Noun::Port(port);
    }
    match head {
        // "V1", as drawings number them.
        _ if is_numbered_valve(head) => Noun::Isolator(Handle::Valve),
        _ if VALVES.contains(&head) || SWITCHES.contains(&head) => {
            let is_of_flow = last == "flow" && (VALVES.contains(&head) || head == "isolator");
            if is_not_by_hand(last) && head != "isolator" && !is_of_flow && !said(&["emergency"]) {
                return Noun::Part;
            }
            Noun::Isolator(handle(before, head))
        }
        "tap" => Noun::Isolator(Handle::Valve),
        "fuse" => Noun::Isolator(Handle::Fuse),
        "tube" if said(SENSING) || said(&["pressure", "air"]) => Noun::Connector(false),
        "hose" | "tube" if said(SENSING) => Noun::Connector(false),
        "tube" if said(&["blast", "burner", "flame"]) => Noun::Part,
        "lamp" if said(&["hand", "inspection", "work"]) => Noun::Temporary,
        "hose" if before.is_empty() || said(&["drain", "test", "filling", "gauge", "manometer", "purge"]) => {
            Noun::Temporary
        }
        "tube" => Noun::Joint,
        "nut" => {
            let joins = ["compression", "coupling", "discharge", "gland", "pipe", "union", "flare", "tail"];
            if said(&joins) { Noun::Joint } else { Noun::Fixing }
        }
        "bowl" if said(&["filter", "siphon", "strainer", "trap"]) => Noun::Part,
        "plug" if said(&["blank", "blanking", "pipe", "test"]) => Noun::Temporary,
        "probe" if said(&["analyser", "thermometer"]) => Noun::Temporary,
        "plug" if said(&["basin", "bath", "sink", "waste"]) => Noun::Nothing,
        "ring" if !said(&["o", "sealing"]) => Noun::Part,
        "plate" if said(&["rating", "data"]) => Noun::Nothing,
        "cap" if said(&["transit", "transport", "shipping"]) => Noun::Nothing,
        "loop" if said(&["fill", "filling"]) => Noun::Temporary,
        "cap" if said(&["dust"]) => Noun::Part,
        // It covers terminals and carries nothing.
        "cap" if said(ELECTRICAL) && !said(&["blank", "blanking", "relief", "test", "vent"]) => Noun::Part,
        "head" if said(&["button", "cheese", "countersunk", "hex", "pan", "socket"]) => Noun::Fixing,
        "cap" | "clamp" | "cover" | "device" | "hasp" | "kit"
            if said(&["locking", "lock", "lock-off", "lockout"]) =>
        {
            Noun::Nothing
        }
        "brush" if said(&["carbon", "motor"]) => Noun::Part,
        "block" if said(&["choc", "chocolate", "connector"]) => Noun::Temporary,
        "basin" if before.is_empty() => Noun::Temporary,
        "unit" if !is_appliance(words) => Noun::Part,
        "seal" if said(&["case", "door"]) => Noun::Seal,
        _ if CONNECTORS.contains(&head) => Noun::Connector(!said(LOW_VOLTAGE)),
        _ if FIXINGS.contains(&head) => Noun::Fixing,
        _ if JOINTS.contains(&head) => Noun::Joint,
        _ if TEMPORARY.contains(&head) => Noun::Temporary,
        _ if SEALS.contains(&head) => Noun::Seal,
        _ if SETTINGS.contains(&head) => Noun::Setting,
        _ if PARTS.contains(&head) => Noun::Part,
        _ if SIDES.contains(&head) => Noun::Side,
        _ if NOTHINGS.contains(&head) => Noun::Nothing,
        _ => Noun::Unknown,
    }
}

/// What a port is opened for, if the words name one.
fn port(before: &[String], head: &str) -> Option<Port> {
    const WORKED: &[&str] =
        &["cock", "connection", "nipple", "outlet", "plug", "point", "port", "screw", "tap", "valve"];
    let said = |list: &[&str]| before.iter().any(|word| list.contains(&word.as_str()));
    match head {
        "drain" if !said(&["condensate", "floor"]) => Some(Port::Drain),
        "bleeder" | "vent" if !said(&["roof", "flue"]) => Some(Port::Vent),
        "tap" if !said(NO_OUTLETS) => Some(Port::Outlet),
        "tapping" => Some(Port::Test),
        "cap" | "point" | "port" if said(&["sample", "sampling"]) => Some(Port::Sample),
        _ if !WORKED.contains(&head) => None,
        _ if said(&["blow-down", "blowdown", "drain"]) => Some(Port::Drain),
        _ if said(&["bleed", "vent"]) => Some(Port::Vent),
        _ if said(&["fill", "filling"]) => Some(Port::Fill),
        "nipple" | "point" | "port" if said(&["gauge", "pressure", "test"]) => Some(Port::Test),
        _ => None,
    }
}

/// What an isolator is worked by. A gas or water isolator is a valve.
fn handle(before: &[String], head: &str) -> Handle {
    let wet = ["cold", "flow", "gas", "heating", "hot", "oil", "radiator", "return", "steam", "water"];
    let is_wet = before.iter().any(|word| wet.contains(&word.as_str()));
    if VALVES.contains(&head) || (head == "isolator" && is_wet) { Handle::Valve } else { Handle::Switch }
}

/// What a part does, where tests depend on it.
pub(super) fn role(words: &[String]) -> Option<Role> {
    let (head, before) = words.split_last()?;
    let last = before.last().map(|word| word.to_lowercase()).unwrap_or_default();
    match (last.as_str(), head.as_str()) {
        (_, "fan" | "blower") => Some(Role::Fan),
        (_, "burner") => Some(Role::Burner),
        ("gas", "valve") => Some(Role::GasValve),
        (_, "element") | ("immersion", "heater") => Some(Role::Element),
        ("relief" | "safety" | "t&p", "valve") => Some(Role::Relief),
        _ => None,
    }
}

/// The seal of a joint about which the words say nothing: a washer in a union, an olive in a compression joint, a gasket
/// in a flange.
pub(super) fn usual_seal(words: &[String]) -> Option<&'static str> {
    if words.iter().any(|word| word == "union") {
        return Some("washer");
    }
    if words.iter().any(|word| word == "compression") {
        return Some("olive");
    }
    words.last().is_some_and(|head| head == "flange").then_some("gasket")
}

/// How many a name in the plural stands for, where no amount is given: at least two.
pub(in crate::capture) fn count(amount: Option<Amount>, part: Option<Amount>, plural: bool) -> u32 {
    match (amount, part) {
        (Some(Amount::Exactly(n)), _) if n > 0 => n,
        // "Two of the screws": there are more.
        (_, Some(Amount::Exactly(n))) => n.saturating_add(1),
        _ if plural => 2,
        _ => 1,
    }
}

/// Words that tell two things of one sort apart and name none themselves.
pub(in crate::capture) fn tells_apart(word: &str) -> bool {
    const WORDS: &[&str] = &[
        "back",
        "bottom",
        "cold",
        "discharge",
        "downstream",
        "exhaust",
        "extract",
        "feed",
        "flow",
        "front",
        "gas",
        "hot",
        "inlet",
        "inner",
        "left",
        "lower",
        "outer",
        "outlet",
        "rear",
        "return",
        "right",
        "side",
        "suction",
        "supply",
        "top",
        "upper",
        "upstream",
        "water",
        "primary",
        "secondary",
    ];
    WORDS.contains(&word)
}

/// Words that say where on a part something sits.
pub(super) fn is_place(word: &str) -> bool {
    const PLACES: &[&str] =
        &["back", "bottom", "front", "inlet", "left", "lower", "outlet", "rear", "right", "top", "upper"];
    PLACES.contains(&word)
}

/// What is left open where something was taken off.
pub(in crate::capture) fn is_open_end(word: &str) -> bool {
    matches!(word, "end" | "opening" | "stub" | "tail")
}

/// What swings or lifts open.
pub(in crate::capture) fn opens(head: &str) -> bool {
    const OPEN: &[&str] = &[
        "case", "casing", "cover", "damper", "door", "drawer", "flap", "grille", "guard", "hatch", "hood",
        "lid", "panel",
    ];
    OPEN.contains(&head)
}
