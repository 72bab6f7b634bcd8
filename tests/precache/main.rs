//! Finishes a build of the page. It splits the program into the part that comes first and the rest; it adds
//! `rules.json`, why each rule is there; and it writes `sw.js`, the list of all files with their content hashes, so
//! that the page works without a network after the first visit, and `precache.json`, the same list for the page,
//! which tells people whether everything is there.
//!
//! Trunk runs it as a `post_build` hook and says in `TRUNK_STAGING_DIR` where the files are. It changes no other
//! file. It fails the build when the start page or the manifest names a file that is not in the list, for such a
//! page could start with a network and never without.

mod names;
mod parts;
mod rules;
mod worker;

use sha2::{Digest, Sha256};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// One file that the page keeps.
struct Kept {
    /// Path from the page's folder, with `/` between its parts.
    path: String,
    /// SHA-256 of what it holds, in hexadecimal.
    hash: String,
}

fn main() -> ExitCode {
    let Some(folder) = std::env::var_os("TRUNK_STAGING_DIR") else {
        return fail("TRUNK_STAGING_DIR is not set; trunk runs this at the end of a build");
    };
    match finish(Path::new(&folder)) {
        Ok(()) => ExitCode::SUCCESS,
        Err(reason) => fail(&reason),
    }
}

fn finish(folder: &Path) -> Result<(), String> {
    let own = std::env::current_exe().map_err(|error| format!("where this program is: {error}"))?;
    // This program lies in the same folder of the compiler as the page's, two levels down.
    let target = own.ancestors().nth(2).ok_or("this program is not where the compiler puts it")?;
    parts::split(folder, target)?;
    write_worker(folder)
}

#[expect(clippy::print_stderr, reason = "the build shows why it failed")]
fn fail(reason: &str) -> ExitCode {
    eprintln!("putback-precache: {reason}");
    ExitCode::FAILURE
}

fn write_worker(folder: &Path) -> Result<(), String> {
    write(folder, rules::FILE, &rules::text()?)?;
    write(folder, worker::LIST, "")?;
    let paths: Vec<String> = list(folder)?.into_iter().map(|file| worker::address(&file.path)).collect();
    write(folder, worker::LIST, &format!("{}\n", serde_json::Value::from(paths)))?;
    let kept = list(folder)?;
    for (page, names) in
        [("index.html", names::of_page as fn(&str) -> _), ("manifest.webmanifest", names::of_manifest)]
    {
        let text = fs::read_to_string(folder.join(page)).map_err(|error| format!("{page}: {error}"))?;
        let names: Vec<String> = names(&text)?;
        if let Some(name) = names.iter().find(|name| kept.iter().all(|file| file.path != **name)) {
            return Err(format!("{page} names \"{name}\", which is not among the built files"));
        }
    }
    write(folder, worker::FILE, &worker::text(&kept))
}

fn write(folder: &Path, file: &str, text: &str) -> Result<(), String> {
    fs::write(folder.join(file), text).map_err(|error| format!("{file}: {error}"))
}

/// Every file of the page in the order of the paths, except the worker itself.
fn list(folder: &Path) -> Result<Vec<Kept>, String> {
    let mut paths = Vec::new();
    collect(folder, &mut paths).map_err(|error| format!("{}: {error}", folder.display()))?;
    let mut kept = Vec::new();
    for path in paths {
        let content = fs::read(&path).map_err(|error| format!("{}: {error}", path.display()))?;
        let inside = path.strip_prefix(folder).unwrap_or(&path);
        let parts: Vec<_> = inside.components().map(|part| part.as_os_str().to_string_lossy()).collect();
        kept.push(Kept { path: parts.join("/"), hash: hex(&Sha256::digest(&content)) });
    }
    kept.retain(|file| file.path != worker::FILE);
    kept.sort_by(|a, b| a.path.cmp(&b.path));
    Ok(kept)
}

fn collect(folder: &Path, paths: &mut Vec<PathBuf>) -> std::io::Result<()> {
    for entry in fs::read_dir(folder)? {
        let entry = entry?;
        if entry.file_type()?.is_dir() {
            collect(&entry.path(), paths)?;
        } else {
            paths.push(entry.path());
        }
    }
    Ok(())
}

fn hex(bytes: &[u8]) -> String {
    use std::fmt::Write;
    let mut text = String::new();
    for byte in bytes {
        // Writing into a String cannot fail.
        let _ = write!(text, "{byte:02x}");
    }
    text
}

#[cfg(test)]
mod tests {
    use super::{hex, list, write_worker};
    use std::fs;
    use std::path::PathBuf;

    const MANIFEST: &str = r#"{ "icons": [{ "src": "icons/icon-192.png" }] }"#;

    /// A small page in a folder of its own.
    fn page(name: &str, index: &str) -> PathBuf {
        let folder = std::env::temp_dir().join(format!("putback-precache-{}-{name}", std::process::id()));
        fs::create_dir_all(folder.join("icons")).expect("a folder");
        for (file, text) in [
            ("index.html", index),
            ("manifest.webmanifest", MANIFEST),
            ("icons/icon-192.png", "picture"),
            ("app-1f.js", "script"),
            ("sw.js", "of an earlier build"),
        ] {
            fs::write(folder.join(file), text).expect("a file");
        }
        folder
    }

    #[test]
    fn the_worker_lists_every_file_and_changes_with_each() {
        let folder = page("lists", r#"<script src="./app-1f.js"></script>"#);
        write_worker(&folder).expect("a page with all its files");
        let first = fs::read_to_string(folder.join("sw.js")).expect("the worker");
        for path in ["./", "app-1f.js", "icons/icon-192.png", "manifest.webmanifest", "precache.json"] {
            assert!(first.contains(&format!("\"{path}\"")), "{path}: {first}");
        }
        let list = fs::read_to_string(folder.join("precache.json")).expect("the list");
        assert_eq!(list.matches('"').count(), 2 * first.matches("  [\"").count(), "{list}");
        assert!(!first.contains("\"sw.js\"") && !first.contains("\"index.html\""), "{first}");
        fs::write(folder.join("app-1f.js"), "another script").expect("a file");
        write_worker(&folder).expect("a page with all its files");
        assert_ne!(fs::read_to_string(folder.join("sw.js")).expect("the worker"), first);
        fs::remove_dir_all(folder).expect("the folder goes");
    }

    #[test]
    fn a_page_that_names_a_missing_file_fails_the_build() {
        let folder = page("missing", r#"<link rel="stylesheet" href="./gone.css">"#);
        let reason = write_worker(&folder).expect_err("gone.css is missing");
        assert!(reason.contains("gone.css"), "{reason}");
        fs::remove_dir_all(folder).expect("the folder goes");
    }

    #[test]
    fn hashes_are_of_the_content() {
        let folder = page("hashes", "");
        let kept = list(&folder).expect("a list");
        let icon = kept.iter().find(|file| file.path.ends_with("192.png")).expect("the icon");
        assert_eq!(icon.hash, hex(&<sha2::Sha256 as sha2::Digest>::digest(b"picture")));
        fs::remove_dir_all(folder).expect("the folder goes");
    }
}
