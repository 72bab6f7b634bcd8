//! The Print screen as a whole.

use super::blocks::{Block, blocks};
use super::choices::{ChoiceFields, Choices};
use super::divide::divide;
use super::sheets::{Chosen, heights, on_paper, sheet, stand_upright};
use crate::frame::plain_screen::PlainScreen;
use crate::route::Screen;
use crate::state::EditorStore;
use leptos::prelude::*;
use std::ops::Range;
use std::sync::Arc;

/// What is chosen, and the blocks of each page.
type Divided = (Chosen, Vec<Range<usize>>);

/// Everything of Print.
#[component]
pub fn PrintScreen(
    /// The editor's state.
    store: EditorStore,
) -> impl IntoView {
    name_while_printed(store);
    let choices = Choices::of(store);
    let judged = store.settled();
    let chosen = chosen(store, choices);
    let measure = NodeRef::<leptos::html::Div>::new();
    let divided = divided(chosen, measure);
    let measured =
        move || judged.with(|judged| chosen.with(|chosen| on_paper(judged, chosen, 0..chosen.blocks.len())));
    let shown = move || {
        divided.with(|divided| {
            let (chosen, pages) = divided.as_ref()?;
            let page = |(at, range): (usize, &Range<usize>)| {
                judged.with(|judged| sheet(judged, chosen, range.clone(), at + 1, pages.len()))
            };
            Some(pages.iter().enumerate().map(page).collect_view())
        })
    };
    let n_pages = move || match divided.with(|divided| divided.as_ref().map_or(0, |(_, pages)| pages.len())) {
        1 => "one page".to_owned(),
        n => format!("{n} pages"),
    };
    view! {
        <PlainScreen store shown=Screen::Print class="print">
            <h2 class="stage">"On paper"</h2>
            <div class="strip print-choices">
                <ChoiceFields store choices />
                <button type="button" class="key first" on:click=|_| print()>"Print"</button>
                <span role="status">{n_pages}</span>
            </div>
            <div class="measure" aria-hidden="true" inert>
                <div class=move || chosen.with(|chosen| chosen.class(false)) style=("--n", move || chosen.with(|chosen| chosen.n_lanes.to_string()))><div class="on-page" node_ref=measure>{measured}</div></div>
            </div>
            <div class="pages" tabindex="0" role="region" aria-label="The pages">{shown}</div>
        </PlainScreen>
    }
}

fn chosen(store: EditorStore, choices: Choices) -> Memo<Chosen> {
    let judged = store.settled();
    Memo::new(move |_| {
        let blocks = judged.with(|judged| choices.part.with(|part| blocks(&judged.document, part)));
        let n_lanes = judged.with(|judged| judged.lanes.heads.len());
        let has_steps = blocks.iter().any(|block| matches!(block, Block::Step(..)));
        Chosen {
            blocks: Arc::new(blocks),
            n_lanes: if has_steps && choices.has_lanes.get() { n_lanes } else { 0 },
            has_upright_names: judged.with(|judged| stand_upright(&judged.lanes.heads)),
            paper: choices.paper.get(),
        }
    })
}

/// What is chosen in pages. Both change together, so that nothing is cut off meanwhile.
fn divided(chosen: Memo<Chosen>, measure: NodeRef<leptos::html::Div>) -> RwSignal<Option<Divided>> {
    let divided = RwSignal::new(None);
    Effect::new(move |_| {
        let chosen = chosen.get();
        // What is measured stands in the page by then, as high as it will be on paper.
        request_animation_frame(move || {
            let heights = measure.get_untracked().map(|list| heights(&list)).unwrap_or_default();
            let blocks = chosen.blocks.iter().zip(heights);
            let pieces: Vec<_> = blocks.map(|(block, height)| block.piece(height)).collect();
            let pages = divide(&pieces, chosen.paper.room(chosen.n_lanes > 0, chosen.has_upright_names));
            // The screen may have been left meanwhile; nobody looks at the pages then.
            let _ = divided.try_set(Some((chosen, pages)));
        });
    });
    divided
}

/// Names the page, while it is printed, as a file of the document is named: so a browser calls the file that it makes.
/// Not every browser waits in `print` until its dialog is closed, and somebody may print with the keys.
fn name_while_printed(store: EditorStore) {
    let title = document().title();
    let before =
        window_event_listener_untyped("beforeprint", move |_| document().set_title(&store.marked_name()));
    let after = window_event_listener_untyped("afterprint", move |_| document().set_title(&title));
    on_cleanup(move || {
        before.remove();
        after.remove();
    });
}

/// Prints; a browser without printers has no such thing.
fn print() {
    let _ = window().print();
}
