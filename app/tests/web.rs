//! The wiring of the page, in a browser: state to screen, screen to state, both to the device.
//!
//! What the core decides is tested with the core; whole journeys are tested end to end elsewhere.

#![expect(clippy::expect_used, clippy::panic, reason = "a test fails by panicking and may say what it saw")]

use leptos::mount::mount_to;
use leptos::prelude::*;
use leptos::task::tick;
use procedures_schema::format;
use procedures_schema::model::{Id, Procedure, Verb};
use putback_app::follow::job_store::JobStore;
use putback_app::follow::standing::Standing;
use putback_app::state::keeping::Kept;
use putback_app::state::records::kept_document;
use putback_app::state::{Command, EditorStore};
use putback_app::write::page::WriteScreen;
use std::cell::RefCell;
use std::rc::Rc;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};
use web_sys::{HtmlElement, HtmlTextAreaElement};

wasm_bindgen_test_configure!(run_in_browser);

/// A short accepted procedure of the suite.
const GAS_UNION: &str = include_str!("../../tests/suite/accepted/gas-union.putback.json");

fn procedure(id: &str) -> Procedure {
    let mut procedure = format::read(GAS_UNION.as_bytes()).expect("a procedure of the suite");
    procedure.id = Id::new(id);
    procedure
}

/// The Write screen in a place of its own, with its state.
fn mounted(procedure: Procedure) -> (HtmlElement, EditorStore) {
    let (place, store) = within(
        move || {
            EditorStore::new(
                procedures_schema::edit::Session::new(std::sync::Arc::new(procedure)),
                "gas-union",
            )
        },
        |store| {
            let (offline, _) = signal(String::new());
            view! { <WriteScreen store offline /> }.into_any()
        },
    );
    (place, store)
}

/// Makes a state inside the page, where its signals live, and shows it.
fn within<S: Copy + 'static>(
    make: impl FnOnce() -> S + 'static,
    show: impl FnOnce(S) -> AnyView + 'static,
) -> (HtmlElement, S) {
    let place: HtmlElement = document().create_element("div").expect("an element").unchecked_into();
    document().body().expect("a body").append_child(&place).expect("a place");
    let slot = Rc::new(RefCell::new(None));
    let out = slot.clone();
    mount_to(place.clone(), move || {
        let state = make();
        *out.borrow_mut() = Some(state);
        show(state)
    })
    .forget();
    let state = slot.borrow_mut().take().expect("the state was made");
    (place, state)
}

fn text(place: &HtmlElement, selector: &str) -> String {
    let found = place.query_selector(selector).expect("a selector");
    found.map(|element| element.text_content().unwrap_or_default()).unwrap_or_default()
}

fn first_with(store: EditorStore, verb: &Verb) -> Id {
    let document = store.document().get_untracked();
    let has =
        |step: &&std::sync::Arc<procedures_schema::model::Step>| step.actions.iter().any(|a| a.verb == *verb);
    document.steps.iter().find(has).expect("a step with this verb").id.clone()
}

async fn milliseconds(ms: i32) {
    let promise = js_sys::Promise::new(&mut |resolve, _| {
        window().set_timeout_with_callback_and_timeout_and_arguments_0(&resolve, ms).expect("a timer");
    });
    JsFuture::from(promise).await.map_err(|error: JsValue| error).expect("time passes");
}

/// Waits until something holds, for at most five seconds.
async fn until(what: &str, holds: impl Fn() -> bool) {
    for _ in 0..250 {
        if holds() {
            return;
        }
        milliseconds(20).await;
    }
    panic!("not so after five seconds: {what}");
}

#[wasm_bindgen_test]
async fn the_stamp_turns_with_an_edit_and_back_with_undo() {
    let (place, store) = mounted(procedure("stamp"));
    tick().await;
    assert_eq!(text(&place, ".stamp"), "ACCEPTED");
    store.run(Command::Select(Some(first_with(store, &Verb::Prove))));
    store.run(Command::RemoveSelection);
    tick().await;
    assert!(text(&place, ".stamp").starts_with("REJECTED"), "{}", text(&place, ".stamp"));
    assert!(!text(&place, ".finding .code").is_empty(), "the finding stands in the margin");
    store.run(Command::Undo);
    tick().await;
    assert_eq!(text(&place, ".stamp"), "ACCEPTED");
    assert_eq!(text(&place, ".finding"), "");
}

#[wasm_bindgen_test]
async fn typing_reaches_the_document_and_undo_reaches_the_field() {
    let (place, store) = mounted(procedure("typing"));
    let step = first_with(store, &Verb::Isolate);
    store.run(Command::EditWords(step.clone(), None));
    tick().await;
    let field: HtmlTextAreaElement = place
        .query_selector("li.selected textarea.words")
        .expect("a selector")
        .expect("the field")
        .unchecked_into();
    let before = field.value();
    field.set_value("Something else.");
    field.dispatch_event(&web_sys::Event::new("input").expect("an event")).expect("dispatched");
    tick().await;
    let words = || store.step(step.clone()).get_untracked().expect("the step").words.clone();
    assert_eq!(words(), "Something else.");
    store.run(Command::Undo);
    tick().await;
    assert_eq!(words(), before);
    // The views write the value of a field a turn later than everything else.
    until("a focused field follows undo", || field.value() == before).await;
    // Later tests look at what was kept last, so this one leaves nothing pending.
    let state = store.keeper().state();
    until("the edit is kept", || matches!(state.get_untracked(), Kept::At(_))).await;
}

#[wasm_bindgen_test]
async fn an_edit_moves_no_other_row() {
    let (place, store) = mounted(procedure("rows"));
    tick().await;
    let rows = place.query_selector_all("li[data-step]").expect("rows");
    let last = rows.get(rows.length() - 1).expect("a last row");
    store.run(Command::Select(Some(first_with(store, &Verb::Isolate))));
    store.run(Command::RemoveSelection);
    tick().await;
    let now = place.query_selector_all("li[data-step]").expect("rows");
    assert_eq!(now.length() + 1, rows.length());
    assert!(
        now.get(now.length() - 1).expect("a last row").is_same_node(Some(&last)),
        "rows are kept, not rebuilt"
    );
}

#[wasm_bindgen_test]
async fn a_kept_document_comes_back() {
    let (_, store) = mounted(procedure("kept"));
    store.run(Command::AddStep { after: None, words: "Tell the keeper.".to_owned() });
    let state = store.keeper().state();
    until("the edit is kept", || matches!(state.get_untracked(), Kept::At(_))).await;
    let kept = kept_document().await.expect("a database").expect("a document");
    let back = format::read(kept.text.as_bytes()).expect("what was kept can be read");
    assert_eq!(back, *store.document().get_untracked());
    assert_eq!(kept.name, "gas-union");
}

#[wasm_bindgen_test]
async fn an_unreadable_file_changes_nothing() {
    let (place, store) = mounted(procedure("unreadable"));
    let before = store.document().get_untracked();
    store.open_bytes("broken.putback.json", b"{\"putback\": 0,\n oh".to_vec(), None).await;
    tick().await;
    assert!(std::sync::Arc::ptr_eq(&before, &store.document().get_untracked()));
    assert!(text(&place, ".notice").contains("line 2"), "{}", text(&place, ".notice"));
}

#[wasm_bindgen_test]
async fn a_tick_shows_when_it_is_kept_and_a_new_page_resumes() {
    let make = || {
        let document = RwSignal::new(std::sync::Arc::new(procedure("job")));
        JobStore::new(Memo::new(move |_| document.get()), Memo::new(|_| Standing::default()))
    };
    let (_, jobs) = within(make, |_| ().into_any());
    until("the device was asked", || jobs.is_loaded().get_untracked()).await;
    jobs.done();
    assert!(jobs.moment().get_untracked().done.is_empty(), "not before it is kept");
    until("the tick is kept", || jobs.moment().get_untracked().done.len() == 1).await;
    let (_, later) = within(make, |_| ().into_any());
    until("the job is found", || later.is_resuming().get_untracked()).await;
    assert_eq!(later.moment().get_untracked().position, Some(1));
}
