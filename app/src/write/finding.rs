//! The text of one finding: what is wrong, since when, what to do, and its code.

use super::accepting::Accepting;
use super::row_margin::class;
use super::why::Why;
use crate::components::capital::capital;
use crate::components::drawn::once_drawn;
use crate::components::in_one_piece::in_one_piece;
use crate::frame::level_mark::level_mark;
use crate::route::{Screen, go};
use crate::state::remedies::{Looking, Remedy};
use crate::state::{Command, EditorStore};
use leptos::prelude::*;
use procedures_schema::check::{Because, Finding, Fix, Level};
use procedures_schema::model::Id;
use wasm_bindgen::JsCast;

/// The text; pressing it goes to the step.
#[component]
pub fn FindingText(
    /// The editor's state.
    store: EditorStore,
    /// The finding.
    finding: Finding,
) -> impl IntoView {
    let looking = Looking::new(store, &finding);
    let accepting = RwSignal::new(false);
    // Only a warning can be accepted; what rejects is mended, and a hint needs no answer.
    let (key, form) = (finding.level == Level::Warn)
        .then(|| {
            (accept_key(accepting), view! { <Accepting store finding=finding.clone() is_open=accepting /> })
        })
        .unzip();
    let Finding { code, level, step, title, because, remedy, also, .. } = finding;
    let place = step.or_else(|| because.iter().find_map(|because| because.step.clone()));
    let title = match place {
        Some(step) => {
            let title = view! { <span>{level_mark(level)} {title}</span> };
            go_to(store, step, title, "title").into_any()
        }
        None => view! { <span class="title">{level_mark(level)} {title}</span> }.into_any(),
    };
    let because: Vec<_> = because.into_iter().map(|because| reason(store, because)).collect();
    let remedy: Vec<_> =
        remedy.into_iter().map(|text| view! { <li class="remedy">{in_one_piece(&text)}</li> }).collect();
    let also = (!also.is_empty()).then(|| format!(" · also {}", also.join(", ")));
    view! {
        <div class=format!("finding {}", class(level).1)>
            {title}
            <ul>{because}{remedy}</ul>
            {mending(store, &looking)}
            {elsewhere(code)}
            <div class="code">{code}{also} " " <Why code /> {key}</div>
            {form}
        </div>
    }
}

fn accept_key(is_open: RwSignal<bool>) -> impl IntoView {
    view! {
        <button
            type="button" class="quiet why-key" aria-expanded=move || is_open.get().to_string()
            on:click=move |_| is_open.update(|is_open| *is_open = !*is_open)
        >"Accept …"</button>
    }
}

/// The keys that mend it, each with what it does for a name; the first is that of Alt+Enter, unless it leaves words unread.
fn mending(store: EditorStore, looking: &Looking) -> impl IntoView + use<> {
    let looking = *looking;
    let remedy = looking.remedy();
    move || match remedy.get() {
        Remedy::Ready(found) => {
            let key = |(at, fix): (usize, &Fix)| {
                let declines = store.document().with_untracked(|document| fix.declines(document));
                let title = (at == 0 && !declines).then_some("Alt+Enter in the row");
                let apply = move |event: web_sys::MouseEvent| looking.apply(at, is_by_keyboard(&event));
                view! { <button type="button" class="key mend" title=title on:click=apply>{in_one_piece(&capital(&fix.label))}</button> }
            };
            found.iter().enumerate().map(key).collect_view().into_any()
        }
        Remedy::Slow => {
            let look = move |event: web_sys::MouseEvent| {
                let finding = event.current_target().and_then(finding_around);
                looking.look();
                if let Some(finding) = finding.filter(|_| is_by_keyboard(&event)) {
                    once_drawn(move || go_on_in(&finding));
                }
            };
            view! { <button type="button" class="quiet mend" on:click=look>"Look for a remedy"</button> }
                .into_any()
        }
        Remedy::None => {
            view! { <span class="none">"No remedy is ready; the arrow says what to do."</span> }.into_any()
        }
        Remedy::Open => ().into_any(),
    }
}

/// A key of the keyboard presses no button of a mouse.
fn is_by_keyboard(event: &web_sys::MouseEvent) -> bool {
    event.detail() == 0
}

fn finding_around(key: web_sys::EventTarget) -> Option<web_sys::Element> {
    key.dyn_into::<web_sys::Element>().ok()?.closest(".finding").ok().flatten()
}

/// Leads from a key that has gone to what it has found, or else to the finding.
fn go_on_in(finding: &web_sys::Element) {
    let found = |selector: &str| finding.query_selector(selector).ok().flatten();
    let next = found(".mend").or_else(|| found("button"));
    if let Some(next) = next.and_then(|next| next.dyn_into::<web_sys::HtmlElement>().ok()) {
        // Only a key that is gone refuses.
        let _ = next.focus();
    }
}

/// The way to the screen where it is mended, if that is not this one.
fn elsewhere(code: &str) -> Option<impl IntoView + use<>> {
    (code.starts_with("control/census") || code.starts_with("control/scope")).then(|| {
        view! {
            <button type="button" class="key mend" on:click=move |_| go(Screen::Appliance)>"Answer under Appliance"</button>
        }
    })
}

fn reason(store: EditorStore, because: Because) -> impl IntoView {
    match because.step {
        Some(step) => view! { <li>{go_to(store, step, because.text, "reason")}</li> }.into_any(),
        None => view! { <li>{because.text}</li> }.into_any(),
    }
}

fn go_to(store: EditorStore, step: Id, words: impl IntoView + 'static, class: &'static str) -> impl IntoView {
    let go = move |_| store.run(Command::Select(Some(step.clone())));
    view! { <button type="button" class=format!("link {class}") on:click=go>{words}</button> }
}
