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
    /// Whether lanes stand beside the steps.
    pub has_lanes: bool,
    /// The paper.
    pub paper: Paper,
}

impl Chosen {
    /// The class of its sheets.
    pub fn class(&self) -> String {
        format!("on-paper as-on-paper {}", self.paper.class())
    }
}

/// Some of the blocks.
pub fn on_paper(judged: &Judged, chosen: &Chosen, range: Range<usize>) -> Vec<AnyView> {
    let some = chosen.blocks.get(range).unwrap_or_default();
    some.iter().map(|one| block(judged, one, chosen.has_lanes)).collect()
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
        <section class=chosen.class() aria-label=label>
            {head(judged, chosen.has_lanes)}
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
