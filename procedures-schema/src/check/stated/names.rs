//! Things that words name against those that the actions do.

use super::{Difference, Holder, Value};
use crate::check::context::Context;
use crate::check::lower::{Lower, in_lower_case};
use crate::check::wording::does;
use crate::lexicon::tokens;
use crate::model::{Action, ApplianceMap, Id, Span, Step};
use crate::simulate::Thing;
use std::borrow::Cow;
use std::collections::{BTreeMap, BTreeSet};

/// Adds what differs: an action of a thing that the words do not name at all, where they name another that
/// goes by the same noun and that no action of the step holds.
pub(super) fn differ(context: &Context<'_>, lower: &Lower<'_>, step: &Step, found: &mut Vec<Difference>) {
    for (k, action) in step.actions.iter().enumerate() {
        let [id] = action.on.as_slice() else { continue };
        let Some((own, aliases)) = names_of(context, id) else { continue };
        let Some(noun) = noun(own) else { continue };
        // Most nouns are of one name alone, which no other can be taken for.
        if !context.rivals().go_by(noun) {
            continue;
        }
        let mut names = std::iter::once(own).chain(aliases.iter().map(String::as_str));
        if names.any(|name| lower.has_name(name)) {
            continue;
        }
        // Most steps that do not name their thing have no such noun either.
        if !lower.0.contains(in_lower_case(noun).as_ref()) {
            continue;
        }
        let held = |other: &Id| step.actions.iter().any(|action| concerns(action, other));
        let mut others = context.procedure.map.things().filter(|(_, other, name, _)| {
            self::noun(name).is_some_and(|other| other.eq_ignore_ascii_case(noun))
                && lower.has_name(name)
                && names_of(context, other).is_some()
                && !held(other)
        });
        let (Some((_, _, name, _)), None) = (others.next(), others.next()) else { continue };
        let Some(span) = named_once(&step.words, name, noun, action) else { continue };
        let held = format!("its action {} {}", does(&action.verb), context.the_id(id));
        let stated = format!("the {name}");
        found.push(Difference { span, stated, held, holder: Holder::Thing(k), value: Value::Thing });
    }
}

/// The nouns by which a map calls things of different names: "valve", if it knows a suction valve and a discharge
/// valve.
pub(in crate::check) struct Rivals {
    /// In lower case.
    nouns: BTreeSet<String>,
}

impl Rivals {
    /// Those of a map.
    pub(in crate::check) fn of(map: &ApplianceMap) -> Self {
        let mut nouns = BTreeSet::new();
        let mut known: BTreeMap<Cow<'_, str>, &str> = BTreeMap::new();
        for (_, _, name, _) in map.things() {
            let Some(noun) = noun(name).map(in_lower_case) else { continue };
            if known.get(&noun).is_some_and(|known| *known != name) {
                nouns.insert(noun.into_owned());
            } else {
                known.insert(noun, name);
            }
        }
        Self { nouns }
    }

    /// Whether several names end in a noun.
    fn go_by(&self, noun: &str) -> bool {
        self.nouns.contains(&*in_lower_case(noun))
    }
}

/// The names of a thing that is told from others by them: all but circuits, sections and seals.
fn names_of<'c>(context: &Context<'c>, id: &Id) -> Option<(&'c str, &'c [String])> {
    let map = &context.procedure.map;
    macro_rules! named {
        ($list:ident, $cell:ident) => {{
            let thing = map.$list.get($cell.index())?;
            Some((thing.name.as_str(), thing.aliases.as_slice()))
        }};
    }
    match context.trace.plant().thing(id)? {
        Thing::Isolator(cell) => named!(isolators, cell),
        Thing::Component(cell) => named!(components, cell),
        Thing::Connection(cell) => named!(connections, cell),
        Thing::Temporary(cell) => named!(temporary, cell),
        Thing::Setting(cell) => named!(settings, cell),
        _ => None,
    }
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
