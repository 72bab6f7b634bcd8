//! Of things that come with the name of one that is here, each is asked about once: is it that one, or another?

use crate::components::capital::capital;
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::derive::bring::{Bringing, Meeting, differing};
use procedures_schema::edit::Difference;
use procedures_schema::model::{Id, Procedure};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// What two of the same name say differently, by the thing that comes.
type Differing = StoredValue<BTreeMap<Id, Vec<Difference>>>;

/// The questions; nothing where no two names are equal.
#[component]
pub fn Meetings(
    /// The editor's state.
    store: EditorStore,
    /// The procedure whose map it is.
    from: StoredValue<Arc<Procedure>>,
    /// What would come.
    bringing: Memo<Bringing>,
    /// What is another one than that of its name.
    apart: RwSignal<BTreeSet<Id>>,
) -> impl IntoView {
    let told: Differing = StoredValue::new(
        from.with_value(|from| store.document().with_untracked(|document| differing(from, document))),
    );
    let meetings = Memo::new(move |_| bringing.with(|bringing| bringing.meetings.clone()));
    let all_here = move |_| apart.set(BTreeSet::new());
    let all_new = move |_| {
        apart.set(meetings.with_untracked(|all| all.iter().map(|one| one.thing.clone()).collect()));
    };
    let has_any = Memo::new(move |_| meetings.with(|all| !all.is_empty()));
    let list = move || {
        view! {
            <div class="meetings">
                <h3>"The same names are here. Are these the same things?"</h3>
                <ul>
                    <For each=move || meetings.get() key=|one| one.thing.clone() children=move |one| question(one, apart, told) />
                </ul>
                <div class="strip">
                    <button type="button" class="quiet" on:click=all_here>"All are the ones here"</button>
                    <button type="button" class="quiet" on:click=all_new>"All are new ones"</button>
                </div>
            </div>
        }
    };
    move || has_any.get().then(list)
}

/// One of them, with its two answers and what the two say differently.
fn question(meeting: Meeting, apart: RwSignal<BTreeSet<Id>>, told: Differing) -> impl IntoView {
    let Meeting { thing, kind, name, .. } = meeting;
    let differences = told.with_value(|told| told.get(&thing).map(|told| in_words(told)));
    let thing = StoredValue::new(thing);
    let answer = move |words: String, is_new: bool| {
        let is_given = move || apart.with(|apart| apart.contains(&thing.get_value())) == is_new;
        let set = move |_| {
            apart.update(|apart| {
                if is_new {
                    apart.insert(thing.get_value());
                } else {
                    apart.remove(&thing.get_value());
                }
            });
        };
        view! {
            <label class="answer">
                <input type="radio" name=format!("met {}", thing.get_value()) prop:checked=is_given on:change=set />
                <span>{words}</span>
            </label>
        }
    };
    view! {
        <li>
            <fieldset>
                <legend>{name.clone()} " " <span class="kind">{kind.word()}</span></legend>
                {answer(format!("the {name} here"), false)}
                {answer("a new one".to_owned(), true)}
            </fieldset>
            {differences.map(|words| view! { <p class="differ">{words}</p> })}
        </li>
    }
}

/// "They differ. How many fasteners: 1 here, 2 there."
fn in_words(told: &[Difference]) -> String {
    let one = |one: &Difference| format!("{}: {} here, {} there", one.field, one.kept, one.other);
    format!("They differ. {}.", capital(&told.iter().map(one).collect::<Vec<_>>().join("; ")))
}
