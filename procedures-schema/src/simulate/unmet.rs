//! Demands that an action, or the end of the job, did not find met.

use super::{ComponentCell, ConnectionCell, IsolatorCell, Place, SectionCell, TemporaryCell, TestDemand};
use crate::model::{Id, Verb};

/// What was not as it should be. Data only: rules word it.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Reason {
    /// A supply, or a neighbouring section under pressure, still reaches the section.
    StillFed {
        /// The section.
        section: SectionCell,
        /// The open isolators on the way, from the section outwards.
        through: Vec<IsolatorCell>,
    },
    /// It is cut off, but a closed isolator is not locked.
    NotLocked {
        /// The section.
        section: SectionCell,
        /// The closed isolators without a lock.
        isolators: Vec<IsolatorCell>,
    },
    /// It is cut off, but still under pressure.
    NotReleased {
        /// The section.
        section: SectionCell,
    },
    /// Nothing shows that it is at zero, or the proof no longer holds.
    NotProved {
        /// The section.
        section: SectionCell,
    },
    /// A seal that is always renewed was made with again.
    SealNotRenewed {
        /// The connection.
        connection: ConnectionCell,
        /// The position of the seal in the map's list.
        seal: usize,
    },
    /// A connection is not fully made at the end: fasteners open.
    LeftOpen {
        /// The connection.
        connection: ConnectionCell,
    },
    /// A connection is not fully made at the end: fasteners slack.
    LeftSlack {
        /// The connection.
        connection: ConnectionCell,
    },
    /// A component is not in its place at the end.
    LeftOff {
        /// The component.
        component: ComponentCell,
    },
    /// A temporary item is still in place at the end.
    TemporaryLeft {
        /// The item.
        temporary: TemporaryCell,
    },
    /// An isolator is not in its normal position at the end.
    NotNormal {
        /// The isolator.
        isolator: IsolatorCell,
    },
    /// A connection was touched and not tested after that.
    ConnectionNotTested {
        /// The connection.
        connection: ConnectionCell,
        /// Tests of which one is missing.
        any_of: TestDemand,
    },
    /// A section was released or filled and not tested after that.
    SectionNotTested {
        /// The section.
        section: SectionCell,
        /// Tests of which one is missing.
        any_of: TestDemand,
    },
    /// A part was fitted or a supply restored, and the appliance not shown to work after that.
    FunctionNotShown,
}

/// One unmet demand.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unmet {
    /// Where it was met with: the action, or [`Place::END`].
    pub place: Place,
    /// The verb of the action; none at the end of the job.
    pub verb: Option<Verb>,
    /// The first thing of the action.
    pub thing: Option<Id>,
    /// What is not as it should be.
    pub reason: Reason,
    /// Since when it is so. With the reason it is the cause: the same cause is one finding.
    pub since: Place,
}

/// Something that this version keeps and cannot simulate.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CannotJudge {
    /// Where.
    pub place: Place,
    /// What: `the verb "hover over"`, `a step that depends on an answer`.
    pub what: String,
}
