//! What holds on every screen of the editor: the keys that save, open and explain, files that are dropped, and the name
//! of the tab.

use crate::appliance::thing_row::row_of_thing;
use crate::components::keys_dialog::open_sheet;
use crate::frame::all_findings::open_or_close;
use crate::route::{Screen, go};
use crate::state::next_finding::{ShownOn, Spot};
use crate::state::{EditorStore, files};
use leptos::prelude::*;
use procedures_schema::compare::{Place, Places};
use procedures_schema::model::Id;
use wasm_bindgen::JsCast;

/// Listens for as long as the page stands.
pub fn listen(store: EditorStore) {
    window_event_listener(leptos::ev::keydown, move |event| key(store, &event));
    // A file that is dropped beside its place would open in place of the page.
    window_event_listener(leptos::ev::dragover, move |event| event.prevent_default());
    window_event_listener(leptos::ev::drop, move |event| dropped(store, &event));
    window_event_listener_untyped("hashchange", move |_| {
        store.let_go_of_notice();
        request_animation_frame(move || lead_keyboard(store));
    });
    Effect::new(move |_| {
        if store.has_brought().get() {
            store.has_brought().set(false);
            go(Screen::Later);
        }
    });
    Effect::new(move |_| {
        if let Some(went) = store.went().get() {
            lead_to(store, &went);
        }
    });
    let title = Memo::new(move |_| store.told().with(|told| told.title.clone()));
    Effect::new(move |_| {
        let title = title.get();
        let named =
            if title.trim().is_empty() { "Putback".to_owned() } else { format!("{title} · Putback") };
        document().set_title(&named);
    });
}

fn key(store: EditorStore, event: &web_sys::KeyboardEvent) {
    // Whoever follows a job neither saves nor opens one by a slip of the hand.
    let Some(asked) = asked_by(event).filter(|_| !event.default_prevented() && !is_following()) else {
        return;
    };
    event.prevent_default();
    match asked {
        Asked::Save => store.save(),
        Asked::Open => open(store),
        Asked::Keys => open_sheet(),
        Asked::Finding { forward } => to_finding(store, forward),
        Asked::AllFindings => open_or_close(store),
    }
}

/// Goes to the next finding or the one before, on the screen that shows it.
fn to_finding(store: EditorStore, forward: bool) {
    match store.go_to_finding(spot_here().as_ref(), forward) {
        Some(ShownOn::Appliance) => go(Screen::Appliance),
        Some(ShownOn::Write) => go(Screen::Write),
        None => {}
    }
}

/// The place of Appliance at which the keyboard is.
fn spot_here() -> Option<Spot> {
    let focused = document().active_element()?;
    let within = |selector: &str| focused.closest(selector).ok().flatten();
    if let Some(row) = within("[id^=\"thing-\"]") {
        return row.id().strip_prefix("thing-").map(|id| Spot::Thing(Id::new(id)));
    }
    let is_in = |selector| within(selector).is_some();
    if is_in(".census") { Some(Spot::Census) } else { is_in(".scope").then_some(Spot::Scope) }
}

/// What a key of every screen asks for.
enum Asked {
    Save,
    Open,
    Keys,
    Finding { forward: bool },
    AllFindings,
}

/// Most keys are letters of words, and ask for nothing.
fn asked_by(event: &web_sys::KeyboardEvent) -> Option<Asked> {
    let with_control = event.ctrl_key() || event.meta_key();
    let key = event.key();
    if event.alt_key() {
        None
    } else if with_control && !event.shift_key() && key.eq_ignore_ascii_case("s") {
        Some(Asked::Save)
    } else if with_control && !event.shift_key() && key.eq_ignore_ascii_case("o") {
        Some(Asked::Open)
    } else if key == "F8" && Screen::or_write() != Screen::Write {
        // Write goes from row to row by itself.
        Some(Asked::Finding { forward: !event.shift_key() })
    } else if key == "F9" {
        Some(Asked::AllFindings)
    } else {
        (key == "F1").then_some(Asked::Keys)
    }
}

/// Asks for a file as the key "Open" does: by the browser's own dialog where it hands out files, else by a field.
fn open(store: EditorStore) {
    if EditorStore::has_files_in_hand() {
        store.open_in_hand(Callback::new(|()| go(Screen::Write)));
        return;
    }
    let field = document().query_selector("input[type=file]:not(.answers)").ok().flatten();
    if let Some(field) = field.and_then(|field| field.dyn_into::<web_sys::HtmlElement>().ok()) {
        field.click();
    }
}

/// Opens a file that is dropped anywhere but while a job is followed. Of several the first is opened, and that is said.
fn dropped(store: EditorStore, event: &web_sys::DragEvent) {
    if event.default_prevented() {
        return;
    }
    event.prevent_default();
    let files = event.data_transfer().and_then(|data| data.files());
    let Some(file) = files.as_ref().and_then(|files| files.get(0)) else { return };
    if is_following() {
        return;
    }
    let n = files.map_or(1, |files| files.length());
    if n > 1 {
        let words = format!("Of the {n} files that were dropped, \"{}\" was opened.", file.name());
        store.notice().set(Some(words));
    }
    files::open_file(store, file, || go(Screen::Write));
}

/// Puts the keyboard onto a screen that has just come, where the one before has taken it away with it: on Write and
/// Appliance to where it was, else to the beginning. Nothing scrolls for it: the screen is shown as it was left.
fn lead_keyboard(store: EditorStore) {
    let page = document();
    if page.active_element().is_some_and(|element| element.tag_name() != "BODY") {
        return;
    }
    let place = match Screen::or_write() {
        Screen::Write => store.left_at().and_then(|focus| page.get_element_by_id(&focus.element_id())),
        Screen::Appliance => store.was_at_thing().and_then(|thing| row_of_thing(&thing)).map(Into::into),
        _ => None,
    };
    let place = place.or_else(|| {
        let main = page.query_selector("main").ok().flatten()?;
        // Not refused by an element that stands in the page.
        let _ = main.set_attribute("tabindex", "-1");
        Some(main)
    });
    let Some(place) = place.and_then(|place| place.dyn_into::<web_sys::HtmlElement>().ok()) else { return };
    let staying = web_sys::FocusOptions::new();
    staying.set_prevent_scroll(true);
    // As above.
    let _ = place.focus_with_options(&staying);
}

/// Leads to where something was undone or done again, unless the screen that is shown has it too.
fn lead_to(store: EditorStore, went: &Places) {
    let screen_of = |part: &Place| match part {
        Place::Steps => Screen::Write,
        Place::Map | Place::Scope => Screen::Appliance,
        Place::Kit => Screen::Kit,
        Place::Later => Screen::Later,
    };
    let is_seen = match Screen::or_write() {
        Screen::Print => true,
        // Census, kit and what is for later are written there too, and what a thing is stands beside each step that
        // names it.
        Screen::Write => went.has(Place::Steps) || went.is_in_use || !went.has(Place::Map),
        now => went.parts.iter().any(|part| screen_of(part) == now),
    };
    let there = went.parts.first().map(screen_of).filter(|_| !is_seen);
    if let Some(screen) = there {
        if let Some(thing) = went.thing.as_ref().filter(|_| screen == Screen::Appliance) {
            store.want_thing(thing, false);
        }
        go(screen);
    }
}

fn is_following() -> bool {
    Screen::of_address() == Some(Screen::Follow)
}
