//! Numbering a map: every reference by id becomes a reference by position.

use super::index::ThingIndex;
use super::{
    CircuitCell, CircuitPlan, ComponentCell, ComponentPlan, ConnectionCell, ConnectionPlan, IsolatorCell,
    IsolatorPlan, Plant, QuestionPlan, SectionCell, SectionDemands, SectionPlan, SettingCell, SettingPlan,
    Side, TemporaryCell, TemporaryPlan, Thing,
};
use crate::model::{
    ApplianceMap, CircuitKind, Component, Connection, Family, FreesWhen, Handle, Id, Isolator, Known,
    Position, Procedure, Question, SUPPLY, Seal, Setting, Temporary,
};
use crate::simulate::kinds::kind_row;
use crate::units::{Measured, Unit, convert};

impl Plant {
    /// Numbers the map of a procedure and its questions.
    pub fn of(procedure: &Procedure) -> Self {
        let map = &procedure.map;
        let mut plant = Self { by_id: ThingIndex::of(map), ..Self::default() };
        plant.add_circuits(map);
        plant.isolators = map.isolators.iter().map(|i| plant.plan_isolator(i)).collect();
        plant.components = map.components.iter().map(plan_component).collect();
        plant.place_components(&map.components);
        plant.connections = map.connections.iter().map(|c| plant.plan_connection(c, &map.seals)).collect();
        plant.cross_reference(&map.components);
        plant.temporaries = map.temporary.iter().map(|t| plant.plan_temporary(t)).collect();
        plant.settings = map.settings.iter().map(|s| plant.plan_setting(s)).collect();
        plant.cross_reference_items();
        plant.questions = procedure.questions.iter().map(plan_question).collect();
        plant.seals = map.seals.iter().map(|s| s.id.clone()).collect();
        plant.find_behind_automatic();
        plant.lay_out_demands();
        plant.replace_demands(procedure);
        plant
    }

    fn add_circuits(&mut self, map: &ApplianceMap) {
        for (i, circuit) in map.circuits.iter().enumerate() {
            let mut sections = Vec::new();
            for section in &circuit.sections {
                sections.push(SectionCell::new(self.sections.len()));
                self.sections.push(SectionPlan {
                    id: section.id.clone(),
                    circuit: CircuitCell::new(i),
                    normally_empty: section.normally_empty,
                    connections: Vec::new(),
                    isolators: Vec::new(),
                    behind_automatic: false,
                    demands: SectionDemands::default(),
                });
            }
            let fed_by = circuit.fed_by.iter().filter_map(|id| self.circuit_named(id)).collect();
            let row = kind_row(&circuit.kind);
            self.circuits.push(CircuitPlan {
                id: circuit.id.clone(),
                row,
                sections,
                fed_by,
                flammable: circuit.flammable || circuit.kind == CircuitKind::FuelGas,
                premix: circuit.premix,
                discharge_minutes: circuit.discharge_wait.as_ref().map_or(LEAST_WAIT, minutes),
            });
        }
    }

    fn plan_isolator(&self, isolator: &Isolator) -> IsolatorPlan {
        let side = |id: &Id| match self.thing(id) {
            _ if id.as_str() == SUPPLY => Some(Side::Supply),
            Some(Thing::Section(section)) => Some(Side::Section(section)),
            // A circuit of one section may be named for it.
            Some(Thing::Circuit(circuit)) => {
                self.circuit(circuit).and_then(|c| c.sections.first()).map(|s| Side::Section(*s))
            }
            _ => None,
        };
        IsolatorPlan {
            id: isolator.id.clone(),
            between: side(&isolator.between.0).zip(side(&isolator.between.1)),
            handle: isolator.handle.clone(),
            normally_open: isolator.normal == Position::Open,
            lockable: isolator.lockable,
        }
    }

    fn place_components(&mut self, components: &[Component]) {
        for (i, component) in components.iter().enumerate() {
            let mut behind = Vec::new();
            let mut waiting: Vec<&Id> = component.behind.iter().collect();
            while let Some(id) = waiting.pop() {
                let Some(Thing::Component(cell)) = self.thing(id) else { continue };
                if cell.index() != i && !behind.contains(&cell) {
                    behind.push(cell);
                    waiting.extend(components.get(cell.index()).into_iter().flat_map(|c| &c.behind));
                }
            }
            behind.sort_unstable();
            for guard in &behind {
                if let Some(plan) = self.components.get_mut(guard.index()) {
                    plan.covers.push(ComponentCell::new(i));
                }
            }
            if let Some(plan) = self.components.get_mut(i) {
                plan.behind = behind;
            }
        }
    }

    fn plan_connection(&self, connection: &Connection, seals: &[Seal]) -> ConnectionPlan {
        let joins: Vec<ComponentCell> =
            connection.joins.iter().filter_map(|id| self.component_named(id)).collect();
        let reach = if let Some(ids) = &connection.reached_after {
            ids.iter().filter_map(|id| self.component_named(id)).collect()
        } else {
            let parts = joins.iter().filter_map(|c| self.component(*c));
            let mut behind: Vec<ComponentCell> = parts.flat_map(|c| c.behind.iter().copied()).collect();
            // What the connection itself holds cannot stand in its way.
            behind.retain(|c| !joins.contains(c));
            behind.sort_unstable();
            behind.dedup();
            behind
        };
        let sealed = |id: &Id| {
            let Some(Thing::Seal(cell)) = self.thing(id) else { return None };
            seals.get(cell.index()).map(|seal| (cell, seal.policy.clone()))
        };
        let tight = connection.tight.as_ref().and_then(Known::value);
        ConnectionPlan {
            id: connection.id.clone(),
            family: connection.family.clone(),
            joins,
            section: connection.section.as_ref().and_then(|id| self.section_named(id)),
            count: connection.count,
            seals: connection.seals.iter().filter_map(|used| sealed(&used.seal)).collect(),
            port: connection.port.clone(),
            reach,
            holds: Vec::new(),
            frees_when_slack: connection.frees_when == FreesWhen::Slack,
            grouping: connection.grouping.clone(),
            flexible: connection.flexible.unwrap_or(connection.family == Family::Connector),
            bond: connection.bond,
            closed_by: Vec::new(),
            looks_like: connection.looks_like.iter().filter_map(|id| self.connection_named(id)).collect(),
            again: tight.and_then(|tight| tight.again.as_ref()).map(|again| again == "hot"),
            tests: Vec::new(),
        }
    }

    fn plan_temporary(&self, temporary: &Temporary) -> TemporaryPlan {
        TemporaryPlan {
            id: temporary.id.clone(),
            on: temporary.on.as_ref().and_then(|id| self.connection_named(id)),
            closes: temporary.closes,
            initially: temporary.initially,
            stays: temporary.stays.is_some(),
            bonds: temporary.bonds.as_ref().and_then(|id| self.connection_named(id)),
            restrains: temporary.restrains.as_ref().and_then(|id| self.circuit_named(id)),
            arrives_with: temporary.arrives_with.as_ref().and_then(|id| self.component_named(id)),
            gauge: temporary.gauge,
            notice: temporary.notice,
            flows: temporary.flow.is_some(),
        }
    }

    fn plan_setting(&self, setting: &Setting) -> SettingPlan {
        SettingPlan {
            id: setting.id.clone(),
            of: setting.of.as_ref().and_then(|id| self.component_named(id)),
            readable_when: setting.readable_when.as_ref().and_then(|id| self.circuit_named(id)),
            affects: setting.affects.clone(),
            tests: Vec::new(),
        }
    }

    fn cross_reference(&mut self, components: &[Component]) {
        for (i, isolator) in self.isolators.iter().enumerate() {
            for side in isolator.between.iter().flat_map(|(a, b)| [a, b]) {
                if let Side::Section(section) = side
                    && let Some(plan) = self.sections.get_mut(section.index())
                {
                    plan.isolators.push(IsolatorCell::new(i));
                }
            }
        }
        for (i, connection) in self.connections.iter().enumerate() {
            let guarded = connection.section.filter(|section| {
                let circuit = self.sections.get(section.index()).map(|plan| plan.circuit);
                let row = circuit.and_then(|circuit| self.circuits.get(circuit.index())).and_then(|c| c.row);
                row.is_some_and(|row| row.guarded)
            });
            if let Some(section) = connection.section.and_then(|s| self.sections.get_mut(s.index())) {
                section.connections.push(ConnectionCell::new(i));
            }
            for guard in &connection.reach {
                if let (Some(section), Some(plan)) = (guarded, self.components.get_mut(guard.index()))
                    && !plan.bares.contains(&section)
                {
                    plan.bares.push(section);
                }
            }
            for guard in connection.reach.iter().filter(|guard| !connection.joins.contains(guard)) {
                if let Some(plan) = self.components.get_mut(guard.index()) {
                    plan.hides.push(ConnectionCell::new(i));
                }
            }
            for joined in &connection.joins {
                if let Some(plan) = self.components.get_mut(joined.index()) {
                    plan.connections.push(ConnectionCell::new(i));
                }
            }
        }
        for (i, component) in components.iter().enumerate() {
            if let Some(held) = component.held_in.as_ref().and_then(|id| self.connection_named(id))
                && let Some(plan) = self.connections.get_mut(held.index())
            {
                plan.holds.push(ComponentCell::new(i));
            }
            if let Some(carrier) = component.carried_by.as_ref().and_then(|id| self.component_named(id))
                && let Some(plan) = self.components.get_mut(carrier.index())
            {
                plan.carries.push(ComponentCell::new(i));
                if let Some(carried) = self.components.get_mut(i) {
                    carried.carried_by = Some(carrier);
                }
            }
        }
    }

    fn cross_reference_items(&mut self) {
        for (i, item) in self.temporaries.iter().enumerate().filter(|(_, item)| item.closes) {
            if let Some(plan) = item.on.and_then(|on| self.connections.get_mut(on.index())) {
                plan.closed_by.push(TemporaryCell::new(i));
            }
        }
        for (i, setting) in self.settings.iter().enumerate() {
            if let Some(plan) = setting.of.and_then(|of| self.components.get_mut(of.index())) {
                plan.settings.push(SettingCell::new(i));
            }
        }
    }

    /// A section that no supply reaches at all, on a map that is not finished, is behind nothing.
    fn find_behind_automatic(&mut self) {
        let by_hand = self.reached_from_supplies(|isolator| isolator.handle != Handle::Automatic);
        let at_all = self.reached_from_supplies(|_| true);
        for (plan, (by_hand, at_all)) in self.sections.iter_mut().zip(by_hand.into_iter().zip(at_all)) {
            plan.behind_automatic = at_all && !by_hand;
        }
    }

    /// For each section whether a way from a supply leads to it by such isolators, as if all were open.
    fn reached_from_supplies(&self, by: impl Fn(&IsolatorPlan) -> bool) -> Vec<bool> {
        let mut reached = vec![false; self.sections.len()];
        let mut changed = true;
        while changed {
            changed = false;
            for (a, b) in self.isolators.iter().filter(|i| by(i)).filter_map(|isolator| isolator.between) {
                for (from, to) in [(a, b), (b, a)] {
                    let is_reached = match from {
                        Side::Supply => true,
                        Side::Section(s) => reached.get(s.index()).copied().unwrap_or(false),
                    };
                    if let (true, Side::Section(to)) = (is_reached, to)
                        && let Some(mark) = reached.get_mut(to.index())
                        && !*mark
                    {
                        *mark = true;
                        changed = true;
                    }
                }
            }
        }
        reached
    }
}

/// Least wait for stored charge when the label is not given, in minutes: IEC 60204-1 asks for the label;
/// five minutes are a design value, common practice, no source.
const LEAST_WAIT: u32 = 5;

fn minutes(wait: &Measured) -> u32 {
    let minutes = convert(wait.value.value(), &wait.unit, &Unit::Minute).unwrap_or(0.0);
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "bounded just here")]
    let whole = minutes.ceil().clamp(0.0, 100_000.0) as u32;
    whole.max(LEAST_WAIT)
}

fn plan_question(question: &Question) -> QuestionPlan {
    QuestionPlan { id: question.id.clone(), answers: question.answers.clone() }
}

fn plan_component(component: &Component) -> ComponentPlan {
    ComponentPlan {
        id: component.id.clone(),
        behind: Vec::new(),
        covers: Vec::new(),
        hides: Vec::new(),
        carries: Vec::new(),
        carried_by: None,
        connections: Vec::new(),
        settings: Vec::new(),
        bares: Vec::new(),
        starts_itself: component.starts_itself,
        role: component.role.clone(),
        mass_kg: component
            .mass
            .as_ref()
            .and_then(|mass| convert(mass.value.value(), &mass.unit, &Unit::Kilogram).ok())
            .unwrap_or(0.0),
        tests: Vec::new(),
    }
}
