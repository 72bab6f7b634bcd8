//! `putback check`: verdicts of files.

use crate::cores::in_turn;
use crate::source::{procedure, say};
use crate::{Outcome, text};
use lexopt::ValueExt;
use lexopt::prelude::{Long, Value};
use procedures_schema::check::{Finding, Report, Standing, Verdict, check_trace, rule_set};
use procedures_schema::model::{Date, Procedure};
use procedures_schema::simulate::{Run, simulate};
use serde_json::{Value as Json, json};
use std::path::{Path, PathBuf};

enum Form {
    Text,
    Json,
}

pub(crate) fn check(arguments: &mut lexopt::Parser) -> Result<Outcome, lexopt::Error> {
    let mut form = Form::Text;
    let mut today = None;
    let mut ready = false;
    let mut files: Vec<PathBuf> = Vec::new();
    while let Some(argument) = arguments.next()? {
        match argument {
            Long("format") => {
                form = match arguments.value()?.string()?.as_str() {
                    "text" => Form::Text,
                    "json" => Form::Json,
                    other => {
                        return Err(format!("there is no format {other}; there are text and json").into());
                    }
                }
            }
            Long("today") => {
                let text = arguments.value()?.string()?;
                today = Some(Date::parse(&text).map_err(|error| error.to_string())?);
            }
            Long("ready") => ready = true,
            Value(file) => files.push(file.into()),
            other => return Err(other.unexpected()),
        }
    }
    if files.is_empty() {
        return Err("check needs a file".into());
    }
    let (files, passed_over) = with_folders(files);
    let today = match today {
        Some(day) => day,
        None => Date::parse(&jiff::Zoned::now().date().to_string()).map_err(|error| error.to_string())?,
    };
    let outcome = check_files(&files, &form, today, ready);
    if passed_over > 0 && matches!(form, Form::Text) {
        say(&format!("{passed_over} other files in the folders were not looked at"));
    }
    Ok(outcome)
}

/// Folders replaced by the procedures in them, in the order of their names, and how many other files there
/// are.
fn with_folders(paths: Vec<PathBuf>) -> (Vec<PathBuf>, usize) {
    let mut files = Vec::new();
    let mut passed_over = 0;
    for path in paths {
        let Ok(entries) = std::fs::read_dir(&path) else {
            files.push(path);
            continue;
        };
        let mut inside: Vec<PathBuf> = entries.flatten().map(|entry| entry.path()).collect();
        inside.retain(|path| path.is_file());
        inside.sort();
        let (ours, others): (Vec<PathBuf>, Vec<PathBuf>) = inside.into_iter().partition(|path| is_ours(path));
        passed_over += others.len();
        files.extend(ours);
    }
    (files, passed_over)
}

fn is_ours(path: &Path) -> bool {
    path.file_name().and_then(|name| name.to_str()).is_some_and(|name| name.ends_with(".putback.json"))
}

/// What came of one file, to be said in its turn.
struct Checked {
    outcome: Outcome,
    said: Result<String, String>,
    object: Option<Json>,
}

fn check_files(files: &[PathBuf], form: &Form, today: Date, ready: bool) -> Outcome {
    let mut worst = Outcome::Good;
    let mut objects = Vec::new();
    in_turn(
        files,
        |file| check_file(file, form, today, ready),
        |checked| {
            worst = worst.max(checked.outcome);
            objects.extend(checked.object);
            match (checked.said, form) {
                (Ok(text), Form::Text) => say(&text),
                (Ok(_), Form::Json) => {}
                (Err(error), _) => eprintln!("{error}"),
            }
        },
    );
    if matches!(form, Form::Json) {
        say(&format!("{:#}", Json::Array(objects)));
    }
    worst
}

fn check_file(file: &Path, form: &Form, today: Date, ready: bool) -> Checked {
    let procedure = match procedure(file) {
        Ok(procedure) => procedure,
        Err(error) => {
            let object = Some(json!({ "file": name(file), "unreadable": error }));
            return Checked { outcome: Outcome::Unreadable, said: Err(error), object };
        }
    };
    let trace = simulate(&procedure, &Run::of(&procedure));
    let report = check_trace(&procedure, &trace, today);
    let draft = ready && report.standing == Standing::Draft;
    let good = report.verdict == Verdict::Accepted && !draft;
    let (said, object) = match form {
        Form::Text => (text::report(&name(file), &procedure, &trace, &report), None),
        Form::Json => (String::new(), Some(object(&name(file), &procedure, &report))),
    };
    Checked { outcome: if good { Outcome::Good } else { Outcome::Bad }, said: Ok(said), object }
}

fn name(file: &Path) -> String {
    if file == Path::new("-") { "standard input".to_owned() } else { file.display().to_string() }
}

fn object(file: &str, procedure: &Procedure, report: &Report) -> Json {
    json!({
        "file": file,
        "title": procedure.title,
        "verdict": if report.verdict == Verdict::Accepted { "accepted" } else { "rejected" },
        "later": report.n_later,
        "accepted": report.waived.len(),
        "replaced": report.n_replaced,
        "rules": report.n_rules,
        "rule_set": rule_set(),
        "today": report.today,
        "told_of": report.told_of,
        "findings": report.findings.iter().map(|finding| finding_object(procedure, finding)).collect::<Vec<_>>(),
    })
}

fn finding_object(procedure: &Procedure, finding: &Finding) -> Json {
    let number = finding.step.as_ref().and_then(|step| procedure.position(step)).map(|at| at + 1);
    json!({
        "code": finding.code,
        "level": finding.level.word(),
        "step": number,
        "step_id": finding.step,
        "action": finding.action,
        "title": finding.title,
        "because": finding.because.iter().map(|because| &because.text).collect::<Vec<_>>(),
        "do": finding.remedy,
        "also": finding.also,
        "again": finding.again,
        "when": finding.answers,
    })
}
