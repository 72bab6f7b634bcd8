//! A look at one version: its verdict, what bringing it back would change, and its steps. Nothing can be changed
//! in it.

use super::found::{Found, Read};
use crate::components::capital::capital;
use crate::components::safety_band::safety_band;
use crate::route::{Screen, go};
use crate::state::judged::Judged;
use crate::state::versions::Stamp;
use crate::state::{EditorStore, clock};
use leptos::prelude::*;
use leptos::task::spawn_local;
use procedures_schema::compare::{Changes, changes};
use procedures_schema::model::{Id, Procedure};
use std::sync::Arc;

/// The look at the chosen version.
#[component]
pub fn Look(
    /// The editor's state.
    store: EditorStore,
    /// What has been found.
    found: Found,
    /// The version that is looked at.
    chosen: RwSignal<Option<Stamp>>,
) -> impl IntoView {
    let version = Memo::new(move |_| chosen.get().and_then(|at| found.version(at).map(|read| (at, read))));
    let head = NodeRef::<leptos::html::H2>::new();
    Effect::new(move |_| {
        if version.with(Option::is_some) {
            request_animation_frame(move || {
                if let Some(head) = head.get_untracked() {
                    // A heading that cannot be focused has just gone.
                    let _ = head.focus();
                }
            });
        }
    });
    let has_some =
        move || found.stamps.with(|stamps| matches!(stamps, Some(Ok(stamps)) if !stamps.is_empty()));
    move || match version.get() {
        None => {
            has_some().then(|| view! { <p class="empty no-look">"Choose one to look at it."</p> }).into_any()
        }
        Some((at, read)) => {
            let when = format!("As it was {}", clock::day_and_minute(at.at_ms, clock::now_ms()));
            view! {
                <section class="look" aria-labelledby="look-head">
                    <h2 id="look-head" class="look-head" tabindex="-1" node_ref=head>{when}</h2>
                    {looked_at(store, at, read)}
                </section>
            }
            .into_any()
        }
    }
}

fn looked_at(store: EditorStore, at: Stamp, read: Read) -> AnyView {
    let earlier = match read {
        Ok(earlier) => earlier,
        Err(reason) => {
            return view! { <p class="unread">{format!("It cannot be read: {reason}")}</p> }.into_any();
        }
    };
    let found = store.document().with(|now| changes(now, &earlier));
    let judged = Judged::of(earlier.clone());
    let (stamp, is_rejected, is_draft) = (judged.stamp(), judged.is_rejected(), judged.is_draft());
    let besides = judged.counts().beside_the_stamp();
    view! {
        <p class="look-facts"><strong class="stamp" class:rejected=is_rejected class:draft=is_draft>{stamp}</strong><span class="besides">{besides}</span><span>{earlier.title.clone()}</span></p>
        {bringing_back(store, at, &found, earlier.clone())}
        <ol class="look-steps">{steps(&earlier, &found)}</ol>
    }
    .into_any()
}

/// What would change, and the key that does it.
fn bringing_back(store: EditorStore, at: Stamp, found: &Changes, earlier: Arc<Procedure>) -> AnyView {
    if found.is_empty() {
        return view! { <p class="empty">"The procedure is just so now."</p> }.into_any();
    }
    let lines: Vec<_> = found.lines().into_iter().map(|line| view! { <li>{line}</li> }).collect();
    let bring = move |_| {
        let earlier = earlier.clone();
        spawn_local(async move {
            match store.bring_back(at, earlier).await {
                Ok(true) => go(Screen::Write),
                Ok(false) => {}
                Err(reason) => store.notice().set(Some(reason)),
            }
        });
    };
    view! {
        <div class="would">
            <p>"Bringing it back would change:"</p>
            <ul>{lines}</ul>
            <button type="button" class="key first" on:click=bring>"Bring this version back"</button>
            <p class="facts">"What it is now stays here as a version, and one undo takes it back."</p>
        </div>
    }
    .into_any()
}

fn steps(earlier: &Procedure, found: &Changes) -> impl IntoView + use<> {
    let mut stage = None;
    let mut rows = Vec::new();
    for (at, step) in earlier.steps.iter().enumerate() {
        let begins = (stage != Some(&step.stage))
            .then(|| view! { <h3 class="stage">{capital(step.stage.word())}</h3> });
        stage = Some(&step.stage);
        let bands: Vec<_> = step.messages.iter().map(safety_band).collect();
        let mark = mark(&step.id, found);
        rows.push(view! {
            <li class="look-step" class:differs=mark.is_some()>
                {begins}{bands}
                <div class="body">
                    <span class="number">{at + 1}</span>
                    <p class="words">{earlier.words_of(step)}</p>
                    <span class="mark">{mark}</span>
                </div>
            </li>
        });
    }
    rows
}

/// How a step of the version stands to the procedure as it is now.
fn mark(step: &Id, found: &Changes) -> Option<&'static str> {
    let is_in = |list: &[procedures_schema::compare::Named]| list.iter().any(|named| named.id == *step);
    let marks = [
        (&found.steps.added, "not in it now"),
        (&found.steps.changed, "different now"),
        (&found.steps.moved, "elsewhere now"),
    ];
    marks.into_iter().find(|(list, _)| is_in(list)).map(|(_, mark)| mark)
}
