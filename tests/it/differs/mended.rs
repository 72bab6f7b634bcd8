//! Words that part from their actions, mended with a key: one of the two takes what the other says.

use super::{changed, differing, today};
use procedures_schema::check::fixes;
use procedures_schema::edit::apply;
use procedures_schema::model::Procedure;
use std::sync::Arc;

/// The keys that are offered where the words of a step are changed, with what the step says after each.
fn offered(procedure: &Procedure, step: usize) -> Vec<String> {
    let found = differing(procedure);
    let [finding] = found.as_slice() else { panic!("{found:#?}") };
    let keys = fixes(procedure, finding, today()).into_iter().map(|fix| {
        let mut mended = Arc::new(procedure.clone());
        for edit in &fix.edits {
            mended = apply(&mended, edit).expect("it can be applied").document;
        }
        assert_eq!(differing(&mended), [], "{}", fix.label);
        if fix.label.starts_with("write") {
            format!("{}: {}", fix.label, mended.steps[step - 1].words)
        } else {
            fix.label
        }
    });
    keys.collect()
}

const PUMP: &str = "circulation-pump";
const GAS: &str = "gas-valve";
const STORE: &str = "hot-water-store";

/// Which words of which step of a demo give way to which, and the keys that are offered then, each with what the words
/// say after it.
type Case = (&'static str, usize, &'static str, &'static str, &'static [&'static str]);

const CASES: &[Case] = &[
    (PUMP, 24, "40 N·m to 45 N·m", "90 N·m", &["write 40 to 45 N·m in the words: passes, 40 to 45 N·m."]),
    (PUMP, 24, "40 N·m to 45 N·m", "40 to 54 Nm", &["write 40 to 45 Nm in the words: passes, 40 to 45 Nm."]),
    (
        PUMP,
        24,
        "40 N·m to 45 N·m",
        "between 40 and 54 Nm",
        &["write 40 and 45 Nm in the words: passes, between 40 and 45 Nm."],
    ),
    (PUMP, 24, "four bolts", "two bolts", &["write four in the words: gasket: four bolts, crosswise"]),
    (PUMP, 18, "18 mm", "24 mm", &["put 24 mm on the map", "write 18 mm in the words: flange, 18 mm."]),
    (PUMP, 18, "18 mm", "M10", &["put M10 on the map", "write M12 in the words: flange, M12."]),
    (PUMP, 7, "four lid screws", "6 lid screws", &["write 4 in the words: Undo the 4 lid screws"]),
    (
        PUMP,
        12,
        "30 min",
        "3 min",
        &["put 3 min into the action", "write 30 min in the words: Wait 30 min until"],
    ),
    (
        PUMP,
        12,
        "30 min",
        "three minutes",
        &["put three minutes into the action", "write 30 minutes in the words: Wait 30 minutes until"],
    ),
    (PUMP, 12, "30 min", "2 h", &["put 2 h into the action", "write 30 min in the words: Wait 30 min until"]),
    // What the tables demand is not put aside.
    (PUMP, 14, "43 °C", "63 °C", &["write 43 °C in the words: water not above 43 °C."]),
    (PUMP, 14, "60 s", "30 s", &["write 60 s in the words: drain for 60 s, water"]),
    (
        PUMP,
        33,
        "1.5 bar",
        "2.5 bar",
        &[
            "put 1.2 bar to 2.5 bar into the reading",
            "write 1.2 bar to 1.5 bar in the words: cold: 1.2 bar to 1.5 bar.",
        ],
    ),
    (
        PUMP,
        33,
        "1.2 bar to 1.5 bar",
        "300-400 mbar",
        &["put 300-400 mbar into the reading", "write 1.2 to 1.5 bar in the words: cold: 1.2 to 1.5 bar."],
    ),
    // One figure does not tell which limit it is.
    (
        PUMP,
        33,
        "1.2 bar to 1.5 bar",
        "2.5 bar",
        &["write 1.2 to 1.5 bar in the words: cold: 1.2 to 1.5 bar."],
    ),
    (
        PUMP,
        33,
        "1.2 bar to 1.5 bar",
        "at most 1.4 bar",
        &["put at most 1.4 bar into the reading", "write 1.5 bar in the words: cold: at most 1.5 bar."],
    ),
    (
        GAS,
        33,
        "20 mbar to 21 mbar",
        "30 mbar to 31 mbar",
        &[
            "put 30 mbar to 31 mbar into the reading",
            "write 20 mbar to 21 mbar in the words: point: 20 mbar to 21 mbar, 1 min",
        ],
    ),
    (STORE, 42, "90 min", "9 min", &["put 9 min into the action", "write 90 min in the words: wait 90 min."]),
    (
        PUMP,
        27,
        "0.2 Ω",
        "0.5 Ω",
        &["put at most 0.5 Ω into the reading", "write 0.2 Ω in the words: at most 0.2 Ω."],
    ),
    (
        PUMP,
        27,
        "at most 0.2 Ω",
        "0.1 ohm at most",
        &["put at most 0.1 ohm into the reading", "write 0.2 ohms in the words: 0.2 ohms at most."],
    ),
    (PUMP, 27, "at most", "at least", &[]),
    (
        PUMP,
        34,
        "10 min",
        "20 min",
        &["put 20 min into the reading", "write 10 min in the words: 10 min, drop"],
    ),
    (
        PUMP,
        34,
        "at most 0.05 bar",
        "0.02 bar",
        &["put 0.02 bar into the reading", "write at most 0.05 bar in the words: drop at most 0.05 bar,"],
    ),
    (
        PUMP,
        34,
        "at most 0.05 bar",
        "not above 20 mbar",
        &["put at most 20 mbar into the reading", "write 0.05 bar in the words: drop not above 0.05 bar,"],
    ),
    // Which thing is meant no key knows.
    (GAS, 8, "inlet valve", "gas valve", &[]),
];

#[test]
fn words_or_action_take_what_the_other_says() {
    for (name, step, from, to, expected) in CASES {
        let offered = offered(&changed(name, *step, from, to), *step);
        assert_eq!(offered.len(), expected.len(), "step {step} {to}: {offered:#?}");
        for (key, expected) in offered.iter().zip(*expected) {
            let (label, words) = expected.split_once(": ").unwrap_or((expected, ""));
            let is_so = key.strip_prefix(label).is_some_and(|now| now.contains(words));
            assert!(is_so, "{key}: not {expected}");
        }
    }
}
