//! Why a rule is there, from a file of this site that is fetched when somebody asks.

use crate::storage::files;
use leptos::prelude::*;
use leptos::task::spawn_local;
use procedures_schema::format;
use std::collections::BTreeMap;

/// The file with the texts, made with the page.
const FILE: &str = "rules.json";

/// The key, and below it the text once it has been asked for.
#[component]
pub fn Why(
    /// The code of the rule.
    #[prop(into)]
    code: String,
) -> impl IntoView {
    let is_open = RwSignal::new(false);
    let text: RwSignal<Option<String>> = RwSignal::new(None);
    let toggle = move |_| {
        is_open.update(|is_open| *is_open = !*is_open);
        if text.with_untracked(Option::is_none) {
            let code = code.clone();
            spawn_local(async move { text.set(Some(text_of(&code).await)) });
        }
    };
    // The text is made of the project's own files when the page is built; nothing that people write is in it.
    let shown = move || {
        is_open
            .get()
            .then(|| text.get())
            .flatten()
            .map(|html| view! { <div class="why-text" inner_html=html></div> })
    };
    view! {
        <button type="button" class="quiet why-key" aria-expanded=move || is_open.get().to_string() on:click=toggle>"Why"</button>
        {shown}
    }
}

async fn text_of(code: &str) -> String {
    let texts =
        files::own_text(FILE).await.and_then(|text| format::read_part::<BTreeMap<String, String>>(&text));
    match texts {
        Ok(mut texts) => {
            texts.remove(code).unwrap_or_else(|| "<p>Nothing is written about it.</p>".to_owned())
        }
        Err(_) => "<p>The reasons cannot be fetched now. <code>putback explain</code> tells them too.</p>"
            .to_owned(),
    }
}
