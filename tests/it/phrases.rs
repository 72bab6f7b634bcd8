//! Phrases that a procedure has of its own, and meanings that are picked for words of no known verb.

use super::mended::typed;
use procedures_schema::capture::{own_phrase, readings_at};
use procedures_schema::check::{Sayings, check, check_after};
use procedures_schema::compare::changes;
use procedures_schema::derive::carry::Carried;
use procedures_schema::format;
use procedures_schema::model::{
    Action, Date, Id, NumberedIds, OwnPhrase, Procedure, Span, Stage, Step, Verb,
};
use procedures_schema::notation::print;
use procedures_schema::simulate::{Place, Run, simulate};
use std::sync::Arc;

/// A lid with screws, which are off, and then a step with words that nobody reads by themselves.
fn with_step(words: &str) -> Procedure {
    let mut document = typed("Take off the lid: four M5 screws.|Refit the lid: four M5 screws.");
    let step = Step::new(Id::new("own"), Stage::Strip, words);
    document.steps.push(Arc::new(step));
    document
}

/// What words of the last step that are marked can be read as.
fn readings(document: &Procedure, marked: &str) -> Vec<Action> {
    let trace = simulate(document, &Run::of(document));
    let last = document.steps.len() - 1;
    let step = &document.steps[last];
    let point = |byte: usize| u32::try_from(step.words[..byte].chars().count()).expect("short");
    let from = step.words.find(marked).expect("marked words");
    let at = Span(point(from), point(from + marked.len()));
    readings_at(&step.words, at, &document.map, &trace, Place::after(last - 1), &step.stage).actions
}

/// The document in which the last step means one of its readings.
fn picked(document: &Procedure, marked: &str, meaning: &str) -> Procedure {
    let all = readings(document, marked);
    let action = all.iter().find(|action| print(std::slice::from_ref(action)) == meaning);
    let action = action.unwrap_or_else(|| panic!("{meaning} in {}", print(&all))).clone();
    let mut document = document.clone();
    Arc::make_mut(document.steps.last_mut().expect("a step")).actions = vec![action];
    document
}

fn not_said(document: &Procedure) -> Vec<String> {
    let report = check(document, Date::parse("2026-11-25").expect("a date"));
    let found = report.findings.into_iter().filter(|finding| finding.code == "words/not-said");
    found.map(|finding| finding.title).collect()
}

#[test]
fn a_meaning_that_is_picked_is_said_by_the_words_that_were_marked() {
    for (words, marked, meaning, phrase) in [
        ("Knock off the lid.", "Knock off the lid", "remove lid", "knock off"),
        ("Knock off the lid.", "Knock off", "remove lid", "knock off"),
        ("Now knock the lid off.", "knock the lid off", "remove lid", "knock … off"),
        (
            "Give the four lid screws a twirl.",
            "Give the four lid screws a twirl",
            "undo lid-screws",
            "give … twirl",
        ),
        ("Twirl both lid screws.", "Twirl", "undo lid-screws", "twirl"),
    ] {
        let open = with_step(words);
        let document = picked(&open, marked, meaning);
        let action = &document.steps.last().expect("a step").actions[0];
        assert_eq!(action.meant_by.as_deref(), Some(phrase), "{words}");
        assert_eq!(not_said(&document), Vec::<String>::new(), "{words}");
        let own = own_phrase(words, action, &document.map, &Stage::Strip);
        assert_eq!(own, Some(OwnPhrase::new(phrase, action.verb.clone())));
        // Other words say it no more, and neither do those that were marked where they are unsaid.
        for other in ["Look round the lid and its screws.", &format!("Do not {}", words.to_lowercase())] {
            let mut changed = document.clone();
            Arc::make_mut(changed.steps.last_mut().expect("a step")).words = other.to_owned();
            assert_eq!(not_said(&changed).len(), 1, "{other}");
        }
        let mut nobody = document.clone();
        Arc::make_mut(nobody.steps.last_mut().expect("a step")).actions[0].meant_by = None;
        assert_eq!(not_said(&nobody).len(), 1, "{words}: set, and said by nobody");
    }
}

#[test]
fn words_of_a_known_verb_say_nothing_else_because_somebody_picks_it() {
    let open = with_step("Clean the lid.");
    for action in readings(&open, "Clean the lid") {
        assert_eq!(action.meant_by, None, "{action:?}");
    }
    assert_eq!(not_said(&picked(&open, "Clean the lid", "remove lid")).len(), 1);
}

#[test]
fn a_phrase_of_the_procedure_is_read_and_counts_as_said_in_every_step() {
    let mut document = with_step("Knock off the lid.");
    assert_eq!(print(&readings(&document, "lid")[..0]), "");
    Arc::make_mut(&mut document.map).phrases.push(OwnPhrase::new("knock off", Verb::Remove));
    for (words, meaning) in [
        ("Knock off the lid.", "remove lid"),
        ("Then knock the lid off.", "remove lid"),
        ("Do not knock off the lid.", ""),
        ("Knock the lid.", ""),
        ("KNOCK the lid (two tabs) OFF!", "remove lid"),
        ("By knocking the lid off.", "remove lid"),
        ("Knock the lid, then switch the lamp off.", ""),
    ] {
        let trace = simulate(&document, &Run::of(&document));
        let (stage, place) = (Stage::Strip, Place::after(1));
        let read = procedures_schema::capture::line(words, &document.map, &trace, place, &stage);
        // What unscrews it is opened with it.
        let removed: Vec<Action> =
            read.actions.into_iter().filter(|action| action.verb == Verb::Remove).collect();
        assert_eq!(print(&removed), meaning, "{words}");
        let mut kept = document.clone();
        Arc::make_mut(kept.steps.last_mut().expect("a step")).words = words.to_owned();
        Arc::make_mut(kept.steps.last_mut().expect("a step")).actions = removed;
        assert_eq!(not_said(&kept), Vec::<String>::new(), "{words}");
    }
}

/// What is taken over from the check before must not hold what another set of phrases said.
#[test]
fn a_check_after_a_phrase_has_come_or_gone_is_a_check_from_nothing() {
    let today = Date::parse("2026-11-25").expect("a date");
    let without = picked(&with_step("Knock off the lid."), "Knock off", "remove lid");
    let mut without = without;
    Arc::make_mut(without.steps.last_mut().expect("a step")).actions[0].meant_by = None;
    let mut with = without.clone();
    Arc::make_mut(&mut with.map).phrases.push(OwnPhrase::new("knock off", Verb::Remove));
    for (before, after) in [(&without, &with), (&with, &without)] {
        let trace = Arc::new(simulate(after, &Run::of(after)));
        let (report, _) = check_after(Some(&Sayings::of(before)), after, &trace, today);
        assert_eq!(report, check(after, today));
    }
    assert_eq!((not_said(&without).len(), not_said(&with).len()), (1, 0));
}

#[test]
fn phrases_are_kept_in_the_file_compared_and_carried() {
    let mut document = with_step("Knock off the lid.");
    let before = document.clone();
    let map = Arc::make_mut(&mut document.map);
    map.phrases.push(OwnPhrase::new("knock … off", Verb::Remove));
    map.phrases.push(OwnPhrase::new("twirl", Verb::Undo));
    let text = format::write(&document);
    assert!(text.contains("\"words\": \"knock … off\""), "{text}");
    let with_more = text.replacen(
        "\"do\": \"undo\"\n      }\n    ]",
        "\"do\": \"undo\",\n        \"since\": 3\n      }\n    ]",
        1,
    );
    assert_ne!(with_more, text, "{text}");
    let read = format::read(with_more.as_bytes()).expect("a file");
    assert_eq!(format::write(&read), with_more, "what is not known is kept");
    assert_eq!(changes(&before, &document).lines(), ["the phrases changed"]);
    let carried = Carried::of(&document, &[Id::new("own")]);
    let elsewhere = Procedure::new(Id::new("q"), "Elsewhere");
    let arrival = carried.arrive(&elsewhere, 0, &mut NumberedIds::default());
    assert_eq!(arrival.things, ["the phrase \"knock … off\""]);
}

/// A word that somebody made a verb is found in all its forms, as a verb of the language is.
#[test]
fn a_phrase_is_found_in_the_other_forms_of_its_words() {
    let mut document = with_step("Twirl both lid screws.");
    let map = Arc::make_mut(&mut document.map);
    map.phrases.push(OwnPhrase::new("give … twirl", Verb::Undo));
    map.phrases.push(OwnPhrase::new("swivelling", Verb::Undo));
    for (words, meaning) in [
        ("Give the four lid screws a twirl.", "undo lid-screws"),
        ("Giving the four lid screws a few twirls.", "undo lid-screws"),
        ("Swivel the four lid screws.", "undo lid-screws"),
        ("Swivelled the four lid screws.", "undo lid-screws"),
        ("Give the four lid screws a twist.", ""),
    ] {
        let trace = simulate(&document, &Run::of(&document));
        let read =
            procedures_schema::capture::line(words, &document.map, &trace, Place::after(1), &Stage::Strip);
        let undone: Vec<Action> =
            read.actions.into_iter().filter(|action| action.verb == Verb::Undo).collect();
        assert_eq!(print(&undone), meaning, "{words}");
    }
}
