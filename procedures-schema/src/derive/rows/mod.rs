//! What a row of the appliance says of a thing beside its name: cells that are alike for all things of a kind, the
//! steps that name it, and whether a test is missing.
//!
//! Everything is worked out at once, since a list shows all of it. A cell of which nothing is known says so.

mod circuits;
mod parts;

use super::uses::UseTable;
use crate::model::{
    ApplianceMap, Circuit, Component, Connection, Id, Isolator, Known, Procedure, SUPPLY, ThingKind,
};
use crate::simulate::{Place, Reason, Trace};
use std::collections::{BTreeMap, BTreeSet};

/// What one column says of a thing.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Cell {
    /// What is known.
    pub words: String,
    /// What is still to be found out.
    pub later: Vec<&'static str>,
}

/// What is said where nothing is known.
pub const UNKNOWN: &str = "-";

impl Cell {
    /// What is known, part by part; empty parts say nothing.
    fn of<T: AsRef<str>>(parts: impl IntoIterator<Item = T>) -> Self {
        let parts: Vec<String> = parts.into_iter().map(|part| part.as_ref().trim().to_owned()).collect();
        let said: Vec<&str> = parts.iter().map(String::as_str).filter(|part| !part.is_empty()).collect();
        Self { words: said.join(" · "), later: Vec::new() }
    }

    /// Names with commas between.
    fn names(names: &[&str]) -> Self {
        Self { words: names.join(", "), later: Vec::new() }
    }

    /// The same with something that is still to be found out, if it is.
    fn later_if(mut self, is_later: bool, what: &'static str) -> Self {
        if is_later && !self.later.contains(&what) {
            self.later.push(what);
        }
        self
    }

    /// Whether it says nothing at all.
    pub fn is_unknown(&self) -> bool {
        self.words.is_empty() && self.later.is_empty()
    }
}

impl std::fmt::Display for Cell {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        if self.is_unknown() {
            return f.write_str(UNKNOWN);
        }
        let later = self.later.iter().map(|what| format!("[later: {what}]"));
        let all: Vec<String> =
            Some(self.words.clone()).filter(|words| !words.is_empty()).into_iter().chain(later).collect();
        f.write_str(&all.join(" "))
    }
}

/// What the columns of a kind are called.
pub fn columns(kind: ThingKind) -> &'static [&'static str] {
    match kind {
        ThingKind::Circuit => &["Carries", "Isolated at", "Proved at", "Stored", "In this job"],
        ThingKind::Section => &["Of", "Isolated at", "Proved at", "Holds", "In service"],
        ThingKind::Isolator => &["Worked by", "Between", "In service", "Lock", "Where"],
        ThingKind::Component => &["Is", "Behind", "Held by", "Mass", "Where, number"],
        ThingKind::Connection => &["Is", "Between", "Size", "Tool", "Seal"],
        ThingKind::Seal => &["Goes in", "Material", "Size", "Number", "When opened"],
        ThingKind::Temporary => &["Is", "On", "Closes, joins", "At first", "At the end"],
        ThingKind::Setting => &["Of", "Read while live", "In a menu", "", "Makes due"],
    }
}

/// What is said of one thing.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Row {
    /// A cell for each column.
    pub cells: Vec<Cell>,
    /// The numbers of the steps that name it; of a circuit those of its sections too.
    pub steps: Vec<usize>,
    /// Whether nothing names it, nor what is inside it.
    pub is_nowhere: bool,
    /// Whether a test is missing that its last touch makes due.
    pub is_untested: bool,
}

impl Row {
    /// Whether it is worth a word that no step names it. Steps name mostly the isolators and joints of a circuit, so it
    /// is not of one that something else names.
    pub fn is_in_no_step(&self, kind: ThingKind) -> bool {
        let is_circuit = matches!(kind, ThingKind::Circuit | ThingKind::Section);
        self.steps.is_empty() && (self.is_nowhere || !is_circuit)
    }
}

/// What is said of everything on a map.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Rows {
    rows: BTreeMap<Id, Row>,
}

impl Rows {
    /// The rows of a document that was run.
    pub fn of(document: &Procedure, trace: &Trace) -> Self {
        let (known, uses, untested) = (Around::of(document), UseTable::of(document), untested(trace));
        let row = |kind, id: &Id| Row {
            cells: known.cells(kind, id),
            steps: known.steps(&uses, id),
            is_nowhere: uses.is_nowhere(id),
            is_untested: untested.contains(id),
        };
        Self { rows: document.map.things().map(|(kind, id, ..)| (id.clone(), row(kind, id))).collect() }
    }

    /// The row of a thing; none if the map does not know it.
    pub fn row(&self, thing: &Id) -> Option<&Row> {
        self.rows.get(thing)
    }
}

/// The things that lack a test at the end, on whichever answers.
fn untested(trace: &Trace) -> BTreeSet<Id> {
    let at_end = trace.unmet().iter().filter(|unmet| unmet.place == Place::END);
    let thing = |reason: &Reason| match reason {
        Reason::NotTested { thing, .. } => Some(*thing),
        _ => None,
    };
    at_end.filter_map(|unmet| trace.plant().id_of(thing(&unmet.reason)?).cloned()).collect()
}

/// A map, ready to be asked of each thing what has to do with it.
struct Around<'d> {
    document: &'d Procedure,
    map: &'d ApplianceMap,
    names: BTreeMap<&'d Id, &'d str>,
    /// By section its circuit.
    circuits: BTreeMap<&'d Id, &'d Circuit>,
    /// By section, and by circuit, what shuts it off.
    isolators: BTreeMap<&'d Id, Vec<&'d Isolator>>,
    /// By section, and by circuit, where a step proves it.
    proved: BTreeMap<&'d Id, Vec<String>>,
    /// By component what holds it.
    holding: BTreeMap<&'d Id, Vec<&'d Connection>>,
    /// By seal where it goes.
    sealed: BTreeMap<&'d Id, Vec<&'d str>>,
    /// What something is behind.
    covers: BTreeSet<&'d Id>,
}

impl<'d> Around<'d> {
    fn of(document: &'d Procedure) -> Self {
        let map: &ApplianceMap = &document.map;
        let sections = || map.circuits.iter().flat_map(|c| c.sections.iter().map(move |s| (&s.id, c)));
        let mut around = Self {
            document,
            map,
            names: map.things().map(|(_, id, name, _)| (id, name)).collect(),
            circuits: sections().collect(),
            isolators: BTreeMap::new(),
            proved: BTreeMap::new(),
            holding: BTreeMap::new(),
            sealed: BTreeMap::new(),
            covers: map.components.iter().flat_map(|component| &component.behind).collect(),
        };
        around.covers.extend(map.connections.iter().filter_map(|k| k.reached_after.as_ref()).flatten());
        for connection in &map.connections {
            for part in &connection.joins {
                around.holding.entry(part).or_default().push(connection);
            }
            for used in &connection.seals {
                around.sealed.entry(&used.seal).or_default().push(&connection.name);
            }
        }
        around.note_isolators();
        around.note_proofs();
        around
    }

    /// The name of a thing; what is not on the map is called by its id.
    fn name(&self, id: &'d Id) -> &'d str {
        if id.as_str() == SUPPLY { "supply" } else { self.names.get(id).copied().unwrap_or(id.as_str()) }
    }

    fn names_of(&self, ids: impl IntoIterator<Item = &'d Id>) -> Cell {
        Cell::names(&ids.into_iter().map(|id| self.name(id)).collect::<Vec<_>>())
    }

    fn cells(&self, kind: ThingKind, id: &Id) -> Vec<Cell> {
        macro_rules! found {
            ($list:ident, $cells:ident) => {
                self.map.$list.iter().find(|thing| thing.id == *id).map(|thing| self.$cells(thing))
            };
        }
        let cells = match kind {
            ThingKind::Circuit => found!(circuits, circuit),
            ThingKind::Section => {
                self.map.sections().find(|(_, s)| s.id == *id).map(|(circuit, s)| self.section(circuit, s))
            }
            ThingKind::Isolator => found!(isolators, isolator),
            ThingKind::Component => found!(components, component),
            ThingKind::Connection => found!(connections, connection),
            ThingKind::Seal => found!(seals, seal),
            ThingKind::Temporary => found!(temporary, temporary),
            ThingKind::Setting => found!(settings, setting),
        };
        cells.map(Vec::from).unwrap_or_default()
    }

    fn steps(&self, uses: &UseTable, id: &Id) -> Vec<usize> {
        let circuit = self.map.circuits.iter().find(|circuit| circuit.id == *id);
        let inside = circuit.into_iter().flat_map(|circuit| circuit.sections.iter().map(|s| &s.id));
        let all: BTreeSet<usize> =
            std::iter::once(id).chain(inside).flat_map(|id| uses.steps(id)).copied().collect();
        all.into_iter().collect()
    }

    /// What something is besides a part: a fan, a cover.
    fn role(&self, component: &Component) -> String {
        let role = component.role.as_ref().map(|role| role.word().to_owned());
        let cover = self.covers.contains(&component.id).then(|| "cover".to_owned());
        let loose = component.held_in.is_some().then(|| "loose part".to_owned());
        role.or(cover).or(loose).unwrap_or_else(|| "part".to_owned())
    }
}

/// A text that is known; nothing, if it is not, or not yet.
fn text(value: Option<&Known<String>>) -> &str {
    value.and_then(Known::value).map_or("", String::as_str)
}

fn is_later<T>(value: Option<&Known<T>>) -> bool {
    value.is_some_and(Known::is_later)
}

fn yes(is_so: bool) -> &'static str {
    if is_so { "yes" } else { "no" }
}
