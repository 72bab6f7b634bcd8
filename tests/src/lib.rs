//! Where the tests find things: the repository, its files, and the suite of sample documents.
//!
//! This library knows nothing of what is tested; it only reads files, always in the same order.

use std::io;
use std::path::{Path, PathBuf};

/// Folders that hold what was made or fetched, never what somebody wrote.
const NOT_WRITTEN: &[&str] = &[".git", ".tools", "dist", "node_modules", "out", "target"];

/// The top folder of the repository.
pub fn repository() -> PathBuf {
    // Cargo says it again when it runs a test, so a build that was moved still finds its own files.
    let package = std::env::var_os("CARGO_MANIFEST_DIR").unwrap_or_else(|| env!("CARGO_MANIFEST_DIR").into());
    let package = PathBuf::from(package);
    package.parent().map_or_else(|| package.clone(), Path::to_path_buf)
}

/// One text file of the repository.
#[derive(Clone, Debug)]
pub struct TextFile {
    /// Path from the top folder, with `/` between its parts.
    pub path: String,
    /// What it holds.
    pub text: String,
}

impl TextFile {
    /// Whether the name ends so, for example in `.putback.json`.
    pub fn is(&self, ending: &str) -> bool {
        self.path.strip_suffix(ending).is_some()
    }
}

/// Every written file below `folder` (a path from the top folder; `""` for all), in the order of the paths.
///
/// # Errors
/// If a folder or a file cannot be read. A file that is no UTF-8 text is left out.
pub fn text_files(folder: &str) -> io::Result<Vec<TextFile>> {
    let top = repository();
    let mut paths = Vec::new();
    collect(&top.join(folder), &mut paths)?;
    paths.sort();
    let mut files = Vec::new();
    for path in paths {
        if let Ok(text) = String::from_utf8(std::fs::read(&path)?) {
            files.push(TextFile { path: shown(&top, &path), text });
        }
    }
    Ok(files)
}

/// The samples of one folder of `tests/suite` whose names end in `ending`, in the order of their names.
///
/// # Errors
/// If the folder cannot be read or holds no such file: a runner without samples tests nothing.
pub fn suite(folder: &str, ending: &str) -> io::Result<Vec<TextFile>> {
    let mut files = text_files(&format!("tests/suite/{folder}"))?;
    files.retain(|file| file.is(ending));
    if files.is_empty() {
        return Err(io::Error::new(io::ErrorKind::NotFound, format!("no {ending} in tests/suite/{folder}")));
    }
    Ok(files)
}

fn collect(folder: &Path, paths: &mut Vec<PathBuf>) -> io::Result<()> {
    for entry in std::fs::read_dir(folder)? {
        let entry = entry?;
        let name = entry.file_name();
        let kind = entry.file_type()?;
        if NOT_WRITTEN.iter().any(|skipped| name == *skipped) {
            continue;
        }
        if kind.is_dir() {
            collect(&entry.path(), paths)?;
        } else if kind.is_file() {
            paths.push(entry.path());
        }
    }
    Ok(())
}

fn shown(top: &Path, path: &Path) -> String {
    let inside = path.strip_prefix(top).unwrap_or(path);
    let parts: Vec<_> = inside.components().map(|part| part.as_os_str().to_string_lossy()).collect();
    parts.join("/")
}
