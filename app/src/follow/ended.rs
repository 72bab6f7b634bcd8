//! The end of a job: every step is ticked; what is still apart is called out.

use super::job_store::JobStore;
use super::to_find::FoundAtTheEnd;
use leptos::prelude::*;

/// The end.
#[component]
pub fn Ended(
    /// The state of Follow.
    jobs: JobStore,
) -> impl IntoView {
    let ticked = move || match jobs.moment().with(|moment| moment.done.len()) {
        1 => "The step is ticked".to_owned(),
        2 => "Both steps are ticked".to_owned(),
        n => format!("All {n} steps are ticked"),
    };
    let passed_over = move || {
        let n = jobs.moment().with(|moment| moment.n_passed_over);
        (n > 0).then(|| view! { <p class="why">{n} " of other answers passed over"</p> })
    };
    let apart = move || {
        jobs.moment().with(|moment| {
            let item = |words: &String| view! { <li>{words.clone()}</li> };
            let items: Vec<_> =
                moment.apart.items.iter().chain(&moment.apart.untested).map(|i| item(&i.words)).collect();
            if items.is_empty() {
                view! { <p>"Nothing is still apart, as far as this procedure knows."</p> }.into_any()
            } else {
                view! { <p class="what">"Still to be put back or tested:"</p><ul class="again">{items}</ul> }
                    .into_any()
            }
        })
    };
    view! {
        <section class="now" tabindex="0" aria-label="End of the job">
            <h1>{ticked}</h1>
            {passed_over}
            {apart}
            <FoundAtTheEnd jobs />
            <p class="why">"The record of this job stays on this device."</p>
        </section>
    }
}
