//! The notation under a step's words: what the step means, in small grey figures of speech.

use super::in_one_piece::in_one_piece;
use leptos::prelude::*;
use procedures_schema::model::{Action, ApplianceMap, Id};
use procedures_schema::notation::{Role, Token, shown};

/// The notation of a step's actions, joined by middle dots; nothing if it has none.
pub fn notation_line(actions: &[Action], map: &ApplianceMap) -> impl IntoView + use<> {
    notation_line_with(actions, map, &|_| "")
}

/// The same with a class more for each thing: how it stands to the words.
pub fn notation_line_with(
    actions: &[Action],
    map: &ApplianceMap,
    stands: &dyn Fn(&Id) -> &'static str,
) -> impl IntoView + use<> {
    let mut pieces: Vec<AnyView> = Vec::new();
    for (n_before, action) in actions.iter().enumerate() {
        if n_before > 0 {
            pieces.push(view! { <span class="dot">" · "</span> }.into_any());
        }
        pieces.push(action_with(action, map, stands).into_any());
    }
    (!pieces.is_empty()).then(|| view! { <p class="notation">{pieces}</p> })
}

/// The notation of one action.
pub fn one_action(action: &Action, map: &ApplianceMap) -> impl IntoView + use<> {
    action_with(action, map, &|_| "")
}

fn action_with(
    action: &Action,
    map: &ApplianceMap,
    stands: &dyn Fn(&Id) -> &'static str,
) -> impl IntoView + use<> {
    let is_unsaid = action.says.is_empty();
    let mut before: Option<Role> = None;
    let mut tokens: Vec<AnyView> = Vec::new();
    for piece in shown(action, map) {
        let joint = match (before, piece.role) {
            (None, _) => "",
            (_, Role::Aside | Role::Later) => " · ",
            (Some(Role::Thing), Role::Thing) => ", ",
            _ => " ",
        };
        before = Some(piece.role);
        let stands = piece.thing.as_ref().map_or("", stands);
        tokens.push(token(joint, piece, stands).into_any());
    }
    let unsaid = is_unsaid.then(|| view! { <span class="not-said">" (not said)"</span> });
    view! { <span class="action" class:unsaid=is_unsaid>{tokens}{unsaid}</span> }
}

fn token(joint: &'static str, token: Token, stands: &'static str) -> impl IntoView {
    let class = match token.role {
        Role::Verb => "verb",
        Role::Thing => "thing",
        Role::Value => "value",
        Role::Aside => "aside",
        Role::Later => "later",
    };
    view! { {joint}<span class=format!("{class} {stands}")>{in_one_piece(&token.text)}</span> }
}
