//! The notation under a step's words: what the step means, in small grey figures of speech.

use super::in_one_piece::in_one_piece;
use leptos::prelude::*;
use procedures_schema::model::{Action, ApplianceMap, Id};
use procedures_schema::notation::{Role, Token, shown};

/// The notation of some actions, before it is drawn: the same draws nothing anew.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Notation(Vec<OfAction>);

/// The notation of one action.
#[derive(Clone, Debug, PartialEq, Eq)]
struct OfAction {
    is_unsaid: bool,
    words: Vec<OneWord>,
}

/// A word of it, with what joins it to the one before.
#[derive(Clone, Debug, PartialEq, Eq)]
struct OneWord {
    joint: &'static str,
    class: &'static str,
    /// How its thing stands to the words.
    stands: &'static str,
    text: String,
}

/// The notation of a step's actions, joined by middle dots; nothing if it has none.
pub fn notation_line(actions: &[Action], map: &ApplianceMap) -> impl IntoView + use<> {
    Notation::of(actions, map, &|_| "").line()
}

/// The notation of one action.
pub fn one_action(action: &Action, map: &ApplianceMap) -> impl IntoView + use<> {
    OfAction::of(action, map, &|_| "").view()
}

impl Notation {
    /// Of some actions, with a class more for each thing: how it stands to the words.
    pub fn of(actions: &[Action], map: &ApplianceMap, stands: &dyn Fn(&Id) -> &'static str) -> Self {
        Self(actions.iter().map(|action| OfAction::of(action, map, stands)).collect())
    }

    /// The line; none of no action.
    pub fn line(self) -> impl IntoView + use<> {
        let mut pieces: Vec<AnyView> = Vec::new();
        for (n_before, action) in self.0.into_iter().enumerate() {
            if n_before > 0 {
                pieces.push(view! { <span class="dot">" · "</span> }.into_any());
            }
            pieces.push(action.view().into_any());
        }
        (!pieces.is_empty()).then(|| view! { <p class="notation">{pieces}</p> })
    }
}

impl OfAction {
    fn of(action: &Action, map: &ApplianceMap, stands: &dyn Fn(&Id) -> &'static str) -> Self {
        let mut before: Option<Role> = None;
        let word = |token: Token| {
            let joint = match (before.replace(token.role), token.role) {
                (None, _) => "",
                (_, Role::Aside | Role::Later) => " · ",
                (Some(Role::Thing), Role::Thing) => ", ",
                _ => " ",
            };
            let stands = token.thing.as_ref().map_or("", stands);
            OneWord { joint, class: class_of(token.role), stands, text: token.text }
        };
        let words = shown(action, map).into_iter().map(word).collect();
        Self { is_unsaid: action.says.is_empty(), words }
    }

    fn view(self) -> impl IntoView + use<> {
        let Self { is_unsaid, words } = self;
        let word = |word: OneWord| {
            let OneWord { joint, class, stands, text } = word;
            view! { {joint}<span class=format!("{class} {stands}")>{in_one_piece(&text)}</span> }
        };
        let unsaid = is_unsaid.then(|| view! { <span class="not-said">" (not said)"</span> });
        view! { <span class="action" class:unsaid=is_unsaid>{words.into_iter().map(word).collect_view()}{unsaid}</span> }
    }
}

fn class_of(role: Role) -> &'static str {
    match role {
        Role::Verb => "verb",
        Role::Thing => "thing",
        Role::Value => "value",
        Role::Aside => "aside",
        Role::Later => "later",
    }
}
