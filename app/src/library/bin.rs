//! The bin: what was removed in the last thirty days, to be put back or to be deleted for good.

use crate::state::clock;
use crate::state::on_shelf::OnShelf;
use leptos::prelude::*;

/// What can be done with what is in the bin.
#[derive(Clone, Copy)]
pub struct BinKeys {
    /// Back to the others.
    pub put_back: Callback<OnShelf>,
    /// Off this device.
    pub delete: Callback<OnShelf>,
}

/// The bin; nothing where it is empty.
#[component]
pub fn Bin(
    /// What is in it.
    removed: Vec<OnShelf>,
    /// What its keys do.
    keys: BinKeys,
) -> impl IntoView {
    (!removed.is_empty()).then(|| {
        let rows = removed.into_iter().map(|one| view! { <BinRow one keys /> }).collect_view();
        view! {
            <section class="bin" aria-labelledby="bin">
                <h2 id="bin" class="stage">"Bin"</h2>
                <ul class="shelf">{rows}</ul>
            </section>
        }
    })
}

/// One of them. Deleting takes two presses on different places, since nothing undoes it.
#[component]
fn BinRow(one: OnShelf, keys: BinKeys) -> impl IntoView {
    let is_sure = RwSignal::new(false);
    let yes = NodeRef::<leptos::html::Button>::new();
    let title = StoredValue::new(one.title.clone());
    let named = move |what: &str| format!("{what} {}", title.get_value());
    let facts = match one.days_left(clock::now_ms()) {
        0 | 1 => format!("{} steps · goes for good within a day", one.n_steps),
        days => format!("{} steps · goes for good in {days} days", one.n_steps),
    };
    let stored = StoredValue::new(one);
    let ask = move |_| {
        is_sure.set(true);
        request_animation_frame(move || {
            if let Some(yes) = yes.get_untracked() {
                // A key that cannot be focused has just gone.
                let _ = yes.focus();
            }
        });
    };
    let asked = move || {
        view! {
            <span class="sure" role="status">"Delete it with its earlier versions, for good?"</span>
            <button type="button" class="quiet" on:click=move |_| is_sure.set(false)>"Leave it"</button>
            <button
                type="button" class="key grave" node_ref=yes aria-label=named("Yes, delete for good")
                on:click=move |_| keys.delete.run(stored.get_value())
            >"Yes, delete"</button>
        }
    };
    let unasked = move || {
        view! {
            <button type="button" class="quiet" aria-label=named("Delete for good") on:click=ask>"Delete for good"</button>
            <button type="button" class="key" aria-label=named("Put back") on:click=move |_| keys.put_back.run(stored.get_value())>"Put back"</button>
        }
    };
    view! {
        <li>
            <span class="about"><strong>{move || title.get_value()}</strong><span class="facts">{facts}</span></span>
            <span class="do">{move || if is_sure.get() { asked().into_any() } else { unasked().into_any() }}</span>
        </li>
    }
}
