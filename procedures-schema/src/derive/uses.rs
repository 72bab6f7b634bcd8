//! Where a thing of the map is used: in which steps, by which other things, where else.

use crate::model::{Action, ApplianceMap, Beside, Id, Procedure, References, Step, Verb, names};
use std::collections::{BTreeMap, BTreeSet};

/// Where a thing is used.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Uses {
    /// The numbers of the steps that name it, those after a failed test among them.
    pub steps: Vec<usize>,
    /// The names of the things that refer to it.
    pub things: Vec<String>,
    /// Where else the document names it, in words.
    pub elsewhere: Vec<&'static str>,
}

impl Uses {
    /// Where a document uses a thing. A circuit is used where one of its sections is.
    pub fn of(document: &Procedure, thing: &Id) -> Self {
        let circuit = document.map.circuits.iter().find(|circuit| circuit.id == *thing);
        let inside =
            circuit.into_iter().flat_map(|circuit| circuit.sections.iter().map(|section| &section.id));
        let sought: Vec<&Id> = std::iter::once(thing).chain(inside).collect();
        let steps = document.steps.iter().enumerate();
        let steps = steps.filter(|(_, step)| sought.iter().any(|id| names(&***step, id)));
        Self {
            steps: steps.map(|(at, _)| at + 1).collect(),
            things: users(&document.map, &sought),
            elsewhere: elsewhere(document, &sought),
        }
    }

    /// Whether it is used nowhere.
    pub fn is_nowhere(&self) -> bool {
        self.steps.is_empty() && self.things.is_empty() && self.elsewhere.is_empty()
    }

    /// In words, a place after the other: `step 3, step 8, the pump, what the job is for`.
    pub fn in_words(&self) -> String {
        let steps = self.steps.iter().map(|number| format!("step {number}"));
        let things = self.things.iter().map(|name| format!("the {name}"));
        let all = steps.chain(things).chain(self.elsewhere.iter().map(|place| (*place).to_owned()));
        all.collect::<Vec<_>>().join(", ")
    }
}

/// Where everything of a map is used, worked out at once.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct UseTable {
    steps: BTreeMap<Id, Vec<usize>>,
    beside_steps: BTreeSet<Id>,
    /// The sections of each circuit.
    inside: BTreeMap<Id, Vec<Id>>,
}

impl UseTable {
    /// The table of a document.
    pub fn of(document: &Procedure) -> Self {
        let mut table = Self::default();
        for (at, step) in document.steps.iter().enumerate() {
            let mut note = |id: &Id| {
                let numbers = table.steps.entry(id.clone()).or_default();
                if numbers.last() != Some(&(at + 1)) {
                    numbers.push(at + 1);
                }
            };
            Step::clone(step).each_thing(&mut |id| note(id));
            seals_met(&document.map, step).for_each(note);
        }
        let mut map = ApplianceMap::clone(&document.map);
        let mut note = |id: &mut Id| {
            table.beside_steps.insert(id.clone());
        };
        macro_rules! look {
            ($($list:ident),*) => {$( map.$list.iter_mut().for_each(|thing| thing.each_thing(&mut note)); )*};
        }
        look!(circuits, isolators, components, connections, temporary, settings);
        document.clone().each_thing_beside(&mut |_, id| note(id));
        for circuit in &document.map.circuits {
            let sections = circuit.sections.iter().map(|section| section.id.clone());
            table.inside.insert(circuit.id.clone(), sections.collect());
        }
        table
    }

    /// The numbers of the steps that name a thing itself; of a seal also of those that undo or make its connection.
    pub fn steps(&self, thing: &Id) -> &[usize] {
        self.steps.get(thing).map(Vec::as_slice).unwrap_or_default()
    }

    /// Whether nothing names a thing, nor what is inside it.
    pub fn is_nowhere(&self, thing: &Id) -> bool {
        let is_unused = |id: &Id| !self.steps.contains_key(id) && !self.beside_steps.contains(id);
        is_unused(thing) && self.inside.get(thing).is_none_or(|sections| sections.iter().all(is_unused))
    }
}

/// The seals of the connections that a step undoes, where they come to light, or makes, new or kept.
fn seals_met<'m>(map: &'m ApplianceMap, step: &Step) -> impl Iterator<Item = &'m Id> {
    let meets = |action: &&Action| matches!(action.verb, Verb::Undo | Verb::Make);
    let met: Vec<&Id> = step.actions.iter().filter(meets).flat_map(|action| &action.on).collect();
    let met = map.connections.iter().filter(move |connection| met.contains(&&connection.id));
    met.flat_map(|connection| connection.seals.iter().map(|used| &used.seal))
}

fn users(map: &ApplianceMap, sought: &[&Id]) -> Vec<String> {
    let mut users = Vec::new();
    macro_rules! look {
        ($($list:ident),*) => {$(
            let uses = map.$list.iter().filter(|thing| sought.iter().any(|id| names(*thing, id)));
            users.extend(uses.map(|thing| thing.name.clone()));
        )*};
    }
    look!(circuits, isolators, components, connections, temporary, settings);
    users
}

fn elsewhere(document: &Procedure, sought: &[&Id]) -> Vec<&'static str> {
    let mut places = BTreeSet::new();
    document.clone().each_thing_beside(&mut |place, id| {
        if sought.contains(&&*id) {
            places.insert(place);
        }
    });
    let named = |place| match place {
        Beside::Goals => "what the job is for",
        Beside::Later => "what is found out later",
        Beside::Kit => "the kit",
        Beside::Overrides => "a replaced demand",
    };
    places.into_iter().map(named).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::{
        Aim, Circuit, CircuitKind, Component, Connection, Family, Goal, Handle, Isolator, Rest, SUPPLY, Seal,
        SealPolicy, SealUse, Section, Stage,
    };
    use std::sync::Arc;

    fn document() -> Procedure {
        let mut procedure = Procedure::new("p".into(), "Renew the pump");
        let leg = Section::new("leg".into(), "leg");
        let mut union = Connection::new("union".into(), "union", Family::Joint);
        union.joins = vec!["pump".into()];
        let mut valve = Isolator::new("valve".into(), "valve", (SUPPLY.into(), "leg".into()), Handle::Valve);
        valve.bleed = Some("union".into());
        procedure.map = Arc::new(ApplianceMap {
            circuits: vec![Circuit::new("water".into(), "water", CircuitKind::HeatingWater, leg)],
            isolators: vec![valve],
            components: vec![Component::new("pump".into(), "pump"), Component::new("bin".into(), "bin")],
            connections: vec![union],
            ..ApplianceMap::default()
        });
        let mut step = Step::new("s".into(), Stage::Strip, "Remove the pump.");
        step.actions.push(Action::new(Verb::Remove, vec!["pump".into()]));
        procedure.steps = vec![Arc::new(Step::new("r".into(), Stage::Strip, "Rest.")), Arc::new(step)];
        procedure.goals = vec![Goal { aim: Aim::Renew, thing: "pump".into(), rest: Rest::default() }];
        procedure
    }

    #[test]
    fn every_place_of_a_thing_is_told() {
        let d = document();
        assert_eq!(Uses::of(&d, &"pump".into()).in_words(), "step 2, the union, what the job is for");
        assert_eq!(Uses::of(&d, &"union".into()).in_words(), "the valve");
        assert_eq!(Uses::of(&d, &"water".into()).in_words(), "the valve");
        assert!(Uses::of(&d, &"bin".into()).is_nowhere());
        assert!(!Uses::of(&d, &"leg".into()).is_nowhere());
    }

    #[test]
    fn a_seal_is_used_where_its_connection_is_undone_and_made() {
        let mut d = document();
        let map = Arc::make_mut(&mut d.map);
        map.seals.push(Seal::new("washer".into(), "washer", SealPolicy::AlwaysRenew));
        let used = SealUse { seal: "washer".into(), quantity: 1, rest: Rest::default() };
        map.connections[0].seals.push(used);
        assert_eq!(UseTable::of(&d).steps(&"washer".into()), [0; 0]);
        for verb in [Verb::Undo, Verb::Test, Verb::Make] {
            let mut step = Step::new("t".into(), Stage::Refit, "Make the union.");
            step.actions.push(Action::new(verb, vec!["union".into()]));
            d.steps.push(Arc::new(step));
        }
        assert_eq!(UseTable::of(&d).steps(&"washer".into()), [3, 5]);
    }

    #[test]
    fn the_table_says_of_each_thing_what_is_said_of_it_alone() {
        let d = document();
        let table = UseTable::of(&d);
        for (_, id, ..) in d.map.things() {
            assert_eq!(table.is_nowhere(id), Uses::of(&d, id).is_nowhere(), "{id}");
        }
        assert_eq!(table.steps(&"pump".into()), [2]);
        assert_eq!(table.steps(&"bin".into()), [0; 0]);
    }
}
