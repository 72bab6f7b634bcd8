//! Changing what to bring: each change is one edit with a name.
//!
//! An instrument that readings are taken with is not taken out: the person is told where it is used.

use super::editor_store::EditorStore;
use super::ids::RandomIds;
use leptos::prelude::Set;
use procedures_schema::capture::{NoAnswer, one_range, one_value};
use procedures_schema::derive::kit::Needed;
use procedures_schema::model::{
    Consumable, Id, IdSource, Instrument, Kit, KitList, Known, Procedure, Protection, Reading, Spare, Step,
    Tool, readings,
};
use procedures_schema::units::{Measured, Range, Rest};

impl EditorStore {
    /// Changes the kit as one entry of undo; keys in one field stay one.
    pub fn change_kit(self, label: &str, group: Option<&str>, change: impl FnOnce(&mut Kit)) {
        self.change_scope(label, group, |scope| change(&mut scope.kit));
    }

    /// Adds an entry without a name to a list; the list is not empty by intent any more.
    pub fn add_to_kit(self, list: &KitList) {
        let id = RandomIds.next_id("kit");
        self.change_kit(&format!("add to the {list}"), None, |kit| {
            kit.none.retain(|none| none != list);
            add(kit, list, id);
        });
    }

    /// Makes an entry of what the steps need, to be said otherwise.
    pub fn write_into_kit(self, needed: &Needed) {
        let id = RandomIds.next_id("kit");
        let list = &needed.list;
        self.change_kit(&format!("add to the {list}"), None, |kit| {
            kit.none.retain(|none| none != list);
            write(kit, needed, id);
        });
    }

    /// Takes an entry out of a list.
    pub fn take_from_kit(self, list: &KitList, at: usize) {
        let document = self.document_now();
        let used = match (list, document.kit.instruments.get(at)) {
            (KitList::Instruments, Some(instrument)) => readings_with(&document, &instrument.id),
            _ => Vec::new(),
        };
        if used.is_empty() {
            self.change_kit(&format!("take out of the {list}"), None, |kit| remove(kit, list, at));
        } else {
            let steps = used.iter().map(|number| format!("step {number}")).collect::<Vec<_>>().join(", ");
            let words = format!("The instrument stays: readings are taken with it in {steps}.");
            self.notice().set(Some(words));
        }
    }

    /// Hands on a value with its unit, as typed, or none if nothing is typed; what is not one is told.
    pub fn typed_amount(self, typed: &str, take: impl FnOnce(Option<Measured>)) {
        self.typed_as(typed, one_value, take);
    }

    /// As [`EditorStore::typed_amount`] for a range.
    pub fn typed_range(self, typed: &str, take: impl FnOnce(Option<Range>)) {
        self.typed_as(typed, one_range, take);
    }

    fn typed_as<T>(self, typed: &str, read: fn(&str) -> Result<T, NoAnswer>, take: impl FnOnce(Option<T>)) {
        if typed.trim().is_empty() {
            take(None);
            return;
        }
        match read(typed) {
            Ok(value) => take(Some(value)),
            Err(refused) => self.notice().set(Some(format!("Not taken: {}.", refused.0))),
        }
    }
}

/// The numbers of the steps whose readings are taken with an instrument.
fn readings_with(document: &Procedure, instrument: &Id) -> Vec<usize> {
    let is_it = |reading: &&Reading| reading.instrument.as_ref() == Some(instrument);
    let takes = |step: &Step| readings(step).iter().any(is_it);
    document.steps.iter().enumerate().filter(|(_, step)| takes(step)).map(|(at, _)| at + 1).collect()
}

fn add(kit: &mut Kit, list: &KitList, id: Id) {
    let (name, rest) = (String::new(), Rest::default());
    match list {
        KitList::Tools => kit.tools.push(Tool { id, name, size: String::new(), range: None, rest }),
        KitList::Instruments => kit.instruments.push(Instrument {
            id,
            name,
            range: None,
            resolution: None,
            demand: String::new(),
            rest,
        }),
        KitList::Consumables => kit.consumables.push(Consumable { id, name, amount: None, rest }),
        KitList::Protection => kit.protection.push(Protection { id, name, demand: String::new(), rest }),
        KitList::Spares => {
            kit.spares.push(Spare { id, name, number: None, quantity: 1, thing: None, rest });
        }
        KitList::Other(_) => {}
    }
}

fn write(kit: &mut Kit, needed: &Needed, id: Id) {
    let size = needed.size.as_ref().and_then(Known::value).cloned().unwrap_or_default();
    let named = || format!("{} {size}", needed.name).trim().to_owned();
    let range = needed.range.clone();
    add(kit, &needed.list, id);
    match needed.list {
        KitList::Tools => {
            if let Some(tool) = kit.tools.last_mut() {
                (tool.name, tool.size, tool.range) = (needed.name.clone(), size, range);
            }
        }
        KitList::Instruments => {
            if let Some(instrument) = kit.instruments.last_mut() {
                (instrument.name, instrument.range) = (needed.name.clone(), range);
                instrument.resolution.clone_from(&needed.resolution);
            }
        }
        KitList::Spares => {
            if let Some(spare) = kit.spares.last_mut() {
                (spare.name, spare.quantity) = (named(), needed.quantity);
                spare.number.clone_from(&needed.number);
                spare.thing.clone_from(&needed.thing);
            }
        }
        KitList::Consumables => {
            if let Some(consumable) = kit.consumables.last_mut() {
                consumable.name.clone_from(&needed.name);
            }
        }
        KitList::Protection | KitList::Other(_) => {}
    }
}

fn remove(kit: &mut Kit, list: &KitList, at: usize) {
    fn without<T>(list: &mut Vec<T>, at: usize) {
        if at < list.len() {
            list.remove(at);
        }
    }
    match list {
        KitList::Tools => without(&mut kit.tools, at),
        KitList::Instruments => without(&mut kit.instruments, at),
        KitList::Consumables => without(&mut kit.consumables, at),
        KitList::Protection => without(&mut kit.protection, at),
        KitList::Spares => without(&mut kit.spares, at),
        KitList::Other(_) => {}
    }
}
