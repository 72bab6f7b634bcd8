//! Things that words name against those that the actions do.

use super::Difference;
use crate::check::context::Context;
use crate::check::wording::does;
use crate::lexicon::tokens;
use crate::model::{Action, Id, Span, Step};
use crate::simulate::Thing;
use std::borrow::Cow;

/// Adds what differs: an action of a thing that the words do not name at all, where they name another that
/// goes by the same noun and that no action of the step holds.
pub(super) fn differ(context: &Context<'_>, position: usize, step: &Step, found: &mut Vec<Difference>) {
    let Some(lower) = context.heard.lower_at(&context.procedure.steps, position) else { return };
    for action in &step.actions {
        let [id] = action.on.as_slice() else { continue };
        if !is_told_apart(context, id) || names_of(context, id).any(|name| lower.has(&in_lower_case(name))) {
            continue;
        }
        let Some(noun) = noun(context.procedure.map.name_of(id)) else { continue };
        let held = |other: &Id| step.actions.iter().any(|action| concerns(action, other));
        let mut others = context.procedure.map.things().filter(|(_, other, name, _)| {
            is_told_apart(context, other)
                && self::noun(name).is_some_and(|other| other.eq_ignore_ascii_case(noun))
                && lower.has(&in_lower_case(name))
                && !held(other)
        });
        let (Some((_, _, name, _)), None) = (others.next(), others.next()) else { continue };
        let Some(span) = named_once(&step.words, name, noun, action) else { continue };
        let held = format!("its action {} {}", does(&action.verb), context.the_id(id));
        found.push(Difference { span, stated: format!("the {name}"), held });
    }
}

/// Most names are in lower case as they are.
fn in_lower_case(name: &str) -> Cow<'_, str> {
    if name.is_ascii() && !name.bytes().any(|byte| byte.is_ascii_uppercase()) {
        Cow::Borrowed(name)
    } else {
        Cow::Owned(name.to_lowercase())
    }
}

/// Whether a thing is one that is told from others by its name: all but circuits, sections and seals.
fn is_told_apart(context: &Context<'_>, id: &Id) -> bool {
    let thing = context.trace.plant().thing(id);
    thing.is_some_and(|thing| !matches!(thing, Thing::Circuit(_) | Thing::Section(_) | Thing::Seal(_)))
}

fn names_of<'c>(context: &Context<'c>, id: &'c Id) -> impl Iterator<Item = &'c str> {
    let map = &context.procedure.map;
    let known = map.things().find(|(_, known, _, _)| *known == id);
    known
        .into_iter()
        .flat_map(|(_, _, name, aliases)| std::iter::once(name).chain(aliases.iter().map(String::as_str)))
}

/// The noun of a name of several words: "valve" of "suction valve".
fn noun(name: &str) -> Option<&str> {
    name.rsplit_once(' ').map(|(_, last)| last).filter(|last| last.chars().all(char::is_alphabetic))
}

fn concerns(action: &Action, id: &Id) -> bool {
    let places = [&action.through, &action.vent, &action.at].into_iter().flatten();
    action.on.iter().chain(places).chain(&action.with_new).any(|named| named == id)
}

/// Where a name stands, if its noun stands nowhere else, in the clause of the action and as what something is
/// done to: not as a place, as in "beside the suction valve".
fn named_once(words: &str, name: &str, noun: &str, action: &Action) -> Option<Span> {
    let tokens = tokens(words);
    let is_noun = |text: &str| text.eq_ignore_ascii_case(noun) || text.strip_suffix('s') == Some(noun);
    let mut nouns = (0..tokens.len()).filter(|at| tokens.get(*at).is_some_and(|t| is_noun(&t.text)));
    let (last, None) = (nouns.next()?, nouns.next()) else { return None };
    let first = (last + 1).checked_sub(name.split(' ').count())?;
    let span = Span(tokens.get(first)?.span.0, tokens.get(last)?.span.1);
    if !span.of(words).eq_ignore_ascii_case(name) {
        return None;
    }
    let is_said = |span: Span| action.says.iter().any(|said| said.0 < span.1 && span.0 < said.1);
    // Words that were changed since may reach further than their spans; those begin where they began.
    if action.says.iter().any(|said| span.0 <= said.0 && said.0 < span.1) {
        return Some(span);
    }
    // "Undo the … valve", "the bolts of the … flange", not "beside the … valve".
    let article = first.checked_sub(1).and_then(|at| tokens.get(at)).filter(|t| is_article(&t.text))?;
    let before = tokens.iter().take_while(|token| token.span.0 < article.span.0).last()?;
    (before.text == "of" || is_said(before.span)).then_some(span)
}

fn is_article(text: &str) -> bool {
    matches!(text, "the" | "a" | "an" | "this" | "new" | "old" | "same")
}
