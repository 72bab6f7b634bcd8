//! Lines that begin with a leading word, lines that only look so, and what a step becomes.

use super::{
    Beside, Gap, Leading, apply_leading, leading, number_of_step, parts_of_step, question_with_answers,
    with_gap_filled,
};
use crate::lexicon::Lexicon;
use crate::model::{Id, NumberedIds, SignalWord, Stage, Step, Verb};
use crate::notation::print;
use std::fmt::Display;

fn of<T: Display>(value: Option<&T>) -> String {
    value.map_or("?".to_owned(), ToString::to_string)
}

/// The parts of a line, each behind a stroke; a missing one is `?`.
fn shown(line: &str) -> String {
    let part = |text: &str| if text.is_empty() { "?".to_owned() } else { text.to_owned() };
    let parts = match leading(line) {
        None => return "-".to_owned(),
        Some(Leading::Message(m)) => {
            vec![m.word.word().to_lowercase(), part(&m.hazard), part(&m.consequence), part(&m.avoidance)]
        }
        Some(Leading::Read { what, limits, out, .. }) => {
            vec!["read".into(), part(&what), of(limits.as_ref()), part(&out)]
        }
        Some(Leading::Wait { duration, at_most, words }) => {
            vec!["wait".into(), of(duration.as_ref()), of(at_most.as_ref()), part(&words)]
        }
        Some(Leading::Start { duration, before, until }) => {
            vec!["start".into(), of(duration.as_ref()), part(&before), of(until.as_ref())]
        }
        Some(Leading::Ask { question }) => vec!["ask".into(), part(&question)],
        Some(Leading::If { answer, words }) => vec![format!("if {answer}"), part(&words)],
        Some(Leading::Hold { role, what }) => vec!["hold".into(), part(&role), part(&what)],
        Some(Leading::Photo { of: subject }) => vec!["photo".into(), part(&subject)],
        Some(Leading::Why { reason }) => vec!["why".into(), part(&reason)],
        Some(Leading::Later { what, who }) => vec!["later".into(), part(&what), part(&who)],
        Some(Leading::Bring { list, quantity, name }) => {
            vec!["bring".into(), of(list.as_ref()), quantity.to_string(), part(&name)]
        }
        Some(Leading::Back { what }) => vec!["back".into(), part(&what)],
    };
    parts.join(" | ")
}

const LINES: &[(&str, &str)] = &[
    (
        "warning: air under pressure; a fitting can fly off; vent to 0 bar before loosening",
        "warning | air under pressure | a fitting can fly off | vent to 0 bar before loosening",
    ),
    ("WARNING: hot water can scald; let it cool", "warning | hot water | can scald | let it cool"),
    ("Danger: live parts. Do not touch them.", "danger | live parts | ? | Do not touch them."),
    ("DANGER! Live parts can kill; prove dead first", "danger | Live parts | can kill | prove dead first"),
    ("Caution - sharp edges, do not reach in", "caution | sharp edges | ? | do not reach in"),
    ("Caution \u{2013} sharp edges", "caution | sharp edges | ? | ?"),
    ("caution: wear gloves", "caution | ? | ? | wear gloves"),
    ("caution: wear gloves; sharp edges", "caution | sharp edges | ? | wear gloves"),
    ("NOTICE: water may damage the board; cover it", "notice | water | may damage the board | cover it"),
    ("notice:", "notice | ? | ? | ?"),
    ("warning: gas; explosion", "warning | gas | explosion | ?"),
    (
        "Warning!: Escaping gas can explode. Never smoke.",
        "warning | Escaping gas | can explode | Never smoke.",
    ),
    ("warning: escaping water. It can scald.", "warning | escaping water. | It can scald. | ?"),
    ("warning: a; b; keep off; and wear a visor", "warning | a | b | keep off; and wear a visor"),
    ("warning: do not open the case", "warning | ? | ? | do not open the case"),
    (
        "read: gas inlet pressure 17 to 23 mbar (out: close the gas cock and stop)",
        "read | gas inlet pressure | 17 mbar to 23 mbar | close the gas cock and stop",
    ),
    ("Read: burner pressure: 9.5-10.5 mbar", "read | burner pressure | 9.5 mbar to 10.5 mbar | ?"),
    ("read: flow temperature at most 60 °C", "read | flow temperature | at most 60 °C | ?"),
    ("read: flow temperature not above 60 °C", "read | flow temperature | at most 60 °C | ?"),
    ("read: insulation > 1 MΩ, out: find the fault", "read | insulation | at least 1 MΩ | find the fault"),
    ("read: insulation no less than 1 megohm", "read | insulation | at least 1 MΩ | ?"),
    ("read: gap not below 2 mm", "read | gap | at least 2 mm | ?"),
    ("read: gap below 2 mm", "read | gap | at most 2 mm | ?"),
    ("read: gap never 2 mm", "read | gap never 2 mm | ? | ?"),
    ("read: drop less than 0.2 mbar in 2 min", "read | drop in 2 min | at most 0.2 mbar | ?"),
    ("read: fill pressure between 1 and 1.5 bar cold", "read | fill pressure cold | 1 bar to 1.5 bar | ?"),
    ("read: time to 60 °C", "read | time to | 60 °C | ?"),
    ("read: flue draught -0.1 mbar", "read | flue draught -0.1 mbar | ? | ?"),
    ("read: gap 1.2 ± 0.1 mm", "read | gap | 1.1 mm to 1.3 mm | ?"),
    ("read: L to N 216 to 253 V, N to E 0 to 5 V", "read | L to N 216 to 253 V, N to E 0 to 5 V | ? | ?"),
    ("read: gauge about 2 bar", "read | gauge about 2 bar | ? | ?"),
    ("read: meter number", "read | meter number | ? | ?"),
    ("wait 10 min", "wait | 10 min | ? | ?"),
    ("Wait 10 to 15 minutes.", "wait | 10 min | 15 min | ?"),
    ("wait: at least 30 s", "wait | 30 s | ? | ?"),
    ("wait: until it is cold", "wait | ? | ? | until it is cold"),
    ("Start 10 min, before refitting the cover", "start | 10 min | refitting the cover | ?"),
    ("start 1 h before {step:s9}", "start | 1 h | {step:s9} | s9"),
    ("ask: Is the seal face pitted?", "ask | Is the seal face pitted?"),
    ("If yes: renew the flange", "if yes | renew the flange"),
    ("if no:", "if no | ?"),
    ("hold: gas engineer, soundness seen", "hold | gas engineer | soundness seen"),
    ("Hold: supervisor", "hold | supervisor | ?"),
    ("hold: soundness seen, gas engineer", "hold | gas engineer | soundness seen"),
    (
        "hold: drop below 0.2 mbar, no smell; the supervisor.",
        "hold | the supervisor | drop below 0.2 mbar, no smell",
    ),
    ("hold: supervisor, seen with the owner", "hold | supervisor | seen with the owner"),
    ("hold: two minutes, no drop", "hold | two minutes | no drop"),
    (
        "notice: water on the board, can damage it, cover it first",
        "notice | water on the board | can damage it | cover it first",
    ),
    (
        "caution: the pan is heavy, may slip; , lift it in pairs.",
        "caution | the pan is heavy | may slip | lift it in pairs.",
    ),
    ("warning: hot water, can scald,.", "warning | hot water | can scald | ?"),
    ("photo: the terminals with their wires", "photo | the terminals with their wires"),
    ("Why: the seal sets after one use", "why | the seal sets after one use"),
    ("later: number of the gasket, the stores", "later | number of the gasket | the stores"),
    ("later: number of the gasket", "later | number of the gasket | ?"),
    ("bring: 2 new washers", "bring | spares | 2 | new washers"),
    ("bring: 17 mm spanner", "bring | tools | 1 | 17 mm spanner"),
    ("bring: leak detection fluid", "bring | consumables | 1 | leak detection fluid"),
    ("bring: manometer, 0 to 100 mbar", "bring | instruments | 1 | manometer, 0 to 100 mbar"),
    ("bring: a friend", "bring | ? | 1 | a friend"),
    ("back: the arrow points down", "back | the arrow points down"),
    ("Read the meter.", "-"),
    ("Read - then write", "-"),
    ("Reading: 5 bar", "-"),
    ("Wait for the pump to stop.", "-"),
    ("Wait 10 min for the pump to cool.", "-"),
    ("Wait until the fan stops.", "-"),
    ("Warning lights go out.", "-"),
    ("Warnings: see the plate", "-"),
    ("Danger zone is behind the barrier.", "-"),
    ("Caution when lifting.", "-"),
    ("Notice the arrow on the body.", "-"),
    ("Notice-board key on the hook.", "-"),
    ("Hold the valve body with a second spanner.", "-"),
    ("Hold - do not turn.", "-"),
    ("Start the pump.", "-"),
    ("Start 10 min after filling.", "-"),
    ("Ask the householder to leave.", "-"),
    ("If yes, renew it.", "-"),
    ("Photograph the terminals.", "-"),
    ("Photos: see the album", "-"),
    ("Back off the screw.", "-"),
    ("Back-nut: 27 mm", "-"),
    ("Later models have two screws.", "-"),
    ("Bring the tray under the drain.", "-"),
    ("Why not", "-"),
    ("", "-"),
];

#[test]
fn lines_fall_into_their_parts() {
    assert!(LINES.len() >= 50);
    let wrong: Vec<String> = LINES
        .iter()
        .filter(|(line, expected)| shown(line) != *expected)
        .map(|(line, expected)| format!("{line}\n  expected {expected}\n  found    {}", shown(line)))
        .collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn what_is_missing_is_a_gap() {
    let gaps = |line: &str| leading(line).expect(line).gaps();
    assert_eq!(gaps("warning: gas; explosion"), [Gap::Avoidance]);
    assert_eq!(gaps("warning:"), [Gap::Hazard, Gap::Consequence, Gap::Avoidance]);
    assert_eq!(gaps("read: inlet pressure"), [Gap::Limits, Gap::OnFail]);
    assert_eq!(gaps("wait: until it is cold"), [Gap::Duration]);
    assert_eq!(gaps("start 10 min, before the test"), [Gap::Before]);
    assert_eq!(gaps("hold: supervisor"), [Gap::What]);
    assert_eq!(gaps("bring: a friend"), [Gap::List]);
    assert_eq!(gaps("photo: the wires"), []);
}

fn step(words: &str) -> Step {
    Step::new(Id::new("s1"), Stage::Refit, words)
}

#[test]
fn every_action_of_a_line_is_said_by_the_words_that_it_adds() {
    let lexicon = Lexicon::for_language("en").expect("English");
    for (line, words, notation) in [
        ("wait 10 min", "Fill the trap. Wait 10 min.", "wait for=10min"),
        (
            "read: inlet pressure 17 to 23 mbar",
            "Fill the trap. Read inlet pressure: 17 mbar to 23 mbar.",
            "read",
        ),
        (
            "hold: gas engineer, soundness seen",
            "Fill the trap. Hold for gas engineer: soundness seen.",
            "hold",
        ),
        ("photo: the wires", "Fill the trap. Photograph the wires.", "photograph"),
        ("ask: Is it pitted?", "Fill the trap. Ask: Is it pitted?", "ask"),
        ("start 1 h before {step:s9}", "Fill the trap. Wait 1 h, over before {step:s9}.", "wait"),
    ] {
        let mut ids = NumberedIds::default();
        let leading = leading(line).expect(line);
        let applied = apply_leading(&step("Fill the trap"), &leading, &mut ids).expect(line);
        assert_eq!(applied.step.words, words);
        let [action] = applied.step.actions.as_slice() else { panic!("{line}: one action") };
        assert!(lexicon.says_at(words, &action.says, action), "{line}: {:?} in {words}", action.says);
        let verb = notation.split(' ').next().unwrap_or_default();
        assert!(print(&applied.step.actions).starts_with(verb), "{line}: {}", print(&applied.step.actions));
    }
}

#[test]
fn a_reading_joins_the_read_of_the_sentence() {
    let mut sentence = step("Read the inlet pressure.");
    sentence.actions.push(crate::model::Action::new(Verb::Read, Vec::new()));
    let line = leading("read: inlet 17 to 23 mbar (out: close the cock and stop)").expect("a reading");
    let applied = apply_leading(&sentence, &line, &mut NumberedIds::default()).expect("held");
    assert_eq!(applied.step.words, "Read the inlet pressure.");
    let [action] = applied.step.actions.as_slice() else { panic!("one action") };
    assert_eq!(action.readings.len(), 1);
    let on_fail = action.on_fail.as_ref().expect("what to do");
    assert!(on_fail.leave_safe);
    assert_eq!(on_fail.again, "close the cock and stop");
}

#[test]
fn a_question_takes_its_answers() {
    let mut ids = NumberedIds::default();
    let ask = leading("ask: Is the face pitted?").expect("a question");
    let asked = apply_leading(&step("Look at the face."), &ask, &mut ids).expect("held");
    let [Beside::Question(question)] = asked.beside.as_slice() else { panic!("a question") };
    assert_eq!(question.words, "Is the face pitted?");
    let yes = leading("if yes: renew the flange").expect("an answer");
    let answered = apply_leading(&asked.step, &yes, &mut ids).expect("held");
    let [further] = answered.further.as_slice() else { panic!("one step") };
    assert_eq!(further.words, "renew the flange");
    assert_eq!(
        further.when.first().map(|when| (&when.question, when.answer.as_str())),
        Some((&question.id, "yes"))
    );
    assert!(apply_leading(&step("Look."), &yes, &mut ids).is_err(), "no question stands before it");
}

#[test]
fn what_a_step_cannot_hold_is_said() {
    let refused = |line: &str| {
        let leading = leading(line).expect(line);
        apply_leading(&step("Fit it."), &leading, &mut NumberedIds::default()).expect_err(line)
    };
    assert_eq!(refused("start 10 min, before the test").gap, Some(Gap::Before));
    assert_eq!(refused("wait: until it is cold").gap, Some(Gap::Duration));
    assert_eq!(refused("bring: a friend").gap, Some(Gap::List));
    assert_eq!(refused("hold:").gap, Some(Gap::Role));
    assert_eq!(refused("back:").gap, Some(Gap::What));
}

#[test]
fn the_text_of_a_step_is_a_sentence_and_its_lines() {
    let text =
        "Undo the unions,\nboth of them.\n\nwarning: hot water can scald; let it cool\nwhy: they drip\n";
    let parts = parts_of_step(text);
    assert_eq!(parts.sentence, "Undo the unions, both of them.");
    let [Leading::Message(message), Leading::Why { reason }] = parts.leading.as_slice() else {
        panic!("{:?}", parts.leading)
    };
    assert_eq!((&message.word, message.hazard.as_str()), (&SignalWord::Warning, "hot water"));
    assert_eq!(reason, "they drip");
}

#[test]
fn what_is_done_after_a_reading_is_a_step_behind_it() {
    for (line, what, next) in [
        ("read: 0 V on all pairs, then prove the tester again", "on all pairs", "Prove the tester again"),
        ("read: 0 V three times. Shut the flap.", "three times", "Shut the flap."),
        ("read: 0 mbar; then pull off the hose", "", "Pull off the hose"),
        (
            "read: 1.2 bar, no drop in 10 minutes; dry tissue at the vent",
            "no drop in 10 minutes; dry tissue at the vent",
            "",
        ),
        ("read: pressure 1.0 to 1.5 bar (out: stop. Close the valve)", "pressure", ""),
    ] {
        let Some(Leading::Read { what: read, then, .. }) = leading(line) else { panic!("{line}") };
        assert_eq!((read.as_str(), then.as_str()), (what, next), "{line}");
    }
    let step = Step::new(Id::new("s"), Stage::MakeSafe, "Prove dead.");
    let line = leading("read: duct temperature 20 to 40 °C, then shut the flap").expect("a reading");
    let applied = apply_leading(&step, &line, &mut NumberedIds::default()).expect("it is held");
    let words: Vec<&str> = applied.further.iter().map(|step| step.words.as_str()).collect();
    assert_eq!(words, ["Shut the flap"]);
}

#[test]
fn a_question_is_cut_from_the_answers_beside_it() {
    let cut = |line| question_with_answers(line).unwrap_or_default();
    let line = "ask: is the seat marked? if yes, renew the check valve, number later";
    assert_eq!(cut(line), ["ask: is the seat marked?", "if yes: renew the check valve, number later"]);
    let line = "Ask: Is it dry? If yes: go on; if no: stop the job.";
    assert_eq!(cut(line), ["Ask: Is it dry?", "If yes: go on", "if no: stop the job."]);
    for whole in ["ask: is it dry if yes, or is it wet?", "ask: is it dry?", "Is it dry? If yes, go on."] {
        assert_eq!(question_with_answers(whole), None, "{whole}");
    }
}

#[test]
fn a_wait_may_name_its_step_by_number() {
    assert_eq!(number_of_step("step 12"), Some(12));
    assert_eq!(number_of_step("Step 3"), Some(3));
    for other in ["the test", "step two", "step", "3"] {
        assert_eq!(number_of_step(other), None, "{other}");
    }
}

#[test]
fn a_gap_is_filled_and_all_else_stays() {
    for (line, gap, text, filled) in [
        ("warning: hot water", Gap::Consequence, "can scald", "warning: hot water; can scald"),
        ("Warning! hot water", Gap::Avoidance, "let it cool", "Warning: hot water; ; let it cool"),
        (
            "warning: hot water; ; let it cool",
            Gap::Consequence,
            "it scalds",
            "warning: hot water; it scalds; let it cool",
        ),
        ("caution: wear gloves", Gap::Hazard, "sharp edges", "caution: sharp edges; ; wear gloves"),
        ("notice:", Gap::Hazard, "water on the board", "notice: water on the board"),
        ("hold: supervisor", Gap::What, "soundness seen", "hold: supervisor, soundness seen"),
        (
            "read: flow temperature",
            Gap::Limits,
            "40 to 60 \u{b0}C",
            "read: flow temperature 40 to 60 \u{b0}C",
        ),
        ("read: gap 1 to 2 mm", Gap::OnFail, "fit new", "read: gap 1 to 2 mm (out: fit new)"),
        ("later: number of the gasket", Gap::Who, "the stores", "later: number of the gasket, the stores"),
        ("wait: until it is cold", Gap::Duration, "20 min", "wait: 20 min until it is cold"),
        ("why:", Gap::Reason, "it leaks", "why: it leaks"),
        ("back:", Gap::What, "arrow down", "back: arrow down"),
    ] {
        assert!(leading(line).expect("led").gaps().contains(&gap), "{line}");
        let now = with_gap_filled(line, gap, text);
        assert_eq!(now, filled);
        assert!(!leading(&now).expect("led").gaps().contains(&gap), "{now}");
    }
    let odd = with_gap_filled("read: flow", Gap::Limits, "whatever it is");
    assert_eq!(odd, "read: flow; whatever it is", "what fills no gap is not lost");
}
