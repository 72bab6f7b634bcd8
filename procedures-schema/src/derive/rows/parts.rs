//! What the rows of components, connections, seals, temporary items and settings say.

use super::{Around, Cell, is_later, text, yes};
use crate::model::{
    Component, Connection, Family, Known, Seal, SealPolicy, SealUse, Setting, Size, Temporary, TestKind,
};

impl<'d> Around<'d> {
    pub(super) fn component(&self, component: &'d Component) -> [Cell; 5] {
        let holding = self.holding.get(&component.id).map(Vec::as_slice).unwrap_or_default();
        let holding = holding.iter().filter(|connection| connection.port.is_none());
        let held: Vec<String> = holding.map(|connection| holds(connection)).collect();
        let number = component.number.as_ref();
        [
            Cell::of([self.role(component)]),
            self.names_of(&component.behind),
            Cell { words: held.join(", "), ..Cell::default() },
            Cell::of(component.mass.as_ref().map(ToString::to_string)),
            Cell::of([component.location.as_str(), text(number)]).later_if(is_later(number), "number"),
        ]
    }

    pub(super) fn connection(&self, connection: &'d Connection) -> [Cell; 5] {
        let port = connection.port.as_ref().map(|port| format!("{} port", port.word()));
        let family = port.unwrap_or_else(|| connection.family.word().to_owned());
        let circuit = connection.section.as_ref().and_then(|section| self.circuits.get(section));
        let between: Vec<&str> = connection.joins.iter().map(|part| self.name(part)).collect();
        let size = connection.size.as_ref();
        let known = size.and_then(Known::value);
        let is_open = is_later(size);
        [
            Cell::of(
                [Some(family.as_str()), circuit.map(|circuit| circuit.name.as_str())].into_iter().flatten(),
            ),
            Cell { words: between.join(" – "), ..Cell::default() },
            Cell::of([sized(connection)]).later_if(is_open, "size"),
            self.tool(known).later_if(is_later(connection.tight.as_ref()), "how tight"),
            self.seals(connection),
        ]
    }

    /// What is put on it: the width across its flats, with the tool of the kit that is of this width.
    fn tool(&self, size: Option<&Size>) -> Cell {
        let Some(width) = size.and_then(|size| size.across_flats.as_ref()) else { return Cell::default() };
        let width = width.to_string();
        let tool = self.document.kit.tools.iter().find(|tool| tool.size.trim() == width);
        Cell { words: tool.map_or(width.clone(), |tool| format!("{width} {}", tool.name)), ..Cell::default() }
    }

    fn seals(&self, connection: &'d Connection) -> Cell {
        let seal = |used: &SealUse| self.map.seals.iter().find(|seal| seal.id == used.seal);
        let words: Vec<String> = connection.seals.iter().map(|used| self.used(used, seal(used))).collect();
        let known = || connection.seals.iter().filter_map(seal);
        Cell { words: words.join("; "), ..Cell::default() }
            .later_if(known().any(|seal| is_later(seal.size.as_ref())), "size")
            .later_if(known().any(|seal| is_later(seal.number.as_ref())), "number")
    }

    /// A seal where it is used: `washer 1 in × 2, renew`.
    fn used(&self, used: &'d SealUse, seal: Option<&Seal>) -> String {
        let size = seal.map_or("", |seal| text(seal.size.as_ref()));
        let n = if used.quantity > 1 { format!("× {}", used.quantity) } else { String::new() };
        let parts = [self.name(&used.seal), size, &n];
        let named = parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(" ");
        match seal {
            Some(seal) => format!("{named}, {}", in_short(&seal.policy)),
            None => named,
        }
    }

    pub(super) fn seal(&self, seal: &'d Seal) -> [Cell; 5] {
        let (size, number) = (seal.size.as_ref(), seal.number.as_ref());
        let joints = self.sealed.get(&seal.id).map(Vec::as_slice).unwrap_or_default();
        [
            Cell::names(joints),
            Cell::of([&seal.material]),
            Cell::of([text(size)]).later_if(is_later(size), "size"),
            Cell::of([text(number)]).later_if(is_later(number), "number"),
            Cell::of([in_short(&seal.policy)]),
        ]
    }

    pub(super) fn temporary(&self, item: &'d Temporary) -> [Cell; 5] {
        let is = if item.notice {
            "notice"
        } else if item.gauge {
            "gauge"
        } else {
            "item"
        };
        let name = |what: &str, id| format!("{what} {}", self.name(id));
        let does = [
            item.closes.then(|| "closes it".to_owned()),
            item.bonds.as_ref().map(|id| name("bonds", id)),
            item.restrains.as_ref().map(|id| name("holds", id)),
        ];
        let end = item.stays.as_ref().map_or_else(
            || if item.initially { "there again".to_owned() } else { "taken away".to_owned() },
            |why| format!("stays: {why}"),
        );
        [
            Cell::of([is]),
            self.names_of(&item.on),
            Cell::of(does.into_iter().flatten()),
            Cell::of([if item.initially { "there" } else { "not there" }]),
            Cell::of([end]),
        ]
    }

    pub(super) fn setting(&self, setting: &'d Setting) -> [Cell; 5] {
        [
            self.names_of(&setting.of),
            self.names_of(&setting.readable_when),
            Cell::of([yes(setting.in_menu)]),
            Cell::default(),
            Cell::of([setting.affects.iter().map(TestKind::word).collect::<Vec<_>>().join(", ")]),
        ]
    }
}

/// `4 × M6`, `G 3/4`, `22 mm tube`: how many, and what is not the tool.
fn sized(connection: &Connection) -> String {
    let size = connection.size.as_ref().and_then(Known::value);
    let thread = size.and_then(|size| size.thread.clone());
    let tube = size.and_then(|size| size.tube.as_ref()).map(|tube| format!("{tube} tube"));
    let terminal = size.and_then(|size| size.terminal.clone());
    let size = [thread, tube, terminal].into_iter().flatten().collect::<Vec<_>>().join(", ");
    match (connection.count, size.is_empty()) {
        (1, _) => size,
        (n, true) => format!("{n} of them"),
        (n, false) => format!("{n} × {size}"),
    }
}

/// A connection as what holds a part: fixings with how many there are, and of which size.
fn holds(connection: &Connection) -> String {
    let size = sized(connection);
    if connection.family == Family::Fixing && !size.is_empty() {
        format!("{} {size}", connection.name)
    } else {
        connection.name.clone()
    }
}

/// What becomes of a seal, in few words.
fn in_short(policy: &SealPolicy) -> &str {
    match policy {
        SealPolicy::AlwaysRenew => "renew",
        SealPolicy::RenewUnlessSound => "renew unless sound",
        SealPolicy::NoneByDesign => "none by design",
        SealPolicy::Other(word) => word,
    }
}
