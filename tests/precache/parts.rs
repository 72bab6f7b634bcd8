//! Splits the compiled page into the part that comes first and the rest, which the page fetches by itself.
//!
//! Trunk has put the whole into the page by now. It stays as it was named there, but is replaced by its first part,
//! made from the same compiled program; a script and the other parts are added beside it.

use seahash::hash;
use std::ffi::OsStr;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use wasm_split_cli_support::{Options, transform};
use wasmparser::{Parser, Payload};

/// The compiled program's name.
const PROGRAM: &str = "putback-editor";

/// The parts of the page in `folder`, made from what the compiler left below `target`.
///
/// # Errors
/// If the page holds no program, the compiler's file for it is not found, or it cannot be split.
pub(crate) fn split(folder: &Path, target: &Path) -> Result<(), String> {
    let name = name_in(folder)?;
    let compiled = compiled(target, &name)?;
    let parts = Parts::of(&compiled, &name, &target.join("parts"))?;
    parts.put_into(folder)
}

/// The name of the program in the page, with its hash and without ending.
fn name_in(folder: &Path) -> Result<String, String> {
    let beginning = format!("{PROGRAM}-");
    let names = files(folder)?.into_iter().filter_map(|path| Some(path.file_name()?.to_str()?.to_owned()));
    let mut whole = names.filter_map(|name| Some(name.strip_suffix("_bg.wasm")?.to_owned()));
    whole
        .find(|name| name.starts_with(&beginning))
        .ok_or_else(|| format!("no {beginning}*_bg.wasm is in the page"))
}

/// What the compiler made under that name. There is one for each way of building; the hash says which is meant.
fn compiled(target: &Path, name: &str) -> Result<Vec<u8>, String> {
    let of_browser = target.join("wasm32-unknown-unknown");
    for way in files(&of_browser)? {
        let Ok(bytes) = fs::read(way.join(format!("{PROGRAM}.wasm"))) else { continue };
        if name == format!("{PROGRAM}-{:x}", hash(&bytes)) {
            return Ok(bytes);
        }
    }
    Err(format!("nothing in {} has the hash of {name}", of_browser.display()))
}

fn files(folder: &Path) -> Result<Vec<PathBuf>, String> {
    let in_words = |error: std::io::Error| format!("{}: {error}", folder.display());
    let entries = fs::read_dir(folder).map_err(in_words)?;
    entries.map(|entry| entry.map(|entry| entry.path()).map_err(in_words)).collect()
}

/// The parts, in a folder of their own.
struct Parts<'a> {
    name: &'a str,
    scratch: PathBuf,
    main: PathBuf,
    others: Vec<PathBuf>,
}

impl<'a> Parts<'a> {
    fn of(compiled: &[u8], name: &'a str, folder: &Path) -> Result<Self, String> {
        let scratch = folder.join(name);
        let main = scratch.join("main.wasm");
        let (main_module, link) = (format!("./{name}.js"), format!("./{}", link_name(name)));
        let mut options = Options::new(compiled);
        options.output_dir = &scratch;
        options.main_out_path = &main;
        options.main_module = &main_module;
        options.link_name = &link;
        let made = transform(options).map_err(|error| format!("{PROGRAM} cannot be split: {error:#}"))?;
        if made.split_modules.is_empty() {
            return Err(format!("{PROGRAM} has come out as one part"));
        }
        Ok(Self { name, scratch, main, others: made.split_modules })
    }

    fn put_into(&self, folder: &Path) -> Result<(), String> {
        join_to_the_browser(&self.main, folder, self.name)?;
        let link = self.scratch.join(link_name(self.name));
        let mut link = fs::read_to_string(&link).map_err(|error| format!("{}: {error}", link.display()))?;
        for part in &self.others {
            let bytes = fs::read(part).map_err(|error| format!("{}: {error}", part.display()))?;
            let was = part.file_name().and_then(OsStr::to_str).unwrap_or_default();
            let is = format!("{}-{}", self.name, was.trim_start_matches("split_"));
            link = link.replace(&format!("\"./{was}\""), &format!("\"./{is}\""));
            put(folder, &is, &if keeps_names() { bytes } else { without_names(&bytes)? })?;
        }
        put(folder, &link_name(self.name), link.as_bytes())?;
        fs::remove_dir_all(&self.scratch).map_err(|error| format!("{}: {error}", self.scratch.display()))
    }
}

/// The script that fetches the other parts.
fn link_name(name: &str) -> String {
    format!("{name}-parts.js")
}

fn put(folder: &Path, name: &str, bytes: &[u8]) -> Result<(), String> {
    fs::write(folder.join(name), bytes).map_err(|error| format!("{name}: {error}"))
}

/// What trunk has done with the whole, done again with the first part.
fn join_to_the_browser(main: &Path, folder: &Path, name: &str) -> Result<(), String> {
    let without: &[&str] =
        if keeps_names() { &[] } else { &["--remove-name-section", "--remove-producers-section"] };
    let done = Command::new("wasm-bindgen")
        // The other parts take memory and tables from the first, as the linker names them.
        .args(["--target=web", "--no-typescript", "--keep-lld-exports", "--no-demangle"])
        .args(without)
        .arg(format!("--out-name={name}"))
        .arg("--out-dir")
        .args([folder, main])
        .status()
        .map_err(|error| format!("wasm-bindgen: {error}"))?;
    if done.success() { Ok(()) } else { Err("wasm-bindgen has refused the first part".to_owned()) }
}

/// Whether functions keep their names, for a profiler in the browser, because whoever builds says so: such a page weighs more.
fn keeps_names() -> bool {
    std::env::var_os("PUTBACK_NAMES").is_some()
}

/// A part without what only people and debuggers read.
fn without_names(part: &[u8]) -> Result<Vec<u8>, String> {
    let in_words = |error: wasmparser::BinaryReaderError| format!("a part cannot be read: {error}");
    // Magic number and version.
    let mut kept = part.get(..8).unwrap_or_default().to_vec();
    for payload in Parser::new(0).parse_all(part) {
        let payload = payload.map_err(in_words)?;
        let is_of_no_use = matches!(payload, Payload::CustomSection(_));
        let Some((section, range)) = payload.as_section().filter(|_| !is_of_no_use) else { continue };
        let (Ok(from), Ok(to)) = (usize::try_from(range.start), usize::try_from(range.end)) else { continue };
        let body = part.get(from..to).unwrap_or_default();
        kept.push(section);
        leb128(&mut kept, body.len());
        kept.extend_from_slice(body);
    }
    Ok(kept)
}

/// A length as the format has it: seven bits a byte, the lowest first.
fn leb128(bytes: &mut Vec<u8>, mut value: usize) {
    loop {
        let low = u8::try_from(value & 0x7f).unwrap_or_default();
        value >>= 7;
        if value == 0 {
            bytes.push(low);
            return;
        }
        bytes.push(low | 0x80);
    }
}

#[cfg(test)]
mod tests {
    use super::{compiled, leb128, name_in, without_names};
    use std::fs;
    use std::path::PathBuf;
    use wasmparser::{Parser, Payload};

    fn folder(name: &str) -> PathBuf {
        let folder = std::env::temp_dir().join(format!("putback-parts-{}-{name}", std::process::id()));
        fs::create_dir_all(&folder).expect("a folder");
        folder
    }

    #[test]
    fn the_program_of_the_page_is_found_by_its_hash() {
        let (page, target) = (folder("page"), folder("target"));
        for (way, bytes) in [("release", b"\0asm 1"), ("fast", b"\0asm 2")] {
            let way = target.join("wasm32-unknown-unknown").join(way);
            fs::create_dir_all(&way).expect("a folder");
            fs::write(way.join("putback-editor.wasm"), bytes).expect("a file");
        }
        assert!(name_in(&page).is_err_and(|reason| reason.contains("no putback-editor-")));
        let name = format!("putback-editor-{:x}", seahash::hash(b"\0asm 2"));
        fs::write(page.join(format!("{name}_bg.wasm")), "").expect("a file");
        assert_eq!(name_in(&page).as_ref(), Ok(&name));
        assert_eq!(compiled(&target, &name), Ok(b"\0asm 2".to_vec()));
        let reason = compiled(&target, "putback-editor-0").expect_err("no such hash");
        assert!(reason.contains("putback-editor-0"), "{reason}");
        for folder in [page, target] {
            fs::remove_dir_all(folder).expect("the folder goes");
        }
    }

    #[test]
    fn names_are_taken_off_and_all_else_stays() {
        // An empty list of types, and a custom section named "name" with two bytes in it.
        let part = b"\0asm\x01\0\0\0\x01\x01\0\0\x07\x04nameab";
        let kept = without_names(part).expect("a part");
        assert_eq!(kept, b"\0asm\x01\0\0\0\x01\x01\0");
        let sections =
            Parser::new(0).parse_all(&kept).filter(|payload| matches!(payload, Ok(Payload::TypeSection(_))));
        assert_eq!(sections.count(), 1);
        assert!(without_names(b"no part").is_err());
    }

    #[test]
    fn lengths_are_written_as_the_format_has_them() {
        // The example of the DWARF standard, version 4, appendix C.
        for (value, bytes) in
            [(2, &[2][..]), (127, &[127]), (128, &[0x80, 1]), (129, &[0x81, 1]), (12857, &[0xb9, 0x64])]
        {
            let mut written = Vec::new();
            leb128(&mut written, value);
            assert_eq!(written, bytes);
        }
    }
}
