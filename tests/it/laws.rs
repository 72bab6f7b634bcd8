//! Laws on random documents: whatever somebody writes, there is an answer, and the same one each time.
//!
//! Documents are made from the good ones by random edits, from a fixed seed. `PUTBACK_CASES` sets how many;
//! `./dev soak` sets it high.

use procedures_schema::capture::{Given, Here, line, line_making, line_with_making};
use procedures_schema::check::check;
use procedures_schema::derive::apart::{n_apart, still_apart};
use procedures_schema::derive::lanes::{LaneState, lane_states, lanes};
use procedures_schema::format;
use procedures_schema::model::{Action, Date, Id, NumberedIds, Procedure, Renewal, Step, TestKind, Verb};
use procedures_schema::simulate::{Place, Run, begins_alike, runs_alike, simulate};
use putback_tests::{suite, text_files};
use std::sync::Arc;

/// Variety from a seed; xorshift, by Marsaglia 2003.
pub(crate) struct Dice(pub(crate) u64);

impl Dice {
    pub(crate) fn roll(&mut self, below: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        usize::try_from(self.0 >> 33).unwrap_or(0) % below.max(1)
    }
}

fn cases() -> usize {
    std::env::var("PUTBACK_CASES").ok().and_then(|text| text.parse().ok()).unwrap_or(400)
}

pub(crate) fn good() -> Vec<Procedure> {
    let mut files = suite("accepted", ".putback.json").expect("samples");
    files.extend(text_files("public/demo").expect("demos").into_iter().filter(|f| f.is(".putback.json")));
    files.iter().map(|file| format::read(file.text.as_bytes()).expect("readable")).collect()
}

pub(crate) fn random_action(dice: &mut Dice, procedure: &Procedure) -> Action {
    let verb = Verb::ALL[dice.roll(Verb::ALL.len())].clone();
    let ids: Vec<Id> = procedure.map.things().map(|(_, id, ..)| id.clone()).collect();
    let mut on: Vec<Id> = (0..dice.roll(3)).map(|_| ids[dice.roll(ids.len())].clone()).collect();
    if dice.roll(10) == 0 {
        on.push("nobody-named-this".into());
    }
    let mut action = Action::new(verb, on);
    action.count = (dice.roll(3) == 0).then(|| u32::try_from(dice.roll(9)).unwrap_or(0));
    action.test = Some(TestKind::ALL[dice.roll(TestKind::ALL.len())].clone());
    action.seal = (dice.roll(2) == 0).then_some(Renewal::New);
    action.through = (dice.roll(4) == 0).then(|| ids[dice.roll(ids.len())].clone());
    action.unattended = dice.roll(5) == 0;
    action
}

fn spoil(dice: &mut Dice, procedure: &mut Procedure) {
    for _ in 0..=dice.roll(6) {
        let n_steps = procedure.steps.len();
        if n_steps < 2 {
            return;
        }
        let (a, b) = (dice.roll(n_steps), dice.roll(n_steps));
        match dice.roll(5) {
            0 => drop(procedure.steps.remove(a)),
            1 => procedure.steps.swap(a, b),
            2 => {
                let action = random_action(dice, procedure);
                let step: &mut Step = Arc::make_mut(&mut procedure.steps[a]);
                step.actions.push(action);
            }
            3 => {
                let map = Arc::make_mut(&mut procedure.map);
                let n = map.connections.len().max(1);
                match dice.roll(4) {
                    0 if map.connections.len() > 1 => drop(map.connections.remove(dice.roll(n))),
                    1 if !map.isolators.is_empty() => drop(map.isolators.remove(0)),
                    2 => map.components.reverse(),
                    _ => {
                        let behind = map.components.last().map(|c| c.id.clone());
                        if let Some(first) = map.components.first_mut() {
                            // May make a cycle of things behind each other.
                            first.behind.extend(behind);
                        }
                    }
                }
            }
            _ => {
                let step: &mut Step = Arc::make_mut(&mut procedure.steps[a]);
                step.words = step.words.chars().rev().collect();
            }
        }
    }
}

/// Good documents after some random changes.
pub(crate) fn spoiled() -> impl Iterator<Item = Procedure> {
    let good = good();
    let mut dice = Dice(0x2545_F491_4F6C_DD1D);
    (0..cases()).map(move |i| {
        let mut procedure = good[i % good.len()].clone();
        spoil(&mut dice, &mut procedure);
        procedure
    })
}

#[test]
fn every_document_gets_the_same_report_each_time() {
    let today = Date::parse("2026-11-25").expect("a date");
    let mut n_rejected = 0;
    for procedure in spoiled() {
        let report = check(&procedure, today);
        assert_eq!(report, check(&procedure, today));
        n_rejected += usize::from(report.n_rejecting() > 0);
        for finding in &report.findings {
            assert!(!finding.title.is_empty() && !finding.remedy.is_empty(), "{finding:?}");
        }
    }
    // Most random changes are faults; if few were found, the spoiling or the checking is broken.
    assert!(n_rejected * 2 > cases(), "{n_rejected} of {} rejected", cases());
}

#[test]
fn reading_what_was_written_gives_the_document_and_writing_is_stable() {
    for procedure in spoiled() {
        let text = format::write(&procedure);
        let read = format::read(text.as_bytes()).unwrap_or_else(|error| panic!("{error}\n{text}"));
        assert_eq!(read, procedure);
        assert_eq!(format::write(&read), text);
    }
}

/// What was written before takes nothing from what is written now, whichever steps have gone, come or changed places.
#[test]
fn writing_again_gives_what_writing_gives() {
    let mut rewriter = format::Rewriter::default();
    let mut dice = Dice(0x2442_7369_0ab3_15cd);
    for mut procedure in spoiled().take(cases() / 2 + 1) {
        for _ in 0..3 {
            assert_eq!(rewriter.write(&procedure), format::write(&procedure));
            spoil(&mut dice, &mut procedure);
        }
        // The same step twice is no document of ours, but what is kept is never another than what is there.
        procedure.steps.extend(procedure.steps.first().cloned());
        assert_eq!(rewriter.write(&procedure), format::write(&procedure));
    }
    let empty = Procedure::new(Id::new("p"), "Invented");
    assert_eq!(rewriter.write(&empty), format::write(&empty));
}

#[test]
fn a_shorter_run_is_the_beginning_of_the_whole_run() {
    for procedure in spoiled().take(cases() / 4 + 1) {
        let whole = simulate(&procedure, &Run::of(&procedure));
        let all: Vec<usize> = (0..procedure.steps.len()).collect();
        let drawn = lanes(&procedure, &whole);
        for n in [0, all.len() / 2, all.len()] {
            let part = simulate(&procedure, &Run::of_steps(&all[..n]));
            let place = if n == 0 { Place::START } else { Place::after(n - 1) };
            assert_eq!(still_apart(&procedure, &part, place), still_apart(&procedure, &whole, place));
            assert_eq!(lanes(&procedure, &part).rows[..], drawn.rows[..n]);
        }
    }
}

/// What is taken over from the document before must be what would be worked out anew.
#[test]
fn documents_that_run_alike_have_the_same_lanes_and_demands() {
    let mut dice = Dice(0xA409_3822_299F_31D0);
    let (mut n_alike, mut n_other) = (0, 0);
    for before in spoiled().filter(|procedure| !procedure.steps.is_empty()) {
        let mut now = before.clone();
        if dice.roll(2) == 0 {
            let at = dice.roll(now.steps.len());
            let step: &mut Step = Arc::make_mut(&mut now.steps[at]);
            step.words.push_str(" again");
            step.actions.iter_mut().for_each(|action| action.says.clear());
        } else {
            spoil(&mut dice, &mut now);
        }
        let trace = |procedure: &Procedure| simulate(procedure, &Run::of(procedure));
        if runs_alike(&before, &now) {
            n_alike += 1;
            assert_eq!(trace(&before).unmet(), trace(&now).unmet());
            assert_eq!(lanes(&before, &trace(&before)), lanes(&now, &trace(&now)));
        } else {
            n_other += 1;
        }
    }
    assert!(n_alike * 3 > cases() && n_other * 5 > cases(), "{n_alike} alike, {n_other} not");
}

/// What is read before a step hangs on nothing behind it.
#[test]
fn documents_that_begin_alike_are_the_same_to_a_line_behind_what_is_alike() {
    let mut dice = Dice(0x1319_8A2E_0370_7344);
    let (mut n_alike, mut n_other) = (0, 0);
    for before in spoiled().filter(|procedure| !procedure.steps.is_empty()).take(cases() / 2 + 1) {
        let mut now = before.clone();
        spoil(&mut dice, &mut now);
        let trace = |procedure: &Procedure| simulate(procedure, &Run::of(procedure));
        let (was, is) = (trace(&before), trace(&now));
        for position in 0..=before.steps.len() {
            if begins_alike(&before, &now, position) {
                n_alike += 1;
                let place = position.checked_sub(1).map_or(Place::START, Place::after);
                assert_eq!(
                    Here::from_trace(&before.map, &was, place),
                    Here::from_trace(&now.map, &is, place)
                );
            } else {
                n_other += 1;
            }
        }
    }
    assert!(n_alike > cases() && n_other > cases(), "{n_alike} alike, {n_other} not");
}

/// One look at a line gives what two looks give.
#[test]
fn a_line_that_is_read_with_what_it_makes_is_as_if_read_twice() {
    let mut n_made = 0;
    for procedure in good() {
        let trace = simulate(&procedure, &Run::of(&procedure));
        // Behind a map without some of its things, words name things for the first time.
        let mut poor = procedure.clone();
        let map = Arc::make_mut(&mut poor.map);
        map.connections.retain(|connection| connection.id.as_str().len() % 2 == 0);
        map.components.retain(|component| component.id.as_str().len() % 3 == 0);
        let of_poor = simulate(&poor, &Run::of(&poor));
        for (document, trace) in [(&procedure, &trace), (&poor, &of_poor)] {
            for (position, step) in document.steps.iter().enumerate() {
                let place = position.checked_sub(1).map_or(Place::START, Place::after);
                let (map, stage) = (&document.map, &step.stage);
                let before = &document.steps[..position];
                let given = || Given { answers: &[], census: &document.census, before };
                let here = || Here::from_trace(map, trace, place);
                let ids = || NumberedIds::default();
                let (read, making) = line_with_making(&step.words, map, here(), stage, given(), &mut ids());
                assert_eq!(read, line(&step.words, map, trace, place, stage), "{}", step.words);
                let twice = line_making(&step.words, map, trace, place, stage, given(), &mut ids());
                assert_eq!(making, twice, "{}", step.words);
                n_made += making.made.len();
            }
        }
    }
    assert!(n_made > 20, "only {n_made} things were made");
}

#[test]
fn how_much_is_apart_is_the_sum_of_what_is() {
    for procedure in spoiled().take(cases() / 4 + 1) {
        let trace = simulate(&procedure, &Run::of(&procedure));
        for place in (0..procedure.steps.len()).map(Place::after).chain([Place::START, Place::END]) {
            assert_eq!(n_apart(&trace, place), still_apart(&procedure, &trace, place).count());
        }
    }
}

/// The lanes beside the steps are worked out from what changes, those of one place from everything.
#[test]
fn the_lanes_beside_a_step_are_those_at_its_places() {
    let (mut n_open, mut n_blanked) = (0, 0);
    for procedure in spoiled().take(cases() / 4 + 1).chain(good()) {
        let trace = simulate(&procedure, &Run::of(&procedure));
        let mut before = (lane_states(&procedure, &trace, Place::START), n_apart(&trace, Place::START));
        for (execution, row) in lanes(&procedure, &trace).rows.into_iter().enumerate() {
            let place = Place::after(execution);
            let after = (lane_states(&procedure, &trace, place), n_apart(&trace, place));
            // Of one place nobody asks what a test loads.
            let untested = |state: LaneState| LaneState { under_test: false, ..state };
            let drawn_before = row.cells.iter().map(|cell| untested(cell.before)).collect::<Vec<_>>();
            let drawn_after = row.cells.iter().map(|cell| untested(cell.after)).collect::<Vec<_>>();
            assert_eq!((drawn_before, row.apart_before), before);
            assert_eq!((drawn_after, row.apart_after), after);
            n_open += after.0.iter().filter(|state| state.joint_open).count();
            n_blanked += after.0.iter().filter(|state| state.blanked).count();
            before = after;
        }
    }
    assert!(n_blanked > 0 && n_open > 2 * n_blanked, "{n_blanked} of {n_open} blanked off");
}

#[test]
fn a_file_cut_anywhere_is_refused_or_read_and_never_half_believed() {
    for procedure in good() {
        let text = format::write(&procedure);
        for end in (0..text.len()).step_by(97) {
            let cut = text.get(..end).unwrap_or("");
            assert!(format::read(cut.as_bytes()).is_err(), "cut at {end}");
        }
    }
}
