//! What a script may be found wanting in: the data beside the scripts, which the browser reads too.

use procedures_schema::check::{Finding, Level};
use serde_json::Value;

/// What is allowed to be found in one script.
pub(super) struct Truth {
    script: String,
    table: Value,
}

impl Truth {
    pub(super) fn of(script: &str) -> Self {
        let path = putback_tests::repository().join("tests/browser/scripts/findings.json");
        let text = std::fs::read_to_string(path).expect("the table of findings");
        let all: Value = serde_json::from_str(&text).expect("a table of findings");
        Self { script: script.to_owned(), table: all[script].clone() }
    }

    fn rows(&self, part: &str) -> Vec<&Value> {
        self.table[part].as_array().expect("rows").iter().collect()
    }

    fn codes(&self, part: &str) -> Vec<&str> {
        self.rows(part).into_iter().map(|row| row["code"].as_str().expect("a code")).collect()
    }

    /// What is found beyond the table, what rejects without being true, and rows that nothing is found for.
    pub(super) fn offences(&self, findings: &[Finding]) -> Vec<String> {
        let (known_true, unheard) = (self.codes("true"), self.codes("unheard"));
        let mut offences = Vec::new();
        for finding in findings {
            let listed = known_true.contains(&finding.code)
                || (finding.level != Level::Reject && unheard.contains(&finding.code));
            if !listed {
                offences.push(format!("{}: {} {}", self.script, finding.code, finding.title));
            }
        }
        for row in self.rows("true") {
            let code = row["code"].as_str().expect("a code");
            let rejects = findings.iter().filter(|f| f.code == code && f.level == Level::Reject).count();
            if Some(rejects as u64) != row["rejects"].as_u64() {
                offences.push(format!("{}: {rejects} findings of {code} reject", self.script));
            }
            assert!(row["why"].as_str().is_some_and(|why| !why.is_empty()), "{code} without a reason");
        }
        for code in known_true.iter().chain(&unheard) {
            if findings.iter().all(|finding| finding.code != *code) {
                offences.push(format!("{}: {code} is listed and not found", self.script));
            }
        }
        offences
    }
}
