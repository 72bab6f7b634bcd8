//! One step as a row: lanes, words, what they mean, what is wrong.

use super::choices::Choices;
use super::details::Details;
use super::drag;
use super::fresh_things::FreshThings;
use super::handle::Handle;
use super::keep_phrase::KeepPhrase;
use super::keys;
use super::leading_keys::LeadingKeys;
use super::leaving::{focus_on, is_left};
use super::link_offer::LinkOffer;
use super::move_to::MoveTo;
use super::new_line::NewLine;
use super::other_readings::OtherReadings;
use super::pressing::Pressing;
use super::reminders::Reminders;
use super::row_condition::Condition;
use super::row_keys::RowKeys;
use super::row_lanes::RowLanes;
use super::row_margin::RowMargin;
use super::source_line::PastedLine;
use super::tokens::Tokens;
use super::two_figures::TwoFigures;
use super::words_field::WordsField;
use crate::components::capital::capital;
use crate::components::notation_line::notation_line;
use crate::components::safety_band::safety_band;
use crate::components::step_asides::{back_line, out_lines};
use crate::state::heard::Heard;
use crate::state::{Command, EditorStore};
use leptos::prelude::*;
use procedures_schema::model::{Id, Step};
use std::sync::Arc;
use wasm_bindgen::JsCast;

/// The row of a step.
#[component]
pub fn Row(
    /// The editor's state.
    store: EditorStore,
    /// The step.
    id: Id,
) -> impl IntoView {
    let id = StoredValue::new(id);
    let step = store.step(id.get_value());
    let position = store.position(id.get_value());
    let number = move || position.get().map_or(0, |position| position + 1);
    let is_selected = Memo::new(move |_| store.selected().with(|selected| *selected == Some(id.get_value())));
    let is_first = Memo::new(move |_| position.get() == Some(0) && store.selected().with(Option::is_none));
    let findings = store.findings(Some(id.get_value()));
    let accepted = store.accepted_at(id.get_value());
    // Read by the selected row alone, so the others never work it out.
    let heard = store.heard(id.get_value());
    let selection = store.selection();
    let (has_details, has_places) = (RwSignal::new(false), RwSignal::new(false));
    let is_held = Memo::new(move |_| {
        store.held().with(|held| held.as_ref().is_some_and(|held| held.steps.contains(&id.get_value())))
    });
    let has_draft = Memo::new(move |_| store.draft_after().with(|draft| *draft == Some(id.get_value())));
    view! {
        <li
            class="row"
            id=format!("row-{}", id.get_value())
            data-step=id.get_value().to_string()
            aria-label=move || format!("Step {}", number())
            aria-current=move || is_selected.get().then_some("true")
            class:selected=is_selected
            class:within=move || selection.with(|steps| steps.len() > 1 && steps.contains(&id.get_value()))
            class:held=is_held
            class:found=move || findings.with(|findings| !findings.is_empty())
            tabindex=move || if is_selected.get() || is_first.get() { "0" } else { "-1" }
            on:focusin=move |event| if !stays_closed(&event) { store.entered(&id.get_value()) }
            on:mousedown=move |event| if event.shift_key() { event.prevent_default(); store.run(Command::ExtendTo(id.get_value())); }
            on:keydown=move |event| keys::on_row(store, &id.get_value(), &event)
        >
            <RowLanes store id=id.get_value() />
            <div class="content">
                <StageHeading store id=id.get_value() position />
                {move || step.get().map(|step| step.messages.iter().map(safety_band).collect_view())}
                <div class="body">
                    <div class="number">
                        <span class="grip" aria-hidden="true" on:pointerdown=move |event| drag::begin(store, id.get_value(), &event)>{number}</span>
                        {move || is_selected.get().then(|| view! { <Handle store id=id.get_value() number=Signal::derive(number) has_places /> })}
                    </div>
                    <div class="said" class:only=move || step.with(|step| step.as_ref().is_some_and(|step| !step.when.is_empty()))>
                        <Condition store step />
                        {move || if is_selected.get() {
                            view! { <OpenWords store id=id.get_value() step heard number=Signal::derive(number) /> }.into_any()
                        } else {
                            view! { <ReadWords store id=id.get_value() step /> }.into_any()
                        }}
                        <Reminders store id=id.get_value() />
                        <FreshThings store id=id.get_value() />
                        {move || is_selected.get().then(|| view! { <RowKeys store id=id.get_value() has_details has_places /> })}
                        {move || (is_selected.get() && has_places.get()).then(|| view! { <MoveTo store has_places on:keydown=move |event| if is_left(&event) { has_places.set(false); focus_on(&format!("row-{}", id.get_value())); } /> })}
                        {move || (is_selected.get() && has_details.get()).then(|| view! { <Details store id=id.get_value() step on:keydown=move |event| if is_left(&event) { has_details.set(false); focus_on(&format!("row-{}", id.get_value())); } /> })}
                        {move || has_draft.get().then(|| view! { <NewLine store after=Some(id.get_value()) /> })}
                    </div>
                </div>
            </div>
            <RowMargin store findings accepted lane_of=store.heads() />
        </li>
    }
}

/// Whether the keyboard or a finger went to a finding, to what has just been made, to a reminder, or to a heading. The row must not grow then, or
/// the key that is being pressed would move away under the finger.
fn stays_closed(event: &web_sys::FocusEvent) -> bool {
    let target = event.target().and_then(|target| target.dyn_into::<web_sys::Element>().ok());
    target.is_some_and(|target| {
        target.closest(".margin, .fresh, .reminder, .stage").is_ok_and(|part| part.is_some())
    })
}

/// The words of the selected row as a field, the leading words, what is asked about them, and what they mean.
#[component]
fn OpenWords(
    store: EditorStore,
    id: Id,
    step: Memo<Option<Arc<Step>>>,
    heard: Memo<Arc<Heard>>,
    number: Signal<usize>,
) -> impl IntoView {
    let id = StoredValue::new(id);
    // What is asked about is not left as words yet.
    let is_asked = Memo::new(move |_| heard.with(|heard| !heard.open.is_empty()));
    view! {
        <WordsField store id=id.get_value() step heard number />
        <LeadingKeys field=Signal::stored(format!("words-{}", id.get_value())) step=Signal::derive(move || Some(number.get())) />
        <PastedLine store id=id.get_value() />
        <Choices store id=id.get_value() heard />
        <OtherReadings store id=id.get_value() />
        <KeepPhrase store id=id.get_value() />
        <LinkOffer store id=id.get_value() heard />
        <TwoFigures store id=id.get_value() heard />
        <Tokens store id=id.get_value() step />
        {move || step.get().map(|step| ((!is_asked.get()).then(|| words_alone(&step)), out_lines(&step.actions)))}
    }
}

/// That nothing is read of a step's words, where a notation would stand: so nothing is passed over in silence.
fn words_alone(step: &Step) -> impl IntoView + use<> {
    let is_alone = step.actions.is_empty() && step.messages.is_empty() && !step.words.trim().is_empty();
    is_alone.then(|| view! { <p class="notation alone">"words alone"</p> })
}

/// The words of a row that is not selected, and what they mean; drawn anew only with the step or the map.
#[component]
fn ReadWords(store: EditorStore, id: Id, step: Memo<Option<Arc<Step>>>) -> impl IntoView {
    let id = StoredValue::new(id);
    let pressing = Pressing::new(store, id);
    let why =
        |step: &Step| (!step.why.is_empty()).then(|| view! { <p class="why">"why: " {step.why.clone()}</p> });
    view! {
        <p class="words" on:pointerdown=move |event| pressing.comes(&event) on:mousedown=move |event| pressing.presses(&event)>{move || step.get().map(|step| store.shown_words(&step))}</p>
        {move || step.get().map(|step| (store.map().with(|map| notation_line(&step.actions, map)), words_alone(&step), out_lines(&step.actions), why(&step), back_line(&step)))}
    }
}

/// The name of the stage above its first step: a key that selects all of it.
#[component]
fn StageHeading(store: EditorStore, id: Id, position: Memo<Option<usize>>) -> impl IntoView {
    let id = StoredValue::new(id);
    let stages = store.stages();
    let stage = Memo::new(move |_| {
        let position = position.get()?;
        stages.with(|stages| stages.get(position).cloned().flatten())
    });
    let select = move |_| store.run(Command::SelectStage(id.get_value()));
    // Tab goes past all rows but one, so it goes past their headings; Ctrl+Shift+A does the same.
    move || {
        stage.get().map(|stage| {
            view! {
                <h2 class="stage">
                    <button type="button" class="stage-key" tabindex="-1" title="Selects the stage with its steps: Ctrl+Shift+A" on:click=select>{capital(stage.word())}</button>
                </h2>
            }
        })
    }
}
