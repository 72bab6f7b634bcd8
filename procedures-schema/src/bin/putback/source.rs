//! Reading files and standard input, and writing to a pipe that may have closed.

use procedures_schema::format;
use procedures_schema::model::Procedure;
use std::io::{Read, Write};
use std::path::Path;

/// The bytes of a file, or of standard input for `-`.
///
/// # Errors
/// A sentence that names the file and the system's reason.
pub(crate) fn bytes(path: &Path) -> Result<Vec<u8>, String> {
    let mut bytes = Vec::new();
    let read = if path == Path::new("-") {
        std::io::stdin().lock().read_to_end(&mut bytes).map(|_| ())
    } else {
        std::fs::read(path).map(|read| bytes = read)
    };
    read.map(|()| bytes).map_err(|error| format!("{}: cannot be read: {error}", path.display()))
}

/// The procedure in a file.
///
/// # Errors
/// A sentence that names the file, the place and what to do.
pub(crate) fn procedure(path: &Path) -> Result<Procedure, String> {
    format::read(&bytes(path)?).map_err(|error| format!("{}: {error}", path.display()))
}

/// Prints a text with a line end. A reader that went away ends the talk, not the check.
pub(crate) fn say(text: &str) {
    if writeln!(std::io::stdout().lock(), "{text}").is_err() {
        // Nobody listens any more; the exit code still tells the verdict.
    }
}
