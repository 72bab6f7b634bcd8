//! How many files a second the checker reads and judges, by one core and by all.

use procedures_schema::check::check;
use procedures_schema::format;
use procedures_schema::model::Date;
use putback_tests::{TextFile, text_files};
use std::error::Error;
use std::hint::black_box;
use std::num::NonZero;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::thread::{available_parallelism, scope};
use std::time::{Duration, Instant};

/// How often the whole folder is checked either way, alternately, so that a busy machine slows both.
const N_ROUNDS: usize = 101;

/// Prints both rates for every procedure in the suite, the refused ones too.
pub(crate) fn print(today: Date) -> Result<(), Box<dyn Error>> {
    let mut files = text_files("tests/suite")?;
    files.retain(|file| file.is(".putback.json"));
    let n_cores = available_parallelism().map_or(1, NonZero::get);
    println!("the {} files of the suite, read and checked", files.len());
    let times = (0..N_ROUNDS).map(|_| (time(&files, 1, today), time(&files, n_cores, today)));
    let (one, all): (Vec<Duration>, Vec<Duration>) = times.unzip();
    let n_files = u32::try_from(files.len()).map_or(f64::MAX, f64::from);
    let [one, all] = [one, all].map(|times| n_files / super::median(times).as_secs_f64());
    println!("  by one core         {one:8.0} files a second");
    println!("  by {n_cores} cores          {all:8.0} files a second, {:.2} times as many", all / one);
    Ok(())
}

/// How long some cores take for all files.
fn time(files: &[TextFile], n_cores: usize, today: Date) -> Duration {
    let begin = Instant::now();
    let next = AtomicUsize::new(0);
    let work = || {
        while let Some(file) = files.get(next.fetch_add(1, Ordering::Relaxed)) {
            let read = format::read(black_box(file.text.as_bytes()));
            black_box(read.map(|procedure| check(&procedure, today)).ok());
        }
    };
    scope(|threads| {
        for _ in 1..n_cores {
            threads.spawn(work);
        }
        work();
    });
    begin.elapsed()
}
