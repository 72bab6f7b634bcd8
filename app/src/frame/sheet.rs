//! What every sheet is made of: fields bound to one thing of the map.

use crate::components::fields::{ChoiceField, FlagField, TextField, ThingsField};
use crate::state::EditorStore;
use crate::state::map_edits::InMap;
use crate::state::typed_measure::typed_measure;
use leptos::prelude::*;
use procedures_schema::model::{Country, Id, ThingKind};
use procedures_schema::units::{Measured, Quantity, Unit};
use std::marker::PhantomData;

/// The fields of one thing.
pub struct Sheet<T> {
    store: EditorStore,
    id: StoredValue<Id>,
    thing: PhantomData<fn() -> T>,
}

impl<T> Clone for Sheet<T> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<T> Copy for Sheet<T> {}

impl<T: InMap> Sheet<T> {
    /// The sheet of the thing with this id.
    pub fn new(store: EditorStore, id: Id) -> Self {
        Self { store, id: StoredValue::new(id), thing: PhantomData }
    }

    /// The editor's state.
    pub fn store(self) -> EditorStore {
        self.store
    }

    /// The id of the thing.
    pub fn id(self) -> Id {
        self.id.get_value()
    }

    /// Something of the thing, as the document says it.
    pub fn read<V: Clone + PartialEq + Default + Send + Sync + 'static>(self, of: fn(&T) -> V) -> Signal<V> {
        let id = self.id();
        let document = self.store.document();
        Memo::new(move |_| document.with(|document| T::find(&document.map, &id).map(of).unwrap_or_default()))
            .into()
    }

    /// Changes the thing; keys in one field are one entry of undo.
    pub fn write(self, field: &'static str, change: impl FnOnce(&mut T)) {
        let id = self.id();
        let name = self.store.document().with_untracked(|document| document.map.name_of(&id).to_owned());
        let group = format!("{field} of {id}");
        self.store.change_map(&format!("change the {name}"), Some(&group), |map| {
            if let Some(thing) = T::find_mut(map, &id) {
                change(thing);
            }
        });
    }

    /// A line of text.
    pub fn text(
        self,
        label: &'static str,
        hint: &'static str,
        get: fn(&T) -> String,
        set: fn(&mut T, String),
    ) -> AnyView {
        let send = Callback::new(move |typed| self.write(label, |thing| set(thing, typed)));
        view! { <TextField label value=self.read(get) send hint /> }.into_any()
    }

    /// Yes or no.
    pub fn flag(self, label: &'static str, get: fn(&T) -> bool, set: fn(&mut T, bool)) -> AnyView {
        let send = Callback::new(move |is_so| self.write(label, |thing| set(thing, is_so)));
        view! { <FlagField label value=self.read(get) send /> }.into_any()
    }

    /// One of a list of words; the first option may stand for none.
    pub fn word(
        self,
        label: &'static str,
        options: Vec<(String, String)>,
        get: fn(&T) -> String,
        set: fn(&mut T, String),
    ) -> AnyView {
        let send = Callback::new(move |chosen| self.write(label, |thing| set(thing, chosen)));
        let options = Signal::stored(options);
        view! { <ChoiceField label value=self.read(get) options send /> }.into_any()
    }

    /// One thing of these kinds, or none.
    pub fn one_of(
        self,
        label: &'static str,
        kinds: &'static [ThingKind],
        get: fn(&T) -> Option<Id>,
        set: fn(&mut T, Option<Id>),
    ) -> AnyView {
        let things = self.things_of(kinds);
        let options = Signal::derive(move || {
            let none = (String::new(), "none".to_owned());
            let all = things.get().into_iter().map(|(id, name)| (id.to_string(), name));
            std::iter::once(none).chain(all).collect()
        });
        let chosen = self.read(get);
        let value = Signal::derive(move || chosen.get().map(|id| id.to_string()).unwrap_or_default());
        let send = Callback::new(move |chosen: String| {
            let chosen = (!chosen.is_empty()).then(|| Id::new(&chosen));
            self.write(label, |thing| set(thing, chosen));
        });
        view! { <ChoiceField label value options send /> }.into_any()
    }

    /// Any things of these kinds.
    pub fn any_of(
        self,
        label: &'static str,
        kinds: &'static [ThingKind],
        get: fn(&T) -> Vec<Id>,
        set: fn(&mut T, Vec<Id>),
    ) -> AnyView {
        let send = Callback::new(move |chosen| self.write(label, |thing| set(thing, chosen)));
        view! { <ThingsField label value=self.read(get) options=self.things_of(kinds) send /> }.into_any()
    }

    /// A figure in the unit that it has, or else in that of the country; one that is typed with a unit takes that unit.
    /// What is no figure yet is not sent, and an empty field says nothing.
    pub fn figure(
        self,
        label: &'static str,
        quantity: Quantity,
        get: fn(&T) -> Option<Measured>,
        set: fn(&mut T, Option<Measured>),
    ) -> AnyView {
        let shown = self.read(get);
        let unit = self.unit(quantity, move || shown.get().map(|measured| measured.unit));
        let value = Signal::derive(move || shown.get().map(|m| m.value.to_string()).unwrap_or_default());
        let send = Callback::new(move |typed: String| {
            if typed.trim().is_empty() {
                self.write(label, |thing| set(thing, None));
            } else if let Some(measured) = typed_measure(&typed, &unit.get_untracked(), quantity) {
                self.write(label, |thing| set(thing, Some(measured)));
            }
        });
        view! { <TextField label=in_unit(label, unit) value send is_figure=true /> }.into_any()
    }

    /// The unit of what is there, or else that in which people of the country of the document measure a quantity.
    pub fn unit(
        self,
        quantity: Quantity,
        of_value: impl Fn() -> Option<Unit> + Send + Sync + 'static,
    ) -> Signal<Unit> {
        let document = self.store.document();
        let country = Memo::new(move |_| document.with(|document| document.country.clone()));
        let usual = move || {
            let country = country.get().unwrap_or(Country::UnitedKingdom);
            let elsewhere = || Country::UnitedKingdom.unit_of(quantity);
            country.unit_of(quantity).or_else(elsewhere).unwrap_or(Unit::Other("".into()))
        };
        Memo::new(move |_| of_value().unwrap_or_else(usual)).into()
    }

    /// The other things of these kinds with their names; of two with one name the other name tells which.
    fn things_of(self, kinds: &'static [ThingKind]) -> Signal<Vec<(Id, String)>> {
        let (id, document) = (self.id(), self.store.document());
        Memo::new(move |_| {
            document.with(|document| {
                let others = || {
                    document.map.things().filter(|(kind, known, ..)| kinds.contains(kind) && **known != id)
                };
                let told = |name: &str, aliases: &[String]| match aliases.first() {
                    Some(alias) if others().filter(|(_, _, known, _)| *known == name).count() > 1 => {
                        format!("{name} ({alias})")
                    }
                    _ => name.to_owned(),
                };
                others().map(|(_, id, name, aliases)| (id.clone(), told(name, aliases))).collect()
            })
        })
        .into()
    }
}

/// A label with the unit of its field.
pub fn in_unit(label: impl Into<String>, unit: Signal<Unit>) -> Signal<String> {
    let label = label.into();
    Signal::derive(move || format!("{label}, {}", unit.with(|unit| unit.shown().to_owned())))
}

/// Words of a closed list as options.
pub fn words<'w>(all: impl IntoIterator<Item = &'w str>) -> Vec<(String, String)> {
    all.into_iter().map(|word| (word.to_owned(), word.to_owned())).collect()
}

/// As [`words`], with a first option for none.
pub fn words_or<'w>(none: &str, all: impl IntoIterator<Item = &'w str>) -> Vec<(String, String)> {
    std::iter::once((String::new(), none.to_owned())).chain(words(all)).collect()
}

/// Names typed in one line, with commas between.
pub fn listed(typed: &str) -> Vec<String> {
    // The blank after a comma being typed must not be eaten, so only empty parts go.
    typed.split(',').map(|name| name.trim_start().to_owned()).filter(|name| !name.is_empty()).collect()
}
