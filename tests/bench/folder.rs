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
use std::time::Instant;

/// For how long each is measured at least.
const SECONDS: f64 = 1.0;

/// Prints both rates for every procedure in the suite, the refused ones too.
pub(crate) fn print(today: Date) -> Result<(), Box<dyn Error>> {
    let mut files = text_files("tests/suite")?;
    files.retain(|file| file.is(".putback.json"));
    let n_cores = available_parallelism().map_or(1, NonZero::get);
    println!("the {} files of the suite, read and checked", files.len());
    let one = rate(&files, 1, today);
    println!("  by one core         {one:8.0} files a second");
    let all = rate(&files, n_cores, today);
    println!("  by {n_cores} cores          {all:8.0} files a second, {:.2} times as many", all / one);
    Ok(())
}

fn rate(files: &[TextFile], n_cores: usize, today: Date) -> f64 {
    let begin = Instant::now();
    let mut n_files: usize = 0;
    while begin.elapsed().as_secs_f64() < SECONDS {
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
        n_files += files.len();
    }
    let n_files = u32::try_from(n_files).map_or(f64::MAX, f64::from);
    n_files / begin.elapsed().as_secs_f64()
}
