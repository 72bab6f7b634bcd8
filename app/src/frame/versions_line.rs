//! Which program judged by which rules: for whoever compares two verdicts.

use leptos::prelude::*;
use procedures_schema::check::{catalogue, rule_set};
use procedures_schema::model::FORMAT_VERSION;

/// Program, format and rules in one line.
#[component]
pub fn VersionsLine() -> impl IntoView {
    let (program, n_rules) = (env!("CARGO_PKG_VERSION"), catalogue().len());
    let words = format!("Putback {program}, format {FORMAT_VERSION}, {n_rules} rules, set {}", rule_set());
    view! { <span class="versions-line">{words}</span> }
}
