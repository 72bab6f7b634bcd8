//! The question about words that can mean more than one thing, with its answers as numbered keys.

use super::also_for::AlsoFor;
use crate::components::drawn::once_drawn;
use crate::components::one_stop::{goes_along, stop};
use crate::state::attention::Focus;
use crate::state::doubts::Open;
use crate::state::heard::Heard;
use crate::state::lines::Line;
use crate::state::{Command, EditorStore};
use leptos::ev::KeyboardEvent;
use leptos::prelude::*;
use procedures_schema::model::Id;
use std::sync::Arc;
use wasm_bindgen::JsCast;

/// The character that a key types, if it types one.
fn letter(event: &KeyboardEvent) -> Option<String> {
    let key = event.key();
    let types = key.chars().count() == 1 && !event.ctrl_key() && !event.meta_key() && !event.alt_key();
    (types && !event.is_composing()).then_some(key)
}

/// How many answers a digit can pick.
const MOST: usize = 9;
/// How many are looked at at once; the others stand behind a key.
const AT_ONCE: usize = 5;

/// An open question of a step, the first at first; another one follows when it is answered, or by Tab.
#[component]
pub fn Choices(
    /// The editor's state.
    store: EditorStore,
    /// The step.
    id: Id,
    /// What the line hears in its words.
    heard: Memo<Arc<Heard>>,
) -> impl IntoView {
    let nth = RwSignal::new(0_usize);
    let now = Memo::new(move |_| {
        heard.with(|heard| {
            let at = nth.get().min(heard.open.len().saturating_sub(1));
            Some((heard.open.get(at)?.clone(), Turn { at, n: heard.open.len() }))
        })
    });
    let id = StoredValue::new(id);
    let keydown = move |event: KeyboardEvent| {
        let is_tab = event.key() == "Tab" && is_on_answer(&event);
        let Some((_, Turn { at, n })) = now.get_untracked().filter(|_| is_tab) else { return };
        let next = if event.shift_key() { at.checked_sub(1) } else { Some(at + 1).filter(|next| *next < n) };
        if let Some(next) = next {
            event.prevent_default();
            nth.set(next);
            store.go_on_at(Focus::Choice(id.get_value()));
        }
    };
    let shown = move || now.get().map(|(doubt, turn)| asked(store, id, doubt, turn));
    view! { <div on:keydown=keydown>{shown}</div> }
}

/// Which question it is among how many.
#[derive(Clone, Copy, PartialEq, Eq)]
struct Turn {
    at: usize,
    n: usize,
}

/// An answer as it is shown.
struct Numbered {
    name: String,
    /// Why it comes into question, or how it stands.
    stands: Option<String>,
    /// The number by which it is answered, among those that are not shown too.
    choice: usize,
}

/// The answers that digits pick, and how many of them are shown at once: the things that are known, what would be new, and
/// then the known ones for which there is no room among the first.
fn answers(store: EditorStore, id: &Id, doubt: &Open) -> (Vec<Numbered>, usize) {
    let mut new = store.offered_as_new(id, doubt);
    let names = doubt.choices();
    let n_known = names.len();
    let stand = store.how_answers_stand(id, doubt).into_iter().chain(std::iter::repeat(None));
    let known = names.into_iter().zip(stand).enumerate();
    let known = known.map(|(choice, (name, stands))| Numbered { name, stands, choice });
    let mut answers: Vec<Numbered> = known.take(MOST - usize::from(!new.is_empty())).collect();
    new.truncate(MOST - answers.len());
    let n = answers.len() + new.len();
    let n_shown = if n > AT_ONCE { AT_ONCE } else { n };
    // One that would be new is always among those that are seen.
    let n_first = answers.len().min(n_shown - new.len().min(1));
    let others = answers.split_off(n_first);
    let new = new.into_iter().enumerate();
    answers.extend(new.map(|(at, new)| Numbered {
        name: new.name,
        stands: Some(new.stands),
        choice: n_known + at,
    }));
    answers.extend(others);
    (answers, n_shown)
}

fn asked(store: EditorStore, id: StoredValue<Id>, doubt: Open, turn: Turn) -> impl IntoView {
    let (label, question) = (doubt.question().to_owned(), doubt.question().to_owned());
    let (mut answers, n_shown) = answers(store, &id.get_value(), &doubt);
    let none = match answers.len() {
        0 => "Leave it as text",
        1 => "Not that",
        _ => "None of these",
    };
    let is_all = RwSignal::new(answers.len() == n_shown);
    let all: Vec<usize> = answers.iter().map(|answer| answer.choice).collect();
    // A digit picks what is seen.
    let picks = Signal::derive(move || {
        let n = if is_all.get() { all.len() } else { n_shown };
        all.iter().copied().take(n).collect::<Vec<usize>>()
    });
    let group = NodeRef::<leptos::html::Div>::new();
    let show_all = move |_| {
        is_all.set(true);
        once_drawn(move || focus_nth(group, n_shown));
    };
    let nth = (turn.n > 1)
        .then(|| view! { <span class="stands">{format!(" · {} of {}", turn.at + 1, turn.n)}</span> });
    let alike = store.alike(&id.get_value(), &doubt);
    let also = RwSignal::new(alike.iter().map(|other| other.step.clone()).collect::<Vec<Id>>());
    let doubt = StoredValue::new(doubt);
    let writes_on = StoredValue::new(WritesOn { store, id: id.get_value(), line: StoredValue::new(None) });
    let settle = move |choice: Option<usize>| {
        let (doubt, also) = (doubt.get_value(), also.get_untracked());
        store.run(Command::Settle { step: id.get_value(), doubt, choice, also });
    };
    let keydown = move |event: KeyboardEvent| {
        if !goes_along(&event) && !writes_on.with_value(|writes_on| writes_on.hears(&event)) {
            answer(store, &id.get_value(), &event, picks, settle);
        }
    };
    let choice = move |(at, Numbered { name, stands, choice }): (usize, Numbered)| {
        let key_id = (at == 0).then(|| format!("choice-{}", id.get_value()));
        view! {
            <button type="button" class="key" id=key_id tabindex=stop(at) data-along="" on:click=move |_| settle(Some(choice))>
                <span class="nth" aria-hidden="true">{at + 1}</span> {name}
                {stands.map(|stands| view! { <span class="stands">" · " {stands}</span> })}
            </button>
        }
    };
    let others = StoredValue::new(answers.split_off(n_shown));
    let behind = move || {
        if is_all.get() {
            let others = others.try_update_value(std::mem::take).unwrap_or_default();
            let numbered = others.into_iter().enumerate().map(|(at, answer)| (n_shown + at, answer));
            return numbered.map(choice).collect_view().into_any();
        }
        let words = format!("Others: {}", others.with_value(Vec::len));
        view! { <button type="button" class="key" tabindex=stop(n_shown) data-along="" on:click=show_all>{words}</button> }
            .into_any()
    };
    view! {
        <div class="choices" role="group" aria-label=label node_ref=group on:keydown=keydown>
            <p class="doubt">{question} {nth}</p>
            {(!alike.is_empty()).then(|| view! { <AlsoFor alike also /> })}
            {answers.into_iter().enumerate().map(choice).collect_view()}
            {behind}
            <button type="button" class="quiet" tabindex=stop(n_shown) data-along="" on:click=move |_| settle(None)>{none}</button>
        </div>
    }
}

/// Puts the keyboard onto an answer, by its position.
fn focus_nth(group: NodeRef<leptos::html::Div>, at: usize) {
    let all = group.get_untracked().and_then(|group| group.query_selector_all("[data-along]").ok());
    let key = all.and_then(|all| all.item(u32::try_from(at).ok()?));
    if let Some(key) = key.and_then(|key| key.dyn_into::<web_sys::HtmlElement>().ok()) {
        // A key that is gone refuses.
        let _ = key.focus();
    }
}

/// Letters at a question are those of the next step: who types them has not seen it.
struct WritesOn {
    store: EditorStore,
    id: Id,
    /// The line into which they go, once it is known.
    line: StoredValue<Option<Line>>,
}

impl WritesOn {
    /// Types a letter where the writer means it; says whether the key was one.
    fn hears(&self, event: &KeyboardEvent) -> bool {
        let is_begun = self.line.get_value().is_some();
        let letter = letter(event).filter(|key| is_begun || key.chars().all(char::is_alphabetic));
        let Some(letter) = letter else { return false };
        if !is_begun {
            self.line.set_value(self.store.write_on(&self.id));
        }
        // Until the keyboard has got there, what is typed is brought there.
        if let Some(line) = self.line.get_value() {
            self.store.type_in_line(line, &letter);
            event.prevent_default();
            event.stop_propagation();
        }
        true
    }
}

/// Answers by digits, and leaves the question by Esc.
fn answer(
    store: EditorStore,
    id: &Id,
    event: &KeyboardEvent,
    picks: Signal<Vec<usize>>,
    settle: impl Fn(Option<usize>),
) {
    let digit = event.key().parse::<usize>().ok().and_then(|digit| digit.checked_sub(1));
    if let Some(choice) = digit.and_then(|at| picks.with_untracked(|picks| picks.get(at).copied())) {
        settle(Some(choice));
    } else if event.key() == "Escape" {
        let is_of_paste = store.is_reviewing(id);
        store.run(if is_of_paste { Command::PlainReview } else { Command::LeaveDoubts(id.clone()) });
    } else {
        return;
    }
    event.prevent_default();
    event.stop_propagation();
}

/// Whether a key is pressed on an answer, and not on what stands above them.
fn is_on_answer(event: &KeyboardEvent) -> bool {
    let target = event.target().and_then(|target| target.dyn_into::<web_sys::Element>().ok());
    target.is_some_and(|target| target.has_attribute("data-along"))
}
