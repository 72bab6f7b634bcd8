//! `putback lanes FILE`: the circuits beside the steps, as text.

use crate::Outcome;
use crate::source::{procedure, say};
use lexopt::prelude::Value;
use procedures_schema::derive::lanes::{Lanes, lanes as drawn, sign};
use procedures_schema::model::Procedure;
use procedures_schema::simulate::{Run, simulate};
use std::fmt::Write;
use std::path::PathBuf;

/// Widest name of a lane.
const WIDTH: usize = 8;

pub(crate) fn lanes(arguments: &mut lexopt::Parser) -> Result<Outcome, lexopt::Error> {
    let file: PathBuf = match arguments.next()? {
        Some(Value(file)) => file.into(),
        Some(other) => return Err(other.unexpected()),
        None => return Err("lanes needs a file".into()),
    };
    match procedure(&file) {
        Ok(procedure) => {
            let trace = simulate(&procedure, &Run::of(&procedure));
            say(&text(&procedure, &drawn(&procedure, &trace)));
            Ok(Outcome::Good)
        }
        Err(error) => {
            eprintln!("{error}");
            Ok(Outcome::Unreadable)
        }
    }
}

fn text(procedure: &Procedure, lanes: &Lanes) -> String {
    let short = |name: &str| name.chars().take(WIDTH).collect::<String>();
    let column = |text: &str| format!("{text:WIDTH$} ");
    let heads: Vec<String> = lanes.heads.iter().map(|head| column(&short(&head.name))).collect();
    let heads = heads.concat();
    let mut text = format!("{heads}apart\n");
    let mut stage = None;
    for (i, (row, step)) in lanes.rows.iter().zip(&procedure.steps).enumerate() {
        if stage != Some(&step.stage) {
            stage = Some(&step.stage);
            let name = step.stage.word().to_uppercase();
            // Writing into a text cannot fail.
            let _ = writeln!(text, "{:indent$}       {name}", "", indent = heads.len());
        }
        let cells: Vec<String> = row.cells.iter().map(|cell| column(sign(&cell.after))).collect();
        let _ = writeln!(text, "{}{:5}  {:3} {}", cells.concat(), row.apart_after, i + 1, step.words);
    }
    text.push_str(KEY);
    text
}

/// What the signs mean.
const KEY: &str =
    "## on  // isolated  /L locked  :: released  [] proved  [o joint open  ?? prove again  || under test";
