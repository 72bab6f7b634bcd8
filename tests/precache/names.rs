//! The names of own files that the start page and the web manifest ask for.
//!
//! It looks at the attributes by which our page names files; it is no general HTML reader.

/// Attributes that name a file.
const ATTRIBUTES: &[&str] = &["src", "href", "data-js", "data-wasm"];

/// The files that a page names, as paths from its folder.
///
/// # Errors
/// Never; the form is that of [`of_manifest`].
#[expect(clippy::unnecessary_wraps, reason = "both readers have one form")]
pub(crate) fn of_page(text: &str) -> Result<Vec<String>, String> {
    let mut names = Vec::new();
    for attribute in ATTRIBUTES {
        for quote in ['"', '\''] {
            let mark = format!(" {attribute}={quote}");
            names.extend(
                text.split(&mark).skip(1).filter_map(|rest| rest.split(quote).next()).filter_map(own),
            );
        }
    }
    Ok(names)
}

/// The icons and the start address of a web manifest.
///
/// # Errors
/// If the manifest is no JSON.
pub(crate) fn of_manifest(text: &str) -> Result<Vec<String>, String> {
    let manifest: serde_json::Value =
        serde_json::from_str(text).map_err(|error| format!("manifest.webmanifest: {error}"))?;
    let icons = manifest["icons"].as_array().into_iter().flatten();
    Ok(icons.filter_map(|icon| icon["src"].as_str()).filter_map(own).collect())
}

/// The path inside our folder; `None` for other sites, places in the page and the page itself.
fn own(address: &str) -> Option<String> {
    let path = address.split(['#', '?']).next().unwrap_or_default();
    let path = path.trim_start_matches("./").trim_start_matches('/');
    let is_elsewhere = path.contains(':') || address.starts_with("//");
    (!path.is_empty() && !is_elsewhere).then(|| path.to_owned())
}

#[cfg(test)]
mod tests {
    use super::{of_manifest, of_page};

    #[test]
    fn names_are_read_from_the_attributes_that_we_use() {
        let page = "<link rel='icon' href='./icon.svg'><a href=\"#step-1\">\n<a href=\"https://x.test/\">\
                    <script type=\"module\" src=\"./boot.js\" data-js=\"./a.js\" data-wasm=\"./a_bg.wasm\"></script>";
        let mut names = of_page(page).expect("names");
        names.sort_unstable();
        assert_eq!(names, ["a.js", "a_bg.wasm", "boot.js", "icon.svg"]);
    }

    #[test]
    fn the_manifest_names_its_icons() {
        let names = of_manifest(r#"{"start_url": "./", "icons": [{"src": "./icons/a.png"}]}"#);
        assert_eq!(names, Ok(vec!["icons/a.png".to_owned()]));
        assert!(of_manifest("{").is_err());
    }
}
