//! What stands on paper, in blocks that are never cut: a step with what belongs to it, an entry of a list, a heading.

use super::choices::Part;
use super::divide::Piece;
use crate::components::capital::capital;
use crate::components::in_one_piece::in_one_piece;
use crate::components::lane::{lane_class, lane_picture};
use crate::components::notation_line::notation_line;
use crate::components::safety_band::safety_band;
use crate::components::step_asides::{back_line, conditions, out_lines, reminder_line};
use crate::kit::columns::{LISTS, Listed};
use crate::state::judged::{Judged, row_of};
use leptos::prelude::*;
use procedures_schema::derive::kit::needed;
use procedures_schema::derive::lanes::LaneRow;
use procedures_schema::derive::open_at::{OpenAt, open_at};
use procedures_schema::derive::reminders::reminders;
use procedures_schema::model::{Procedure, Reading, Step};
use procedures_schema::simulate::default_readings;
use std::sync::Arc;

/// A block.
#[derive(Clone, PartialEq)]
pub enum Block {
    /// The name of what follows.
    Heading(String),
    /// A sentence about the whole.
    Words(String),
    /// A step, with its number from 1.
    Step(usize, Arc<Step>),
    /// An entry of the kit.
    Entry(String),
    /// What the columns of what is to be found out are.
    OpenHead,
    /// A value that is still to be found out, with its step.
    Open(OpenAt),
}

impl Block {
    /// What has to be known of it to divide pages.
    pub fn piece(&self, height: f64) -> Piece {
        let leads = matches!(self, Self::Heading(_) | Self::OpenHead);
        Piece { height, leads, has_lanes: self.is_step() }
    }

    /// Whether it is a step, beside which lanes may stand.
    pub fn is_step(&self) -> bool {
        matches!(self, Self::Step(..))
    }
}

/// The blocks of a part of a procedure.
pub fn blocks(document: &Procedure, part: &Part) -> Vec<Block> {
    let (blocks, none) = match part {
        Part::Whole => {
            let mut all = about(document);
            all.extend(kit(document));
            all.extend(steps(document, |_| true));
            all.extend(later(document));
            (all, "Nothing is written yet.")
        }
        Part::Stage(stage) => (steps(document, |step| step.stage == *stage), "No step is of this stage."),
        Part::Kit => (kit(document), "Nothing is named that has to be brought."),
        Part::Later => (later(document), "Nothing is left to find out."),
    };
    if blocks.is_empty() { vec![Block::Words(none.to_owned())] } else { blocks }
}

fn about(document: &Procedure) -> Vec<Block> {
    let named = |name: &str, words: &str| (!words.is_empty()).then(|| Block::Words(format!("{name}{words}")));
    let gases = document.gases.join(", ");
    [named("For: ", &document.applies_to), named("Gas: ", &gases), named("", &document.note)]
        .into_iter()
        .flatten()
        .collect()
}

/// The lists as the writer says them, and behind each what the steps need besides.
fn kit(document: &Procedure) -> Vec<Block> {
    let needed = needed(document);
    let list = |listed: &Listed| {
        let entry = |at| {
            let columns = listed.columns.iter().filter_map(|column| (column.get)(&document.kit, at));
            Block::Entry(columns.filter(|words| !words.is_empty()).collect::<Vec<_>>().join(" · "))
        };
        let besides = needed.iter().filter(|needed| needed.list == listed.list);
        let besides = besides.map(|needed| Block::Entry(format!("{needed}{}", for_steps(&needed.steps))));
        let entries: Vec<Block> = (0..(listed.count)(&document.kit)).map(entry).chain(besides).collect();
        let heading = (!entries.is_empty()).then(|| Block::Heading(listed.heading.to_owned()));
        heading.into_iter().chain(entries)
    };
    LISTS.iter().flat_map(list).collect()
}

fn for_steps(steps: &[usize]) -> String {
    let numbers = steps.iter().map(ToString::to_string).collect::<Vec<_>>().join(", ");
    format!(" · {} {numbers}", if steps.len() == 1 { "step" } else { "steps" })
}

fn steps(document: &Procedure, is_of_it: impl Fn(&Step) -> bool) -> Vec<Block> {
    let mut blocks = Vec::new();
    let mut stage = None;
    for (at, step) in document.steps.iter().enumerate().filter(|(_, step)| is_of_it(step)) {
        if stage != Some(&step.stage) {
            blocks.push(Block::Heading(capital(step.stage.word())));
            stage = Some(&step.stage);
        }
        blocks.push(Block::Step(at + 1, step.clone()));
    }
    blocks
}

fn later(document: &Procedure) -> Vec<Block> {
    let open = open_at(document);
    if open.is_empty() {
        return Vec::new();
    }
    let head = [Block::Heading("To find out on site".to_owned()), Block::OpenHead];
    head.into_iter().chain(open.into_iter().map(Block::Open)).collect()
}

/// A block as it stands on paper.
pub fn block(judged: &Judged, block: &Block, has_lanes: bool) -> AnyView {
    match block {
        Block::Heading(name) => view! { <h3 class="stage block">{name.clone()}</h3> }.into_any(),
        Block::Words(words) => view! { <p class="block">{words.clone()}</p> }.into_any(),
        Block::Entry(words) => {
            view! { <p class="block boxed"><span>{in_one_piece(words)}</span></p> }.into_any()
        }
        Block::OpenHead => {
            row_to_find("to-find-head", ["What", "By whom", "Where", "Found out"].map(str::to_owned))
        }
        Block::Open(OpenAt { value, step }) => {
            let place = step.map_or_else(|| "at the start".to_owned(), |step| format!("step {}", step + 1));
            row_to_find("to-find-row", [capital(&value.what), value.who.clone(), place, String::new()])
        }
        Block::Step(number, step) => {
            let row = row_of(&judged.lanes, number - 1, &step.id).filter(|_| has_lanes);
            let lanes = row.map(|row| lanes_of(judged, row));
            view! { <div class="block step-on-paper">{lanes}<div class="on-paper-said" class:only=!step.when.is_empty()>{said(judged, *number, step)}</div></div> }
                .into_any()
        }
    }
}

/// A row of what is to be found out; the last column is to write in.
fn row_to_find(class: &'static str, columns: [String; 4]) -> AnyView {
    let columns = columns.map(|words| view! { <span>{words}</span> });
    view! { <div class=format!("block {class}")>{columns}</div> }.into_any()
}

fn lanes_of(judged: &Judged, row: &LaneRow) -> impl IntoView + use<> {
    let lane = |(cell, head): (_, &procedures_schema::derive::lanes::LaneHead)| {
        let (class, picture) = (lane_class(&head.kind), lane_picture(cell, &head.kind));
        view! { <svg class=class aria-hidden="true" focusable="false" inner_html=picture></svg> }
    };
    view! { <div class="lanes">{row.cells.iter().zip(&judged.lanes.heads).map(lane).collect_view()}</div> }
}

fn said(judged: &Judged, number: usize, step: &Step) -> impl IntoView + use<> {
    let document = &judged.document;
    let when = (!step.when.is_empty())
        .then(|| view! { <p class="condition">{conditions(&step.when, &document.questions).join("; ")}</p> });
    let readings = step.actions.iter().flat_map(|action| default_readings(document, action));
    let blanks: Vec<_> =
        readings.map(|reading| view! { <p class="blank"><span>{in_words(&reading)}</span></p> }).collect();
    let why = (!step.why.is_empty()).then(|| view! { <p class="why">"why: " {step.why.clone()}</p> });
    let remembered = reminders(document).into_iter().filter(|one| one.at.contains(&(number - 1)));
    let remembered: Vec<_> = remembered.map(|one| reminder_line(one.from_position, &one.text)).collect();
    view! {
        {step.messages.iter().map(safety_band).collect_view()}
        {when}
        <p class="boxed"><strong>{number}</strong>" " <span>{in_one_piece(&document.words_of(step))}</span></p>
        {notation_line(&step.actions, &document.map)}
        {out_lines(&step.actions)}
        {blanks}
        {remembered}
        {why}
        {back_line(step)}
    }
}

/// What is read, and what it should be.
fn in_words(reading: &Reading) -> String {
    let should = reading.limits.as_ref().map(ToString::to_string);
    let should = should.or_else(|| Some(reading.seen.clone()).filter(|seen| !seen.is_empty()));
    let should = should.or_else(|| (!reading.later.is_empty()).then(|| "limits to be found out".to_owned()));
    let parts = [Some(capital(&reading.what)), should];
    parts.into_iter().flatten().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(", ")
}
