//! The appliance map with its things numbered, so that the simulator looks nothing up by name.
//!
//! An id that the map does not know is simply absent here; actions on it cannot be judged. `build` numbers
//! a map; this file looks things up.

mod build;
mod demands;
mod index;
mod replaced;

pub use demands::SectionDemands;

use super::guard::{AnswerIndex, QuestionIndex};
use super::kinds::{KindRow, TestDemand};
use super::replaced::Replacement;
use crate::model::{Answer, Family, Grouping, Handle, Id, Port, Role, SealPolicy, TestKind};
use index::ThingIndex;

macro_rules! cell {
    ($($(#[$doc:meta])* $name:ident),* $(,)?) => {$(
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $name(u32);

        impl $name {
            pub(super) fn new(index: usize) -> Self {
                // Maps are limited to 2,000 things.
                Self(u32::try_from(index).unwrap_or(u32::MAX))
            }

            /// Its position in the map's list of its kind.
            pub fn index(self) -> usize {
                usize::try_from(self.0).unwrap_or(usize::MAX)
            }
        }
    )*};
}

cell! {
    /// A section of a circuit; numbered through all circuits.
    SectionCell,
    /// An isolator.
    IsolatorCell,
    /// A connection.
    ConnectionCell,
    /// A component.
    ComponentCell,
    /// A temporary item.
    TemporaryCell,
    /// A setting.
    SettingCell,
    /// A seal.
    SealCell,
    /// A circuit.
    CircuitCell,
}

/// Anything that an id can name.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Thing {
    /// A circuit.
    Circuit(CircuitCell),
    /// A section.
    Section(SectionCell),
    /// An isolator.
    Isolator(IsolatorCell),
    /// A component.
    Component(ComponentCell),
    /// A connection.
    Connection(ConnectionCell),
    /// A seal.
    Seal(SealCell),
    /// A temporary item.
    Temporary(TemporaryCell),
    /// A setting.
    Setting(SettingCell),
}

/// One side of an isolator.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// A supply from outside the map.
    Supply,
    /// A section.
    Section(SectionCell),
}

/// A circuit.
#[derive(Clone, Debug)]
pub struct CircuitPlan {
    /// Identity.
    pub id: Id,
    /// What its kind asks for; none if the kind is not judged.
    pub row: Option<&'static KindRow>,
    /// Its sections.
    pub sections: Vec<SectionCell>,
    /// Circuits without which it is dead.
    pub fed_by: Vec<CircuitCell>,
    /// Whether its medium burns.
    pub flammable: bool,
    /// Whether gas is mixed with air ahead of the burner.
    pub premix: bool,
    /// Minutes that its charge takes to go.
    pub discharge_minutes: u32,
}

/// A section.
#[derive(Clone, Debug)]
pub struct SectionPlan {
    /// Identity.
    pub id: Id,
    /// Its circuit.
    pub circuit: CircuitCell,
    /// Whether it is empty in service.
    pub normally_empty: bool,
    /// The connections that carry it.
    pub connections: Vec<ConnectionCell>,
    /// The isolators at its ends.
    pub isolators: Vec<IsolatorCell>,
    /// Whether every way from a supply leads through an automatic isolator.
    pub behind_automatic: bool,
    /// What it is asked for.
    pub demands: SectionDemands,
}

/// An isolator.
#[derive(Clone, Debug)]
pub struct IsolatorPlan {
    /// Identity.
    pub id: Id,
    /// Its two sides; none if the map does not know one.
    pub between: Option<(Side, Side)>,
    /// What works it.
    pub handle: Handle,
    /// Whether it is open in service.
    pub normally_open: bool,
    /// Whether a lock can be put on it, if that is known.
    pub lockable: Option<bool>,
}

/// A connection.
#[derive(Clone, Debug)]
pub struct ConnectionPlan {
    /// Identity.
    pub id: Id,
    /// What it does.
    pub family: Family,
    /// The parts that it joins.
    pub joins: Vec<ComponentCell>,
    /// The section that it carries.
    pub section: Option<SectionCell>,
    /// Fasteners.
    pub count: u32,
    /// Its seals with their policies.
    pub seals: Vec<(SealCell, SealPolicy)>,
    /// Whether it is a port.
    pub port: Option<Port>,
    /// What must be out of the way to reach it.
    pub reach: Vec<ComponentCell>,
    /// Loose parts that come out with it.
    pub holds: Vec<ComponentCell>,
    /// Whether it lets go when slack.
    pub frees_when_slack: bool,
    /// How several of it belong together.
    pub grouping: Grouping,
    /// Whether it may stay made while its part is moved aside.
    pub flexible: bool,
    /// Whether its two sides must be bonded before it opens.
    pub bond: bool,
    /// Temporary items that close it while they sit on it.
    pub closed_by: Vec<TemporaryCell>,
    /// Connections with which it may be confused.
    pub looks_like: Vec<ConnectionCell>,
    /// Whether it must be tightened again, and whether that is done hot.
    pub again: Option<bool>,
    /// Tests that it needs after it was last touched.
    pub tests: Vec<TestDemand>,
}

/// A component.
#[derive(Clone, Debug)]
pub struct ComponentPlan {
    /// Identity.
    pub id: Id,
    /// What stands before it, with all that stands before that.
    pub behind: Vec<ComponentCell>,
    /// Components that it stands before.
    pub covers: Vec<ComponentCell>,
    /// Connections that are reached only once it is out of the way, its own left out.
    pub hides: Vec<ConnectionCell>,
    /// Parts that come off with it.
    pub carries: Vec<ComponentCell>,
    /// The part with which it comes off.
    pub carried_by: Option<ComponentCell>,
    /// Its connections.
    pub connections: Vec<ConnectionCell>,
    /// Its settings.
    pub settings: Vec<SettingCell>,
    /// Guarded sections that lie bare once it is out of the way.
    pub bares: Vec<SectionCell>,
    /// Whether it starts by itself when its supply comes back.
    pub starts_itself: bool,
    /// What it does.
    pub role: Option<Role>,
    /// Its mass in kilograms, without what it carries.
    pub mass_kg: f64,
    /// Tests that it needs after it was last touched.
    pub tests: Vec<TestDemand>,
}

/// A temporary item.
#[expect(clippy::struct_excessive_bools, reason = "independent facts, read by name")]
#[derive(Clone, Debug)]
pub struct TemporaryPlan {
    /// Identity.
    pub id: Id,
    /// The connection on which it sits.
    pub on: Option<ConnectionCell>,
    /// Whether it closes that.
    pub closes: bool,
    /// Whether it is there from the start.
    pub initially: bool,
    /// Whether it stays after the job.
    pub stays: bool,
    /// The connection that it bonds.
    pub bonds: Option<ConnectionCell>,
    /// The circuit whose movement it restrains.
    pub restrains: Option<CircuitCell>,
    /// The component with which it arrives.
    pub arrives_with: Option<ComponentCell>,
    /// Whether it is a gauge.
    pub gauge: bool,
    /// Whether it warns others.
    pub notice: bool,
    /// Whether inert gas flows through it.
    pub flows: bool,
}

/// A setting.
#[derive(Clone, Debug)]
pub struct SettingPlan {
    /// Identity.
    pub id: Id,
    /// The component that holds it.
    pub of: Option<ComponentCell>,
    /// The circuit that must be live to read it.
    pub readable_when: Option<CircuitCell>,
    /// Tests that its change makes stale.
    pub affects: Vec<TestKind>,
    /// Tests that it needs after it was last set.
    pub tests: Vec<TestDemand>,
}

/// A question.
#[derive(Clone, Debug)]
struct QuestionPlan {
    id: Id,
    answers: Vec<String>,
}

/// The numbered map.
#[derive(Clone, Debug, Default)]
pub struct Plant {
    circuits: Vec<CircuitPlan>,
    sections: Vec<SectionPlan>,
    isolators: Vec<IsolatorPlan>,
    connections: Vec<ConnectionPlan>,
    components: Vec<ComponentPlan>,
    temporaries: Vec<TemporaryPlan>,
    settings: Vec<SettingPlan>,
    questions: Vec<QuestionPlan>,
    seals: Vec<Id>,
    by_id: ThingIndex,
    replacements: Vec<Replacement>,
}

impl Plant {
    /// The thing with this id.
    pub fn thing(&self, id: &Id) -> Option<Thing> {
        self.by_id.get(id)
    }

    /// The circuit with this id.
    pub fn circuit_named(&self, id: &Id) -> Option<CircuitCell> {
        if let Some(Thing::Circuit(cell)) = self.thing(id) { Some(cell) } else { None }
    }

    /// The section with this id.
    pub fn section_named(&self, id: &Id) -> Option<SectionCell> {
        match self.thing(id) {
            Some(Thing::Section(cell)) => Some(cell),
            Some(Thing::Circuit(cell)) => self.circuit(cell).and_then(|c| c.sections.first().copied()),
            _ => None,
        }
    }

    /// The sections that an id stands for: itself, or all of a circuit.
    pub fn sections_named(&self, id: &Id) -> Vec<SectionCell> {
        match self.thing(id) {
            Some(Thing::Section(cell)) => vec![cell],
            Some(Thing::Circuit(cell)) => self.circuit(cell).map(|c| c.sections.clone()).unwrap_or_default(),
            _ => Vec::new(),
        }
    }

    /// The isolator with this id.
    pub fn isolator_named(&self, id: &Id) -> Option<IsolatorCell> {
        if let Some(Thing::Isolator(cell)) = self.thing(id) { Some(cell) } else { None }
    }

    /// The connection with this id.
    pub fn connection_named(&self, id: &Id) -> Option<ConnectionCell> {
        if let Some(Thing::Connection(cell)) = self.thing(id) { Some(cell) } else { None }
    }

    /// The component with this id.
    pub fn component_named(&self, id: &Id) -> Option<ComponentCell> {
        if let Some(Thing::Component(cell)) = self.thing(id) { Some(cell) } else { None }
    }

    /// The temporary item with this id.
    pub fn temporary_named(&self, id: &Id) -> Option<TemporaryCell> {
        if let Some(Thing::Temporary(cell)) = self.thing(id) { Some(cell) } else { None }
    }

    /// The setting with this id.
    pub fn setting_named(&self, id: &Id) -> Option<SettingCell> {
        if let Some(Thing::Setting(cell)) = self.thing(id) { Some(cell) } else { None }
    }

    /// The id of a thing.
    pub fn id_of(&self, thing: Thing) -> Option<&Id> {
        match thing {
            Thing::Circuit(c) => self.circuit(c).map(|p| &p.id),
            Thing::Section(c) => self.section(c).map(|p| &p.id),
            Thing::Isolator(c) => self.isolator(c).map(|p| &p.id),
            Thing::Component(c) => self.component(c).map(|p| &p.id),
            Thing::Connection(c) => self.connection(c).map(|p| &p.id),
            Thing::Temporary(c) => self.temporary(c).map(|p| &p.id),
            Thing::Setting(c) => self.settings.get(c.index()).map(|p| &p.id),
            Thing::Seal(c) => self.seals.get(c.index()),
        }
    }

    /// A circuit.
    pub fn circuit(&self, cell: CircuitCell) -> Option<&CircuitPlan> {
        self.circuits.get(cell.index())
    }

    /// A section.
    pub fn section(&self, cell: SectionCell) -> Option<&SectionPlan> {
        self.sections.get(cell.index())
    }

    /// An isolator.
    pub fn isolator(&self, cell: IsolatorCell) -> Option<&IsolatorPlan> {
        self.isolators.get(cell.index())
    }

    /// A connection.
    pub fn connection(&self, cell: ConnectionCell) -> Option<&ConnectionPlan> {
        self.connections.get(cell.index())
    }

    /// A component.
    pub fn component(&self, cell: ComponentCell) -> Option<&ComponentPlan> {
        self.components.get(cell.index())
    }

    /// A temporary item.
    pub fn temporary(&self, cell: TemporaryCell) -> Option<&TemporaryPlan> {
        self.temporaries.get(cell.index())
    }

    /// The circuit of a section.
    pub fn circuit_of(&self, section: SectionCell) -> Option<&CircuitPlan> {
        self.section(section).and_then(|s| self.circuit(s.circuit))
    }

    /// What the kind of a section's circuit asks for.
    pub fn row_of(&self, section: SectionCell) -> Option<&'static KindRow> {
        self.circuit_of(section).and_then(|c| c.row)
    }

    /// What became of each demand that the document replaces, in its order.
    pub fn replacements(&self) -> &[Replacement] {
        &self.replacements
    }

    /// All circuits in order.
    pub fn circuits(&self) -> impl Iterator<Item = (CircuitCell, &CircuitPlan)> {
        self.circuits.iter().enumerate().map(|(i, plan)| (CircuitCell::new(i), plan))
    }

    /// All sections in order.
    pub fn sections(&self) -> impl Iterator<Item = (SectionCell, &SectionPlan)> {
        self.sections.iter().enumerate().map(|(i, plan)| (SectionCell::new(i), plan))
    }

    /// All isolators in order.
    pub fn isolators(&self) -> impl Iterator<Item = (IsolatorCell, &IsolatorPlan)> {
        self.isolators.iter().enumerate().map(|(i, plan)| (IsolatorCell::new(i), plan))
    }

    /// All connections in order.
    pub fn connections(&self) -> impl Iterator<Item = (ConnectionCell, &ConnectionPlan)> {
        self.connections.iter().enumerate().map(|(i, plan)| (ConnectionCell::new(i), plan))
    }

    /// All components in order.
    pub fn components(&self) -> impl Iterator<Item = (ComponentCell, &ComponentPlan)> {
        self.components.iter().enumerate().map(|(i, plan)| (ComponentCell::new(i), plan))
    }

    /// All temporary items in order.
    pub fn temporaries(&self) -> impl Iterator<Item = (TemporaryCell, &TemporaryPlan)> {
        self.temporaries.iter().enumerate().map(|(i, plan)| (TemporaryCell::new(i), plan))
    }

    /// A setting.
    pub fn setting(&self, cell: SettingCell) -> Option<&SettingPlan> {
        self.settings.get(cell.index())
    }

    /// All settings in order.
    pub fn settings(&self) -> impl Iterator<Item = (SettingCell, &SettingPlan)> {
        self.settings.iter().enumerate().map(|(i, plan)| (SettingCell::new(i), plan))
    }

    /// How many seals there are.
    pub fn n_seals(&self) -> usize {
        self.seals.len()
    }

    /// The question with this id.
    pub fn question(&self, id: &Id) -> Option<QuestionIndex> {
        let at = self.questions.iter().position(|question| question.id == *id)?;
        QuestionIndex::try_from(at).ok()
    }

    /// An answer by position; none if the document does not know the question or the answer.
    pub fn answer(&self, answer: &Answer) -> Option<(QuestionIndex, AnswerIndex)> {
        let question = self.question(&answer.question)?;
        let plan = self.questions.get(usize::from(question))?;
        let at = plan.answers.iter().position(|known| *known == answer.answer)?;
        Some((question, AnswerIndex::try_from(at).ok()?))
    }

    /// How many answers a question has.
    pub fn n_answers(&self, question: QuestionIndex) -> AnswerIndex {
        let plan = self.questions.get(usize::from(question));
        plan.map_or(1, |plan| AnswerIndex::try_from(plan.answers.len()).unwrap_or(AnswerIndex::MAX))
    }

    /// How many questions there are.
    pub fn n_questions(&self) -> usize {
        self.questions.len()
    }

    /// The id of a question and the text of an answer.
    pub fn answer_named(&self, question: QuestionIndex, answer: AnswerIndex) -> Option<(&Id, &str)> {
        let plan = self.questions.get(usize::from(question))?;
        Some((&plan.id, plan.answers.get(usize::from(answer))?.as_str()))
    }
}
