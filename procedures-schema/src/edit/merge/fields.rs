//! What two things of a kind say, field by field: taken over, put together, or chosen between.
//!
//! An answer that lifts a demand is never taken over in silence; a demand is.

use super::{Choice, Difference};
use crate::model::{
    ApplianceMap, Component, Connection, Family, FreesWhen, Grouping, Handle, Id, Isolator, Known, Port,
    Position, Rest, Role, SUPPLY, Seal, SealPolicy, SealUse, Setting, Size, Temporary, Tight,
};
use crate::units::Measured;
use std::sync::Arc;

/// A sort of thing of which two can be one.
pub(super) trait Fields {
    /// Takes over what another says, names aside.
    fn join(&mut self, other: &Self, joining: &mut Joining<'_>);
}

/// Where two things differ, and what somebody chose there.
pub(super) struct Joining<'c> {
    map: Arc<ApplianceMap>,
    choices: &'c [Choice],
    /// Everything in which they differ.
    pub(super) found: Vec<Difference>,
}

impl<'c> Joining<'c> {
    /// The map is the one before, for names.
    pub(super) fn new(map: Arc<ApplianceMap>, choices: &'c [Choice]) -> Self {
        Self { map, choices, found: Vec::new() }
    }

    /// The fields for which nobody has chosen.
    pub(super) fn undecided(&self) -> Vec<&'static str> {
        let is_open = |field: &&str| self.choices.iter().all(|choice| choice.field != *field);
        self.found.iter().map(|difference| difference.field).filter(is_open).collect()
    }

    /// Adds what is not there yet.
    pub(super) fn union<T: PartialEq + Clone>(mine: &mut Vec<T>, other: &[T]) {
        for one in other {
            if !mine.contains(one) {
                mine.push(one.clone());
            }
        }
    }

    /// Unknown fields: those that only the other has come along.
    pub(super) fn rest(&mut self, mine: &mut Rest, other: &Rest) {
        for (key, value) in &other.0 {
            match mine.0.iter_mut().find(|(known, _)| known == key) {
                None => mine.0.push((key.clone(), value.clone())),
                Some((_, known)) if known == value => {}
                Some((_, known)) => {
                    // One choice for all: a field of a newer version has no name for people.
                    if self.takes_other("what a newer version says", known.to_string(), value.to_string()) {
                        *known = value.clone();
                    }
                }
            }
        }
    }

    /// Notes a difference, and says whether the other holds.
    fn takes_other(&mut self, field: &'static str, kept: String, other: String) -> bool {
        self.found.push(Difference { field, kept, other });
        self.choices.iter().any(|choice| choice.field == field && choice.of_other)
    }

    /// A value that is always there.
    fn value<T: PartialEq + Clone + Shown>(&mut self, field: &'static str, mine: &mut T, other: &T) {
        if mine != other {
            let (kept, said) = (mine.shown(&self.map), other.shown(&self.map));
            if self.takes_other(field, kept, said) {
                *mine = other.clone();
            }
        }
    }

    /// A value of which the default says nothing.
    fn said<T: PartialEq + Clone + Default + Shown>(&mut self, field: &'static str, mine: &mut T, other: &T) {
        let nothing = T::default();
        if *mine == nothing {
            *mine = other.clone();
        } else if *other != nothing {
            self.value(field, mine, other);
        }
    }

    /// A value that may still have to be found out: one that is known ends that.
    fn known<T: PartialEq + Clone + Shown>(
        &mut self,
        field: &'static str,
        mine: &mut Option<Known<T>>,
        other: Option<&Known<T>>,
    ) {
        match (mine, other) {
            (_, None) | (Some(_), Some(Known::Later { .. })) => {}
            (Some(Known::Value(mine)), Some(Known::Value(other))) => self.value(field, mine, other),
            (mine, Some(other)) => *mine = Some(other.clone()),
        }
    }

    /// Things: the longer list where it holds the shorter.
    fn things(&mut self, field: &'static str, mine: &mut Vec<Id>, other: &Vec<Id>) {
        if mine.iter().all(|id| other.contains(id)) {
            mine.clone_from(other);
        } else if !other.iter().all(|id| mine.contains(id)) {
            self.value(field, mine, other);
        }
    }
}

impl Fields for Isolator {
    fn join(&mut self, other: &Self, joining: &mut Joining<'_>) {
        let turned = (other.between.1.clone(), other.between.0.clone());
        if self.between != turned {
            joining.value("what it stands between", &mut self.between, &other.between);
        }
        joining.value("what it is worked by", &mut self.handle, &other.handle);
        joining.value("its position in service", &mut self.normal, &other.normal);
        joining.said("whether a lock can be put on it", &mut self.lockable, &other.lockable);
        joining.said("the port that shows whether it lets by", &mut self.bleed, &other.bleed);
        joining.said("where it is", &mut self.location, &other.location);
    }
}

impl Fields for Component {
    fn join(&mut self, other: &Self, joining: &mut Joining<'_>) {
        joining.said("where it is", &mut self.location, &other.location);
        joining.said("what it does", &mut self.role, &other.role);
        joining.said("its mass", &mut self.mass, &other.mass);
        joining.said("with what it comes off", &mut self.carried_by, &other.carried_by);
        joining.said("what holds it", &mut self.held_in, &other.held_in);
        joining.said("which way round it goes", &mut self.direction, &other.direction);
        joining.known("the number of a new one", &mut self.number, other.number.as_ref());
        Joining::union(&mut self.behind, &other.behind);
        Joining::union(&mut self.moved_by, &other.moved_by);
        Joining::union(&mut self.materials, &other.materials);
        self.starts_itself |= other.starts_itself;
    }
}

impl Fields for Connection {
    fn join(&mut self, other: &Self, joining: &mut Joining<'_>) {
        joining.value("what it does", &mut self.family, &other.family);
        joining.things("what it joins", &mut self.joins, &other.joins);
        joining.said("the section it carries", &mut self.section, &other.section);
        joining.value("how many fasteners", &mut self.count, &other.count);
        joining.value("how several belong together", &mut self.grouping, &other.grouping);
        joining.known("its size", &mut self.size, other.size.as_ref());
        joining.said("its seals", &mut self.seals, &other.seals);
        joining.known("how tight", &mut self.tight, other.tight.as_ref());
        joining.value("when it lets go", &mut self.frees_when, &other.frees_when);
        joining.said("whether it bends", &mut self.flexible, &other.flexible);
        joining.said("what port it is", &mut self.port, &other.port);
        self.bond |= other.bond;
        Joining::union(&mut self.looks_like, &other.looks_like);
        joining.said("how it is reached", &mut self.reached_after, &other.reached_after);
    }
}

impl Fields for Seal {
    fn join(&mut self, other: &Self, joining: &mut Joining<'_>) {
        joining.value("what becomes of it", &mut self.policy, &other.policy);
        joining.known("its size", &mut self.size, other.size.as_ref());
        joining.said("its material", &mut self.material, &other.material);
        joining.known("the number of a new one", &mut self.number, other.number.as_ref());
        joining.said("why it may go back", &mut self.reason, &other.reason);
    }
}

impl Fields for Temporary {
    fn join(&mut self, other: &Self, joining: &mut Joining<'_>) {
        joining.said("what it sits on", &mut self.on, &other.on);
        joining.value("whether it closes", &mut self.closes, &other.closes);
        joining.said("what it bonds", &mut self.bonds, &other.bonds);
        joining.said("what it restrains", &mut self.restrains, &other.restrains);
        joining.said("where it keeps gas flowing", &mut self.flow, &other.flow);
        joining.said("with what it arrives", &mut self.arrives_with, &other.arrives_with);
        joining.value("whether it warns others", &mut self.notice, &other.notice);
        joining.value("whether it is a gauge", &mut self.gauge, &other.gauge);
        joining.value("whether it is there at the start", &mut self.initially, &other.initially);
        joining.value("why it stays", &mut self.stays, &other.stays);
    }
}

impl Fields for Setting {
    fn join(&mut self, other: &Self, joining: &mut Joining<'_>) {
        joining.said("what it belongs to", &mut self.of, &other.of);
        joining.said("what must be live to read it", &mut self.readable_when, &other.readable_when);
        joining.value("whether it is in a menu", &mut self.in_menu, &other.in_menu);
        Joining::union(&mut self.affects, &other.affects);
    }
}

/// A value as the one who chooses reads it.
trait Shown {
    fn shown(&self, map: &ApplianceMap) -> String;
}

macro_rules! as_written {
    ($($sort:ty),*) => {$(
        impl Shown for $sort {
            fn shown(&self, _: &ApplianceMap) -> String {
                self.to_string()
            }
        }
    )*};
}

as_written!(
    String, u32, Measured, Size, Handle, Position, Role, Family, Grouping, FreesWhen, Port, SealPolicy
);

impl Shown for bool {
    fn shown(&self, _: &ApplianceMap) -> String {
        if *self { "yes" } else { "no" }.to_owned()
    }
}

impl Shown for Id {
    fn shown(&self, map: &ApplianceMap) -> String {
        if self.as_str() == SUPPLY { "the supply".to_owned() } else { map.name_of(self).to_owned() }
    }
}

impl Shown for (Id, Id) {
    fn shown(&self, map: &ApplianceMap) -> String {
        format!("{} and {}", self.0.shown(map), self.1.shown(map))
    }
}

impl Shown for SealUse {
    fn shown(&self, map: &ApplianceMap) -> String {
        format!("{} x {}", self.quantity, self.seal.shown(map))
    }
}

impl Shown for Tight {
    fn shown(&self, _: &ApplianceMap) -> String {
        let torque = self.torque.as_ref().map(ToString::to_string).unwrap_or_default();
        let words = [&torque, &self.pattern, &self.lubrication, &self.method];
        let said: Vec<&str> = words.into_iter().map(String::as_str).filter(|word| !word.is_empty()).collect();
        said.join(", ")
    }
}

impl<T: Shown> Shown for Option<T> {
    fn shown(&self, map: &ApplianceMap) -> String {
        self.as_ref().map_or_else(|| "none".to_owned(), |value| value.shown(map))
    }
}

impl<T: Shown> Shown for Vec<T> {
    fn shown(&self, map: &ApplianceMap) -> String {
        if self.is_empty() {
            return "nothing".to_owned();
        }
        self.iter().map(|value| value.shown(map)).collect::<Vec<_>>().join(", ")
    }
}
