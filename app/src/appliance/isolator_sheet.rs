//! The sheet of an isolator.

use crate::components::fields::ChoiceField;
use crate::frame::sheet::{Sheet, listed, words, words_or};
use leptos::prelude::*;
use procedures_schema::model::{Handle, Id, Isolator, Position, SUPPLY};

/// Its fields.
pub fn fields(sheet: Sheet<Isolator>) -> AnyView {
    let handles = words(Handle::ALL.iter().map(Handle::word));
    let positions = words(Position::ALL.iter().map(Position::word));
    let lockable = words_or("nobody has looked", ["yes", "no"]);
    view! {
        {side(sheet, "Between", |i| i.between.0.clone(), |i, id| i.between.0 = id)}
        {side(sheet, "and", |i| i.between.1.clone(), |i, id| i.between.1 = id)}
        {sheet.word("Worked by", handles, |i| i.handle.word().to_owned(), |i, word| i.handle = Handle::from_word(&word))}
        {sheet.word("In service", positions, |i| i.normal.word().to_owned(), |i, word| i.normal = Position::from_word(&word))}
        {sheet.word("A lock can be put on it", lockable, can_be_locked, |i, word| i.lockable = answer(&word))}
        {sheet.text("Where it is", "on the wall beside the door", |i| i.location.clone(), |i, text| i.location = text)}
        {sheet.text("Other names", "with commas between", |i| i.aliases.join(", "), |i, text| i.aliases = listed(&text))}
    }
    .into_any()
}

/// One side: a section, or a supply from outside.
fn side(
    sheet: Sheet<Isolator>,
    label: &'static str,
    get: fn(&Isolator) -> Id,
    set: fn(&mut Isolator, Id),
) -> AnyView {
    let document = sheet.store().document();
    let options = Signal::derive(move || {
        let supply = (SUPPLY.to_owned(), "supply, from outside".to_owned());
        let sections: Vec<(String, String)> = document.with(|document| {
            let all = document.map.sections();
            all.map(|(circuit, s)| (s.id.to_string(), format!("{} ({})", s.name, circuit.name))).collect()
        });
        std::iter::once(supply).chain(sections).collect()
    });
    let id = sheet.id();
    let value = Signal::derive(move || {
        document.with(|document| {
            let found = document.map.isolators.iter().find(|isolator| isolator.id == id);
            found.map(|isolator| get(isolator).to_string()).unwrap_or_default()
        })
    });
    let send = Callback::new(move |chosen: String| sheet.write(label, |i| set(i, Id::new(&chosen))));
    view! { <ChoiceField label value options send /> }.into_any()
}

fn can_be_locked(isolator: &Isolator) -> String {
    match isolator.lockable {
        Some(true) => "yes",
        Some(false) => "no",
        None => "",
    }
    .to_owned()
}

fn answer(word: &str) -> Option<bool> {
    match word {
        "yes" => Some(true),
        "no" => Some(false),
        _ => None,
    }
}
