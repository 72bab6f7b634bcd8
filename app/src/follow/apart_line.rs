//! What is still apart, counted, with the list one key away; and the facts of the device.

use super::job_store::JobStore;
use crate::components::caution;
use leptos::prelude::*;

/// The line above the keys.
#[component]
pub fn ApartLine(
    /// The state of Follow.
    jobs: JobStore,
    /// The line about working offline.
    offline: ReadSignal<String>,
) -> impl IntoView {
    let count = move || jobs.moment().with(|moment| moment.apart.count());
    let first = move || {
        jobs.moment().with(|moment| {
            moment.apart.items.iter().map(|item| item.words.clone()).collect::<Vec<_>>().join(", ")
        })
    };
    let list = move || {
        jobs.moment().with(|moment| {
            let item = |words: &String| view! { <li>{words.clone()}</li> };
            let apart = moment.apart.items.iter().map(|i| item(&i.words)).collect_view();
            let untested = moment.apart.untested.iter().map(|i| item(&i.words)).collect_view();
            view! { <ul>{apart}{untested}</ul> }
        })
    };
    view! {
        <aside class="apart-line" class:of-job=move || jobs.is_running() aria-label="Still apart">
            <details>
                <summary>
                    <strong class:nothing=move || count() == 0>"Still apart: " {count}</strong>
                    <span class="first">{first}</span>
                </summary>
                <div class="apart-list">{list}</div>
            </details>
            <p class="facts">
                {move || if jobs.is_running() { caution::IN_SHORT } else { caution::WORDS }}
                " "
                <span class="offline">{offline}</span>
            </p>
        </aside>
    }
}
