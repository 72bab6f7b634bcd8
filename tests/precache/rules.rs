//! Why the rules of the checker are there, for the page to fetch when somebody asks: `rules.json`, from the
//! Markdown beside each rule. The page itself carries none of it.

use pulldown_cmark::{Parser, html};
use serde_json::{Map, Value};
use std::fs;
use std::path::Path;

/// The file that the page fetches.
pub(crate) const FILE: &str = "rules.json";

/// Where the rules and their texts are, from the folder of this package.
const RULES: &str = "../procedures-schema/src/check/rules";

/// The headings whose text a writer wants; the examples are for whoever changes a rule.
const SHOWN: &[&str] = &["Why it matters", "Source"];

/// The text of the file: by code of the rule, what matters as HTML.
pub(crate) fn text() -> Result<String, String> {
    let mut rules = Map::new();
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join(RULES);
    for family in entries(&folder)? {
        if !family.is_dir() {
            continue;
        }
        for path in entries(&family)?.into_iter().filter(|path| path.extension().is_some_and(|e| e == "md")) {
            let markdown =
                fs::read_to_string(&path).map_err(|error| format!("{}: {error}", path.display()))?;
            let (code, shown) = shown(&markdown)
                .ok_or_else(|| format!("{} lacks a heading that is shown", path.display()))?;
            rules.insert(code, Value::from(shown));
        }
    }
    Ok(format!("{}\n", Value::from(rules)))
}

fn entries(folder: &Path) -> Result<Vec<std::path::PathBuf>, String> {
    let in_words = |error: std::io::Error| format!("{}: {error}", folder.display());
    let mut paths = Vec::new();
    for entry in fs::read_dir(folder).map_err(in_words)? {
        paths.push(entry.map_err(in_words)?.path());
    }
    paths.sort();
    Ok(paths)
}

/// The code of a rule and its shown parts as HTML; none if one is missing.
fn shown(markdown: &str) -> Option<(String, String)> {
    let code = markdown.lines().next()?.strip_prefix("# ")?.trim().to_owned();
    let mut out = String::new();
    for heading in SHOWN {
        let part = markdown.split("\n## ").find_map(|part| part.strip_prefix(heading))?;
        if *heading == "Source" {
            out.push_str("<p class=\"source\">Source:</p>");
        }
        html::push_html(&mut out, Parser::new(part.trim()));
    }
    Some((code, out))
}

#[cfg(test)]
mod tests {
    use super::{shown, text};
    use serde_json::Value;

    #[test]
    fn why_and_source_are_shown_as_html_and_examples_are_not() {
        let markdown = "# a/b\n\n## What it finds\n\nX\n\n## Why it matters\n\nIt <hurts> *much*.\n\n## Fires\n\n```text\nmap\n```\n\n## Source\n\nKnown.\n";
        let (code, html) = shown(markdown).expect("a rule");
        assert_eq!(code, "a/b");
        assert_eq!(html, "<p>It <hurts> <em>much</em>.</p>\n<p class=\"source\">Source:</p><p>Known.</p>\n");
    }

    #[test]
    fn every_rule_is_there() {
        let rules: Value = serde_json::from_str(&text().expect("the file")).expect("JSON");
        let rules = rules.as_object().expect("an object");
        assert!(rules.len() > 100, "{}", rules.len());
        assert!(rules["isolation/not-locked"].as_str().is_some_and(|html| html.contains("<p>")));
    }
}
