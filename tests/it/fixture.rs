//! Fixtures in the written notation: steps on one of the maps of `tests/suite/maps`.
//!
//! A line is notation, one step each. `words | notation` gives the step words, all of which say its
//! actions (`words |` has none); other lines get sentences that nobody reads. `[question=answer]` before the notation puts the
//! step on one answer and lists the question. ` !! notation` after a test gives the steps that follow its
//! failure; ` !SAYS some of them` after words says which of
//! them say the actions, ` !BACK text` gives the step a reminder for the way back, ` !WARNING hazard; consequence; avoidance` after words gives the step a safety message.
//! `map: pump, whole` runs to the end of the job; without `whole` the job is still going on;
//! `override: {…}` replaces a demand, written as in a file;
//! `also putback/left-open` names another rule that the same mistake breaks; `language de` says what the words are in.

use procedures_schema::check::{Finding, Rule, catalogue, check_with};
use procedures_schema::format;
use procedures_schema::model::{
    Answer, Date, OnFail, Procedure, Question, Rest, SafetyMessage, SignalWord, Span, Stage, Step,
};
use procedures_schema::notation;
use procedures_schema::simulate::{Run, Trace, simulate};
use putback_tests::suite;
use std::sync::Arc;

/// A document made of a map and steps in notation.
#[derive(Clone)]
pub struct Fixture {
    pub procedure: Procedure,
    pub whole: bool,
    /// Codes of other rules that it breaks for the same mistake.
    pub also: Vec<String>,
}

impl Fixture {
    /// Reads `map: …` and the lines after it.
    pub fn read(text: &str) -> Self {
        let mut lines = text.lines();
        let first = lines.next().and_then(|line| line.strip_prefix("map: ")).expect("a map");
        let mut words = first.split(", ");
        let map = words.next().expect("a map");
        let mut whole = false;
        let (mut also, mut language) = (Vec::new(), None);
        for word in words {
            match word.split_once(' ') {
                Some(("also", code)) => also.push(code.to_owned()),
                Some(("language", word)) => language = Some(word.to_owned()),
                _ => whole = word == "whole",
            }
        }
        let mut procedure = map_named(map);
        procedure.language = language.unwrap_or(procedure.language);
        for line in lines.filter(|line| !line.trim().is_empty()) {
            if let Some(replaced) = line.strip_prefix("override: ") {
                procedure.overrides.push(serde_json::from_str(replaced).expect(line));
                continue;
            }
            let number = procedure.steps.len() + 1;
            let step = step(line, number, &mut procedure);
            procedure.steps.push(Arc::new(step));
        }
        Self { procedure, whole, also }
    }

    pub fn trace(&self) -> Trace {
        let all: Vec<usize> = (0..self.procedure.steps.len()).collect();
        let run = if self.whole { Run::of(&self.procedure) } else { Run::of_steps(&all) };
        simulate(&self.procedure, &run)
    }

    pub fn findings(&self) -> Vec<Finding> {
        self.findings_by(catalogue())
    }

    pub fn findings_by(&self, rules: &[&'static Rule]) -> Vec<Finding> {
        let today = Date::parse("2026-11-25").expect("a date");
        check_with(&self.procedure, &self.trace(), today, rules).findings
    }

    /// The same on one answer of a question that the fixture did not have.
    pub fn inside_a_question(&self) -> Self {
        let mut inside = self.clone();
        add_question(&mut inside.procedure, "found");
        let answer = Answer::new("found".into(), "yes");
        for step in &mut inside.procedure.steps {
            Arc::make_mut(step).when.push(answer.clone());
        }
        inside
    }
}

fn map_named(name: &str) -> Procedure {
    let maps = suite("maps", ".putback.json").expect("maps");
    let file = maps.iter().find(|file| file.path.ends_with(&format!("/{name}.putback.json")));
    let file = file.unwrap_or_else(|| panic!("no map {name}"));
    format::read(file.text.as_bytes()).unwrap_or_else(|error| panic!("{}: {error}", file.path))
}

fn add_question(procedure: &mut Procedure, id: &str) {
    if !procedure.questions.iter().any(|question| question.id.as_str() == id) {
        let answers = vec!["yes".to_owned(), "no".to_owned()];
        let words = format!("Is it {id}?");
        procedure.questions.push(Question { id: id.into(), words, answers, rest: Rest::default() });
    }
}

fn step(line: &str, number: usize, procedure: &mut Procedure) -> Step {
    let line = line.strip_suffix(" |").map_or_else(|| line.to_owned(), |words| format!("{words} | "));
    let line = line.as_str();
    let (words, written) = match line.split_once(" | ") {
        // A stroke inside quotes belongs to a reading.
        Some((words, written)) if !words.contains('"') => (words, written),
        _ => (line, line),
    };
    let (written, after_failure) =
        written.split_once(" !! ").map_or((written, None), |(test, steps)| (test, Some(steps)));
    let (guard, mut actions) = parsed(written.trim(), line);
    for answer in &guard {
        add_question(procedure, answer.question.as_str());
    }
    for question in actions.iter().filter_map(|action| action.ask.clone()) {
        add_question(procedure, question.as_str());
    }
    let (words, back) = words.split_once(" !BACK ").unwrap_or((words, ""));
    let (words, said) =
        words.split_once(" !SAYS ").map_or((words, None), |(words, said)| (words, Some(said)));
    let (words, messages) = with_message(words.trim());
    let said = said.map_or(words.as_str(), str::trim);
    let from = words.find(said).expect("what says it is in the words");
    let length = |text: &str| u32::try_from(text.chars().count()).expect("a short line");
    let from = length(&words[..from]);
    for action in &mut actions {
        action.says = vec![Span(from, from + length(said))];
    }
    if let (Some(steps), Some(test)) = (after_failure, actions.last_mut()) {
        let actions = parsed(steps, line).1;
        let step = plain_step("after-failure", steps, actions);
        let steps = vec![step];
        test.on_fail = Some(OnFail { again: String::new(), steps, leave_safe: false, rest: Rest::default() });
    }
    let back = back.to_owned();
    Step { when: guard, messages, back, ..plain_step(&format!("s{number}"), &words, actions) }
}

/// Words with a safety message: `… !WARNING hazard; consequence; avoidance`.
fn with_message(words: &str) -> (String, Vec<SafetyMessage>) {
    let Some((words, message)) = words.split_once(" !") else { return (words.to_owned(), Vec::new()) };
    let (word, parts) = message.split_once(' ').unwrap_or((message, ""));
    let mut parts = parts.split(';').map(|part| part.trim().to_owned());
    let message = SafetyMessage {
        word: SignalWord::from_word(word),
        hazard: parts.next().unwrap_or_default(),
        consequence: parts.next().unwrap_or_default(),
        avoidance: parts.next().unwrap_or_default(),
        rest: Rest::default(),
    };
    (words.to_owned(), vec![message])
}

fn parsed(written: &str, line: &str) -> (Vec<Answer>, Vec<procedures_schema::model::Action>) {
    if written.is_empty() {
        return (Vec::new(), Vec::new());
    }
    let written = notation::parse_written(written).unwrap_or_else(|error| panic!("{line}: {error}"));
    let guard = written.first().map(|written| written.guard.clone()).unwrap_or_default();
    (guard, written.into_iter().map(|written| written.action).collect())
}

fn plain_step(id: &str, words: &str, actions: Vec<procedures_schema::model::Action>) -> Step {
    Step { actions, ..Step::new(id.into(), Stage::Strip, words) }
}

pub fn told(findings: &[Finding]) -> Vec<String> {
    findings
        .iter()
        .map(|f| {
            let step = f.step.as_ref().map_or("-", |step| step.as_str());
            format!("{} {} [{}] also {:?}", f.code, f.title, step, f.also)
        })
        .collect()
}

/// Whether a rule words what the simulator found; the others look at what is written.
pub fn is_found_by_running(code: &str) -> bool {
    let written = [
        "control/no-steps",
        "control/not-asked",
        "control/not-fed",
        "control/cannot-judge",
        "control/census-contradicts",
        "control/census-unanswered",
        "control/scope-missing",
        "control/hold-incomplete",
        "control/override-unsupported",
        "reading/no-limits",
        "reading/no-source",
        "reading/range-inverted",
        "reading/unit-unfit",
        "reading/nothing-read",
        "reading/no-on-fail",
        "torque/missing",
        "torque/range-inverted",
        "torque/wrong-unit",
        "torque/differs",
        "torque/pattern-missing",
        "seal/size-missing",
    ];
    !code.starts_with("words/") && !written.contains(&code)
}
