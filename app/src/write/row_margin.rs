//! What is wrong at a row: hairlines from the lanes, and the text at their end.

use super::accepted::AcceptedText;
use super::finding::FindingText;
use crate::state::EditorStore;
use crate::state::accepting::Accepted;
use leptos::prelude::*;
use procedures_schema::check::{Finding, Level};
use procedures_schema::derive::lanes::LaneHead;
use std::sync::Arc;

/// The findings of one row.
#[component]
pub fn RowMargin(
    /// The editor's state.
    store: EditorStore,
    /// The findings.
    findings: Memo<Vec<Finding>>,
    /// What was accepted here.
    #[prop(optional)]
    accepted: Option<Memo<Vec<Accepted>>>,
    /// The lanes from which the hairlines come.
    lane_of: ReadSignal<Arc<Vec<LaneHead>>>,
) -> impl IntoView {
    let hairline = move || {
        let findings = findings.get();
        let worst = findings.iter().map(|finding| class(finding.level)).min_by_key(|(rank, _)| *rank)?.1;
        let lanes: Vec<String> = lane_of.with(|heads| {
            let index = |finding: &Finding| {
                heads.iter().position(|head| Some(&head.circuit) == finding.circuit.as_ref())
            };
            let mut lanes: Vec<usize> = findings.iter().filter_map(index).collect();
            lanes.sort_unstable();
            lanes.dedup();
            lanes.iter().map(ToString::to_string).collect()
        });
        // What is of no lane begins at the row.
        let class = if lanes.is_empty() { "hair of-row" } else { "hair" };
        let first = lanes.first().cloned().unwrap_or_default();
        Some(view! {
            <span class=format!("{class} {worst}") style=("--lane", first) aria-hidden="true"></span>
            {lanes.into_iter().map(|lane| cross(worst, lane)).collect_view()}
        })
    };
    view! {
        {hairline}
        <div class="margin">
            <For
                each=move || findings.get()
                key=|finding| (finding.code, finding.title.clone(), finding.because.iter().map(|b| b.text.clone()).collect::<Vec<_>>())
                children=move |finding| view! { <FindingText store finding /> }
            />
            {move || accepted.map(|all| all.get().into_iter().map(|accepted| view! { <AcceptedText store accepted /> }).collect_view())}
        </div>
    }
}

/// How grave a level is, and its class in the style sheet.
pub fn class(level: Level) -> (u8, &'static str) {
    match level {
        Level::Reject => (0, "reject"),
        Level::Warn => (1, "warn"),
        Level::Advise => (2, "advise"),
    }
}

fn cross(class: &'static str, lane: String) -> impl IntoView {
    view! {
        <svg class=format!("cross {class}") style=("--lane", lane) viewBox="-9 -9 18 18" aria-hidden="true" focusable="false">
            <circle r="7.5" />
            <path d="M-3-3L3 3M3-3L-3 3" />
        </svg>
    }
}
