//! One figure of a connection: as words state it, and as the map holds it.

use super::super::agreement::is_thread;
use crate::model::{ApplianceMap, Connection, Family, Grouping, Known, Seal, Size, Tight};
use crate::units::{Measured, Range};

/// A figure of a connection.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// How many there are.
    Count(u32),
    /// Its thread.
    Thread(String),
    /// Its width across flats.
    Flats(Measured),
    /// How tight it is made.
    Torque(Range),
    /// Its seal.
    Seal(SealNamed),
}

/// A seal by its name, which holds its size.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SealNamed {
    pub(super) name: String,
    pub(super) measured: Option<String>,
}

impl std::fmt::Display for Value {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Self::Count(n) => write!(f, "{n}"),
            Self::Thread(thread) => f.write_str(thread),
            Self::Flats(flats) => write!(f, "{flats}"),
            Self::Torque(torque) => write!(f, "{torque}"),
            Self::Seal(seal) => f.write_str(&seal.name),
        }
    }
}

impl Value {
    /// Whether both are figures of one sort.
    pub(super) fn is_sort_of(&self, other: &Self) -> bool {
        std::mem::discriminant(self) == std::mem::discriminant(other)
    }

    /// Whether both say the same; of a thread the usual pitch need not be said.
    pub(super) fn agrees(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Thread(one), Self::Thread(other)) => is_thread(one, other),
            (Self::Flats(one), Self::Flats(other)) => one.value == other.value && one.unit == other.unit,
            (one, other) => one == other,
        }
    }

    /// The figure of this sort that the map holds of a connection.
    pub(super) fn held(&self, map: &ApplianceMap, connection: &Connection) -> Option<Self> {
        let size = connection.size.as_ref().and_then(Known::value);
        match self {
            Self::Count(_) => Some(Self::Count(connection.count)),
            Self::Thread(_) => size?.thread.clone().map(Self::Thread),
            Self::Flats(_) => size?.across_flats.clone().map(Self::Flats),
            Self::Torque(_) => tight(connection)?.torque.clone().map(Self::Torque),
            Self::Seal(_) => {
                let seal = only_seal(map, connection)?;
                let measured = seal.size.as_ref().and_then(Known::value).cloned();
                Some(Self::Seal(SealNamed { name: seal.name.clone(), measured }))
            }
        }
    }

    /// Puts the figure on a connection, all but its seal, which is a thing of its own; `is_each` says whether several
    /// of it are several joints.
    pub(super) fn put(&self, connection: &mut Connection, is_each: bool) {
        match self {
            Self::Count(n) => {
                connection.count = (*n).clamp(1, 999);
                if connection.count > 1 && is_each && connection.family == Family::Joint {
                    connection.grouping = Grouping::Each;
                }
            }
            Self::Thread(thread) => resize(connection, |size| size.thread = Some(thread.clone())),
            Self::Flats(flats) => resize(connection, |size| size.across_flats = Some(flats.clone())),
            Self::Torque(torque) => {
                let tight = tight(connection).cloned().unwrap_or_default();
                let torque = Some(torque.clone());
                connection.tight = Some(Known::Value(Tight { torque, ..tight }));
            }
            Self::Seal(_) => {}
        }
    }
}

fn tight(connection: &Connection) -> Option<&Tight> {
    connection.tight.as_ref().and_then(Known::value)
}

/// Changes the size of a connection; what was to be found out of it is said now.
fn resize(connection: &mut Connection, change: impl FnOnce(&mut Size)) {
    let mut size = connection.size.as_ref().and_then(Known::value).cloned().unwrap_or_default();
    change(&mut size);
    connection.size = Some(Known::Value(size));
}

/// The seal of a connection that has one.
pub(super) fn only_seal<'m>(map: &'m ApplianceMap, connection: &Connection) -> Option<&'m Seal> {
    let [used] = connection.seals.as_slice() else { return None };
    map.seals.iter().find(|seal| seal.id == used.seal)
}
