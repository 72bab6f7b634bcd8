//! The notation under a step's words: what the step means, in small grey figures of speech.

use leptos::prelude::*;
use procedures_schema::model::{Action, ApplianceMap};
use procedures_schema::notation::{Role, Token, shown};

/// The notation of a step's actions, joined by middle dots; nothing if it has none.
pub fn notation_line(actions: &[Action], map: &ApplianceMap) -> impl IntoView + use<> {
    let mut pieces: Vec<AnyView> = Vec::new();
    for (n_before, action) in actions.iter().enumerate() {
        if n_before > 0 {
            pieces.push(view! { <span class="dot">" · "</span> }.into_any());
        }
        pieces.push(one_action(action, map).into_any());
    }
    (!pieces.is_empty()).then(|| view! { <p class="notation">{pieces}</p> })
}

/// The notation of one action.
pub fn one_action(action: &Action, map: &ApplianceMap) -> impl IntoView + use<> {
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
        tokens.push(token(joint, piece).into_any());
    }
    let unsaid = is_unsaid.then(|| view! { <span class="not-said">" (not said)"</span> });
    view! { <span class="action" class:unsaid=is_unsaid>{tokens}{unsaid}</span> }
}

fn token(joint: &'static str, token: Token) -> impl IntoView {
    let class = match token.role {
        Role::Verb => "verb",
        Role::Thing => "thing",
        Role::Value => "value",
        Role::Aside => "aside",
        Role::Later => "later",
    };
    view! { {joint}<span class=class>{token.text}</span> }
}
