//! What the file of a procedure is called: by its own name, or after the title while it has none, with the verdict in it
//! where it is not fit.

/// What follows the name of every procedure's file.
pub(super) const ENDING: &str = ".putback.json";
/// What stands in the name of a file that is not fit, or that nobody judged: the latter by what hands files out without the
/// program.
const MARKS: [&str; 3] = ["REJECTED", "DRAFT", NOT_CHECKED];
/// The last of them.
pub(super) const NOT_CHECKED: &str = "NOT-CHECKED";
/// A name that follows a title has at most so many characters, so that no system cuts what stands behind it.
const LONGEST: usize = 48;
/// What every procedure was called that nobody had named; it follows its title now.
const NO_NAME: &str = "untitled";
/// Names of devices, which some systems give to no file, whatever its ending.
const DEVICES: [&str; 6] = ["aux", "con", "nul", "prn", "com", "lpt"];

/// `NAME.putback.json`, or `NAME.REJECTED.putback.json`.
pub(super) fn file_name(name: &str, mark: Option<&str>) -> String {
    let name = if name.is_empty() { "procedure" } else { name };
    mark.map_or_else(|| format!("{name}{ENDING}"), |mark| format!("{name}.{mark}{ENDING}"))
}

/// The name that a procedure was given by its file; empty, if it has none of its own.
pub(super) fn own(name: &str) -> &str {
    if name == NO_NAME { "" } else { name }
}

/// The name of its own, or else one after the title.
pub(super) fn name_or_title(name: &str, title: &str) -> String {
    let name = own(name);
    if name.is_empty() { after_title(title) } else { name.to_owned() }
}

/// `replace-the-pump-p2` of "Replace the pump P2": letters and figures, which every system keeps as they are.
fn after_title(title: &str) -> String {
    let title = title.to_lowercase();
    let mut name = String::new();
    for word in title.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty()) {
        let room = LONGEST.saturating_sub(name.chars().count() + usize::from(!name.is_empty()));
        if name.is_empty() {
            name.extend(word.chars().take(room));
        } else if word.chars().count() <= room {
            name.push('-');
            name.push_str(word);
        } else {
            break;
        }
    }
    if DEVICES.contains(&name.trim_end_matches(|c: char| c.is_ascii_digit())) {
        name.push_str("-procedure");
    }
    name
}

/// What the name of a file says of the verdict.
pub(super) fn mark_in(file_name: &str) -> Option<&'static str> {
    let name = without_ending(file_name);
    MARKS.into_iter().find(|mark| name.ends_with(&format!(".{mark}")))
}

fn without_ending(file_name: &str) -> &str {
    file_name.strip_suffix(ENDING).or_else(|| file_name.strip_suffix(".json")).unwrap_or(file_name)
}

/// The name of a procedure from that of its file.
pub(super) fn stem(file_name: &str) -> &str {
    let name = without_ending(file_name);
    mark_in(name).and_then(|mark| name.strip_suffix(mark)?.strip_suffix('.')).unwrap_or(name)
}

#[cfg(test)]
mod tests {
    use super::{file_name, mark_in, name_or_title, stem};
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test]
    fn an_unfit_file_says_so_in_its_name() {
        assert_eq!(file_name("pump", Some("REJECTED")), "pump.REJECTED.putback.json");
        assert_eq!(file_name("pump", None), "pump.putback.json");
        assert_eq!(stem("pump.REJECTED.putback.json"), "pump");
        assert_eq!(stem("pump.putback.json"), "pump");
        assert_eq!(stem("pump.NOT-CHECKED.putback.json"), "pump");
        assert_eq!(mark_in("pump.REJECTED.putback.json"), Some("REJECTED"));
        assert_eq!(mark_in("pump (1).putback.json"), None);
    }

    #[wasm_bindgen_test]
    fn a_name_follows_the_title_until_there_is_one() {
        for (name, title, expected) in [
            ("", "Replace the pump P2", "replace-the-pump-p2"),
            ("untitled", "Replace the pump P2", "replace-the-pump-p2"),
            ("pump", "Replace the pump P2", "pump"),
            ("", " Düse 1/2\" : prüfen? ", "düse-1-2-prüfen"),
            ("", "../con", "con-procedure"),
            ("", "COM1", "com1-procedure"),
            ("", "…", ""),
            (
                "",
                "Take the whole of the very long heat exchanger out of it",
                "take-the-whole-of-the-very-long-heat-exchanger",
            ),
        ] {
            assert_eq!(name_or_title(name, title), expected, "{title}");
        }
        assert_eq!(name_or_title("", &"w".repeat(300)).len(), 48);
        assert_eq!(file_name("", None), "procedure.putback.json");
    }
}
