//! What comes of the map of another procedure: all of it or some, and of equal names, whether two things are one.

use super::meetings::Meetings;
use crate::components::fields::ThingsField;
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::derive::bring::{Bringing, bring, coming, whole};
use procedures_schema::model::{Id, NumberedIds, Procedure, ThingKind};
use std::collections::BTreeSet;
use std::sync::Arc;

/// What can be chosen by itself; isolators and joints come with their circuit, screws with what they hold.
const GROUPS: [(ThingKind, &str); 4] = [
    (ThingKind::Circuit, "Circuits, each with its isolators and joints"),
    (ThingKind::Component, "Components, each with its connections"),
    (ThingKind::Temporary, "Temporary items"),
    (ThingKind::Setting, "Settings"),
];

/// The choices and the key.
#[component]
pub fn BringChoice(
    /// The editor's state.
    store: EditorStore,
    /// The procedure whose map it is.
    from: Arc<Procedure>,
    /// Goes back to the list of procedures.
    again: Callback<()>,
    /// Closes the panel, with what came.
    close: Callback<Option<String>>,
) -> impl IntoView {
    let title = from.title.clone();
    let from = StoredValue::new(from);
    let (is_whole, chosen) = (RwSignal::new(true), RwSignal::new(Vec::<Id>::new()));
    let apart = RwSignal::new(BTreeSet::<Id>::new());
    let picked = Memo::new(move |_| {
        from.with_value(
            |from| if is_whole.get() { whole(&from.map) } else { chosen.get().into_iter().collect() },
        )
    });
    // Worked out with ids that nobody will see; the real ones are made when it is brought.
    let bringing = Memo::new(move |_| {
        let bring = |document: &Arc<Procedure>| {
            from.with_value(|from| {
                picked.with(|picked| {
                    apart.with(|apart| bring(from, document, picked, apart, &mut NumberedIds::default()))
                })
            })
        };
        store.document().with(bring)
    });
    let n_coming = move || from.with_value(|from| picked.with(|picked| coming(&from.map, picked).len()));
    let has_none = move || bringing.with(|bringing| bringing.edits.is_empty());
    let carry_out = move |_| {
        let brought = from.with_value(|from| {
            picked.with_untracked(|picked| apart.with_untracked(|apart| store.bring_map(from, picked, apart)))
        });
        if let Some(brought) = brought {
            close.run(Some(came(&brought)));
        }
    };
    let heading = NodeRef::<leptos::html::H2>::new();
    Effect::new(move |_| {
        if let Some(heading) = heading.get() {
            // A heading that cannot be focused has just gone.
            let _ = heading.focus();
        }
    });
    view! {
        <h2 class="stage" tabindex="-1" node_ref=heading>{format!("The map of \"{title}\"")}</h2>
        <Whole from is_whole />
        {move || (!is_whole.get()).then(|| GROUPS.map(|group| groups(from, group, chosen)).collect_view())}
        <Meetings store from bringing apart />
        <p class="comes" role="status">{move || bringing.with(|bringing| in_words(bringing, n_coming()))}</p>
        <div class="strip">
            <button type="button" class="key first" disabled=has_none on:click=carry_out>"Bring it"</button>
            <button type="button" class="quiet" on:click=move |_| again.run(())>"Another procedure"</button>
            <button type="button" class="quiet" on:click=move |_| close.run(None)>"Leave it"</button>
        </div>
    }
}

/// All of it or some.
#[component]
fn Whole(from: StoredValue<Arc<Procedure>>, is_whole: RwSignal<bool>) -> impl IntoView {
    let n = from.with_value(|from| from.map.things().count());
    let answer = move |words: String, of_all: bool| {
        view! {
            <label class="answer">
                <input type="radio" name="what comes" prop:checked=move || is_whole.get() == of_all on:change=move |_| is_whole.set(of_all) />
                <span>{words}</span>
            </label>
        }
    };
    view! {
        <fieldset class="field either">
            <legend>"What comes"</legend>
            {answer(format!("the whole map, {}", things(n)), true)}
            {answer("only what is chosen".to_owned(), false)}
        </fieldset>
    }
}

/// The things of one kind that can be chosen.
fn groups(
    from: StoredValue<Arc<Procedure>>,
    (kind, label): (ThingKind, &'static str),
    chosen: RwSignal<Vec<Id>>,
) -> Option<AnyView> {
    let options = from.with_value(|from| {
        let of_kind = from.map.things().filter(|(known, ..)| *known == kind);
        of_kind.map(|(_, id, name, _)| (id.clone(), name.to_owned())).collect::<Vec<_>>()
    });
    (!options.is_empty()).then(|| {
        let send = Callback::new(move |ids| chosen.set(ids));
        view! { <ThingsField label value=chosen.into() options=Signal::stored(options) send /> }.into_any()
    })
}

/// What comes and what does not, before it is done.
fn in_words(bringing: &Bringing, n_coming: usize) -> String {
    let mut parts = Vec::new();
    match (n_coming, bringing.new.len()) {
        (0, _) => return "Nothing is chosen yet.".to_owned(),
        (_, 0) if bringing.phrases.is_empty() => {
            return "Nothing of it is new: all of it is here already.".to_owned();
        }
        (_, 0) => {}
        (_, n) => parts.push(format!("New here: {}: {}.", things(n), by_kind(&bringing.new))),
    }
    parts.extend(phrases(bringing).map(|phrases| format!("With it: {phrases}.")));
    match bringing.n_same {
        0 => {}
        1 => parts.push("1 thing is the one that is here and stays as it is.".to_owned()),
        n => parts.push(format!("{n} things are the ones that are here and stay as they are.")),
    }
    if !bringing.left_behind.is_empty() {
        parts.push(format!("Not brought: {}.", bringing.left_behind.join(", ")));
    }
    parts.join(" ")
}

/// What came, once it is done.
fn came(bringing: &Bringing) -> String {
    let n_new = Some(bringing.new.len()).filter(|n| *n > 0);
    let new = n_new.map(|n| format!("{}: {}", things(n), by_kind(&bringing.new)));
    format!("Brought: {}.", new.into_iter().chain(phrases(bringing)).collect::<Vec<_>>().join("; "))
}

/// The phrases of the other procedure that come along, in their words.
fn phrases(bringing: &Bringing) -> Option<String> {
    let words: Vec<String> =
        bringing.phrases.iter().map(|own| format!("\u{201c}{}\u{201d}", own.words)).collect();
    let what = if words.len() == 1 { "the phrase" } else { "the phrases" };
    (!words.is_empty()).then(|| format!("{what} {}", words.join(", ")))
}

fn things(n: usize) -> String {
    if n == 1 { "1 thing".to_owned() } else { format!("{n} things") }
}

/// How many of each kind, in the order of the lists.
fn by_kind(new: &[(ThingKind, String)]) -> String {
    let kinds: BTreeSet<ThingKind> = new.iter().map(|(kind, _)| *kind).collect();
    let count = |kind: ThingKind| match new.iter().filter(|(known, _)| *known == kind).count() {
        1 => format!("1 {}", kind.word()),
        n => format!("{n} {}s", kind.word()),
    };
    let all: Vec<String> = kinds.into_iter().map(count).collect();
    match all.split_last() {
        Some((last, rest)) if !rest.is_empty() => format!("{} and {last}", rest.join(", ")),
        _ => all.concat(),
    }
}
