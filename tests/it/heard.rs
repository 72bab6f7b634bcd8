//! Three jobs as engineers typed them who had not seen how sentences are read: how many of their lines are heard
//! as a person would expect.
//!
//! The lines go the way of the page's last line: a leading word adds to the step before, a sentence makes its
//! things and its step, and what is asked is answered with the first choice. What is expected stands in
//! `table`, written from the sentences alone.

use procedures_schema::model::{Action, CircuitKind, Id, Verb};
use procedures_schema::notation::{entry, print};
use std::collections::BTreeSet;

mod blind;
mod careful;
mod compressor;
mod further;
mod heated;
mod loose;
mod pairs;
mod pumped;
mod sentences;
mod spoken;
mod table;
mod told;
mod trade;
mod truth;
mod twins;
mod typist;
mod untaught;

use truth::Truth;
use typist::{Kept, Typist};

/// How many of the 90 lines must be heard as expected; it only ever rises.
const FLOOR: usize = 88;

/// The verbs that count once, however many things they name.
const WITHOUT_THINGS: &[Verb] = &[
    Verb::Start,
    Verb::ShutDown,
    Verb::Finish,
    Verb::Test,
    Verb::Read,
    Verb::Prove,
    Verb::Wait,
    Verb::Photograph,
    Verb::Tell,
    Verb::Hold,
    Verb::Ask,
    Verb::Charge,
    Verb::Purge,
    Verb::Release,
];

/// What a line said, a verb for each thing with its id: "isolate" twice and "lock".
fn said(actions: &[Action]) -> Vec<(String, String)> {
    let mut seen: BTreeSet<(Verb, Option<Id>)> = BTreeSet::new();
    let mut said = Vec::new();
    for action in actions {
        let each: Vec<Option<Id>> = if WITHOUT_THINGS.contains(&action.verb) || action.on.is_empty() {
            vec![None]
        } else {
            action.on.iter().cloned().map(Some).collect()
        };
        for thing in each {
            let id = thing.as_ref().map(ToString::to_string).unwrap_or_default();
            if seen.insert((action.verb.clone(), thing)) {
                said.push((entry(&action.verb).expect("a verb of ours").token.to_owned(), id));
            }
        }
    }
    said
}

/// One word of what is expected: any of several verbs, needed or not, and of what words one is in the name of the thing.
struct Item<'e> {
    verbs: Vec<&'e str>,
    names: Vec<&'e str>,
    needed: bool,
}

fn items(expected: &str) -> Vec<Item<'_>> {
    let item = |word| {
        let (needed, verbs) = match str::strip_prefix(word, '?') {
            Some(verbs) => (false, verbs),
            None => (true, word),
        };
        let (verbs, names) = verbs.split_once(':').unwrap_or((verbs, ""));
        Item { verbs: verbs.split('|').collect(), names: names.split('/').collect(), needed }
    };
    expected.split_whitespace().map(item).collect()
}

/// Whether everything that was said finds its own place in what is expected, and nothing needed is left.
fn agrees(said: &[(String, String)], items: &[Item<'_>], taken: &mut Vec<bool>) -> bool {
    let Some((first, rest)) = said.split_first() else {
        return items.iter().zip(&*taken).all(|(item, taken)| *taken || !item.needed);
    };
    (0..items.len()).any(|i| {
        // What a test says of no thing names none wrongly.
        let is_named = first.1.is_empty() || items[i].names.iter().any(|name| first.1.contains(name));
        if taken[i] || !items[i].verbs.contains(&first.0.as_str()) || !is_named {
            return false;
        }
        taken[i] = true;
        let fits = agrees(rest, items, taken);
        taken[i] = fits;
        fits
    })
}

fn is_as_expected(kept: &Kept, expected: &str) -> bool {
    if expected == "message" {
        return kept.is_message;
    }
    let items = items(expected);
    !kept.is_message && agrees(&said(&kept.actions), &items, &mut vec![false; items.len()])
}

#[test]
fn what_engineers_typed_is_heard_as_they_meant_it() {
    let mut n_right = 0;
    for (script, expected) in table::SCRIPTS {
        let path = putback_tests::repository().join(format!("tests/browser/scripts/{script}.txt"));
        let text = std::fs::read_to_string(path).expect(script);
        let lines: Vec<&str> = text.lines().filter(|line| !line.trim().is_empty()).collect();
        assert_eq!(lines.len(), expected.len(), "{script}");
        let mut typist = Typist::new();
        for (n, (line, expected)) in lines.iter().zip(*expected).enumerate() {
            let kept = typist.keep(line);
            if is_as_expected(&kept, expected) {
                n_right += 1;
                if std::env::var("PUTBACK_HEARD").is_ok() {
                    println!("{script} {} ok\n   {line}\n   {}", n + 1, kept.told);
                }
            } else {
                println!("{script} {}: {line}\n   expected: {expected}\n   heard:    {}", n + 1, kept.told);
            }
        }
        println!("{script}: {}", typist.standing());
    }
    println!("{n_right} of 90 lines are heard as expected");
    assert!(n_right >= FLOOR, "only {n_right} of 90, {FLOOR} before");
}

#[test]
fn the_table_can_tell_right_from_wrong() {
    let one = |said: &str| {
        let (verb, thing) = said.split_once(':').unwrap_or((said, ""));
        (verb.to_owned(), thing.to_owned())
    };
    let heard = |said: &str| said.split_whitespace().map(one).collect::<Vec<_>>();
    let agree = |verbs: &str, expected: &str| {
        let items = items(expected);
        agrees(&heard(verbs), &items, &mut vec![false; items.len()])
    };
    assert!(agree("undo remove", "undo ?wait remove"));
    assert!(agree("undo make", "make|undo undo"), "the first place is not always the right one");
    assert!(!agree("undo", "undo remove"), "something is missing");
    assert!(!agree("undo remove test", "undo remove"), "something is too much");
    assert!(agree("undo:lid-screws", "undo:clip/screw"), "one of the names is enough");
    assert!(!agree("remove:gas-valve", "remove:actuator"), "another thing is meant");
}

/// How many of the lines in `told` must be read as they are meant; it only ever rises.
const TOLD_FLOOR: usize = 65;

/// Actions without the sources of their limits, which no words say.
fn without_sources(actions: impl Iterator<Item = Action>) -> String {
    let bare = |mut action: Action| {
        action.readings.iter_mut().for_each(|reading| reading.source.clear());
        action
    };
    print(&actions.map(bare).collect::<Vec<_>>())
}

#[test]
fn what_several_lines_tell_together_is_heard() {
    let (mut n_right, mut n_all) = (0, 0);
    let mut compare = |lines: &str, heard: String, expected: &str| {
        n_all += 1;
        if heard == expected {
            n_right += 1;
        } else {
            println!("{lines}\n   {heard}\n   {expected}");
        }
    };
    for (lines, expected) in told::TOLD {
        let mut typist = Typist::new();
        lines.split('|').for_each(|line| drop(typist.keep(line)));
        let shows = |action: &&Action| matches!(action.verb, Verb::Prove | Verb::Test);
        compare(lines, without_sources(typist.actions().filter(shows).cloned()), expected);
    }
    for (lines, expected) in told::DONE {
        let mut typist = Typist::new();
        let kept = lines.split('|').map(|line| typist.keep(line)).last();
        let actions = kept.map(|kept| kept.actions).unwrap_or_default();
        compare(lines, without_sources(actions.into_iter()), expected);
    }
    println!("{n_right} of {n_all} are heard as they are meant");
    assert!(n_right >= TOLD_FLOOR, "only {n_right} of {n_all}, {TOLD_FLOOR} before");
}

#[test]
fn what_is_found_in_the_scripts_is_true() {
    let mut offences = Vec::new();
    for (script, _) in table::SCRIPTS {
        let path = putback_tests::repository().join(format!("tests/browser/scripts/{script}.txt"));
        let text = std::fs::read_to_string(path).expect(script);
        let mut typist = Typist::new();
        text.lines().filter(|line| !line.trim().is_empty()).for_each(|line| drop(typist.keep(line)));
        offences.extend(Truth::of(script).offences(&typist.report().findings));
    }
    assert!(offences.is_empty(), "{}", offences.join("\n"));
}

#[test]
fn a_reading_that_proves_keeps_its_words() {
    let mut typist = Typist::new();
    for line in [
        "Switch off the boiler.",
        "Close the gas cock.",
        "Open the test point.",
        "read: gas pressure 0 mbar and no rise in 2 minutes; then close the test point",
    ] {
        typist.keep(line);
    }
    let words: Vec<&str> = typist.words().collect();
    assert_eq!(
        words[2..],
        [
            "Open the test point. Prove zero: gas pressure and no rise in 2 minutes: 0 mbar.",
            "Close the test point"
        ]
    );
}

#[test]
fn an_answer_finds_its_question_behind_a_step_of_the_other_answer() {
    let mut typist = Typist::new();
    for line in
        ["ask: Is it sound?", "if yes: Clean the valve.", "if no: Fit a new valve.", "if no: Fit the lid."]
    {
        assert!(!typist.keep(line).told.starts_with("not held"), "{line}");
    }
    let answers: Vec<Vec<&str>> =
        typist.steps().map(|step| step.when.iter().map(|when| when.answer.as_str()).collect()).collect();
    assert_eq!(answers, [vec![], vec!["yes"], vec!["no"], vec!["no"]]);
    let asked: Vec<&Id> = typist.steps().flat_map(|step| &step.when).map(|when| &when.question).collect();
    assert!(asked.windows(2).all(|two| two[0] == two[1]), "one question");
    // Without a question it stays words; nobody cleans a valve unasked.
    let mut typist = Typist::new();
    typist.keep("Take off the cover.");
    let kept = typist.keep("if yes: Clean the valve.");
    assert!(kept.told.starts_with("not held") && kept.actions.is_empty(), "{}", kept.told);
}

#[test]
fn what_is_kept_as_words_says_nothing_to_do() {
    let mut typist = Typist::new();
    typist.keep("Switch off the boiler.");
    typist.keep("Hang a tag on the handle.");
    for line in ["start 10 min, before step 2", "start: the boiler", "hold: "] {
        let kept = typist.keep(line);
        assert!(kept.told.starts_with("not held") && kept.actions.is_empty(), "{line}: {}", kept.told);
    }
    assert_eq!(typist.words().last(), Some("hold: "), "no word is lost");
    let kept = typist.keep("back: take the tag off");
    assert!(kept.actions.is_empty(), "what is to be remembered is not done now: {}", print(&kept.actions));
    let kept = typist.keep("wait 10 min");
    assert_eq!(print(&kept.actions), "wait 10");
}

/// How many of the 90 lines of `spoken` must be heard as expected; it only ever rises.
const SPOKEN_FLOOR: usize = 81;

#[test]
fn what_engineers_say_is_heard_as_they_meant_it() {
    heard_in(spoken::SCRIPTS).holds("lines as they are spoken", SPOKEN_FLOOR);
}

/// How many of the 90 lines of `loose` must be heard as expected; it only ever rises.
const LOOSE_FLOOR: usize = 82;

#[test]
fn loose_speech_is_heard_as_it_was_meant() {
    heard_in(loose::SCRIPTS).holds("lines of loose speech", LOOSE_FLOOR);
}

/// How many of the 90 lines of `further` must be heard as expected; it only ever rises.
const FURTHER_FLOOR: usize = 60;

#[test]
fn three_further_jobs_are_heard_as_they_were_meant() {
    heard_in(further::SCRIPTS).holds("further lines", FURTHER_FLOOR);
}

/// How many of the 90 lines of `blind` must be heard as expected; it only ever rises.
const BLIND_FLOOR: usize = 37;

#[test]
fn three_jobs_that_nobody_taught_are_not_heard_falsely() {
    heard_in(blind::SCRIPTS).holds("lines that nobody taught", BLIND_FLOOR);
}

/// How many of the 90 lines of `pumped` must be heard as expected; it only ever rises.
const PUMPED_FLOOR: usize = 31;

#[test]
fn a_booster_a_diverter_and_a_strainer_are_not_heard_falsely() {
    heard_in(pumped::SCRIPTS).holds("lines about what is pumped", PUMPED_FLOOR);
}

/// How many of the 90 lines of `heated` must be heard as expected; it only ever rises.
const HEATED_FLOOR: usize = 35;

#[test]
fn an_element_an_electrode_and_an_intake_valve_are_not_heard_falsely() {
    heard_in(heated::SCRIPTS).holds("lines about what is heated", HEATED_FLOOR);
}

/// How many of the 120 lines of `untaught` must be heard as expected; it only ever rises.
const UNTAUGHT_FLOOR: usize = 41;

#[test]
fn four_jobs_that_nobody_taught_are_not_heard_falsely() {
    heard_in(untaught::SCRIPTS).holds("untaught lines", UNTAUGHT_FLOOR);
}

/// How many of the 192 lines of `careful` must be heard as expected; it only ever rises.
const CAREFUL_FLOOR: usize = 77;

#[test]
fn six_jobs_in_careful_sentences_are_not_heard_falsely() {
    heard_in(careful::SCRIPTS).holds("careful lines", CAREFUL_FLOOR);
}

/// How many of the 352 lines of `sentences` must be heard as expected; it only ever rises.
const SENTENCES_FLOOR: usize = 207;

#[test]
fn eleven_jobs_in_whole_sentences_are_not_heard_falsely() {
    heard_in(sentences::SCRIPTS).holds("lines in whole sentences", SENTENCES_FLOOR);
}

/// How many of the 256 lines of `pairs` must be heard as expected; it only ever rises.
const PAIRS_FLOOR: usize = 148;

#[test]
fn eight_jobs_with_pairs_are_not_heard_falsely() {
    heard_in(pairs::SCRIPTS).holds("lines about pairs", PAIRS_FLOOR);
}

/// How many of the 224 lines of `twins` must be heard as expected; it only ever rises.
const TWINS_FLOOR: usize = 119;

#[test]
fn seven_jobs_with_twins_are_not_heard_falsely() {
    heard_in(twins::SCRIPTS).holds("lines about twins", TWINS_FLOOR);
}

#[test]
fn the_lines_about_the_compressor_are_heard_without_a_question() {
    let touched = [CircuitKind::MainsElectricity, CircuitKind::CompressedAir, CircuitKind::Oil];
    let mut typist = Typist::new();
    typist.touches(&touched);
    for (line, told) in compressor::LINES {
        assert_eq!(typist.keep(line).told, *told, "{line}");
    }
    let mut typist = Typist::new();
    typist.touches(&touched);
    let kept = [
        "Switch off at the wall isolator.",
        "Close the ball valve to the ring main.",
        compressor::NAMED_GAUGE,
    ]
    .map(|line| typist.keep(line));
    let of_air = "release air-pipes what=pressure by=drain through=drain-valve · prove air-pipes reading=\"gauge|0..0.1 bar\"";
    assert_eq!(print(&kept[2].actions), of_air);
}

/// How many of the lines in `trade` must be heard as expected; it only ever rises.
const TRADE_FLOOR: usize = 42;

#[test]
fn single_lines_of_the_trade_are_heard_as_they_are_meant() {
    heard_alone(trade::LINES).holds("lines of the trade", TRADE_FLOOR);
}

/// How many of the further lines in `trade` must be heard as expected; it only ever rises.
const MORE_FLOOR: usize = 39;

#[test]
fn more_lines_of_the_trade_are_heard_as_they_are_meant() {
    heard_alone(trade::MORE).holds("further lines", MORE_FLOOR);
}

/// How many of the lines of `trade` that stand for a way of speaking must be heard; it only ever rises.
const WAYS_FLOOR: usize = 124;

#[test]
fn ways_of_speaking_are_heard_and_nothing_that_looks_alike() {
    heard_alone(trade::WAYS).holds("lines of ways of speaking", WAYS_FLOOR);
}

/// How many lines were heard as expected, and which say something that nobody meant.
#[derive(Default)]
struct Heard {
    n_right: usize,
    n_all: usize,
    said_wrongly: Vec<String>,
}

impl Heard {
    /// That at least so many lines are heard as expected, and that none says what nobody meant.
    fn holds(&self, what: &str, floor: usize) {
        println!("{} of {} {what} are heard as expected", self.n_right, self.n_all);
        assert!(self.n_right >= floor, "only {} of {}, {floor} before", self.n_right, self.n_all);
        assert!(self.said_wrongly.is_empty(), "nobody meant what is heard in {:?}", self.said_wrongly);
    }

    fn note(&mut self, place: &str, line: &str, expected: &str, kept: &Kept) {
        let is_right = is_as_expected(kept, expected);
        let is_false = !is_right && (expected == "message" || !only_meant(kept, expected));
        self.n_all += 1;
        self.n_right += usize::from(is_right);
        self.said_wrongly.extend(is_false.then(|| place.to_owned()));
        if !is_right || std::env::var("PUTBACK_HEARD").is_ok() {
            let how = match (is_right, is_false) {
                (true, _) => "ok",
                (_, true) => "FALSE",
                _ => "not all",
            };
            println!("{place} {how}: {line}\n   expected: {expected}\n   heard:    {}", kept.told);
        }
    }
}

/// The last line of each, behind those that stand for the state of things.
fn heard_alone(lines: &[(&str, &str)]) -> Heard {
    let mut heard = Heard::default();
    for (lines, expected) in lines {
        let mut typist = Typist::new();
        let Some(kept) = lines.split('|').map(|line| typist.keep(line)).last() else { continue };
        heard.note(lines, lines, expected, &kept);
    }
    heard
}

fn heard_in(scripts: &[(&str, &str, &[&str])]) -> Heard {
    let mut heard = Heard::default();
    for (script, text, expected) in scripts {
        let mut typist = Typist::new();
        assert_eq!(text.lines().count(), expected.len(), "{script}");
        for (n, (line, expected)) in text.lines().zip(*expected).enumerate() {
            heard.note(&format!("{script} {}", n + 1), line, expected, &typist.keep(line));
        }
    }
    heard
}

/// Whether nothing was heard that is not expected, however much is missing.
fn only_meant(kept: &Kept, expected: &str) -> bool {
    let mut items = items(expected);
    for item in &mut items {
        item.needed = false;
    }
    !kept.is_message && agrees(&said(&kept.actions), &items, &mut vec![false; items.len()])
}
