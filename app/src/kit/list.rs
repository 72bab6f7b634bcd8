//! One list of the kit: its entries, a key that adds one, and whether it is empty by intent.

use super::columns::{Column, Kept, Listed};
use super::from_steps::FromSteps;
use crate::components::fields::{FlagField, TextField};
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::derive::kit::Needed;

/// The list with its heading.
#[component]
pub fn KitListing(
    /// The editor's state.
    store: EditorStore,
    /// Which list.
    listed: &'static Listed,
    /// What the steps need of it and it does not name.
    needed: Memo<Vec<Needed>>,
) -> impl IntoView {
    let document = store.document();
    let n = Memo::new(move |_| document.with(|document| (listed.count)(&document.kit)));
    // The entry that has just been added, whose name the keyboard goes to.
    let fresh = RwSignal::new(None::<usize>);
    let add = move |_| {
        fresh.set(Some(n.get_untracked()));
        store.add_to_kit(&listed.list);
    };
    let none = Signal::derive(move || document.with(|document| document.kit.none.contains(&listed.list)));
    let set_none = Callback::new(move |is_so: bool| {
        store.change_kit(&format!("say whether {} are needed", listed.list), None, |kit| {
            kit.none.retain(|list| *list != listed.list);
            if is_so {
                kit.none.push(listed.list.clone());
            }
        });
    });
    let entry = move |at| {
        let is_fresh = fresh.get_untracked() == Some(at);
        view! { <Entry store listed at is_fresh /> }
    };
    let made = Callback::new(move |()| fresh.set(n.get_untracked().checked_sub(1)));
    let is_empty = move || n.get() == 0 && needed.with(Vec::is_empty);
    let empty =
        move || is_empty().then(|| view! { <FlagField label="none needed" value=none send=set_none /> });
    view! {
        <section class="things-of">
            <h2 class="stage">{listed.heading}</h2>
            <FromSteps store needed made />
            <ul class="kit-list">{move || (0..n.get()).map(entry).collect_view()}</ul>
            <div class="strip">
                <button type="button" class="quiet add" on:click=add>{listed.add}</button>
                {empty}
            </div>
        </section>
    }
}

/// One entry: what is filled in, and the key that takes it out.
#[component]
fn Entry(store: EditorStore, listed: &'static Listed, at: usize, is_fresh: bool) -> impl IntoView {
    let label = move || {
        let name = listed.columns.first().and_then(|column| {
            store.document().with(|document| (column.get)(&document.kit, at)).filter(|name| !name.is_empty())
        });
        format!("Take out {}", name.unwrap_or_else(|| format!("this {}", listed.one)))
    };
    let columns = listed.columns.iter().enumerate();
    let fields = columns.map(|(i, column)| field(store, listed, at, column, is_fresh && i == 0));
    view! {
        <li>
            <fieldset class="kit-entry">
                <legend class="unseen">{format!("{} {}", listed.one, at + 1)}</legend>
                {fields.collect_view()}
                <button type="button" class="quiet" aria-label=label on:click=move |_| store.take_from_kit(&listed.list, at)>
                    "Take out"
                </button>
            </fieldset>
        </li>
    }
}

fn field(
    store: EditorStore,
    listed: &'static Listed,
    at: usize,
    column: &'static Column,
    comes_first: bool,
) -> AnyView {
    let document = store.document();
    let value =
        Signal::derive(move || document.with(|document| (column.get)(&document.kit, at)).unwrap_or_default());
    let label = format!("change the {}", listed.list);
    let group = format!("{} of {} {at}", column.label, listed.one);
    let send = Callback::new(move |typed: String| match &column.set {
        Kept::Words(set) => store.change_kit(&label, Some(&group), |kit| set(kit, at, typed)),
        Kept::Count(set) => {
            if let Some(count) = typed.trim().parse().ok().filter(|count| (1..=999).contains(count)) {
                store.change_kit(&label, Some(&group), |kit| set(kit, at, count));
            }
        }
        Kept::Range(set) => {
            store.typed_range(&typed, |range| store.change_kit(&label, None, |kit| set(kit, at, range)));
        }
        Kept::Amount(set) => {
            store.typed_amount(&typed, |amount| store.change_kit(&label, None, |kit| set(kit, at, amount)));
        }
    });
    let at_end = !matches!(column.set, Kept::Words(_));
    let is_figure = matches!(column.set, Kept::Count(_));
    view! { <TextField label=column.label value send hint=column.hint is_figure comes_first at_end /> }
        .into_any()
}
