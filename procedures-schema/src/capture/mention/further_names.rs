//! Names that a thing has without being called so on the map: by what closes it, by its side alone.

use super::{Candidate, Name, singular};
use crate::capture::twins::{is_side, same_side};
use crate::lexicon::{Break, Token, tokens};
use crate::model::{Connection, Isolator, Port, ThingKind};

/// What closes a port is called after it: "the nipple screw" of a test nipple, "the sampling cap" of a sampling
/// point. A cap alone is that of a sampling point at most; other ports share the word with too many things.
pub(super) fn closing_names(port: &Connection) -> Vec<Name> {
    let least = match port.port {
        Some(Port::Sample) => 1,
        Some(Port::Test | Port::Drain | Port::Fill) => 2,
        _ => return Vec::new(),
    };
    let candidate = Candidate { id: port.id.clone(), kind: ThingKind::Connection, agrees: true };
    let words: Vec<String> = tokens(&port.name).into_iter().map(|token| token.text.into_owned()).collect();
    let before = words.split_last().map(|(_, before)| before.to_vec()).unwrap_or_default();
    let is_place = words.last().is_some_and(|head| matches!(head.as_str(), "point" | "port"));
    let called = |mut core: Vec<String>, closed_by: &str, least: usize| {
        core.push(closed_by.to_owned());
        let core = core.iter().map(|word| singular(word)).collect();
        Name { candidate: candidate.clone(), core, plural: false, least }
    };
    let mut names = vec![called(words, "screw", 2)];
    names.extend((is_place && !before.is_empty()).then(|| called(before, "cap", least)));
    names
}

/// "Refit the *top* cover" where an upper cover is known and none that is called a top one.
pub(super) fn by_other_sides(names: &[Name], tokens: &[Token<'_>]) -> Vec<Name> {
    const LED_BY: &[&str] = &["a", "an", "and", "its", "new", "old", "or", "the"];
    let joined = |at: usize| tokens.get(at).is_some_and(|token| token.before == Break::None);
    let is_led = |at: usize| {
        let before = at.checked_sub(1).and_then(|before| tokens.get(before));
        before.is_some_and(|before| joined(at) && LED_BY.contains(&&*before.text))
    };
    let said = tokens.iter().enumerate().filter(|(at, _)| is_led(*at)).map(|(_, token)| &*token.text);
    let mut found = Vec::new();
    for side in said.filter(|word| is_side(word)) {
        let is_so_called = |head: &String| {
            names
                .iter()
                .any(|name| name.core.last() == Some(head) && name.core.iter().any(|word| word == side))
        };
        for name in names {
            let at = name.core.iter().position(|word| same_side(side).any(|other| other == word));
            let head = name.core.last().filter(|head| !is_so_called(head));
            let Some((at, _)) = at.zip(head) else { continue };
            let mut core = name.core.clone();
            if let Some(word) = core.get_mut(at) {
                side.clone_into(word);
            }
            let (candidate, plural, least) = (name.candidate.clone(), name.plural, core.len() - at);
            found.push(Name { candidate, core, plural, least });
        }
    }
    found
}

/// What may stand behind a side that is named by that alone.
const ENDS_A_SIDE: &[&str] = &[
    "again", "and", "at", "back", "closed", "first", "off", "on", "open", "or", "shut", "then", "to", "up",
    "with",
];

/// Whether words say "flow" and "return" with no noun behind either: "shut the flow and return", "the flow, the return and
/// the gas".
pub(super) fn says_flow_and_return(tokens: &[Token<'_>]) -> bool {
    let ends = |i: usize| {
        let next = tokens.get(i + 1).filter(|next| next.before == Break::None).map(|next| &*next.text);
        next.is_none_or(|next| ENDS_A_SIDE.contains(&next))
    };
    let says = |side: &str| tokens.iter().enumerate().any(|(i, token)| token.text == side && ends(i));
    says("flow") && says("return")
}

/// What shuts a flow or a return, called by that alone.
pub(super) fn side_name(isolator: &Isolator) -> Option<Name> {
    let words: Vec<String> =
        tokens(&isolator.name).into_iter().map(|token| token.text.into_owned()).collect();
    let side = words.iter().position(|word| matches!(word.as_str(), "flow" | "return"))?;
    let core = words.get(..=side)?.to_vec();
    let candidate = Candidate { id: isolator.id.clone(), kind: ThingKind::Isolator, agrees: true };
    Some(Name { candidate, core, plural: false, least: 1 })
}
