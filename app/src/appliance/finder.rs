//! Finding things of the map: by what is typed, by being in no step, by what is still to be found out.

use crate::components::fields::{FlagField, TextField};
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::derive::rows::{Row, Rows};
use procedures_schema::model::{Id, OpenPlace, Procedure, open_values};
use std::collections::BTreeSet;
use std::sync::Arc;

/// What is looked for.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
struct Sought {
    words: String,
    in_no_step: bool,
    later: bool,
}

/// What is looked for, and what of it is known of the open document.
#[derive(Clone, Copy)]
pub struct Finder {
    sought: RwSignal<Sought>,
    rows: Memo<Arc<Rows>>,
    found: Memo<Arc<BTreeSet<Id>>>,
}

impl Finder {
    /// A finder that looks for nothing, so that everything is found.
    pub fn new(store: EditorStore) -> Self {
        let judged = store.judged();
        let sought = RwSignal::new(Sought::default());
        let rows =
            Memo::new(move |_| judged.with(|judged| Arc::new(Rows::of(&judged.document, &judged.trace))));
        let found = Memo::new(move |_| {
            let sought = sought.get();
            Arc::new(judged.with(|judged| rows.with(|rows| found(&judged.document, rows, &sought))))
        });
        Self { sought, rows, found }
    }

    /// Looks for nothing any more.
    pub fn clear(self) {
        self.sought.set(Sought::default());
    }

    /// Whether anything is looked for.
    pub fn looks(self) -> bool {
        self.sought.with(|sought| *sought != Sought::default())
    }

    /// Whether only what is in no step is shown.
    pub fn shows_unused(self) -> bool {
        self.sought.with(|sought| sought.in_no_step)
    }

    /// Whether a thing is one of those that are found.
    pub fn finds(self, id: &Id) -> bool {
        self.found.with(|found| found.contains(id))
    }

    /// What is said of a thing.
    pub fn row(self, id: &Id) -> Row {
        self.rows.with(|rows| rows.row(id).cloned().unwrap_or_default())
    }

    /// The numbers of the steps that name a thing.
    pub fn steps(self, id: &Id) -> Vec<usize> {
        self.row(id).steps
    }
}

fn found(document: &Procedure, rows: &Rows, sought: &Sought) -> BTreeSet<Id> {
    let words: Vec<String> = sought.words.split_whitespace().map(str::to_lowercase).collect();
    let later: Vec<Id> = if sought.later { lacking(document) } else { Vec::new() };
    let mut found = BTreeSet::new();
    for (kind, id, name, aliases) in document.map.things() {
        let row = rows.row(id);
        let said = || {
            let about = row.into_iter().flat_map(|row| &row.cells).map(ToString::to_string);
            let about = about.collect::<Vec<_>>().join(" ");
            format!("{name} {} {} {about}", kind.word(), aliases.join(" ")).to_lowercase()
        };
        let is_it = (!sought.in_no_step || row.is_some_and(|row| row.is_in_no_step(kind)))
            && (!sought.later || later.contains(id));
        if is_it && (words.is_empty() || words.iter().all(|word| said().contains(word))) {
            found.insert(id.clone());
        }
    }
    found
}

/// The things of which a value is still to be found out.
fn lacking(document: &Procedure) -> Vec<Id> {
    let thing = |place| match place {
        OpenPlace::Size(id)
        | OpenPlace::Tight(id)
        | OpenPlace::SealSize(id)
        | OpenPlace::SealNumber(id)
        | OpenPlace::ComponentNumber(id) => Some(id),
        OpenPlace::Listed(at) => document.later.get(at).and_then(|later| later.thing.clone()),
        _ => None,
    };
    open_values(document).into_iter().filter_map(|open| thing(open.place)).collect()
}

/// That nothing was found, in words.
fn nothing(sought: &Sought) -> String {
    match (sought.words.trim(), sought.in_no_step, sought.later) {
        ("", true, false) => "Everything here is in a step.".to_owned(),
        ("", false, true) => "Nothing here is still to be found out.".to_owned(),
        ("", ..) => "Nothing here is both.".to_owned(),
        (words, false, false) => format!("Nothing here is called \"{words}\"."),
        (words, ..) => format!("Nothing of that kind is called \"{words}\"."),
    }
}

/// The line in which one types, the two filters, and how many there are.
#[component]
pub fn FinderBar(
    /// The editor's state.
    store: EditorStore,
    /// What is looked for.
    finder: Finder,
) -> impl IntoView {
    let sought = finder.sought;
    let words = Signal::derive(move || sought.with(|sought| sought.words.clone()));
    let in_no_step = Signal::derive(move || sought.with(|sought| sought.in_no_step));
    let later = Signal::derive(move || sought.with(|sought| sought.later));
    let set_words = Callback::new(move |typed| sought.update(|sought| sought.words = typed));
    let set_in_no_step = Callback::new(move |is_so| sought.update(|sought| sought.in_no_step = is_so));
    let set_later = Callback::new(move |is_so| sought.update(|sought| sought.later = is_so));
    let count = move || {
        let all = store.document().with(|document| document.map.things().count());
        if all == 0 {
            return "Nothing here yet. Things you mention while writing appear here.".to_owned();
        }
        let n = finder.found.with(|found| found.len());
        match (finder.looks(), all) {
            (false, 1) => "1 thing".to_owned(),
            (false, all) => format!("{all} things"),
            (true, _) if n == 0 => sought.with(nothing),
            (true, all) => format!("{n} of {all}"),
        }
    };
    view! {
        <search class="finder">
            <TextField label="Find a thing" value=words send=set_words hint="washer, G 1, valve" />
            <FlagField label="in no step" value=in_no_step send=set_in_no_step />
            <FlagField label="something later" value=later send=set_later />
            <span class="count" role="status">{count}</span>
        </search>
    }
}
