//! What a check costs beside reading the same file as JSON, and what the built page weighs on the wire.
//!
//! Both are measured alternately in one run, so that a busy machine slows both; the medians are compared.
//! It asserts nothing: it prints figures that somebody compares with those of the last time.
#![allow(clippy::print_stdout, reason = "its output is its purpose")]

mod large;
mod weight;

use procedures_schema::check::check_trace;
use procedures_schema::format;
use procedures_schema::model::{Date, Procedure};
use procedures_schema::simulate::{Run, simulate};
use std::error::Error;
use std::hint::black_box;
use std::time::{Duration, Instant};

/// How often each is measured.
const N_ROUNDS: usize = 101;
/// A day after every date in the demo, so that the rules about dates have something to do.
const TODAY: &str = "2026-11-25";

fn main() -> Result<(), Box<dyn Error>> {
    let text = large::procedure()?;
    let procedure = format::read(text.as_bytes())?;
    println!(
        "large procedure: {} steps, {} connections, {} kB",
        procedure.steps.len(),
        procedure.map.connections.len(),
        text.len() / 1000
    );
    measure(&text, &procedure)?;
    weight::print(&putback_tests::repository().join("dist"))
}

fn measure(text: &str, procedure: &Procedure) -> Result<(), Box<dyn Error>> {
    let today = Date::parse(TODAY)?;
    let mut parse_times = Vec::new();
    let mut simulate_times = Vec::new();
    let mut check_times = Vec::new();
    let mut n_findings = 0;
    for _ in 0..N_ROUNDS {
        let start = Instant::now();
        black_box(serde_json::from_slice::<serde_json::Value>(black_box(text.as_bytes()))?);
        parse_times.push(start.elapsed());

        let start = Instant::now();
        let trace = black_box(simulate(procedure, &Run::of(procedure)));
        simulate_times.push(start.elapsed());
        let report = black_box(check_trace(procedure, &trace, today));
        check_times.push(start.elapsed());
        n_findings = report.findings.len();
    }
    let [parse, simulation, check] =
        [parse_times, simulate_times, check_times].map(|times| median(times).as_secs_f64());
    println!("parse as JSON       {:8.2} ms", parse * 1e3);
    println!("simulate            {:8.2} ms", simulation * 1e3);
    println!("simulate and check  {:8.2} ms  ({n_findings} findings)", check * 1e3);
    println!("check / parse       {:8.2}", check / parse);
    Ok(())
}

fn median(mut times: Vec<Duration>) -> Duration {
    times.sort_unstable();
    times.get(times.len() / 2).copied().unwrap_or_default()
}
