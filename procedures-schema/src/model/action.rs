//! Actions: the typed reading of a step's words.
//!
//! One shape serves all verbs: a verb, the things it acts on, and the details that the verb takes. Which
//! details belong to which verb is written once, in the grammar of the notation; a detail that a verb does
//! not take changes nothing.

use super::words::words;
use super::{Id, Known, Rest, Span, Step, Verb};
use crate::units::{Measured, Range};
use serde::{Deserialize, Serialize};

words! {
    /// Whether what is fitted or sealed is new.
    Renewal {
        /// A new one.
        New = "new",
        /// The one that came off.
        Same = "same",
    }
}

words! {
    /// How energy or medium is released.
    Means {
        /// Let out at the bottom.
        Drain = "drain",
        /// Let out to the air.
        Vent = "vent",
        /// Drawn into a cylinder.
        Recover = "recover",
        /// Pumped out to vacuum.
        Evacuate = "evacuate",
        /// Washed out.
        Flush = "flush",
        /// Held back by a block.
        Block = "block",
    }
}

words! {
    /// What is released.
    Energy {
        /// Pressure.
        Pressure = "pressure",
        /// Heat.
        Heat = "heat",
        /// Electrical charge.
        Charge = "charge",
        /// Movement.
        Motion = "motion",
    }
}

words! {
    /// How the appliance runs, or how a way ends.
    Mode {
        /// At the highest rate.
        Max = "max",
        /// At the lowest rate.
        Min = "min",
        /// For heating.
        Heat = "heat",
        /// For hot water.
        HotWater = "hot water",
        /// For cooling.
        Cool = "cool",
        /// Against a load.
        Load = "load",
        /// The job ends with the appliance in service.
        InService = "in service",
        /// The job ends with the appliance left safe.
        LeftSafe = "left safe",
    }
}

words! {
    /// Kinds of tests.
    TestKind {
        /// Protective conductor continuity.
        EarthContinuity = "earth continuity",
        /// Insulation resistance.
        Insulation = "insulation",
        /// Polarity of the supply.
        Polarity = "polarity",
        /// Gas tightness by gauge.
        Tightness = "tightness",
        /// Leak detection fluid or detector.
        LeakFluid = "leak fluid",
        /// Working gas pressure.
        WorkingPressure = "working pressure",
        /// Gas rate.
        GasRate = "gas rate",
        /// Combustion figures.
        Combustion = "combustion",
        /// Flue integrity.
        FlueIntegrity = "flue integrity",
        /// Fill pressure.
        FillPressure = "fill pressure",
        /// Leak check cold.
        LeakCold = "leak cold",
        /// Leak check hot.
        LeakHot = "leak hot",
        /// Condensate trap filled and tight.
        TrapFilled = "trap filled",
        /// Relief valve lifted and reseated.
        ReliefLever = "relief lever",
        /// Pressure hold.
        PressureHold = "pressure hold",
        /// Vacuum hold.
        VacuumHold = "vacuum hold",
        /// Function of a part.
        Function = "function",
    }
}

words! {
    /// What a reading measures, where the unit leaves it open.
    ReadingKind {
        /// Pressure against the air outside.
        GaugePressure = "gauge pressure",
        /// Pressure between two places.
        DifferentialPressure = "differential pressure",
        /// Pressure against vacuum.
        AbsolutePressure = "absolute pressure",
        /// Tightening torque.
        Torque = "torque",
        /// Length, gap, level.
        Length = "length",
        /// Mass.
        Mass = "mass",
        /// Temperature.
        Temperature = "temperature",
        /// Difference of two temperatures.
        TemperatureDifference = "temperature difference",
        /// Duration.
        Time = "time",
        /// Electrical potential difference.
        Voltage = "voltage",
        /// Electrical current, also of a flame.
        Current = "current",
        /// Electrical resistance.
        Resistance = "resistance",
        /// Volume.
        Volume = "volume",
        /// Volume flow.
        Flow = "flow",
        /// Power or heat input.
        Power = "power",
        /// Fraction of a whole.
        Fraction = "fraction",
        /// Number of things.
        Count = "count",
    }
}

/// A value that a formula of a reading uses.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Input {
    /// What it is, in words: `installation volume`.
    pub name: String,
    /// Its value, or who finds it out.
    pub value: Known<Measured>,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

/// A value to take.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Reading {
    /// What is read, in words: `L to N`, `gauge on the drain`.
    pub what: String,
    /// What it measures, where the unit leaves it open.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub kind: Option<ReadingKind>,
    /// The accepted values; a reading without limits is only written down.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub limits: Option<Range>,
    /// Who finds the limits out, while there are none.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub later: String,
    /// An observation that is confirmed instead of a figure: `no flow for 60 s`.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub seen: String,
    /// The calculation that gives the limits, by name.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub formula: String,
    /// What the calculation uses.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub inputs: Vec<Input>,
    /// The instrument it is taken with, by id.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub instrument: Option<Id>,
    /// Where the limits come from, in words.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub source: String,
    /// The entry of `sources` that they come from.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cites: Option<Id>,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

/// What to do when a test or reading fails.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct OnFail {
    /// Read again, or use another instrument, before anything else.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub again: String,
    /// Steps that end in the same test.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub steps: Vec<Step>,
    /// Report and finish with the appliance left safe.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub leave_safe: bool,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

/// One typed action.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[cfg_attr(feature = "cli", derive(schemars::JsonSchema))]
pub struct Action {
    /// What is done.
    #[serde(rename = "do")]
    pub verb: Verb,
    /// The things it is done to, by id.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub on: Vec<Id>,
    /// How many of a connection's count; all of them if absent.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub count: Option<u32>,
    /// For *test*: which test.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub test: Option<TestKind>,
    /// For *fit*: new or the same.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub part: Option<Renewal>,
    /// For *make*: whether the seals are new.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub seal: Option<Renewal>,
    /// For *make* and *tighten*: the torque.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub torque: Option<Range>,
    /// For *make*, *tighten* and *slacken*: the pattern.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pattern: Option<String>,
    /// For *release*: what is let out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub what: Option<Energy>,
    /// For *release*: how.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub by: Option<Means>,
    /// For *release*, *purge*, *charge*: the port or cracked joint.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub through: Option<Id>,
    /// For *release*: the vent opened high up.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub vent: Option<Id>,
    /// For *prove*, *test*, *read*: where it is taken.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at: Option<Id>,
    /// For *charge* and *purge*: with what.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub with: Option<String>,
    /// Where the medium goes, or what is aimed at: `slack`, `as found`, `to the gully`.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub to: Option<String>,
    /// For *start*, *test* and *finish*: the mode.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mode: Option<Mode>,
    /// For *release*: the temperature read before.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub temperature: Option<Measured>,
    /// For *wait*, and for *clean* that soaks: how long at least.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub duration: Option<Measured>,
    /// For *wait*, and for *clean* that soaks: how long at most.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at_most: Option<Measured>,
    /// For *wait*: the step before which it must be over, while other steps are done; here, if absent.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub until: Option<Id>,
    /// For *wait*: whether nobody stays.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub unattended: bool,
    /// For *restore* and ports: justified live work.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub live: bool,
    /// For *inspect* and *hold*: what decides.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub criterion: Option<String>,
    /// For *ask* and *inspect*: the question.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ask: Option<Id>,
    /// For *fit* of a new part: carried parts that come new with it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub with_new: Vec<Id>,
    /// For *undo*: only one of the things named, the one that a failed test points at.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub one_of: bool,
    /// For *remove* and *discard*: why.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reason: Option<String>,
    /// For *tell*: who is told. For *hold*: the role that lifts it. For *photograph*: of what.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub text: Option<String>,
    /// Values to take; for *prove* and *test* those of the row if absent.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub readings: Vec<Reading>,
    /// For *test* and *read*: what to do when it fails.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub on_fail: Option<OnFail>,
    /// The words that say it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub says: Vec<Span>,
    /// The words among them that mean it, where somebody has picked that and no phrase says it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub meant_by: Option<String>,
    /// Unknown fields.
    #[serde(flatten)]
    pub rest: Rest,
}

impl Action {
    /// The bare action: `verb` on `on`, no details.
    pub fn new(verb: Verb, on: Vec<Id>) -> Self {
        Self {
            verb,
            on,
            count: None,
            test: None,
            part: None,
            seal: None,
            torque: None,
            pattern: None,
            what: None,
            by: None,
            through: None,
            vent: None,
            at: None,
            with: None,
            to: None,
            mode: None,
            temperature: None,
            duration: None,
            at_most: None,
            until: None,
            unattended: false,
            live: false,
            criterion: None,
            ask: None,
            with_new: Vec::new(),
            one_of: false,
            reason: None,
            text: None,
            readings: Vec::new(),
            on_fail: None,
            says: Vec::new(),
            meant_by: None,
            rest: Rest::default(),
        }
    }
}
