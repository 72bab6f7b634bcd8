//! One lane: the state of a circuit before and after a step, and the swatch of a state.
//!
//! Ink is energy that is still there, so each state reads without hue: solid on, barred shut down, hatched isolated, dotted released, empty proved. Sizes and colours stand in `lanes.css`, the fills in
//! [`lane_patterns`](super::lane_patterns). The pictures are hidden from screen readers; words stand beside
//! them.

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

/// The lane of one circuit beside one step.
pub fn lane_cell(cell: &LaneCell, kind: &CircuitKind) -> impl IntoView + use<> {
    let colour = colour(kind);
    let changes = cell.before != cell.after;
    let halves = if changes {
        vec![stretch(cell.before, colour, "0", "50%"), stretch(cell.after, colour, "50%", "50%")]
    } else {
        vec![stretch(cell.after, colour, "0", "100%")]
    };
    let opens = cell.after.joint_open && !cell.before.joint_open;
    let closes = cell.before.joint_open && !cell.after.joint_open;
    view! {
        <svg class=format!("lane k-{colour}{}", shape(kind)) aria-hidden="true" focusable="false">
            {halves}
            {is_patterned(cell.before).then(|| view! { <line class="seam" x1="0" x2="100%" y1="0" y2="0" /> })}
            {changes.then(|| view! { <line class="change" x1="0" x2="100%" y1="50%" y2="50%" /> })}
            <svg class="over" y="50%">{signs(cell.before, cell.after)}</svg>
            {cell.after.under_test.then(bracket)}
            {open_joint(cell.clone(), opens, closes)}
        </svg>
    }
}

/// Whether the fill of a state would show where one row's picture ends and the next begins.
fn is_patterned(state: LaneState) -> bool {
    matches!(state.level, LaneLevel::ShutDown | LaneLevel::Isolated | LaneLevel::Released)
}

/// The bracket around what a test loads.
fn bracket() -> impl IntoView {
    view! {
        <svg class="over bracket" y="50%" height="50%">
            <line x1="-4" x2="-4" y1="0" y2="100%" />
            <line x1="-4" x2="2" y1="0" y2="0" />
            <line class="foot-of" x1="-4" x2="2" y1="100%" y2="100%" />
        </svg>
    }
}

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
    view! {
        <svg class=format!("swatch k-{colour}") aria-hidden="true" focusable="false">
            {stretch(state, colour, "0", "100%")}
            <line class="change" x1="0" x2="100%" y1="0" y2="0" />
            <line class="change" x1="0" x2="100%" y1="100%" y2="100%" />
            <svg class="over" y="50%"><g class="centred">{signs(nothing, state)}</g></svg>
        </svg>
    }
}

fn stretch(state: LaneState, colour: &str, y: &'static str, height: &'static str) -> AnyView {
    let fill = match (state.level, state.under_test) {
        (_, true) => format!("url(#pins-{colour})"),
        (LaneLevel::ShutDown, _) => format!("url(#bars-{colour})"),
        (LaneLevel::Isolated, _) => format!("url(#hatch-{colour})"),
        (LaneLevel::Released, _) => format!("url(#dots-{colour})"),
        (LaneLevel::On | LaneLevel::Proved | LaneLevel::Lapsed | LaneLevel::NotJudged, _) => String::new(),
    };
    let (ground, edge) = match state.level {
        LaneLevel::On => ("solid", "edge"),
        LaneLevel::Proved => ("empty", "edge two"),
        LaneLevel::Lapsed | LaneLevel::NotJudged => ("empty", "edge dashed"),
        LaneLevel::ShutDown | LaneLevel::Isolated | LaneLevel::Released => ("empty", "edge"),
    };
    let edge = if state.locked { "edge three" } else { edge };
    let edges = view! {
        <svg class="over" y=y height=height>
            <line class=edge x1="0" x2="0" y1="0" y2="100%" />
            <line class=edge x1="100%" x2="100%" y1="0" y2="100%" />
        </svg>
    };
    if fill.is_empty() {
        let core = (ground == "solid")
            .then(|| view! { <rect class="core" x="36%" y=y width="28%" height=height /> });
        view! { <rect class=ground y=y width="100%" height=height />{core}{edges} }.into_any()
    } else {
        view! { <rect class=ground y=y width="100%" height=height /><rect y=y width="100%" height=height fill=fill />{edges} }
            .into_any()
    }
}

/// The signs of what begins here: a lock, a tick, a question mark.
fn signs(before: LaneState, after: LaneState) -> impl IntoView + use<> {
    let locks = after.locked && !before.locked;
    let proves = after.level == LaneLevel::Proved && before.level != LaneLevel::Proved;
    let doubts = |state: LaneState| matches!(state.level, LaneLevel::Lapsed | LaneLevel::NotJudged);
    let lapses = doubts(after) && !doubts(before);
    let second = if locks && (proves || lapses) { "sign second" } else { "sign" };
    view! {
        <svg class="over" x="50%">
            {locks.then(|| view! {
                <g class="sign">
                    <rect class="backing" x="-8" y="1" width="16" height="18" />
                    <rect class="inked" x="-6" y="9" width="12" height="9" rx="1" />
                    <path class="drawn" d="M-3.5 9v-2.5a3.5 3.5 0 0 1 7 0v2.5" />
                </g>
            })}
            {proves.then(|| view! {
                <g class=second>
                    <circle class="inked" cx="0" cy="11" r="8" />
                    <path class="ticked" d="M-4 11l3 3l5-6" />
                </g>
            })}
            {lapses.then(|| view! { <text class=format!("question {second}") x="0" y="16" text-anchor="middle">"?"</text> })}
        </svg>
    }
}

/// A line along the lane's edge while a joint is open, with a ring where it opens and where it closes, and a filled
/// square where it is blanked off.
fn open_joint(cell: LaneCell, opens: bool, closes: bool) -> impl IntoView + use<> {
    let stretch = match (cell.before.joint_open, cell.after.joint_open) {
        (true, true) => Some(("0", "100%")),
        (false, true) => Some(("50%", "100%")),
        (true, false) => Some(("0", "50%")),
        (false, false) => None,
    };
    let blanks = cell.after.blanked && !cell.before.blanked;
    stretch.map(|(from, to)| {
        view! {
            <svg class="over" x="100%">
                <line class="opened" x1="4" x2="4" y1=from y2=to />
                {(opens || closes).then(|| view! {
                    <circle class="ring" class:shut=closes cx="4" cy="50%" r="4" />
                })}
                {blanks.then(|| view! {
                    <svg class="over" y="50%"><rect class="blank" x="-1" y="-5" width="10" height="10" /></svg>
                })}
            </svg>
        }
    })
}
