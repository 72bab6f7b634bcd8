//! The sheet of a component.

use crate::frame::sheet::{Sheet, listed, words_or};
use leptos::prelude::*;
use procedures_schema::model::{Component, Known, Role, ThingKind};
use procedures_schema::units::Quantity;

/// Its fields.
pub fn fields(sheet: Sheet<Component>) -> AnyView {
    let roles = words_or("nothing that a test asks for", Role::ALL.iter().map(Role::word));
    view! {
        {sheet.any_of("Reached once these are off", &[ThingKind::Component], |c| c.behind.clone(), |c, ids| c.behind = ids)}
        {sheet.word("What it does", roles, role, |c, word| c.role = (!word.is_empty()).then(|| Role::from_word(&word)))}
        {sheet.figure("Mass", Quantity::Mass, |c| c.mass.clone(), |c, mass| c.mass = mass)}
        {sheet.text("Where it is", "second from the left", |c| c.location.clone(), |c, text| c.location = text)}
        {sheet.text("Which way round it goes", "arrow towards the burner", |c| c.direction.clone(), |c, text| c.direction = text)}
        {sheet.text("Number of a new one", "as it is ordered", number, |c, text| c.number = known(text))}
        {sheet.one_of("Comes off with", &[ThingKind::Component], |c| c.carried_by.clone(), |c, id| c.carried_by = id)}
        {sheet.one_of("A loose part, held in", &[ThingKind::Connection], |c| c.held_in.clone(), |c, id| c.held_in = id)}
        {sheet.flag("Starts by itself when its supply comes back", |c| c.starts_itself, |c, is_so| c.starts_itself = is_so)}
        {sheet.text("Other names", "with commas between", |c| c.aliases.join(", "), |c, text| c.aliases = listed(&text))}
    }
    .into_any()
}

fn role(component: &Component) -> String {
    component.role.as_ref().map(|role| role.word().to_owned()).unwrap_or_default()
}

fn number(component: &Component) -> String {
    component.number.as_ref().and_then(Known::value).cloned().unwrap_or_default()
}

/// A text that is known, or nothing.
pub fn known(text: String) -> Option<Known<String>> {
    (!text.trim().is_empty()).then_some(Known::Value(text))
}
