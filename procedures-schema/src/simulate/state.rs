//! The states of the cells.

use super::guard::QuestionIndex;
use super::{Few, Place, SectionCell};
use crate::model::{Energy, Mode};

/// The appliance as a whole.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ApplianceState {
    /// The mode in which it runs; none if it is off. A job begins with it running.
    pub running: Option<Mode>,
    /// The second of the job in which it took up this mode.
    pub since_second: u32,
    /// When it was last shown to work.
    pub shown_to_work: Option<Place>,
    /// How the way ended, if it has.
    pub ended: Option<Mode>,
}

/// An isolator.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct IsolatorState {
    /// Whether it lets through. Of automatic ones and relief devices it is the position in service: whether
    /// they let through is worked out from what they are looked at for.
    pub open: bool,
    /// Whether it is locked.
    pub locked: bool,
}

/// Stored energies of a section.
#[expect(clippy::struct_excessive_bools, reason = "a set of four, read by name")]
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Energies {
    /// Pressure.
    pub pressure: bool,
    /// Heat.
    pub heat: bool,
    /// Electrical charge.
    pub charge: bool,
    /// Movement.
    pub motion: bool,
}

impl Energies {
    /// These without one of them.
    #[must_use]
    pub fn without(mut self, energy: &Energy) -> Self {
        match energy {
            Energy::Pressure => self.pressure = false,
            Energy::Heat => self.heat = false,
            Energy::Charge => self.charge = false,
            Energy::Motion => self.motion = false,
            Energy::Other(_) => {}
        }
        self
    }

    /// Those of either.
    #[must_use]
    pub fn with(self, other: Self) -> Self {
        Self {
            pressure: self.pressure || other.pressure,
            heat: self.heat || other.heat,
            charge: self.charge || other.charge,
            motion: self.motion || other.motion,
        }
    }
}

/// What is inside a section.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Contents {
    /// The medium alone.
    Medium,
    /// The medium with air in it.
    Mixed,
    /// Air.
    Air,
    /// What is left of a refrigerant in its oil.
    Residual,
    /// Inert gas.
    Inert,
    /// Nothing.
    Vacuum,
}

/// Why a proof no longer holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Lapse {
    /// An isolator of its group was opened.
    Restored,
    /// The appliance was started.
    Started,
    /// It was filled, charged or purged.
    Filled,
    /// People left.
    LeftAlone,
    /// It is older than proofs of its kind may get.
    Old,
}

/// Whether a section was shown to be at zero.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Proof {
    /// Never.
    None,
    /// Yes, and it holds.
    Proved {
        /// The second of the job in which it was shown.
        second: u32,
    },
    /// It was, and no longer holds.
    Lapsed(Lapse),
}

impl Proof {
    /// Whether it holds.
    pub fn holds(self) -> bool {
        matches!(self, Self::Proved { .. })
    }
}

/// A section of a circuit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SectionState {
    /// What it stores.
    pub stored: Energies,
    /// What is inside.
    pub contents: Contents,
    /// Whether it is proved.
    pub proof: Proof,
    /// The second of the job since which nothing feeds it: no supply, and no neighbour under pressure.
    pub off_since: Option<u32>,
    /// When it was last released, filled or purged; what makes its fill pressure stale.
    pub last_filled: Option<Place>,
}

/// How a section stands to its supplies; worked out from the isolators, kept for whoever looks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SupplyState {
    /// Whether a supply, or a neighbour under pressure, still reaches it.
    pub fed: bool,
    /// Whether every closed isolator around it is locked, and there is one.
    pub locked: bool,
}

/// A connection.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ConnectionState {
    /// Fasteners made.
    pub made: u32,
    /// Fasteners slack.
    pub slack: u32,
    /// Fasteners open.
    pub open: u32,
    /// When it was last touched.
    pub last_touched: Option<Place>,
    /// When it was last opened or slackened.
    pub last_opened: Option<Place>,
    /// Whether its seals were disturbed since it was last made.
    pub seals_disturbed: bool,
    /// How many of it were fully open at once since it was last made.
    pub most_open: u32,
    /// Whether it was marked or photographed.
    pub marked: bool,
    /// Whether it was tightened again after it was made.
    pub tightened_again: bool,
}

impl ConnectionState {
    /// Whether every fastener is made.
    pub fn is_made(&self) -> bool {
        self.slack == 0 && self.open == 0
    }

    /// How many fasteners it has.
    pub fn count(&self) -> u32 {
        self.made + self.slack + self.open
    }
}

/// Where a component is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Whereabouts {
    /// In its place.
    Fitted,
    /// Moved out of the way, still attached.
    Aside,
    /// Off.
    Off,
    /// Gone for good.
    Discarded,
}

/// A component.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ComponentState {
    /// Where it is.
    pub whereabouts: Whereabouts,
    /// Whether a new one was fitted.
    pub new: bool,
    /// Whether it is on the part that carries it.
    pub on_carrier: bool,
    /// Whether it was taken off one carrier and put on another, on the bench.
    pub put_over: bool,
    /// When it was last touched.
    pub last_touched: Option<Place>,
    /// When it was last cleaned.
    pub cleaned: Option<Place>,
    /// When it was last inspected.
    pub inspected: Option<Place>,
}

/// A seal.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SealState {
    /// When it was last inspected.
    pub inspected: Option<Place>,
    /// The question that the inspection put; its first answer says that the seal is sound.
    pub question: Option<QuestionIndex>,
    /// Whether a new one went in.
    pub renewed: Option<Place>,
}

/// A temporary item.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TemporaryState {
    /// Whether it is in place.
    pub in_place: bool,
}

/// A setting.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SettingState {
    /// When it was recorded.
    pub recorded: Option<Place>,
    /// When it was last set.
    pub last_set: Option<Place>,
    /// Whether it was lost with the part that held it.
    pub lost: bool,
    /// Whether it differs from what was found.
    pub changed: bool,
}

/// A test of one thing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TestState {
    /// When it last passed.
    pub passed: Option<Place>,
    /// The sections that were loaded then.
    pub loaded: Few<SectionCell>,
}
