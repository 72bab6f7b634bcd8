//! Work on many files by all cores of the machine, told in the order of the files.

use std::num::NonZero;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::mpsc::{Sender, channel};
use std::thread::{Builder, available_parallelism, scope};

/// As much as the first thread of a program has; deeply nested files need it.
const STACK_BYTES: usize = 8 << 20;

/// Does the work for each file and tells what came of it, each as soon as those before it are told.
pub(crate) fn in_turn<R: Send>(files: &[PathBuf], work: impl Fn(&Path) -> R + Sync, mut tell: impl FnMut(R)) {
    // Standard input comes once; several readers would share it by chance.
    let once = files.iter().any(|file| file == Path::new("-"));
    let n_cores = if once { 1 } else { available_parallelism().map_or(1, NonZero::get) };
    let next = AtomicUsize::new(0);
    let take = |done: &Sender<(usize, R)>| {
        while let Some((at, file)) = next_file(files, &next) {
            if done.send((at, work(file))).is_err() {
                break;
            }
        }
    };
    let (done, results) = channel();
    scope(|threads| {
        let mut n_started = 0;
        if n_cores > 1 {
            for _ in 0..n_cores.min(files.len()) {
                let done = done.clone();
                let take = &take;
                let thread = Builder::new().stack_size(STACK_BYTES);
                n_started += usize::from(thread.spawn_scoped(threads, move || take(&done)).is_ok());
            }
        }
        if n_started == 0 {
            while let Some((_, file)) = next_file(files, &next) {
                tell(work(file));
            }
        }
        drop(done);
        let mut early: Vec<Option<R>> = files.iter().map(|_| None).collect();
        let mut n_told = 0;
        for (at, result) in results {
            if let Some(place) = early.get_mut(at) {
                *place = Some(result);
            }
            while let Some(result) = early.get_mut(n_told).and_then(Option::take) {
                tell(result);
                n_told += 1;
            }
        }
    });
}

fn next_file<'f>(files: &'f [PathBuf], next: &AtomicUsize) -> Option<(usize, &'f Path)> {
    let at = next.fetch_add(1, Ordering::Relaxed);
    files.get(at).map(|file| (at, file.as_path()))
}
