//! Of several equal figures one is stated otherwise: what it stands beside tells whose it is.

use super::{differing, today};
use crate::coin::Typed;
use procedures_schema::check::fixes;
use procedures_schema::model::{Procedure, Stage};
use std::sync::Arc;

/// A sentence that was read as it stood, and of which one stretch is then written otherwise.
fn typed(words: &str, from: &str, nth: usize, to: &str) -> Procedure {
    let mut typed = Typed::new();
    typed.type_line(words, &Stage::Strip);
    let step = Arc::make_mut(typed.document.steps.last_mut().expect("a step"));
    let (at, _) = words.match_indices(from).nth(nth).expect("it is there");
    step.words = [&words[..at], to, &words[at + from.len()..]].concat();
    typed.document
}

const OF_COVER: &str = "Undo the four screws and four nuts of the cover.";
const TWO_LINES: &str = "Undo the four screws of the cover and slacken the four bolts of the flange.";
const PAIRS: &str =
    "Prove dead at the mains terminals: L to N 0 V to 5 V, L to E 0 V to 5 V, N to E 0 V to 5 V.";
const SHORT_PAIRS: &str = "Prove dead at the mains terminals, L-N 0 to 5 V, L-E 0 to 5 V and N-E 0 to 5 V.";
const WAITS: &str = "Wait 10 min, open the drain cock and wait 10 min.";

#[test]
fn what_it_stands_beside_tells_whose_it_is() {
    for (words, from, nth, to, expected) in [
        (OF_COVER, "four", 0, "six", "\"six screws\", and its action says 4 of the screws"),
        (OF_COVER, "four", 1, "six", "\"six nuts\", and its action says 4 of the cover nuts"),
        (TWO_LINES, "four", 0, "six", "\"six screws\", and its action says 4 of the cover screws"),
        (TWO_LINES, "four", 1, "two", "\"two bolts\", and its action says 4 of the bolts"),
        (PAIRS, "5 V", 1, "50 V", "\"0 V to 50 V\", and its action says 0 V to 5 V"),
        (SHORT_PAIRS, "5 V", 2, "50 V", "\"0 to 50 V\", and its action says 0 V to 5 V"),
        (WAITS, "10", 0, "20", "\"20 min\", and its action says 10 min"),
        (WAITS, "10", 1, "5", "\"5 min\", and its action says 10 min"),
    ] {
        assert_eq!(differing(&typed(words, from, nth, from)), [], "{words}");
        let told: Vec<String> =
            differing(&typed(words, from, nth, to)).into_iter().map(|finding| finding.title).collect();
        let [only] = told.as_slice() else { panic!("{words}: {told:#?}") };
        assert!(only.ends_with(expected), "{only}: not {expected}");
    }
}

#[test]
fn where_it_stands_is_where_the_key_puts_it() {
    for (words, from, nth, to, expected) in [
        (WAITS, "10", 1, "20", ["put 20 min into the action", "write 10 min in the words"]),
        (PAIRS, "5 V", 1, "3 V", ["put 0 V to 3 V into the reading", "write 0 V to 5 V in the words"]),
    ] {
        let procedure = typed(words, from, nth, to);
        let found = differing(&procedure);
        let offered: Vec<String> = found
            .iter()
            .flat_map(|finding| fixes(&procedure, finding, today()))
            .map(|fix| fix.label)
            .collect();
        assert_eq!(offered, expected, "{words}");
    }
}

#[test]
fn what_is_not_certain_is_not_told() {
    for (words, from, nth, to) in [
        // More figures than actions, or fewer; what is said of all; the same in other words.
        (WAITS, "wait 10 min", 0, "wait 10 min, or 20 min in winter"),
        (WAITS, "Wait 10 min", 0, "Wait a while"),
        (WAITS, "10 min", 1, "600 s"),
        (PAIRS, "N to E 0 V to 5 V", 0, "N to E the same"),
        (PAIRS, "L to E 0 V to 5 V", 0, "tester on 230 V, L to E 0 V to 5 V"),
        (OF_COVER, "four screws", 0, "two upper and two lower screws"),
        (OF_COVER, "four screws", 0, "4 screws"),
        (TWO_LINES, "four bolts", 0, "two of the four bolts"),
        (TWO_LINES, "four bolts", 0, "other two bolts"),
    ] {
        assert_eq!(differing(&typed(words, from, nth, to)), [], "{words}: {to}");
    }
}
