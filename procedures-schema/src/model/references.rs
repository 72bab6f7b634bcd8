//! Which things of the appliance map an object names by id, all in one place.
//!
//! Own ids, images, kit, sources, questions and steps are not things of the map and are not visited.

use super::{
    Action, Circuit, Component, Connection, Id, Isolator, Procedure, Seal, Section, Setting, Step, Temporary,
};

/// Something that names things of the map.
pub trait References {
    /// Visits each id of a thing, in the order of the fields; a thing named twice is visited twice.
    fn each_thing(&mut self, visit: &mut dyn FnMut(&mut Id));
}

impl References for Circuit {
    fn each_thing(&mut self, visit: &mut dyn FnMut(&mut Id)) {
        self.fed_by.iter_mut().for_each(visit);
    }
}

impl References for Section {
    fn each_thing(&mut self, _: &mut dyn FnMut(&mut Id)) {}
}

impl References for Isolator {
    fn each_thing(&mut self, visit: &mut dyn FnMut(&mut Id)) {
        let (one, other) = &mut self.between;
        [one, other].into_iter().chain(&mut self.bleed).for_each(visit);
    }
}

impl References for Component {
    fn each_thing(&mut self, visit: &mut dyn FnMut(&mut Id)) {
        let one = [&mut self.carried_by, &mut self.held_in].into_iter().flatten();
        self.behind.iter_mut().chain(one).chain(&mut self.moved_by).for_each(visit);
    }
}

impl References for Connection {
    fn each_thing(&mut self, visit: &mut dyn FnMut(&mut Id)) {
        let seals = self.seals.iter_mut().map(|used| &mut used.seal);
        let reach = self.reached_after.iter_mut().flatten();
        let of_fields = self.joins.iter_mut().chain(&mut self.section).chain(seals);
        of_fields.chain(&mut self.looks_like).chain(reach).for_each(visit);
    }
}

impl References for Seal {
    fn each_thing(&mut self, _: &mut dyn FnMut(&mut Id)) {}
}

impl References for Temporary {
    fn each_thing(&mut self, visit: &mut dyn FnMut(&mut Id)) {
        let Self { on, bonds, restrains, flow, arrives_with, .. } = self;
        [on, bonds, restrains, flow, arrives_with].into_iter().flatten().for_each(visit);
    }
}

impl References for Setting {
    fn each_thing(&mut self, visit: &mut dyn FnMut(&mut Id)) {
        [&mut self.of, &mut self.readable_when].into_iter().flatten().for_each(visit);
    }
}

impl References for Action {
    fn each_thing(&mut self, visit: &mut dyn FnMut(&mut Id)) {
        let places = [&mut self.through, &mut self.vent, &mut self.at].into_iter().flatten();
        self.on.iter_mut().chain(places).chain(&mut self.with_new).for_each(&mut *visit);
        for step in self.on_fail.iter_mut().flat_map(|on_fail| &mut on_fail.steps) {
            step.each_thing(visit);
        }
    }
}

impl References for Step {
    fn each_thing(&mut self, visit: &mut dyn FnMut(&mut Id)) {
        for action in &mut self.actions {
            action.each_thing(visit);
        }
    }
}

/// Where a document names things of its map beside the map itself and the steps.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Beside {
    /// What the job is for.
    Goals,
    /// What is found out later.
    Later,
    /// The spares of the kit.
    Kit,
    /// A replaced demand.
    Overrides,
}

impl Procedure {
    /// Visits each id of a thing that the document names beside its map and its steps, and says where.
    pub fn each_thing_beside(&mut self, visit: &mut dyn FnMut(Beside, &mut Id)) {
        self.goals.iter_mut().for_each(|goal| visit(Beside::Goals, &mut goal.thing));
        let later = self.later.iter_mut().filter_map(|later| later.thing.as_mut());
        later.for_each(|id| visit(Beside::Later, id));
        let spares = self.kit.spares.iter_mut().filter_map(|spare| spare.thing.as_mut());
        spares.for_each(|id| visit(Beside::Kit, id));
        let replaced = self.overrides.iter_mut().flat_map(|replaced| &mut replaced.on);
        replaced.for_each(|id| visit(Beside::Overrides, id));
    }
}

/// Whether an object names a thing.
pub fn names<T: References + Clone>(object: &T, thing: &Id) -> bool {
    let mut found = false;
    object.clone().each_thing(&mut |id| found |= id == thing);
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::{Family, SUPPLY, Verb};

    #[test]
    fn a_connection_names_what_it_joins_and_is_reached_by() {
        let mut union = Connection::new("union".into(), "union", Family::Joint);
        union.joins = vec!["pump".into()];
        union.section = Some("body".into());
        union.reached_after = Some(vec!["shell".into()]);
        let mut seen = Vec::new();
        union.each_thing(&mut |id| seen.push(id.to_string()));
        assert_eq!(seen, ["pump", "body", "shell"]);
        assert!(names(&union, &"body".into()) && !names(&union, &"union".into()));
    }

    #[test]
    fn steps_after_a_failed_test_count_too() {
        let mut inner = Step::new("i".into(), crate::model::Stage::Strip, "Make it again.");
        inner.actions.push(Action::new(Verb::Make, vec!["union".into()]));
        let mut test = Action::new(Verb::Test, vec!["pump".into()]);
        test.on_fail = Some(serde_json::from_value(serde_json::json!({})).expect("a block"));
        if let Some(on_fail) = &mut test.on_fail {
            on_fail.steps.push(inner);
        }
        assert!(names(&test, &"union".into()));
        assert!(!names(&test, &SUPPLY.into()));
    }
}
