//! Which words say which verb, and which only seem to.

use super::english::PHRASES;
use super::english_nouns::{BEFORE_NOUNS, LOOKALIKES};
use super::{Amount, Lexicon, tokens};
use crate::model::{Action, Span, Stage, Verb};

fn english() -> &'static Lexicon {
    Lexicon::for_language("en-GB").expect("English is known")
}

fn says(words: &str, verb: Verb) -> bool {
    english().says(words, &Action::new(verb, Vec::new()))
}

#[test]
fn only_english_is_known() {
    assert!(Lexicon::for_language("en").is_some());
    assert!(Lexicon::for_language("EN-ie").is_some());
    assert!(Lexicon::for_language("de").is_none());
    assert!(Lexicon::for_language("").is_none());
}

#[test]
fn the_tables_are_sorted_and_hold_nothing_twice() {
    let verbs: Vec<&str> = PHRASES.into_iter().flatten().map(|(written, _)| *written).collect();
    for list in [&verbs[..], LOOKALIKES, BEFORE_NOUNS.words()] {
        for pair in list.windows(2) {
            assert!(pair[0] < pair[1], "{} stands before {}", pair[0], pair[1]);
        }
    }
    assert!(PHRASES.into_iter().flatten().all(|(_, means)| !means.is_empty()));
}

/// Words without a verb, a verb, and whether it is understood.
const UNDERSTOOD: &[(&str, Verb, bool)] = &[
    ("Isolator off", Verb::Isolate, true),
    ("Isolator off", Verb::Restore, false),
    ("MCBs up", Verb::Restore, true),
    ("MCB down and padlocked", Verb::Isolate, true),
    ("Both valves open", Verb::Restore, true),
    ("Drain cock shut, both valves open", Verb::Restore, true),
    ("Spur back on", Verb::Restore, true),
    ("Cover on, close the four catches", Verb::Fit, true),
    ("Front panel off: two screws", Verb::Remove, true),
    ("Undo the union and hose off", Verb::Undo, true),
    ("Six screws back in the cover", Verb::Make, true),
    ("Tag on", Verb::Place, true),
    ("Padlocks off", Verb::Restore, true),
    ("The nut to 30 Nm, the outlet to 23", Verb::Make, true),
    // What is looked for, told, or how it stands, is no order.
    ("Check: burner quiet, isolator off", Verb::Isolate, false),
    ("With the cover off, look inside", Verb::Remove, false),
    ("If the isolator is off, wait", Verb::Isolate, false),
    ("The valve is shut", Verb::Isolate, false),
    ("The water comes off the boil", Verb::Isolate, false),
    ("Isolator off position", Verb::Isolate, false),
    ("A drop of oil on the seal", Verb::Restore, false),
    ("Leave it with the cover off", Verb::Remove, false),
    ("No cover off", Verb::Remove, false),
    ("Until the valve is open", Verb::Restore, false),
    ("Cover in place", Verb::Fit, false),
];

#[test]
fn a_verb_that_is_left_out_is_understood() {
    for (words, verb, is_said) in UNDERSTOOD {
        assert_eq!(says(words, verb.clone()), *is_said, "{words}: {verb}");
    }
}

#[test]
fn every_verb_can_be_said() {
    for verb in Verb::ALL {
        assert!(PHRASES.into_iter().flatten().any(|(_, means)| means.contains(verb)), "{verb}");
    }
}

/// Words, a verb, and whether the words say it.
const TABLE: &[(&str, Verb, bool)] = &[
    ("Close the gas valve.", Verb::Isolate, true),
    ("Open the gas valve.", Verb::Isolate, false),
    ("Open the gas valve.", Verb::Restore, true),
    ("Close the gas valve.", Verb::Restore, false),
    ("Shut both pump valves", Verb::Isolate, true),
    ("Shut off the water at the stop valve", Verb::Isolate, true),
    ("Turn the supply off at the spur", Verb::Isolate, true),
    ("Switch off at the wall isolator and lock it off.", Verb::Isolate, true),
    ("Switch off at the wall isolator and lock it off.", Verb::Lock, true),
    ("Switch off at the wall isolator and lock it off.", Verb::ShutDown, true),
    ("Unplug the appliance at the socket", Verb::Isolate, true),
    ("Take out the fuse and keep it in your pocket", Verb::Isolate, true),
    ("Do not open the valve", Verb::Restore, false),
    ("Never open the valve", Verb::Restore, false),
    ("Don’t close the valve", Verb::Isolate, false),
    ("Do not forget to close the valve", Verb::Isolate, true),
    ("Do not open, close or lock it", Verb::Lock, false),
    ("Do not hurry, close the valve", Verb::Isolate, true),
    ("The valve must not be closed", Verb::Isolate, false),
    ("The valve must be closed", Verb::Isolate, true),
    ("Check that the valve is closed", Verb::Isolate, false),
    ("Leave the valve closed", Verb::Isolate, false),
    ("Stand close to the valve", Verb::Isolate, false),
    ("Close", Verb::Isolate, true),
    ("Locking is not needed", Verb::Lock, false),
    ("Skip testing the joint", Verb::Test, false),
    ("It is forbidden to open the valve", Verb::Restore, false),
    ("There is no need to lock it off", Verb::Lock, false),
    ("Instead of draining, close the valve", Verb::Release, false),
    ("Instead of draining, close the valve", Verb::Isolate, true),
    ("Lock it off; the cover is not needed any more", Verb::Lock, true),
    ("Do not skip: lock it off", Verb::Lock, true),
    ("The closet is open", Verb::Isolate, false),
    ("Shut down the boiler", Verb::ShutDown, true),
    ("Shut the boiler down", Verb::ShutDown, true),
    ("Shut down the boiler", Verb::Isolate, false),
    ("Lock the isolator", Verb::Lock, true),
    ("Padlock it and keep the key", Verb::Lock, true),
    ("Unlock the isolator", Verb::Lock, false),
    ("Unlock the isolator", Verb::Restore, true),
    ("Take the lock off the isolator", Verb::Lock, false),
    ("Remove the padlock", Verb::Lock, false),
    ("Undo the lock nuts", Verb::Lock, false),
    ("Tighten the lock nut", Verb::Lock, false),
    ("Fit the padlock", Verb::Lock, true),
    ("Prove dead at the motor terminals, all three pairs", Verb::Prove, true),
    ("Show that the circuit is dead", Verb::Prove, true),
    ("Prove live at the terminals", Verb::Prove, false),
    ("The label reads live", Verb::Prove, false),
    ("until the gauge reads 0 to 0.1 bar", Verb::Prove, true),
    ("until the gauge reads 0.5 bar", Verb::Prove, false),
    ("Check that no pressure is left", Verb::Prove, true),
    ("Before proving dead, wait", Verb::Prove, false),
    ("Drain the pump body into the tray", Verb::Release, true),
    ("Open the drain valve until nothing runs", Verb::Release, true),
    ("Close the drain valve", Verb::Release, false),
    ("Close the drain valve", Verb::Make, true),
    ("Close the drain valve", Verb::Isolate, true),
    ("Let the pressure down at the vent", Verb::Release, true),
    ("Vent the receiver to 0 bar", Verb::Release, true),
    ("Recover the refrigerant", Verb::Release, true),
    ("Fill the system", Verb::Release, false),
    ("Fill the system to 1.2 bar", Verb::Charge, true),
    ("Connect the filling loop", Verb::Charge, false),
    ("Read the fill pressure", Verb::Charge, false),
    ("Top the system up", Verb::Charge, true),
    ("Bleed the pump", Verb::Purge, true),
    ("Undo the bleed screw", Verb::Purge, false),
    ("Run the hot tap until it runs without air", Verb::Purge, true),
    ("Purge the gas line", Verb::Purge, true),
    ("Test the joint for leaks with fluid", Verb::Test, true),
    ("Check the joint for tightness", Verb::Test, true),
    ("Carry out a tightness test", Verb::Test, true),
    ("Close the test point", Verb::Test, false),
    ("Undo the test nipple", Verb::Test, false),
    ("Look for leaks", Verb::Test, true),
    ("Start the boiler at maximum", Verb::Start, true),
    ("Switch the boiler on", Verb::Start, true),
    ("Press the start button", Verb::Start, false),
    ("Switch on at the spur", Verb::Restore, true),
    ("Switch off at the spur", Verb::Restore, false),
    ("Undo the two union nuts of the pump, G 1", Verb::Undo, true),
    ("Unplug the pressure switch", Verb::Undo, true),
    ("Take out the four screws", Verb::Undo, true),
    ("Loosen off the gland", Verb::Undo, true),
    ("Fit the new part", Verb::Undo, false),
    ("Part the union", Verb::Undo, true),
    ("Slacken the two slide bolts of the motor, 17 mm.", Verb::Slacken, true),
    ("Crack the head joint a quarter turn", Verb::Slacken, true),
    ("Tighten the slide bolts", Verb::Slacken, false),
    ("Tighten the slide bolts", Verb::Tighten, true),
    ("Pull the bolts up again", Verb::Tighten, true),
    ("Make the union with a new washer", Verb::Make, true),
    ("Make sure the union is dry", Verb::Make, false),
    ("Plug in the fan", Verb::Make, true),
    ("Plug the fan in", Verb::Make, true),
    ("Screw in the four screws", Verb::Make, true),
    ("Reconnect the lead", Verb::Make, true),
    ("Disconnect the lead", Verb::Make, false),
    ("Take off the belt guard", Verb::Remove, true),
    ("Take the cover off", Verb::Remove, true),
    ("Lift the pump head out", Verb::Remove, true),
    ("Take the key and switch off", Verb::Remove, false),
    ("Do not remove the cover", Verb::Remove, false),
    ("Remove the cover without opening the gas valve", Verb::Restore, false),
    ("Remove the cover without opening the gas valve", Verb::Remove, true),
    ("Swing the panel aside", Verb::MoveAside, true),
    ("Refit the cover", Verb::Fit, true),
    ("Put the cover back", Verb::Fit, true),
    ("Offer up the fan", Verb::Fit, true),
    ("Remove the cover", Verb::Fit, false),
    ("Scrap the old pump", Verb::Discard, true),
    ("Wipe the sealing face with a clean cloth", Verb::Clean, true),
    ("Put a clean cloth under the joint", Verb::Clean, false),
    ("Inspect the rope", Verb::Inspect, true),
    ("Look at the rope all round", Verb::Inspect, true),
    ("Cap the open end", Verb::Place, true),
    ("Cap the open end", Verb::Restore, false),
    ("Hang the notice on the valve", Verb::Place, true),
    ("Take the hose away", Verb::TakeAway, true),
    ("Write down the throttle setting", Verb::RecordSetting, true),
    ("Set the throttle to 3", Verb::Set, true),
    ("Undo the set screw", Verb::Set, false),
    ("Read the pressure", Verb::Read, true),
    ("Wait 10 minutes", Verb::Wait, true),
    ("Run the pump for ten minutes", Verb::Wait, true),
    ("Take a photograph of the wiring", Verb::Photograph, true),
    ("Tell the operator", Verb::Tell, true),
    ("Hold until the supervisor has signed", Verb::Hold, true),
    ("Ask whether the seat is marked", Verb::Ask, true),
    ("Leave the appliance safe", Verb::Finish, true),
    ("Hand the boiler over to the user", Verb::Finish, true),
    ("", Verb::Isolate, false),
];

#[test]
fn words_say_a_verb_or_do_not() {
    let wrong: Vec<String> = TABLE
        .iter()
        .filter(|(words, verb, expected)| says(words, verb.clone()) != *expected)
        .map(|(words, verb, expected)| format!("\"{words}\" says {verb}: should be {expected}"))
        .collect();
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn capitals_do_not_matter() {
    assert!(says("CLOSE THE VALVE", Verb::Isolate));
    assert!(says("cLOSE the valve", Verb::Isolate));
}

#[test]
fn a_not_before_the_span_unsays_what_the_span_says() {
    let action = Action::new(Verb::Lock, Vec::new());
    let words = "Do not lock it off.";
    let span = [Span(7, 18)];
    assert!(english().says(span[0].of(words), &action), "the stretch alone seems to say it");
    assert!(!english().says_at(words, &span, &action));
    assert!(english().says_at("Do it now: lock it off.", &[Span(11, 22)], &action));
}

#[test]
fn only_what_the_spans_cover_counts() {
    let action = Action::new(Verb::Lock, Vec::new());
    let words = "Switch off at the spur and lock it off.";
    assert!(english().says_at(words, &[Span(27, 38)], &action));
    assert!(english().says_at(words, &[Span(27, 31), Span(35, 38)], &action), "in two pieces");
    assert!(!english().says_at(words, &[Span(0, 22)], &action), "the words about the switch");
    assert!(!english().says_at(words, &[Span(27, 31)], &action), "half of the phrase");
}

#[test]
fn a_new_seal_is_said_close_to_the_seal() {
    for (words, expected) in [
        ("Make the union with a new washer", true),
        ("Make the union; copper washer, always new", true),
        ("Renew the O-ring and make the joint", true),
        ("with new fibre washers", true),
        ("Fit the door with the old rope", false),
        ("Fit the new pump with the old gasket", false),
        ("Fit the new pump and the gasket", false),
        ("Make the union with the same washer", false),
        ("Do not use a new washer", false),
        ("no new washer", false),
        ("Renew the pump. Make the joint with its washer", false),
        ("Make the union", false),
    ] {
        assert_eq!(english().says_new_seal(words), expected, "{words}");
    }
    assert!(!english().says_new_seal("with a new cup leather"));
    assert!(english().says_new_of("with a new cup leather", &["Leather"]));
}

#[test]
fn amounts_are_figures_or_words() {
    for (word, amount) in [
        ("two", Some(Amount::Exactly(2))),
        ("Twelve", Some(Amount::Exactly(12))),
        ("both", Some(Amount::Exactly(2))),
        ("all", Some(Amount::All)),
        ("4", Some(Amount::Exactly(4))),
        ("4.5", None),
        ("M6", None),
        ("", None),
        ("99999999999", None),
    ] {
        assert_eq!(english().amount(word), amount, "{word}");
    }
}

#[test]
fn headings_name_stages() {
    for (heading, stage) in [
        ("Make safe", Some(Stage::MakeSafe)),
        ("2. Making safe", Some(Stage::MakeSafe)),
        ("STRIP", Some(Stage::Strip)),
        ("Putting back", Some(Stage::Refit)),
        ("Hand over", Some(Stage::HandOver)),
        ("Recommission and test", Some(Stage::Recommission)),
        ("Remove the four screws of the front panel", None),
        ("", None),
    ] {
        assert_eq!(english().stage(heading), stage, "{heading}");
    }
}

#[test]
fn tokens_keep_what_belongs_together() {
    let texts =
        |words: &str| tokens(words).into_iter().map(|token| token.text.into_owned()).collect::<Vec<_>>();
    assert_eq!(texts("Torque: 5-6 N·m, G 1 1/2"), ["torque", "5", "6", "n·m", "g", "1", "1/2"]);
    assert_eq!(texts("0,5 bar at 43 °C; shut-off"), ["0,5", "bar", "at", "43", "°c", "shut-off"]);
    assert_eq!(texts("Done.Then go on"), ["done", "then", "go", "on"]);
    let öl = tokens("Öl, ab");
    assert_eq!((öl[1].span, öl[0].raw), (Span(4, 6), "Öl"));
}
