//! What a check costs beside reading the same file as JSON, how much memory it takes, how many files a second
//! are checked, and what the built page weighs on the wire.
//!
//! Both are measured alternately in one run, so that a busy machine slows both; the medians are compared. Each
//! is measured from asking for its memory to giving all of it back.
//! It asserts nothing: it prints figures that somebody compares with those of the last time.
#![allow(clippy::print_stdout, reason = "its output is its purpose")]

mod folder;
mod large;
mod memory;
mod weight;

use procedures_schema::check::{check, check_trace};
use procedures_schema::format;
use procedures_schema::model::{Date, Procedure};
use procedures_schema::simulate::{Run, simulate};
use std::error::Error;
use std::hint::black_box;
use std::time::{Duration, Instant};

/// Steps of the large procedure.
const N_STEPS: usize = 200;
/// How often each is measured.
const N_ROUNDS: usize = 101;
/// How often the very large ones are.
const N_FEW: usize = 21;
/// A day after every date in the demo, so that the rules about dates have something to do.
const TODAY: &str = "2026-11-25";

fn main() -> Result<(), Box<dyn Error>> {
    if std::env::args().any(|argument| argument == memory::ARGUMENT) {
        return memory::measured(Date::parse(TODAY)?);
    }
    for n_questions in [0, 3, 10] {
        let text = large::procedure(N_STEPS, n_questions)?;
        let figures = measure(&text, N_ROUNDS)?;
        println!("{} steps, {n_questions} questions, {} kB", figures.n_steps, text.len() / 1000);
        println!("  parse as JSON       {:8.2} ms", figures.parse * 1e3);
        println!("  simulate            {:8.2} ms", figures.simulate * 1e3);
        println!("  simulate and check  {:8.2} ms  ({} findings)", figures.check * 1e3, figures.n_findings);
        println!("  check / parse       {:8.2}", figures.check / figures.parse);
    }
    keep_for_the_page()?;
    memory::print(&large::procedure(N_STEPS, 10)?)?;
    folder::print(Date::parse(TODAY)?)?;
    print_growth()?;
    weight::print(&putback_tests::repository().join("dist"))
}

/// Writes the large procedures to where the measurement of the page looks for them.
fn keep_for_the_page() -> Result<(), Box<dyn Error>> {
    let folder = putback_tests::repository().join("target/bench");
    std::fs::create_dir_all(&folder)?;
    for n_steps in [N_STEPS, 1_000] {
        let text = large::half_written(n_steps)?;
        std::fs::write(folder.join(format!("large-{n_steps}.putback.json")), text)?;
    }
    Ok(())
}

/// How much longer a procedure takes that is about four times as long, in everything. Nothing else runs in
/// between, so that only the check's own use of memory counts.
fn print_growth() -> Result<(), Box<dyn Error>> {
    let read =
        |n_steps| format::read(large::procedure(n_steps, 0)?.as_bytes()).map_err(Box::<dyn Error>::from);
    let (small, large) = (read(1_000)?, read(4_000)?);
    let today = Date::parse(TODAY)?;
    let time = |procedure: &Procedure| {
        let start = Instant::now();
        black_box(check(black_box(procedure), today));
        start.elapsed()
    };
    let times: Vec<(Duration, Duration)> = (0..N_FEW).map(|_| (time(&small), time(&large))).collect();
    let (small_times, large_times) = times.into_iter().unzip();
    let growth = median(large_times).as_secs_f64() / median(small_times).as_secs_f64();
    println!("growth from {} to {} steps: {growth:.2}", small.steps.len(), large.steps.len());
    Ok(())
}

/// Medians in seconds.
struct Figures {
    n_steps: usize,
    n_findings: usize,
    parse: f64,
    simulate: f64,
    check: f64,
}

fn measure(text: &str, n_rounds: usize) -> Result<Figures, Box<dyn Error>> {
    let procedure: Procedure = format::read(text.as_bytes())?;
    let today = Date::parse(TODAY)?;
    let mut parse_times = Vec::new();
    let mut simulate_times = Vec::new();
    let mut check_times = Vec::new();
    let mut n_findings = 0;
    for _ in 0..n_rounds {
        put_in_order();
        let start = Instant::now();
        drop(black_box(serde_json::from_slice::<serde_json::Value>(black_box(text.as_bytes()))?));
        parse_times.push(start.elapsed());

        put_in_order();
        let start = Instant::now();
        let trace = black_box(simulate(&procedure, &Run::of(&procedure)));
        simulate_times.push(start.elapsed());
        let report = black_box(check_trace(&procedure, &trace, today));
        n_findings = report.findings.len();
        drop((trace, report));
        check_times.push(start.elapsed());
    }
    let [parse, simulate, check] =
        [parse_times, simulate_times, check_times].map(|times| median(times).as_secs_f64());
    Ok(Figures { n_steps: procedure.steps.len(), n_findings, parse, simulate, check })
}

/// Lets the allocator put together what was given back, outside of every time.
///
/// Parsing leaves some fifteen thousand small blocks, and the allocator of most Linux systems joins them only
/// when a larger one is asked for. Whoever came next would pay for it, always the check: a tenth of its time.
fn put_in_order() {
    drop(black_box(Vec::<u8>::with_capacity(black_box(4096))));
}

fn median(mut times: Vec<Duration>) -> Duration {
    times.sort_unstable();
    times.get(times.len() / 2).copied().unwrap_or_default()
}
