//! `putback fmt`: files as the editor saves them.

use crate::Outcome;
use crate::source::{bytes, say};
use lexopt::prelude::{Long, Value};
use procedures_schema::format;
use std::path::{Path, PathBuf};

pub(crate) fn fmt(arguments: &mut lexopt::Parser) -> Result<Outcome, lexopt::Error> {
    let mut only_check = false;
    let mut files: Vec<PathBuf> = Vec::new();
    while let Some(argument) = arguments.next()? {
        match argument {
            Long("check") => only_check = true,
            Value(file) => files.push(file.into()),
            other => return Err(other.unexpected()),
        }
    }
    if files.is_empty() {
        return Err("fmt needs a file".into());
    }
    let outcomes = files.iter().map(|file| lay_out(file, only_check));
    Ok(outcomes.max().unwrap_or(Outcome::Good))
}

fn lay_out(file: &Path, only_check: bool) -> Outcome {
    let text = match bytes(file) {
        Ok(text) => text,
        Err(error) => return unreadable(&error),
    };
    let laid_out = match format::read(&text) {
        Ok(procedure) => format::write(&procedure),
        Err(error) => return unreadable(&format!("{}: {error}", file.display())),
    };
    if laid_out.as_bytes() == text {
        return Outcome::Good;
    }
    if only_check {
        say(&format!("{}: would be laid out otherwise", file.display()));
        return Outcome::Bad;
    }
    if file == Path::new("-") {
        say(laid_out.trim_end());
        return Outcome::Good;
    }
    match std::fs::write(file, laid_out) {
        Ok(()) => {
            say(&format!("{}: laid out", file.display()));
            Outcome::Good
        }
        Err(error) => unreadable(&format!("{}: cannot be written: {error}", file.display())),
    }
}

fn unreadable(error: &str) -> Outcome {
    eprintln!("{error}");
    Outcome::Unreadable
}
