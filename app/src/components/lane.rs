//! One lane: the state of a circuit before and after a step, and the swatch of a state.
//!
//! Ink is energy that is still there, so each state reads without hue: solid on, barred shut down, hatched isolated, dotted released, empty proved. Sizes and colours stand in `lanes.css`, the fills in
//! [`lane_patterns`](super::lane_patterns). The pictures are hidden from screen readers; words stand beside
//! them.
//!
//! A picture is the text of its markup, put in at once. A key in an early step may change the lanes of a thousand
//! rows, and a view sets some forty attributes a row one by one. No word of a document is in it.

use leptos::prelude::*;
use procedures_schema::derive::lanes::{LaneCell, LaneLevel, LaneState};
use procedures_schema::model::CircuitKind;

/// The colour family of a kind of circuit, as the style sheet names it.
pub fn colour(kind: &CircuitKind) -> &'static str {
    match kind {
        CircuitKind::MainsElectricity | CircuitKind::ControlElectricity | CircuitKind::DcBus => "electricity",
        CircuitKind::FuelGas | CircuitKind::Refrigerant => "gas",
        CircuitKind::HeatingWater | CircuitKind::DomesticWater | CircuitKind::NetworkPrimary => "water",
        CircuitKind::AirAndFlue | CircuitKind::CompressedAir => "air",
        CircuitKind::Steam => "steam",
        CircuitKind::Oil => "oil",
        CircuitKind::Condensate => "acid",
        CircuitKind::StoredHeat | CircuitKind::StoredMotion | CircuitKind::Other(_) => "stored",
    }
}

/// What tells kinds of one colour apart beside the name: a lane of half the width, or one with a white core.
fn shape(kind: &CircuitKind) -> &'static str {
    match kind {
        CircuitKind::ControlElectricity => " half",
        CircuitKind::DcBus => " cored",
        _ => "",
    }
}

/// The stripe at the head of a lane whose colour is that of another kind too.
pub fn code_stripe(kind: &CircuitKind) -> Option<&'static str> {
    match kind {
        CircuitKind::Refrigerant | CircuitKind::DomesticWater => Some("blue"),
        CircuitKind::NetworkPrimary => Some("crimson"),
        _ => None,
    }
}

/// The class of the lane of a kind of circuit.
pub fn lane_class(kind: &CircuitKind) -> String {
    format!("lane k-{}{}", colour(kind), shape(kind))
}

/// What is in the picture of a lane beside one step.
pub fn lane_picture(cell: &LaneCell, kind: &CircuitKind) -> String {
    let colour = colour(kind);
    let LaneCell { before, after } = *cell;
    let changes = before != after;
    let halves = if changes {
        stretch(before, colour, "0", "50%") + &stretch(after, colour, "50%", "50%")
    } else {
        stretch(after, colour, "0", "100%")
    };
    let seam =
        if is_patterned(before) { r#"<line class="seam" x1="0" x2="100%" y1="0" y2="0"/>"# } else { "" };
    let change = if changes { r#"<line class="change" x1="0" x2="100%" y1="50%" y2="50%"/>"# } else { "" };
    let signs = signs(before, after);
    let bracket = if after.under_test { BRACKET } else { "" };
    let open = open_joint(before, after);
    format!(r#"{halves}{seam}{change}<svg class="over" y="50%">{signs}</svg>{bracket}{open}"#)
}

/// Whether the fill of a state would show where one row's picture ends and the next begins.
fn is_patterned(state: LaneState) -> bool {
    matches!(state.level, LaneLevel::ShutDown | LaneLevel::Isolated | LaneLevel::Released)
}

/// The bracket around what a test loads.
const BRACKET: &str = concat!(
    r#"<svg class="over bracket" y="50%" height="50%">"#,
    r#"<line x1="-4" x2="-4" y1="0" y2="100%"/><line x1="-4" x2="2" y1="0" y2="0"/>"#,
    r#"<line class="foot-of" x1="-4" x2="2" y1="100%" y2="100%"/></svg>"#,
);

/// A state as a swatch, with its sign.
pub fn lane_swatch(state: LaneState, kind: &CircuitKind) -> impl IntoView + use<> {
    let colour = colour(kind);
    let nothing = LaneState {
        level: LaneLevel::On,
        locked: false,
        joint_open: false,
        blanked: false,
        under_test: false,
    };
    let (fill, signs) = (stretch(state, colour, "0", "100%"), signs(nothing, state));
    let picture = format!(
        r#"{fill}<line class="change" x1="0" x2="100%" y1="0" y2="0"/><line class="change" x1="0" x2="100%" y1="100%" y2="100%"/><svg class="over" y="50%"><g class="centred">{signs}</g></svg>"#
    );
    view! { <svg class=format!("swatch k-{colour}") aria-hidden="true" focusable="false" inner_html=picture></svg> }
}

fn stretch(state: LaneState, colour: &str, y: &str, height: &str) -> String {
    let fill = match (state.level, state.under_test) {
        (_, true) => Some("pins"),
        (LaneLevel::ShutDown, _) => Some("bars"),
        (LaneLevel::Isolated, _) => Some("hatch"),
        (LaneLevel::Released, _) => Some("dots"),
        (LaneLevel::On | LaneLevel::Proved | LaneLevel::Lapsed | LaneLevel::NotJudged, _) => None,
    };
    let (ground, edge) = match state.level {
        LaneLevel::On => ("solid", "edge"),
        LaneLevel::Proved => ("empty", "edge two"),
        LaneLevel::Lapsed | LaneLevel::NotJudged => ("empty", "edge dashed"),
        LaneLevel::ShutDown | LaneLevel::Isolated | LaneLevel::Released => ("empty", "edge"),
    };
    let edge = match (state.locked, edge) {
        (false, edge) => edge,
        (true, "edge dashed") => "edge three dashed",
        (true, _) => "edge three",
    };
    let within = match fill {
        Some(pattern) => {
            format!(r#"<rect y="{y}" width="100%" height="{height}" fill="url(#{pattern}-{colour})"/>"#)
        }
        None if ground == "solid" => {
            format!(r#"<rect class="core" x="36%" y="{y}" width="28%" height="{height}"/>"#)
        }
        None => String::new(),
    };
    format!(
        r#"<rect class="{ground}" y="{y}" width="100%" height="{height}"/>{within}<svg class="over" y="{y}" height="{height}"><line class="{edge}" x1="0" x2="0" y1="0" y2="100%"/><line class="{edge}" x1="100%" x2="100%" y1="0" y2="100%"/></svg>"#
    )
}

/// A lock: the shackle above its case, with the ground of the sheet behind.
const LOCK: &str = concat!(
    r#"<g class="sign"><rect class="backing" x="-8" y="1" width="16" height="18"/>"#,
    r#"<rect class="inked" x="-6" y="9" width="12" height="9" rx="1"/>"#,
    r#"<path class="drawn" d="M-3.5 9v-2.5a3.5 3.5 0 0 1 7 0v2.5"/></g>"#,
);

/// The signs of what begins here: a lock, a tick, a question mark.
fn signs(before: LaneState, after: LaneState) -> String {
    let locks = after.locked && !before.locked;
    let proves = after.level == LaneLevel::Proved && before.level != LaneLevel::Proved;
    let doubts = |state: LaneState| matches!(state.level, LaneLevel::Lapsed | LaneLevel::NotJudged);
    let lapses = doubts(after) && !doubts(before);
    let second = if locks && (proves || lapses) { "sign second" } else { "sign" };
    let lock = if locks { LOCK } else { "" };
    let other = if proves {
        let circle = r#"<circle class="inked" cx="0" cy="11" r="8"/>"#;
        format!(r#"<g class="{second}">{circle}<path class="ticked" d="M-4 11l3 3l5-6"/></g>"#)
    } else if lapses {
        format!(r#"<text class="question {second}" x="0" y="16" text-anchor="middle">?</text>"#)
    } else {
        String::new()
    };
    format!(r#"<svg class="over" x="50%">{lock}{other}</svg>"#)
}

/// A line along the lane's edge while a joint is open, with a ring where it opens and where it closes, and a filled
/// square where it is blanked off.
fn open_joint(before: LaneState, after: LaneState) -> String {
    let (from, to) = match (before.joint_open, after.joint_open) {
        (true, true) => ("0", "100%"),
        (false, true) => ("50%", "100%"),
        (true, false) => ("0", "50%"),
        (false, false) => return String::new(),
    };
    let ring = match (before.joint_open, after.joint_open) {
        (false, true) => r#"<circle class="ring" cx="4" cy="50%" r="4"/>"#,
        (true, false) => r#"<circle class="ring shut" cx="4" cy="50%" r="4"/>"#,
        _ => "",
    };
    let blank = if after.blanked && !before.blanked {
        r#"<svg class="over" y="50%"><rect class="blank" x="-1" y="-5" width="10" height="10"/></svg>"#
    } else {
        ""
    };
    format!(
        r#"<svg class="over" x="100%"><line class="opened" x1="4" x2="4" y1="{from}" y2="{to}"/>{ring}{blank}</svg>"#
    )
}
