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

/// The text of the file: by code of the rule, what is written of it as HTML.
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
            let (code, shown) =
                shown(&markdown).ok_or_else(|| format!("{} has no headings", path.display()))?;
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

/// The code of a rule and what is written of it as HTML, heading by heading; none if there is no heading. The examples
/// are the longest, so they come last, and can be folded.
fn shown(markdown: &str) -> Option<(String, String)> {
    let (title, parts) = markdown.split_once("\n## ")?;
    let code = title.lines().next()?.strip_prefix("# ")?.trim().to_owned();
    let parts: Vec<(&str, &str)> = parts.split("\n## ").filter_map(|part| part.split_once('\n')).collect();
    let (examples, words): (Vec<_>, Vec<_>) = parts.into_iter().partition(|(_, text)| text.contains(EXAMPLE));
    let mut out = String::new();
    for (heading, text) in words {
        out.extend(["<h3>", &as_html_words(heading), "</h3>"]);
        html::push_html(&mut out, Parser::new(text.trim()));
    }
    for (heading, text) in examples {
        out.extend(["<details><summary>", &as_html_words(&example(heading)), "</summary>"]);
        // People read it, so names stand with their words apart.
        html::push_html(&mut out, Parser::new(&text.trim().replace('_', " ")));
        out.push_str("</details>");
    }
    Some((code, out))
}

/// What an example is called where people read it.
fn example(heading: &str) -> String {
    match heading.trim() {
        "Fires" => "An example in which it is found".to_owned(),
        "Does not fire" => "An example in which all is well".to_owned(),
        other => other.to_owned(),
    }
}

/// What an example begins with.
const EXAMPLE: &str = "```";

/// Words that hold no markup.
fn as_html_words(words: &str) -> String {
    words.trim().replace('&', "&amp;").replace('<', "&lt;")
}

#[cfg(test)]
mod tests {
    use super::{example, shown, text};
    use serde_json::Value;

    #[test]
    fn every_heading_is_shown_as_html_and_examples_come_last() {
        let markdown = "# a/b\n\n## What it finds\n\nX & Y\n\n## Why it matters\n\nIt *hurts*.\n\n## Fires\n\n```text\nmap: a_b < c\n```\n\n## Source\n\nKnown.\n";
        let (code, html) = shown(markdown).expect("a rule");
        assert_eq!(code, "a/b");
        assert_eq!(
            html,
            "<h3>What it finds</h3><p>X &amp; Y</p>\n<h3>Why it matters</h3><p>It <em>hurts</em>.</p>\n\
             <h3>Source</h3><p>Known.</p>\n<details><summary>An example in which it is found</summary>\
             <pre><code class=\"language-text\">map: a b &lt; c\n</code></pre>\n</details>"
        );
        assert_eq!(shown("# a/b\n\nNothing."), None);
    }

    #[test]
    fn every_rule_is_there_with_all_its_headings() {
        let rules: Value = serde_json::from_str(&text().expect("the file")).expect("JSON");
        let rules = rules.as_object().expect("an object");
        assert!(rules.len() > 100, "{}", rules.len());
        for (code, html) in rules {
            let (found, well) = (example("Fires"), example("Does not fire"));
            for heading in ["What it finds", "Why it matters", &found, &well, "Source"] {
                let html = html.as_str().unwrap_or_default();
                assert!(html.contains(&format!(">{heading}</")), "{code} lacks {heading}");
            }
        }
    }
}
