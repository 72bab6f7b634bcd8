//! Demands that an action, or the end of the job, did not find met.

use super::{
    ComponentCell, ConnectionCell, Contents, Guard, IsolatorCell, Lapse, Place, SectionCell, TemporaryCell,
    TestDemand, Thing,
};
use crate::model::{Id, Verb};

/// A demand that concerns one thing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Demand {
    /// The isolator cannot be shut here.
    NoHandle,
    /// The appliance still runs under load.
    NotShutDown,
    /// An isolator is locked while it is open.
    LockedOpen,
    /// No lock can be put on the isolator.
    CannotLock,
    /// A part joined to what is drained is still electrified.
    DrainedLive,
    /// The readings of the proof are not those of the kind, in order.
    ProofIncomplete,
    /// A limit of the proof is wider than that of the kind.
    LooserThanDefault,
    /// The proof was taken before the guard came off.
    ProvedElsewhere,
    /// An electrical guard comes off while what it covers is fed.
    GuardOffLive,
    /// The discharge time has not passed.
    WaitTooShort,
    /// What is touched can start.
    CanStart,
    /// The appliance is running.
    Running,
    /// An isolator is opened that is open.
    AlreadyOpen,
    /// A supply comes back while a guard is off.
    RestoredGuardOff,
    /// Bare live parts are left alone.
    LeftUnsafe,
    /// A supply or filling reaches an open end.
    RestoredOpen,
    /// The appliance is started while no mains reaches it.
    StartedDead,
    /// The medium has nowhere to go.
    NowhereToGo,
    /// Nothing lets air in while it drains.
    NoVent,
    /// It is too hot to open.
    Hot,
    /// What is inside does not allow it.
    WrongContents,
    /// An element comes on while its store is not full.
    EnergisedDry,
    /// There is nothing to purge.
    NotFilled,
    /// Air is still in it at the start.
    NotBled,
    /// An open end is left without a proper closure.
    OpenEnd,
    /// There is no bond across the parting.
    NoBond,
    /// A flame is used while a flammable section is open.
    IgnitionNearOpen,
    /// Gas is purged that is not there.
    PurgeDead,
    /// Gas is let through before the joints were tested.
    PurgedBeforeTested,
    /// Gas is not purged at the start.
    NotPurged,
    /// The burner fires before the gas joints were tested.
    FiredBeforeTested,
    /// The burner fires with its air or flue open.
    FiredCaseOpen,
    /// A test that is due comes too late.
    TestOrder,
    /// A test claims a thing that it does not load.
    DoesNotLoad,
    /// A test by sight claims what cannot be seen.
    NotVisible,
    /// The loaded section is not shut.
    NotClosed,
    /// A joint that still has to be seen is about to be covered.
    AboutToBeCovered,
    /// The condensate trap is dry at the start.
    TrapDry,
    /// Gas was not tested for tightness before it was opened.
    NoBaseline,
    /// A failure block does not come back to where a pass would be.
    WayBackDiffers,
    /// More is undone than is made.
    UndoneTwice,
    /// Something is made that was not open.
    MadeNotOpened,
    /// More is made than is open.
    Counts,
    /// A temporary item closes what is made.
    BlankInside,
    /// A loose part was left out.
    LoosePartLeft,
    /// One side of the joint is not there.
    MadeToNothing,
    /// What stands before it is in the way.
    OutOfReach,
    /// Something open is tightened.
    TightenedOpen,
    /// Something is removed that is off.
    RemovedTwice,
    /// A connection still holds the part.
    StillHeld,
    /// Something is fitted that is not off.
    FitNotRemoved,
    /// A part goes on over what is unfinished.
    CoversUnfinished,
    /// A carried part stays on the old one.
    CarriedLeft,
    /// A temporary item is placed that is there.
    PlacedTwice,
    /// A temporary item is taken that is not there.
    TakenNotPlaced,
    /// The appliance runs with a temporary item in the way.
    RunWithTemporary,
    /// The appliance runs with a setting lost.
    RunWithLostSetting,
    /// A setting is put back that was never recorded.
    SettingNotRecorded,
    /// Connections that look alike are not marked.
    Unmarked,
    /// A connection that fits several places is made with a seal that was not inspected.
    SealReusedUninspected,
    /// A seal goes back that was found not sound.
    SealReusedUnsound,
    /// A new seal is claimed for a joint that was not open.
    SealRenewedUnopened,
    /// The state needed for a reading or test is not there.
    WrongState,
    /// The appliance has not run long enough.
    NotSettled,
    /// An inspection has no criterion.
    NoCriterion,
    /// A part is discarded without a reason.
    NoReason,
    /// No notice is left with an appliance out of service.
    NoNotice,
    /// Too heavy for the people named.
    TooHeavy,
    /// A temporary item that was there is gone at the end.
    TemporaryGone,
    /// An isolator that is normally closed is open at the end.
    LeftOn,
    /// A setting is not as it was found at the end.
    SettingNotRestored,
    /// The goal is not reached.
    GoalNotReached,
    /// The second tightening was not done.
    NotTightenedAgain,
    /// Braze without inert gas flowing.
    NoInertFlow,
}

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
    /// Nothing shows that it is at zero.
    NotProved {
        /// The section.
        section: SectionCell,
    },
    /// It was shown to be at zero, and that no longer holds.
    ProofLapsed {
        /// The section.
        section: SectionCell,
        /// Why.
        why: Lapse,
    },
    /// What is inside does not allow it.
    WrongContents {
        /// The section.
        section: SectionCell,
        /// What is inside.
        contents: Contents,
    },
    /// Another demand on a thing.
    Demand {
        /// The demand.
        demand: Demand,
        /// The thing of which it is not met.
        thing: Option<Thing>,
        /// Other things concerned.
        others: Vec<Thing>,
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
    /// An isolator is not open at the end although it normally is.
    NotNormal {
        /// The isolator.
        isolator: IsolatorCell,
    },
    /// A thing was touched and not tested after that.
    NotTested {
        /// The thing.
        thing: Thing,
        /// Tests of which one is missing.
        any_of: TestDemand,
    },
    /// A test that is due was not passed by now.
    TestLate {
        /// What it comes too late for.
        demand: Demand,
        /// The thing not tested.
        thing: Thing,
        /// Tests of which one is missing.
        any_of: TestDemand,
    },
    /// A part was fitted or a supply restored, and the appliance not shown to work after that.
    FunctionNotShown,
}

/// What a demand is unmet because of. Equal causes since the same place are one finding.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum CauseOf {
    /// Isolators that are open, or closed without a lock.
    Isolators(Vec<IsolatorCell>),
    /// The state of a thing.
    Thing(Thing),
    /// The running appliance.
    Appliance,
    /// A test that is missing, whatever it should have covered.
    Missing(TestDemand),
    /// The action itself.
    Action(Place, Demand),
}

/// One unmet demand.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unmet {
    /// Where it was met with: the action, or [`Place::END`].
    pub place: Place,
    /// On which ways.
    pub guard: Guard,
    /// The verb of the action; none at the end of the job.
    pub verb: Option<Verb>,
    /// The first thing of the action.
    pub thing: Option<Id>,
    /// What is not as it should be.
    pub reason: Reason,
    /// Since when it is so.
    pub since: Place,
    /// Whether it was met with after a failed test, in the steps that follow one.
    pub after_failure: bool,
}

impl Unmet {
    /// What it is unmet because of.
    pub fn cause(&self) -> CauseOf {
        match &self.reason {
            Reason::StillFed { through, .. } => CauseOf::Isolators(through.clone()),
            Reason::NotLocked { isolators, .. } => CauseOf::Isolators(isolators.clone()),
            Reason::NotReleased { section }
            | Reason::NotProved { section }
            | Reason::ProofLapsed { section, .. }
            | Reason::WrongContents { section, .. } => CauseOf::Thing(Thing::Section(*section)),
            Reason::Demand { demand, thing, others } => self.cause_of_demand(*demand, *thing, others),
            Reason::SealNotRenewed { connection, .. }
            | Reason::LeftOpen { connection }
            | Reason::LeftSlack { connection } => CauseOf::Thing(Thing::Connection(*connection)),
            Reason::LeftOff { component } => CauseOf::Thing(Thing::Component(*component)),
            Reason::TemporaryLeft { temporary } => CauseOf::Thing(Thing::Temporary(*temporary)),
            Reason::NotNormal { isolator } => CauseOf::Thing(Thing::Isolator(*isolator)),
            Reason::NotTested { any_of, .. } | Reason::TestLate { any_of, .. } => CauseOf::Missing(any_of),
            Reason::FunctionNotShown => CauseOf::Appliance,
        }
    }

    fn cause_of_demand(&self, demand: Demand, thing: Option<Thing>, others: &[Thing]) -> CauseOf {
        let isolators: Vec<IsolatorCell> = others
            .iter()
            .filter_map(|other| if let Thing::Isolator(isolator) = other { Some(*isolator) } else { None })
            .collect();
        match (demand, thing) {
            (Demand::GuardOffLive | Demand::DrainedLive | Demand::CanStart, _) if !isolators.is_empty() => {
                CauseOf::Isolators(isolators)
            }
            (Demand::Running | Demand::NotShutDown, _) => CauseOf::Appliance,
            // What is wrong lies in how the thing stands, so later demands on it have the same cause.
            (
                Demand::RestoredOpen
                | Demand::StartedDead
                | Demand::NotClosed
                | Demand::OpenEnd
                | Demand::CoversUnfinished
                | Demand::StillHeld
                | Demand::OutOfReach
                | Demand::WaitTooShort
                | Demand::LoosePartLeft
                | Demand::FiredCaseOpen
                | Demand::NotBled
                | Demand::NotPurged
                | Demand::TrapDry
                | Demand::EnergisedDry
                | Demand::CarriedLeft,
                Some(thing),
            ) => CauseOf::Thing(others.first().copied().unwrap_or(thing)),
            _ => CauseOf::Action(self.place, demand),
        }
    }
}

/// Something that this version keeps and cannot simulate.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CannotJudge {
    /// Where.
    pub place: Place,
    /// What: `the verb "hover over"`, `a step that depends on an answer`.
    pub what: String,
}
