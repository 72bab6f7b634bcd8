//! Changing the appliance map and what the document says of itself: each change is one edit with a name.
//!
//! A thing that steps or other things use is not taken out: the person is told where it is used.

use super::editor_store::EditorStore;
use super::ids::RandomIds;
use leptos::prelude::Set;
use procedures_schema::derive::uses::Uses;
use procedures_schema::edit::{Edit, Scope};
use procedures_schema::model::{
    ApplianceMap, Circuit, CircuitKind, Component, Connection, Family, Handle, Id, IdSource, Isolator,
    SUPPLY, Seal, SealPolicy, Section, Setting, Temporary, ThingKind,
};
use std::sync::Arc;

/// A sort of thing that a map has a list of.
pub trait InMap: Clone + PartialEq + Send + Sync + 'static {
    /// The thing with this id.
    fn find<'m>(map: &'m ApplianceMap, id: &Id) -> Option<&'m Self>;
    /// The thing with this id, to be changed.
    fn find_mut<'m>(map: &'m mut ApplianceMap, id: &Id) -> Option<&'m mut Self>;
    /// Its name.
    fn name(&self) -> &str;
}

macro_rules! in_map {
    ($($thing:ident in $list:ident;)*) => {$(
        impl InMap for $thing {
            fn find<'m>(map: &'m ApplianceMap, id: &Id) -> Option<&'m Self> {
                map.$list.iter().find(|thing| thing.id == *id)
            }
            fn find_mut<'m>(map: &'m mut ApplianceMap, id: &Id) -> Option<&'m mut Self> {
                map.$list.iter_mut().find(|thing| thing.id == *id)
            }
            fn name(&self) -> &str {
                &self.name
            }
        }
    )*};
}

in_map! {
    Isolator in isolators;
    Component in components;
    Connection in connections;
    Seal in seals;
    Temporary in temporary;
    Setting in settings;
}

impl InMap for Circuit {
    fn find<'m>(map: &'m ApplianceMap, id: &Id) -> Option<&'m Self> {
        map.circuits.iter().find(|circuit| circuit.id == *id)
    }
    fn find_mut<'m>(map: &'m mut ApplianceMap, id: &Id) -> Option<&'m mut Self> {
        map.circuits.iter_mut().find(|circuit| circuit.id == *id)
    }
    fn name(&self) -> &str {
        &self.name
    }
}

impl InMap for Section {
    fn find<'m>(map: &'m ApplianceMap, id: &Id) -> Option<&'m Self> {
        map.circuits.iter().flat_map(|circuit| &circuit.sections).find(|section| section.id == *id)
    }
    fn find_mut<'m>(map: &'m mut ApplianceMap, id: &Id) -> Option<&'m mut Self> {
        map.circuits.iter_mut().flat_map(|circuit| &mut circuit.sections).find(|section| section.id == *id)
    }
    fn name(&self) -> &str {
        &self.name
    }
}

impl EditorStore {
    /// Changes the map as one entry of undo; with a group, typing in one field stays one.
    pub fn change_map(self, label: &str, group: Option<&str>, change: impl FnOnce(&mut ApplianceMap)) {
        let document = self.document_now();
        let mut map = (*document.map).clone();
        change(&mut map);
        if map != *document.map {
            self.edit(&[Edit::SetMap(Arc::new(map))], label, group);
        }
    }

    /// Gives a thing another name, in the words of the steps too if that is wanted.
    pub fn rename_thing(self, id: &Id, name: &str, in_words: bool) {
        let before = self.document_now().map.name_of(id).to_owned();
        if name.trim() != before {
            let edit = Edit::Rename { thing: id.clone(), name: name.to_owned(), in_words };
            self.edit(&[edit], &format!("rename the {before}"), None);
        }
    }

    /// Changes what the document says of itself.
    pub fn change_scope(self, label: &str, group: Option<&str>, change: impl FnOnce(&mut Scope)) {
        let before = Scope::of(&self.document_now());
        let mut scope = before.clone();
        change(&mut scope);
        if scope != before {
            self.edit(&[Edit::SetScope(Box::new(scope))], label, group);
        }
    }

    /// Adds a thing of a kind under a name that nothing else has; gives its id.
    pub fn add_thing(self, kind: ThingKind, belongs_to: Option<&Id>) -> Id {
        let document = self.document_now();
        let name = free_name(&document.map, kind);
        let id = RandomIds.next_id(kind.hint());
        let (made, owner) = (id.clone(), belongs_to.cloned());
        self.change_map(&format!("add the {name}"), None, |map| add(map, kind, made, &name, owner));
        id
    }

    /// Takes a thing out that nothing uses; otherwise says where it is used and changes nothing.
    pub fn remove_thing(self, id: &Id) {
        let document = self.document_now();
        let name = document.map.name_of(id).to_owned();
        let uses = Uses::of(&document, id);
        if uses.is_nowhere() {
            self.change_map(&format!("take the {name} out"), None, |map| remove(map, id));
        } else {
            let words =
                format!("The {name} stays: it is used in {}. Take it out there first.", uses.in_words());
            self.notice().set(Some(words));
        }
    }
}

fn free_name(map: &ApplianceMap, kind: ThingKind) -> String {
    let is_taken = |name: &str| map.things().any(|(_, _, known, _)| known == name);
    let plain = format!("new {}", kind.word());
    if !is_taken(&plain) {
        return plain;
    }
    // There are at most some thousand things, so one of the first numbers is free.
    (2..10_000).map(|n| format!("{plain} {n}")).find(|name| !is_taken(name)).unwrap_or(plain)
}

fn add(map: &mut ApplianceMap, kind: ThingKind, id: Id, name: &str, belongs_to: Option<Id>) {
    match kind {
        ThingKind::Circuit => {
            let section = Section::new(RandomIds.next_id("section"), name);
            map.circuits.push(Circuit::new(id, name, CircuitKind::MainsElectricity, section));
        }
        ThingKind::Section => {
            let circuit = belongs_to.and_then(|owner| Circuit::find_mut(map, &owner));
            if let Some(circuit) = circuit {
                circuit.sections.push(Section::new(id, name));
            }
        }
        ThingKind::Isolator => {
            let first = || map.circuits.first().and_then(|circuit| circuit.sections.first());
            let side = belongs_to.or_else(|| first().map(|section| section.id.clone()));
            let side = side.unwrap_or_else(|| Id::new(SUPPLY));
            map.isolators.push(Isolator::new(id, name, (Id::new(SUPPLY), side), Handle::Valve));
        }
        ThingKind::Component => map.components.push(Component::new(id, name)),
        ThingKind::Connection => map.connections.push(Connection::new(id, name, Family::Joint)),
        ThingKind::Seal => map.seals.push(Seal::new(id, name, SealPolicy::AlwaysRenew)),
        ThingKind::Temporary => map.temporary.push(Temporary::new(id, name)),
        ThingKind::Setting => map.settings.push(Setting::new(id, name)),
    }
}

fn remove(map: &mut ApplianceMap, id: &Id) {
    map.circuits.retain(|thing| thing.id != *id);
    for circuit in &mut map.circuits {
        // A circuit without a section cannot be judged, so its last one stays.
        if circuit.sections.len() > 1 {
            circuit.sections.retain(|section| section.id != *id);
        }
    }
    map.isolators.retain(|thing| thing.id != *id);
    map.components.retain(|thing| thing.id != *id);
    map.connections.retain(|thing| thing.id != *id);
    map.seals.retain(|thing| thing.id != *id);
    map.temporary.retain(|thing| thing.id != *id);
    map.settings.retain(|thing| thing.id != *id);
}
