//! The sheet of a connection.

use crate::frame::sheet::{Sheet, listed, words, words_or};
use crate::frame::tight_fields;
use leptos::prelude::*;
use procedures_schema::model::{Connection, Family, FreesWhen, Grouping, Id, Port, SealUse, ThingKind};
use procedures_schema::units::Rest;

/// Its fields.
pub fn fields(sheet: Sheet<Connection>) -> AnyView {
    let families = words(Family::ALL.iter().map(Family::word));
    let ports = words_or("none", Port::ALL.iter().map(Port::word));
    view! {
        {sheet.word("Does", families, |k| k.family.word().to_owned(), |k, word| k.family = Family::from_word(&word))}
        {sheet.any_of("Joins", &[ThingKind::Component], |k| k.joins.clone(), |k, ids| k.joins = ids)}
        {sheet.one_of("Carries what is in", &[ThingKind::Section], |k| k.section.clone(), |k, id| k.section = id)}
        {sheet.word("Is a port for", ports, port, |k, word| k.port = (!word.is_empty()).then(|| Port::from_word(&word)))}
        {sheet.text("How many fasteners", "1", |k| k.count.to_string(), set_count)}
        {several(sheet)}
        {tight_fields::fields(sheet)}
        {sheet.any_of("Seals", &[ThingKind::Seal], |k| k.seals.iter().map(|used| used.seal.clone()).collect(), set_seals)}
        {sheet.flag("Its two sides are bonded before it opens", |k| k.bond, |k, is_so| k.bond = is_so)}
        {reach(sheet)}
        {sheet.any_of("May be confused with", &[ThingKind::Connection], |k| k.looks_like.clone(), |k, ids| k.looks_like = ids)}
        {sheet.text("Other names", "with commas between", |k| k.aliases.join(", "), |k, text| k.aliases = listed(&text))}
    }
    .into_any()
}

/// How several fasteners belong together, and when they let go.
fn several(sheet: Sheet<Connection>) -> AnyView {
    let groupings = vec![
        ("together".to_owned(), "one joint: one slack opens it".to_owned()),
        ("each".to_owned(), "several joints, a seal each".to_owned()),
    ];
    let lets_go = vec![
        ("open".to_owned(), "when they are out".to_owned()),
        ("slack".to_owned(), "already when slack: slots, keyholes".to_owned()),
    ];
    view! {
        {sheet.word("Several are", groupings, |k| k.grouping.word().to_owned(), |k, word| k.grouping = Grouping::from_word(&word))}
        {sheet.word("Let go", lets_go, |k| k.frees_when.word().to_owned(), |k, word| k.frees_when = FreesWhen::from_word(&word))}
    }
    .into_any()
}

/// What must be out of the way: worked out, or said here.
fn reach(sheet: Sheet<Connection>) -> AnyView {
    let is_said = sheet.read(|k| k.reached_after.is_some());
    let things = move || {
        is_said.get().then(|| {
            let get = |k: &Connection| k.reached_after.clone().unwrap_or_default();
            sheet.any_of("Reached once these are off", &[ThingKind::Component], get, |k, ids| {
                k.reached_after = Some(ids);
            })
        })
    };
    view! {
        {sheet.flag(
            "Reached otherwise than the parts that it joins",
            |k| k.reached_after.is_some(),
            |k, is_so| k.reached_after = is_so.then(Vec::new),
        )}
        {things}
    }
    .into_any()
}

fn port(connection: &Connection) -> String {
    connection.port.as_ref().map(|port| port.word().to_owned()).unwrap_or_default()
}

/// Sets how many; what is no number of fasteners is left as it was.
fn set_count(connection: &mut Connection, typed: String) {
    if let Ok(count) = typed.trim().parse::<u32>()
        && (1..=200).contains(&count)
    {
        connection.count = count;
    }
}

/// Keeps how many of each seal are used; a seal that comes in new is used once.
fn set_seals(connection: &mut Connection, ids: Vec<Id>) {
    let before = std::mem::take(&mut connection.seals);
    let used = |id: Id| {
        let known = before.iter().find(|used| used.seal == id).cloned();
        known.unwrap_or(SealUse { seal: id, quantity: 1, rest: Rest::default() })
    };
    connection.seals = ids.into_iter().map(used).collect();
}
