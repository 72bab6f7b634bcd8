//! Actions to written notation.
//!
//! Printing is total: what the grammar does not allow is printed too, so that nothing is hidden, but
//! cannot be read back. A `?` stands where the verb needs something that the action has not.

use super::detail::Detail;
use super::grammar::{Entry, Form, Slot, entry};
use super::lex::{guard_part, is_bare_id, quote, value};
use super::parse::Written;
use crate::model::Action;

/// The written notation of some actions.
pub fn print(actions: &[Action]) -> String {
    actions.iter().map(print_action).collect::<Vec<_>>().join(" · ")
}

/// The written notation of some actions with their guards.
pub fn print_written(written: &[Written]) -> String {
    let guarded = |written: &Written| {
        let guards = written.guard.iter().map(|answer| {
            format!("[{}={}] ", guard_part(answer.question.as_str()), guard_part(&answer.answer))
        });
        guards.collect::<String>() + &print_action(&written.action)
    };
    written.iter().map(guarded).collect::<Vec<_>>().join(" · ")
}

/// The written notation of one action.
pub fn print_action(action: &Action) -> String {
    let line = entry(&action.verb);
    let token = line.map_or_else(|| action.verb.word().replace(' ', "-"), |line| line.token.to_owned());
    let slots = line.map_or(&[][..], |line| line.slots);
    let mut words = vec![token];
    words.extend(slots.iter().filter(|slot| slot.form == Form::First).map(|slot| first(slot, action)));
    words.extend(action.on.iter().map(|id| thing(id.as_str(), slots)));
    if line.is_some_and(|line| action.on.len() < line.things.least) {
        words.push("?".to_owned());
    }
    let is_plain = |slot: &&Slot| matches!(slot.form, Form::Figure | Form::Word(_));
    for slot in slots.iter().filter(is_plain).chain(slots.iter().filter(|slot| slot.form == Form::Key)) {
        words.extend(slot.detail.values(action).iter().map(|text| slot_text(slot, text)));
    }
    words.extend(not_taken(line, action));
    words.join(" ")
}

/// The word right after the verb.
fn first(slot: &Slot, action: &Action) -> String {
    match slot.detail.values(action).first() {
        Some(text) if is_bare_id(text) => text.clone(),
        Some(text) => quote(text),
        None => "?".to_owned(),
    }
}

/// An id, in quotation marks where it would be read as something else.
fn thing(id: &str, slots: &[Slot]) -> String {
    let is_plain_word =
        slots.iter().any(|slot| matches!(slot.form, Form::Word(words) if words.contains(&id)));
    if is_bare_id(id) && !is_plain_word { id.to_owned() } else { quote(id) }
}

fn slot_text(slot: &Slot, text: &str) -> String {
    let is_bare = match slot.form {
        Form::Figure => value(text) == text,
        Form::Word(words) => words.contains(&text),
        Form::First | Form::Key => false,
    };
    if is_bare { text.to_owned() } else { format!("{}={}", slot.key, value(text)) }
}

/// Details that the action has although its verb does not take them.
fn not_taken(line: Option<&'static Entry>, action: &Action) -> Vec<String> {
    let is_taken =
        |detail: Detail| line.is_some_and(|line| line.slots.iter().any(|slot| slot.detail == detail));
    let others = Detail::ALL.iter().filter(|(detail, _)| !is_taken(*detail));
    others
        .flat_map(|(detail, key)| {
            detail.values(action).into_iter().map(move |text| format!("{key}={}", value(&text)))
        })
        .collect()
}
