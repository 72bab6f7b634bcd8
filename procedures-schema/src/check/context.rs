//! What a rule may look at, and the names it uses for it.

use super::cause::thing_of;
use super::lower::Names;
use super::sayings::Heard;
use super::stated::Rivals;
use crate::lexicon::Lexicon;
use crate::model::{Action, Connection, Id, Procedure, SUPPLY, Seal, Step};
use crate::simulate::{Guard, Place, SectionCell, Side, Thing, Trace, Unmet};
use std::cell::OnceCell;

/// A document with its trace.
pub(super) struct Context<'c> {
    pub(super) procedure: &'c Procedure,
    pub(super) trace: &'c Trace,
    /// The words of the document's language, if there are any.
    pub(super) lexicon: Option<&'static Lexicon>,
    /// What the words of the steps say.
    pub(super) heard: &'c Heard,
    /// The positions of the steps of which the rules that look at each step by itself are not known to find nothing.
    open: &'c [usize],
    names: OnceCell<Names>,
    rivals: OnceCell<Rivals>,
}

impl<'c> Context<'c> {
    /// A document with its trace, what its words say, and the positions of the steps that have to be looked at.
    pub(super) fn new(
        procedure: &'c Procedure,
        trace: &'c Trace,
        heard: &'c Heard,
        open: &'c [usize],
    ) -> Self {
        let lexicon = Lexicon::for_language(&procedure.language);
        let (names, rivals) = (OnceCell::new(), OnceCell::new());
        Self { procedure, trace, lexicon, heard, open, names, rivals }
    }

    /// The steps that have to be looked at by themselves, with their positions.
    pub(super) fn open_steps(&self) -> impl Iterator<Item = (usize, &'c Step)> + use<'c> {
        let (procedure, open) = (self.procedure, self.open);
        open.iter().filter_map(|at| procedure.steps.get(*at).map(|step| (*at, step.as_ref())))
    }

    /// What the map calls its things; few documents hold words for which it is asked.
    pub(super) fn names(&self) -> &Names {
        self.names.get_or_init(|| {
            let things = self.procedure.map.things();
            Names::of(things.flat_map(|(_, _, name, aliases)| {
                std::iter::once(name).chain(aliases.iter().map(String::as_str))
            }))
        })
    }

    /// The nouns by which the map calls things of different names.
    pub(super) fn rivals(&self) -> &Rivals {
        self.rivals.get_or_init(|| Rivals::of(&self.procedure.map))
    }

    /// The step executed at a place.
    pub(super) fn step_at(&self, place: Place) -> Option<&'c Step> {
        let position = self.trace.run().steps().get(place.execution()?)?;
        self.procedure.steps.get(*position).map(AsRef::as_ref)
    }

    /// The id of the step executed at a place.
    pub(super) fn step_id_at(&self, place: Place) -> Option<Id> {
        self.step_at(place).map(|step| step.id.clone())
    }

    /// The action carried out at a place.
    pub(super) fn action_at(&self, place: Place) -> Option<&'c Action> {
        self.step_at(place)?.actions.get(place.action()?)
    }

    /// The connection with this id.
    pub(super) fn connection(&self, id: &Id) -> Option<&'c Connection> {
        let cell = self.trace.plant().connection_named(id)?;
        self.procedure.map.connections.get(cell.index())
    }

    /// The seal with this id.
    pub(super) fn seal(&self, id: &Id) -> Option<&'c Seal> {
        let Thing::Seal(cell) = self.trace.plant().thing(id)? else { return None };
        self.procedure.map.seals.get(cell.index())
    }

    /// "step 4", or "the start" or "the end".
    pub(super) fn step_name(&self, place: Place) -> String {
        match place.execution().and_then(|execution| self.trace.run().steps().get(execution)) {
            Some(position) => format!("step {}", position + 1),
            None if place == Place::END => "the end".to_owned(),
            None => "the start".to_owned(),
        }
    }

    /// The name of a thing, with its article. A circuit's only section goes by the name of the circuit.
    pub(super) fn the(&self, thing: Thing) -> String {
        if let Thing::Section(section) = thing
            && let Some(circuit) = self.trace.plant().circuit_of(section)
            && circuit.sections.len() == 1
        {
            return self.the_id(&circuit.id);
        }
        self.trace.plant().id_of(thing).map_or_else(|| "a thing".to_owned(), |id| self.the_id(id))
    }

    /// The name of a thing, without looking through the whole map; none of what is not on it.
    fn name_of(&self, id: &Id) -> Option<&'c str> {
        let map = &self.procedure.map;
        macro_rules! name {
            ($list:ident, $cell:ident) => {
                map.$list.get($cell.index()).filter(|thing| thing.id == *id).map(|thing| thing.name.as_str())
            };
        }
        let name = match self.trace.plant().thing(id) {
            Some(Thing::Circuit(cell)) => name!(circuits, cell),
            Some(Thing::Isolator(cell)) => name!(isolators, cell),
            Some(Thing::Component(cell)) => name!(components, cell),
            Some(Thing::Connection(cell)) => name!(connections, cell),
            Some(Thing::Seal(cell)) => name!(seals, cell),
            Some(Thing::Temporary(cell)) => name!(temporary, cell),
            Some(Thing::Setting(cell)) => name!(settings, cell),
            Some(Thing::Section(_)) | None => None,
        };
        let searched = || map.things().find(|(_, known, ..)| *known == id).map(|(_, _, name, _)| name);
        name.or_else(searched)
    }

    /// The name of what an id stands for, with its article. The id itself says nothing to people.
    pub(super) fn the_id(&self, id: &Id) -> String {
        let Some(name) = self.name_of(id) else {
            let is_supply = id.as_str() == SUPPLY;
            return if is_supply { "the supply" } else { "a thing that is not on the appliance map" }
                .to_owned();
        };
        // What stands behind a comma in a name would run into the words behind it.
        let name = match name.split_once(", ") {
            Some((name, more)) => format!("{name} ({more})"),
            None => name.to_owned(),
        };
        if name.starts_with("the ") { name } else { format!("the {name}") }
    }

    /// The circuit whose lane shows an unmet demand.
    pub(super) fn circuit_of(&self, unmet: &Unmet) -> Option<Id> {
        let section = self.section_of(thing_of(unmet)?)?;
        self.trace.plant().circuit_of(section).map(|circuit| circuit.id.clone())
    }

    fn section_of(&self, thing: Thing) -> Option<SectionCell> {
        let plant = self.trace.plant();
        match thing {
            Thing::Section(section) => Some(section),
            Thing::Connection(connection) => plant.connection(connection)?.section,
            Thing::Circuit(circuit) => plant.circuit(circuit)?.sections.first().copied(),
            Thing::Isolator(isolator) => {
                let (a, b) = plant.isolator(isolator)?.between?;
                [b, a].into_iter().find_map(|side| match side {
                    Side::Section(section) => Some(section),
                    Side::Supply => None,
                })
            }
            _ => None,
        }
    }

    /// The answers of a guard in words.
    pub(super) fn answers(&self, guard: &Guard) -> Vec<String> {
        let known = self.trace.run().way();
        guard
            .answers()
            .iter()
            .filter(|(question, _)| known.answer(*question).is_none())
            .filter_map(|(question, answer)| self.trace.plant().answer_named(*question, *answer))
            .map(|(question, answer)| {
                let found = self.procedure.questions.iter().find(|q| q.id == *question);
                let words =
                    found.map_or("a question that is not listed:", |question| question.words.as_str());
                format!("{words} {answer}")
            })
            .collect()
    }
}
