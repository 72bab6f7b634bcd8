//! Lanes: the state of each circuit beside the steps.
//!
//! A lane shows the sections of its circuit that the procedure works on; where they differ, the most
//! dangerous one. Pictures are drawn elsewhere: this gives states, and each state in words and as the two
//! signs of a terminal.

use super::along::{apart_along, joints_along};
use super::worked::worked_sections;
use crate::model::{CircuitKind, Id, Procedure};
use crate::simulate::{
    ApplianceCell, ConnectionCell, Place, Proof, SectionCell, SupplyCell, TemporaryCell, Trace, kind_row,
};

/// How much energy is still there; the most dangerous first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LaneLevel {
    /// Its kind is kept and not judged.
    NotJudged,
    /// Energy there.
    On,
    /// It hangs on the running of the appliance, and that is shut down.
    ShutDown,
    /// Cut off, energy still inside or not shown to be gone.
    Isolated,
    /// It was proved, and no longer is.
    Lapsed,
    /// Let out, not proved.
    Released,
    /// Shown to be at zero.
    Proved,
}

/// The state of a lane at one moment.
#[expect(clippy::struct_excessive_bools, reason = "independent facts about one moment")]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LaneState {
    /// How much energy is there.
    pub level: LaneLevel,
    /// Whether every closed isolator is locked.
    pub locked: bool,
    /// Whether a joint or port is open or slack.
    pub joint_open: bool,
    /// Whether something closes every one that is open.
    pub blanked: bool,
    /// Whether a test loads it.
    pub under_test: bool,
}

/// The head of a lane.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LaneHead {
    /// The circuit.
    pub circuit: Id,
    /// Its name.
    pub name: String,
    /// Its kind.
    pub kind: CircuitKind,
}

/// A lane beside one step.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LaneCell {
    /// Before the step.
    pub before: LaneState,
    /// After it.
    pub after: LaneState,
}

/// All lanes beside one step.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LaneRow {
    /// The step.
    pub step: Id,
    /// One cell a head.
    pub cells: Vec<LaneCell>,
    /// How much is apart before the step.
    pub apart_before: u32,
    /// How much is apart after it.
    pub apart_after: u32,
}

/// The lanes of a procedure.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Lanes {
    /// One head a circuit, in the order of the map.
    pub heads: Vec<LaneHead>,
    /// One row an execution.
    pub rows: Vec<LaneRow>,
}

/// The lanes of a run.
pub fn lanes(procedure: &Procedure, trace: &Trace) -> Lanes {
    let shown = shown_sections(procedure, trace);
    let heads = procedure.map.circuits.iter().map(|circuit| LaneHead {
        circuit: circuit.id.clone(),
        name: circuit.name.clone(),
        kind: circuit.kind.clone(),
    });
    let (joints, apart) = (joints_along(trace, &shown), apart_along(trace));
    let mut joints: Vec<_> =
        joints.iter().map(|joints| joints.open.counts().zip(joints.bare.counts())).collect();
    let mut apart = apart.counts();
    let mut states = |place: Place| -> Vec<LaneState> {
        let of_lane = |(sections, joints): (&Vec<SectionCell>, &mut _)| {
            let (n_open, n_bare) = Iterator::next(joints).unwrap_or_default();
            LaneState {
                joint_open: n_open > 0,
                blanked: n_open > 0 && n_bare == 0,
                ..energy_of(trace, sections, place)
            }
        };
        shown.iter().zip(&mut joints).map(of_lane).collect()
    };
    let mut rows = Vec::new();
    let mut before = states(Place::START);
    let mut apart_before = apart.next().unwrap_or_default();
    for (execution, position) in trace.run().steps().iter().enumerate() {
        let mut after = states(Place::after(execution));
        let apart_after = apart.next().unwrap_or_default();
        let Some(step) = procedure.steps.get(*position) else { continue };
        let loaded: Vec<SectionCell> = trace.loaded_in(execution).collect();
        for (state, sections) in after.iter_mut().zip(&shown) {
            state.under_test = sections.iter().any(|section| loaded.contains(section));
        }
        let cells = before.iter().zip(&after).map(|(b, a)| LaneCell { before: *b, after: *a }).collect();
        rows.push(LaneRow { step: step.id.clone(), cells, apart_before, apart_after });
        before = after.into_iter().map(|state| LaneState { under_test: false, ..state }).collect();
        apart_before = apart_after;
    }
    Lanes { heads: heads.collect(), rows }
}

/// The state of every lane at one place of a run, in the order of the map's circuits.
pub fn lane_states(procedure: &Procedure, trace: &Trace, place: Place) -> Vec<LaneState> {
    shown_sections(procedure, trace).iter().map(|sections| state_of(trace, sections, place)).collect()
}

/// Whether sections beyond those shown are still under energy; words for a lane's head.
pub fn beyond(procedure: &Procedure, trace: &Trace, circuit: usize, place: Place) -> Option<&'static str> {
    let shown = shown_sections(procedure, trace);
    let shown = shown.get(circuit)?;
    let (_, plan) = trace.plant().circuits().nth(circuit)?;
    let here = state_of(trace, shown, place).level;
    let hidden = plan.sections.iter().filter(|section| !shown.contains(section));
    let live = hidden.copied().any(|section| level_of(trace, section, place) <= LaneLevel::Isolated);
    (live && here > LaneLevel::Isolated).then_some("beyond the valves: under pressure")
}

fn shown_sections(procedure: &Procedure, trace: &Trace) -> Vec<Vec<SectionCell>> {
    let worked = worked_sections(procedure, trace.plant());
    trace
        .plant()
        .circuits()
        .map(|(_, circuit)| {
            let some: Vec<SectionCell> =
                circuit.sections.iter().copied().filter(|section| worked.contains(section)).collect();
            if some.is_empty() { circuit.sections.clone() } else { some }
        })
        .collect()
}

fn state_of(trace: &Trace, sections: &[SectionCell], place: Place) -> LaneState {
    let is_open = |connection: &ConnectionCell| {
        let section = trace.plant().connection(*connection).and_then(|plan| plan.section);
        section.is_some_and(|section| sections.contains(&section))
            && trace.at(connection, place).is_some_and(|state| !state.is_made())
    };
    let mut open = trace.plant().connections().map(|(connection, _)| connection).filter(is_open).peekable();
    let closed = |connection: ConnectionCell| {
        let closers =
            trace.plant().temporaries().filter(|(_, plan)| plan.closes && plan.on == Some(connection));
        let closers: Vec<TemporaryCell> = closers.map(|(temporary, _)| temporary).collect();
        is_blanked(trace, &closers, place)
    };
    let joint_open = open.peek().is_some();
    LaneState { joint_open, blanked: joint_open && open.all(closed), ..energy_of(trace, sections, place) }
}

/// The state of some sections but for their joints.
fn energy_of(trace: &Trace, sections: &[SectionCell], place: Place) -> LaneState {
    let level = sections.iter().map(|section| level_of(trace, *section, place)).min();
    let locked = |section: &SectionCell| trace.at(&SupplyCell(*section), place).is_some_and(|s| s.locked);
    LaneState {
        level: level.unwrap_or(LaneLevel::NotJudged),
        locked: sections.iter().all(locked),
        joint_open: false,
        blanked: false,
        under_test: false,
    }
}

/// Whether one of the temporary items that close a connection is in place.
pub(super) fn is_blanked(trace: &Trace, closers: &[TemporaryCell], place: Place) -> bool {
    closers.iter().any(|closer| trace.at(closer, place).is_some_and(|state| state.in_place))
}

fn level_of(trace: &Trace, section: SectionCell, place: Place) -> LaneLevel {
    let (Some(row), Some(state), Some(supply)) =
        (trace.plant().row_of(section), trace.at(&section, place), trace.at(&SupplyCell(section), place))
    else {
        return LaneLevel::NotJudged;
    };
    match state.proof {
        // A closed system that is full again is on, although nothing outside feeds it.
        _ if supply.fed
            || (state.stored.pressure && !supply.locked && !is_cut_off(trace, section, place)) =>
        {
            if row.hangs_on_running && is_shut_down(trace, place) {
                LaneLevel::ShutDown
            } else {
                LaneLevel::On
            }
        }
        Proof::Proved { .. } if trace.is_shown(section, place) => LaneLevel::Proved,
        _ if state.stored.pressure => LaneLevel::Isolated,
        Proof::Lapsed(_) => LaneLevel::Lapsed,
        Proof::None | Proof::Proved { .. } if row.stores.pressure => LaneLevel::Released,
        Proof::None | Proof::Proved { .. } => LaneLevel::Isolated,
    }
}

fn is_shut_down(trace: &Trace, place: Place) -> bool {
    trace.at(&ApplianceCell, place).is_some_and(|state| state.running.is_none())
}

/// Whether an isolator around the section is closed.
fn is_cut_off(trace: &Trace, section: SectionCell, place: Place) -> bool {
    trace
        .plant()
        .section(section)
        .into_iter()
        .flat_map(|plan| &plan.isolators)
        .any(|isolator| trace.at(isolator, place).is_some_and(|state| !state.open))
}

/// A state in words: "off, locked", "shut off, under pressure", "proved at zero".
pub fn in_words(state: &LaneState, kind: &CircuitKind) -> String {
    let electric = *kind == CircuitKind::MainsElectricity || *kind == CircuitKind::ControlElectricity;
    let stores_pressure = kind_row(kind).is_some_and(|row| row.stores.pressure);
    let mut words = match state.level {
        LaneLevel::NotJudged => "not judged",
        LaneLevel::On if stores_pressure => "under pressure",
        LaneLevel::On => "on",
        LaneLevel::ShutDown if stores_pressure => "shut down, under pressure",
        LaneLevel::ShutDown => "shut down",
        LaneLevel::Isolated if electric => "off, not proved",
        LaneLevel::Isolated if stores_pressure => "shut off, under pressure",
        LaneLevel::Isolated => "shut off, not proved",
        LaneLevel::Lapsed => "prove again",
        LaneLevel::Released => "released, not proved",
        LaneLevel::Proved if electric => "proved dead",
        LaneLevel::Proved => "proved at zero",
    }
    .to_owned();
    if state.locked {
        words.push_str(", locked");
    }
    if state.blanked {
        words.push_str(", open and blanked off");
    } else if state.joint_open {
        words.push_str(", open");
    }
    if state.under_test {
        words.push_str(", under test");
    }
    words
}

/// A state as two signs of a terminal.
pub fn sign(state: &LaneState) -> &'static str {
    match state.level {
        _ if state.under_test => "||",
        LaneLevel::NotJudged => "--",
        LaneLevel::On => "##",
        LaneLevel::ShutDown => "==",
        LaneLevel::Isolated if state.locked => "/L",
        LaneLevel::Isolated => "//",
        LaneLevel::Lapsed => "??",
        LaneLevel::Released => "::",
        LaneLevel::Proved if state.joint_open => "[o",
        LaneLevel::Proved => "[]",
    }
}

#[cfg(test)]
mod tests {
    use super::{CircuitKind, LaneLevel, LaneState, in_words, sign};
    use std::collections::BTreeSet;

    const LEVELS: [LaneLevel; 7] = [
        LaneLevel::NotJudged,
        LaneLevel::On,
        LaneLevel::ShutDown,
        LaneLevel::Isolated,
        LaneLevel::Lapsed,
        LaneLevel::Released,
        LaneLevel::Proved,
    ];

    fn state(level: LaneLevel) -> LaneState {
        LaneState { level, locked: false, joint_open: false, blanked: false, under_test: false }
    }

    #[test]
    fn every_state_has_words_and_a_sign_of_its_own() {
        for kind in [CircuitKind::MainsElectricity, CircuitKind::HeatingWater, CircuitKind::StoredMotion] {
            let words: BTreeSet<String> =
                LEVELS.iter().map(|level| in_words(&state(*level), &kind)).collect();
            assert_eq!(words.len(), LEVELS.len(), "{words:?}");
        }
        let signs: BTreeSet<&str> = LEVELS.iter().map(|level| sign(&state(*level))).collect();
        assert_eq!(signs.len(), LEVELS.len(), "{signs:?}");
    }

    #[test]
    fn what_comes_on_top_of_a_level_is_told_too() {
        let all = LaneState {
            locked: true,
            joint_open: true,
            blanked: true,
            under_test: true,
            ..state(LaneLevel::Proved)
        };
        let words = in_words(&all, &CircuitKind::HeatingWater);
        assert_eq!(words, "proved at zero, locked, open and blanked off, under test");
        let open = LaneState { blanked: false, under_test: false, ..all };
        assert_eq!(in_words(&open, &CircuitKind::HeatingWater), "proved at zero, locked, open");
    }
}
