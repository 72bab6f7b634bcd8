//! The sheets of paper, each with its head and foot.

use super::blocks::{Block, block};
use super::paper::Paper;
use crate::components::capital::capital;
use crate::components::caution::WORDS;
use crate::components::lane::colour;
use crate::frame::versions_line::VersionsLine;
use crate::state::judged::Judged;
use leptos::prelude::*;
use procedures_schema::derive::lanes::LaneHead;
use std::ops::Range;
use std::sync::Arc;

/// What is to be on paper.
#[derive(Clone, PartialEq)]
pub struct Chosen {
    /// The blocks.
    pub blocks: Arc<Vec<Block>>,
    /// How many lanes stand beside the steps.
    pub n_lanes: usize,
    /// The paper.
    pub paper: Paper,
}

/// So many lanes have room for their names beside each other, where words keep half of the paper.
const FEW_LANES: usize = 8;

impl Chosen {
    /// The class of its sheets.
    pub fn class(&self) -> String {
        let many = if self.has_many_lanes() { " many-lanes" } else { "" };
        format!("on-paper as-on-paper {}{many}", self.paper.class())
    }

    /// Whether the names of the lanes stand upright.
    pub fn has_many_lanes(&self) -> bool {
        self.n_lanes > FEW_LANES
    }
}

/// Some of the blocks.
pub fn on_paper(judged: &Judged, chosen: &Chosen, range: Range<usize>) -> Vec<AnyView> {
    let some = chosen.blocks.get(range).unwrap_or_default();
    some.iter().map(|one| block(judged, one, chosen.n_lanes > 0)).collect()
}

/// A sheet with some of the blocks; its number counts from 1.
pub fn sheet(
    judged: &Judged,
    chosen: &Chosen,
    range: Range<usize>,
    number: usize,
    n_sheets: usize,
) -> impl IntoView + use<> {
    let number = format!("page {number} of {n_sheets}");
    let label = capital(&number);
    view! {
        <section class=chosen.class() style=("--n", chosen.n_lanes.to_string()) aria-label=label>
            {head(judged, chosen.n_lanes > 0)}
            <div class="on-page">{on_paper(judged, chosen, range)}</div>
            <footer><VersionsLine />" · " {number}</footer>
        </section>
    }
}

/// What every sheet says first: of what it is, and that it is not fit to be followed where it is not.
fn head(judged: &Judged, has_lanes: bool) -> impl IntoView + use<> {
    let heads = has_lanes.then(|| {
        let head = |head: &LaneHead| {
            view! { <span class=format!("lane-head k-{}", colour(&head.kind))><span>{head.name.clone()}</span></span> }
        };
        view! { <div class="lanes">{judged.lanes.heads.iter().map(head).collect_view()}</div> }
    });
    view! {
        <header>
            <p class="first">
                <strong>{judged.document.title.clone()}</strong>
                <span class="judged">
                    <strong class="stamp" class:rejected=judged.is_rejected() class:draft=judged.is_draft()>{judged.stamp()}</strong>
                    <span>{judged.judged_by()}</span>
                </span>
            </p>
            <p class="caution-line">{WORDS}</p>
            {heads}
        </header>
    }
}

/// How high each block of a list is, with the distance to the next, in CSS pixels.
pub fn heights(list: &web_sys::HtmlElement) -> Vec<f64> {
    let children = list.children();
    let tops = (0..children.length()).filter_map(|at| children.item(at));
    let tops: Vec<f64> = tops.map(|child| child.get_bounding_client_rect().top()).collect();
    let end = list.get_bounding_client_rect().bottom();
    let ends = tops.iter().skip(1).copied().chain([end]);
    tops.iter().zip(ends).map(|(top, end)| end - top).collect()
}
