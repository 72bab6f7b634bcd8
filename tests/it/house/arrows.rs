//! Which module may use which: the arrows of the architecture, read from the paths in the code.
//!
//! Only shipped code counts; a test may name whatever builds its sample. `super` is followed, so an arrow
//! cannot hide behind it. The binary of the core is outside: it uses the library as everybody does.

use super::judge;
use super::source::{Source, Token, sources};

const KNOWN: &[&str] = &[];

/// The name under which the application knows the core.
const CORE: &str = "procedures_schema";

/// A module of the core and what it may use beside itself; `units` is open to all.
const CORE_ARROWS: &[(&str, &[&str])] = &[
    ("units", &[]),
    ("model", &[]),
    ("lexicon", &["model"]),
    ("edit", &["model"]),
    ("format", &["model"]),
    ("engineering", &[]),
    ("notation", &["model"]),
    ("simulate", &["model", "engineering"]),
    ("derive", &["model", "edit", "engineering", "simulate"]),
    ("capture", &["model", "edit", "lexicon", "notation", "simulate"]),
    ("check", &["model", "edit", "engineering", "lexicon", "simulate", "derive", "capture"]),
    ("compare", &["model", "edit", "notation", "simulate"]),
    ("export", &["model", "notation", "derive"]),
    ("versions", &[]),
];

/// A folder of the application: what it may use of the application, and what of the core.
struct Folder {
    name: &'static str,
    own: &'static [&'static str],
    core: &'static [&'static str],
}

/// What the reader may know of the core: no rules, no editor, no recogniser.
const READER_CORE: &[&str] = &["model", "units", "simulate", "derive", "engineering", "notation", "format"];
const WHOLE_CORE: &[&str] = &[
    "model",
    "units",
    "format",
    "edit",
    "simulate",
    "check",
    "derive",
    "notation",
    "lexicon",
    "capture",
    "engineering",
    "compare",
    "export",
    "versions",
];

/// The files beside the folders (`main`, `app`) put the page together and may use everything.
const APP_ARROWS: &[Folder] = &[
    Folder { name: "storage", own: &[], core: &["model", "units", "format", "edit"] },
    Folder { name: "components", own: &[], core: &["model", "units", "derive", "notation"] },
    Folder { name: "state", own: &["storage"], core: WHOLE_CORE },
    Folder { name: "follow", own: &["components", "state", "storage"], core: READER_CORE },
    Folder { name: "write", own: &["components", "frame", "state", "storage"], core: WHOLE_CORE },
    Folder { name: "frame", own: &["components", "state"], core: &["model", "units", "check"] },
    Folder {
        name: "appliance",
        own: &["components", "frame", "state"],
        core: &["model", "units", "edit", "derive"],
    },
    Folder { name: "versions", own: &["components", "frame", "state"], core: &["model", "compare"] },
    Folder { name: "kit", own: &["components", "frame", "state"], core: &["model", "units", "derive"] },
    Folder {
        name: "print",
        own: &["components", "frame", "state", "kit"],
        core: &["model", "derive", "simulate"],
    },
    Folder { name: "finding_out", own: &["components", "frame", "state"], core: &["model"] },
    Folder {
        name: "library",
        own: &["components", "frame", "state", "storage"],
        core: &["model", "units", "format"],
    },
];

#[test]
fn modules_of_the_core_use_only_what_they_may() {
    let mut offences = Vec::new();
    for source in sources("procedures-schema/src") {
        let Some(place) = module_path(&source.path, "procedures-schema/src/") else { continue };
        let Some(module) = place.first() else { continue };
        let Some((_, allowed)) = CORE_ARROWS.iter().find(|(name, _)| name == module) else {
            offences.push((source.path, format!("module `{module}` has no line in the table of arrows")));
            continue;
        };
        for (used, line) in own_modules(&source.tokens(), place.len()) {
            if used != *module && used != "units" && !allowed.contains(&used.as_str()) {
                offences.push((source.path.clone(), format!("line {line}: {module} may not use {used}")));
            }
        }
    }
    judge("arrows of the core", &offences, KNOWN);
}

#[test]
fn folders_of_the_application_use_only_what_they_may() {
    let mut offences = Vec::new();
    for source in sources("app/src") {
        let Some(place) = module_path(&source.path, "app/src/") else { continue };
        let Some(name) = place.first().filter(|_| source.path.matches('/').count() > 2) else { continue };
        match APP_ARROWS.iter().find(|folder| folder.name == name) {
            None => offences.push((source.path, format!("folder `{name}` has no line in the table"))),
            Some(folder) => offences.extend(app_offences(&source, folder, place.len())),
        }
    }
    judge("arrows of the application", &offences, KNOWN);
}

fn app_offences(source: &Source, folder: &Folder, depth: usize) -> Vec<(String, String)> {
    let tokens = source.tokens();
    let own = own_modules(&tokens, depth)
        .into_iter()
        .filter(|(used, _)| used != folder.name && is_folder(used) && !folder.own.contains(&used.as_str()));
    let core = after(&tokens, CORE).into_iter().filter(|(used, _)| !folder.core.contains(&used.as_str()));
    own.chain(core)
        .map(|(used, line)| (source.path.clone(), format!("line {line}: {} may not use {used}", folder.name)))
        .collect()
}

fn is_folder(name: &str) -> bool {
    APP_ARROWS.iter().any(|folder| folder.name == name)
}

/// The names of a file's module and those around it, outermost first; `None` for a crate's root or a binary.
fn module_path(path: &str, top: &str) -> Option<Vec<String>> {
    let inside = path.strip_prefix(top)?.strip_suffix(".rs")?;
    let mut names: Vec<String> = inside.split('/').map(str::to_owned).collect();
    names.pop_if(|last| last == "mod");
    let is_root = matches!(names.as_slice(), [only] if only == "lib" || only == "main");
    (!is_root && names.first().is_some_and(|first| first != "bin")).then_some(names)
}

/// The top modules of its own crate that a file names, with lines; `depth` is that of the file's module.
fn own_modules(tokens: &[Token], depth: usize) -> Vec<(String, usize)> {
    let mut found = after(tokens, "crate");
    let mut index = 0;
    while index < tokens.len() {
        let n_supers = tokens[index..].chunks(3).take_while(|chunk| is_step_up(chunk)).count();
        if n_supers >= depth && n_supers > 0 {
            found.extend(heads(&tokens[index + 3 * n_supers..]));
        }
        index += (3 * n_supers).max(1);
    }
    found
}

/// `super::`, which is three tokens.
fn is_step_up(chunk: &[Token]) -> bool {
    matches!(chunk, [first, second, third] if first.text == "super" && second.text == ":" && third.text == ":")
}

/// What follows `root::` in each path and each `use` that begins with `root`.
fn after(tokens: &[Token], root: &str) -> Vec<(String, usize)> {
    let starts = tokens
        .windows(3)
        .enumerate()
        .filter(|(_, w)| matches!(w, [a, b, c] if a.text == root && b.text == ":" && c.text == ":"));
    starts.flat_map(|(index, _)| heads(&tokens[index + 3..])).collect()
}

/// The first names of what follows a `::`: one, or one for each part of a `{…}`.
fn heads(tokens: &[Token]) -> Vec<(String, usize)> {
    let Some(first) = tokens.first() else { return Vec::new() };
    if first.text != "{" {
        return vec![(first.text.clone(), first.line)];
    }
    let mut found = Vec::new();
    let mut level = 0;
    let mut is_head = false;
    for token in tokens {
        match token.text.as_str() {
            "{" => {
                level += 1;
                is_head = level == 1;
            }
            "}" if level == 1 => break,
            "}" => level -= 1,
            "," => is_head = level == 1,
            _ if is_head => {
                found.push((token.text.clone(), token.line));
                is_head = false;
            }
            _ => {}
        }
    }
    found
}

#[test]
fn arrows_are_read_from_every_form_of_path() {
    let text = "use crate::model::Step;\nuse crate::{check::{Report, Level}, derive};\nfn f() { \
                vec![crate::format::read(b\"\")]; super::super::edit::apply() }\nuse super::near;\n\
                #[cfg(test)]\nmod tests { use crate::capture; }";
    let source = Source::new("sample.rs".to_owned(), text.to_owned());
    let mut names: Vec<String> = own_modules(&source.tokens(), 2).into_iter().map(|(name, _)| name).collect();
    names.sort_unstable();
    assert_eq!(names, ["check", "derive", "edit", "format", "model"]);
}

#[test]
fn a_file_knows_its_module() {
    let at = |path: &str| module_path(path, "procedures-schema/src/").map(|names| names.join("::"));
    assert_eq!(at("procedures-schema/src/check/rules/gas/mod.rs").as_deref(), Some("check::rules::gas"));
    assert_eq!(at("procedures-schema/src/units/convert.rs").as_deref(), Some("units::convert"));
    assert_eq!(at("procedures-schema/src/lib.rs"), None);
    assert_eq!(at("procedures-schema/src/bin/putback/main.rs"), None);
}
