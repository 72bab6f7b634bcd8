//! The simulator: runs a procedure's actions on the appliance map and keeps what is true when.
//!
//! # Concepts
//! - A [`Run`] is a sequence of step executions. A document's own run is its steps in order; following a
//!   job gives the run of what was really done. Both go through [`simulate`].
//! - A *cell* is one thing whose state changes: a section, an isolator, a connection, a component, a
//!   temporary item, a test of a thing, the appliance itself.
//! - A [`Place`] is a moment of a run: before everything, after an action, after a step.
//! - The [`Trace`] keeps one [`Timeline`] a cell: the places where its state changed and what it became.
//!   [`Trace::at`] looks a state up.
//! - An [`Unmet`] demand is a precondition that an action did not find. The simulation goes on as if the
//!   step had done what it says; rules turn unmet demands into findings.
//!
//! The simulator never judges, words nothing for people, and knows no rule. What a kind of circuit or a
//! kind of test asks for stands in two tables ([`kind_row`], [`test_row`]), not in code.

mod alike;
mod country_limits;
mod coverage;
mod demand;
mod effect;
mod ending;
mod failure;
mod guard;
mod kinds;
mod machine;
mod pending;
mod place;
mod plant;
mod readings;
mod replaced;
mod run;
mod service;
mod state;
mod test_kinds;
mod test_lines;
mod timeline;
mod touched;
mod trace;
mod unmet;

pub use alike::{begins_alike, runs_alike};
pub use guard::{AnswerIndex, Guard, QuestionIndex};
pub use kinds::{Hazard, KindRow, ProofReading, TestDemand, Wanted, kind_row};
pub use machine::simulate;
pub use place::Place;
pub use plant::{
    CircuitCell, ComponentCell, ConnectionCell, IsolatorCell, Plant, SealCell, SectionCell, SectionDemands,
    SettingCell, Side, TemporaryCell, Thing,
};
pub use readings::{default_readings, is_read};
pub use replaced::Replacement;
pub use run::{Execution, Run};
pub use state::{
    ApplianceState, ComponentState, ConnectionState, Contents, Energies, IsolatorState, Lapse, Proof,
    SealState, SectionState, SettingState, SupplyState, TemporaryState, TestState, Whereabouts,
};
pub use test_kinds::{Due, Loading, Stamps, TestRow, test_row};
pub use timeline::{Entry, Timeline};
pub use trace::{ApplianceCell, Cell, ClockCell, SupplyCell, TestCell, Trace};
pub use unmet::{CannotJudge, CauseOf, Demand, Reason, Unmet};

/// A list that needs no room of its own while it is as short as nearly every one: sections that are joined,
/// isolators on a way, parts that go together.
pub type Few<T> = smallvec::SmallVec<[T; 4]>;

#[cfg(test)]
mod tests;
