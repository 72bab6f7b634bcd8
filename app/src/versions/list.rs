//! The versions as a line of time, the present one at the top: when, how many steps, what had changed.

use super::found::Found;
use crate::components::capital::capital;
use crate::state::versions::Stamp;
use crate::state::{EditorStore, clock};
use leptos::prelude::*;

/// The list.
#[component]
pub fn VersionList(
    /// The editor's state.
    store: EditorStore,
    /// What has been found.
    found: Found,
    /// The version that is looked at.
    chosen: RwSignal<Option<Stamp>>,
) -> impl IntoView {
    let stamps = move || match found.stamps.get() {
        Some(Ok(stamps)) => stamps,
        _ => Vec::new(),
    };
    let rows = move || {
        let stamps = stamps();
        let older = stamps.iter().skip(1).map(|at| Some(*at)).chain([None]);
        let pairs: Vec<_> = stamps.iter().copied().zip(older).collect();
        pairs.into_iter().map(|(at, older)| view! { <VersionRow found chosen at older /> }).collect_view()
    };
    let newest = move || stamps().first().copied();
    let now = move || {
        let lines = newest().and_then(|at| store.document().with(|document| found.since(at, document)));
        lines.map(|lines| in_one_line(&lines, "as the version below"))
    };
    let n_now = move || steps(store.document().with(|document| document.steps.len()));
    view! {
        <ol class="versions-list">
            <li class="version present"><strong>"Now"</strong><span class="facts">{n_now}</span><span class="what">{now}</span></li>
            {rows}
        </ol>
    }
}

/// One version, as a key that opens the look at it.
#[component]
fn VersionRow(
    found: Found,
    chosen: RwSignal<Option<Stamp>>,
    at: Stamp,
    older: Option<Stamp>,
) -> impl IntoView {
    let when = capital(&clock::day_and_minute(at.at_ms, clock::now_ms()));
    let what = move || match found.version(at) {
        None => ("…".to_owned(), String::new()),
        Some(Err(reason)) => ("cannot be read".to_owned(), reason),
        Some(Ok(document)) => {
            let what = match older {
                None => "the first that is kept".to_owned(),
                Some(older) => found
                    .since(older, &document)
                    .map(|lines| in_one_line(&lines, "as the version below"))
                    .unwrap_or_default(),
            };
            (steps(document.steps.len()), what)
        }
    };
    let is_chosen = move || (chosen.get() == Some(at)).then_some("true");
    view! {
        <li>
            <button type="button" class="version" aria-current=is_chosen on:click=move |_| chosen.set(Some(at))>
                <strong>{when}</strong>
                <span class="facts">{move || what().0}</span>
                <span class="what">{move || what().1}</span>
            </button>
        </li>
    }
}

fn steps(n: usize) -> String {
    if n == 1 { "1 step".to_owned() } else { format!("{n} steps") }
}

fn in_one_line(lines: &[String], none: &str) -> String {
    if lines.is_empty() { none.to_owned() } else { lines.join("; ") }
}
