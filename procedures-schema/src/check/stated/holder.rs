//! Where an action, or the map, holds what words state, so that it can be changed there.

use crate::model::Span;

/// Where a figure is held. Actions and readings are told by their positions in the step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::check) enum Holder {
    /// The torque of an action.
    Torque(usize),
    /// The torque that the map knows of the thing at the second position of those that an action names.
    MapTorque(usize, usize),
    /// How long an action takes.
    Time(usize),
    /// The temperature of an action.
    Temperature(usize),
    /// The limits of a reading of an action.
    Limits(usize, usize),
    /// A stretch of a text.
    Text(Text, Span),
    /// What the table demands of an action, which no document holds.
    Table(usize),
    /// How many an action takes.
    Count(usize),
    /// How many the map knows of the thing at the second position of those that an action names.
    MapCount(usize, usize),
    /// The thread that the map knows of it.
    Thread(usize, usize),
    /// The width across flats that the map knows of it.
    Flats(usize, usize),
    /// No figure but a thing of an action.
    Thing(usize),
}

impl Holder {
    /// The position of the action.
    pub(super) fn action(self) -> usize {
        match self {
            Self::Torque(k)
            | Self::MapTorque(k, _)
            | Self::Time(k)
            | Self::Temperature(k)
            | Self::Limits(k, _)
            | Self::Table(k)
            | Self::Count(k)
            | Self::MapCount(k, _)
            | Self::Thread(k, _)
            | Self::Flats(k, _)
            | Self::Thing(k) => k,
            Self::Text(text, _) => text.action(),
        }
    }

    /// The position, among the things that the action names, of the one whose figure it is; the first, if it is of all.
    pub(super) fn thing(self) -> usize {
        match self {
            Self::MapTorque(_, on) | Self::MapCount(_, on) | Self::Thread(_, on) | Self::Flats(_, on) => on,
            _ => 0,
        }
    }
}

/// A text of an action.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(in crate::check) enum Text {
    /// What decides.
    Criterion(usize),
    /// What is aimed at.
    To(usize),
    /// What is read.
    What(usize, usize),
    /// What is seen.
    Seen(usize, usize),
}

impl Text {
    /// The position of the action.
    pub(in crate::check) fn action(self) -> usize {
        match self {
            Self::Criterion(k) | Self::To(k) | Self::What(k, _) | Self::Seen(k, _) => k,
        }
    }
}
