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
    /// Whether their names stand upright: where a word of one is wider than its lane, or one has many words.
    pub has_upright_names: bool,
    /// The paper.
    pub paper: Paper,
}

/// The distance of lanes on paper and the width of a letter of their names, in CSS pixels, and what all of them may
/// take; as in `print.css`.
const PITCH: f64 = 52.0;
const LETTER: f64 = 9.0;
const ALL_LANES: f64 = 298.0;

/// Whether the names of these lanes have to stand upright.
pub fn stand_upright(heads: &[LaneHead]) -> bool {
    let n_lanes = heads.iter().fold(0.0, |n, _| n + 1.0);
    let pitch = PITCH.min(ALL_LANES / f64::max(n_lanes, 1.0));
    let width = |word: &str| word.chars().fold(0.0, |width, _| width + LETTER);
    let is_long = |name: &str| {
        name.split_whitespace().count() > 3 || name.split_whitespace().any(|word| width(word) > pitch)
    };
    // Beside the last one is room.
    let beside = heads.split_last().map_or(&[][..], |(_, others)| others);
    beside.iter().any(|head| is_long(&head.name))
}

/// So many lanes have room for their signs beside each other.
const FEW_LANES: usize = 8;

impl Chosen {
    /// The class of a sheet of it, with the names of the lanes or without.
    pub fn class(&self, has_names: bool) -> String {
        let names = match (has_names, self.has_upright_names) {
            (false, _) => "",
            (true, false) => " named-lanes",
            (true, true) => " named-lanes upright",
        };
        let many = if self.n_lanes > FEW_LANES { " many-lanes" } else { "" };
        format!("on-paper as-on-paper {}{names}{many}", self.paper.class())
    }

    /// Whether lanes stand beside some of these blocks.
    fn has_lanes(&self, range: &Range<usize>) -> bool {
        let some = self.blocks.get(range.clone()).unwrap_or_default();
        self.n_lanes > 0 && some.iter().any(Block::is_step)
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
    let has_names = chosen.has_lanes(&range);
    view! {
        <section class=chosen.class(has_names) style=("--n", chosen.n_lanes.to_string()) aria-label=label>
            {head(judged, has_names)}
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
