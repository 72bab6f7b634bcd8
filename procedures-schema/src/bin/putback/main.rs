//! The command line `putback`: checks procedure files, lists and explains rules, lays files out.
//!
//! It reads and writes files and has a clock; everything it knows it asks the core.
#![allow(clippy::print_stdout, clippy::print_stderr, reason = "a command line speaks on its two streams")]

mod check;
mod cores;
mod fmt;
mod lanes;
mod rules;
mod schema;
mod source;
mod text;

use std::process::ExitCode;

const USAGE: &str = "\
putback, the checker for removal and refit procedures

  putback check [--format text|json] [--today DATE] [--ready] FILE-OR-FOLDER...
        checks files; - reads standard input; a folder stands for its procedures
        exit: 0 all accepted, 1 one rejected or, with --ready, a draft, 2 one unreadable, 64 wrong usage
  putback rules
        lists the rules
  putback explain CODE
        says what a rule finds and why, for example: putback explain retest/missing
  putback fmt [--check] FILE...
        lays files out as the editor saves them
        exit with --check: 0 all laid out so, 1 one is not, 2 one unreadable
  putback lanes FILE
        draws the circuits beside the steps
  putback schema
        prints the JSON Schema (2020-12) of the format
  putback --help | --version

It checks what the file tells it, not the appliance. Local codes and the maker's instructions come first.";

/// How a command ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Outcome {
    Good = 0,
    Bad = 1,
    Unreadable = 2,
    Usage = 64,
}

impl From<Outcome> for ExitCode {
    fn from(outcome: Outcome) -> Self {
        Self::from(outcome as u8)
    }
}

fn main() -> ExitCode {
    let mut arguments = lexopt::Parser::from_env();
    match run(&mut arguments) {
        Ok(outcome) => outcome.into(),
        Err(error) => {
            eprintln!("putback: {error}. See putback --help");
            Outcome::Usage.into()
        }
    }
}

fn run(arguments: &mut lexopt::Parser) -> Result<Outcome, lexopt::Error> {
    use lexopt::prelude::{Long, Short, Value};
    match arguments.next()? {
        Some(Long("help") | Short('h')) => {
            source::say(USAGE);
            Ok(Outcome::Good)
        }
        Some(Long("version") | Short('V')) => {
            let n_rules = procedures_schema::check::catalogue().len();
            let format = procedures_schema::model::FORMAT_VERSION;
            let set = procedures_schema::check::rule_set();
            let version = env!("CARGO_PKG_VERSION");
            source::say(&format!("putback {version}, format {format}, {n_rules} rules, set {set}"));
            Ok(Outcome::Good)
        }
        Some(Value(verb)) => match verb.to_str() {
            Some("check") => check::check(arguments),
            Some("rules") => rules::rules(arguments),
            Some("explain") => rules::explain(arguments),
            Some("fmt") => fmt::fmt(arguments),
            Some("lanes") => lanes::lanes(arguments),
            Some("schema") => schema::schema(arguments),
            _ => Err(format!("there is no command {}", verb.to_string_lossy()).into()),
        },
        Some(other) => Err(other.unexpected()),
        None => Err("a command is missing".into()),
    }
}
