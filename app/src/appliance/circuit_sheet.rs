//! The sheet of a circuit.

use crate::frame::sheet::{Sheet, words};
use leptos::prelude::*;
use procedures_schema::model::{Circuit, CircuitKind, ThingKind};
use procedures_schema::units::Quantity;

/// Its fields.
pub fn fields(sheet: Sheet<Circuit>) -> AnyView {
    let kinds = words(CircuitKind::ALL.iter().map(CircuitKind::word));
    view! {
        {sheet.word("Carries", kinds, |c| c.kind.word().to_owned(), |c, word| c.kind = CircuitKind::from_word(&word))}
        {sheet.any_of("Dead when these are dead", &[ThingKind::Circuit], |c| c.fed_by.clone(), |c, ids| c.fed_by = ids)}
        {sheet.flag("Its medium burns or explodes with air", |c| c.flammable, |c, is_so| c.flammable = is_so)}
        {sheet.flag("Gas is mixed with air ahead of the burner", |c| c.premix, |c, is_so| c.premix = is_so)}
        {sheet.figure("Wait after switching off, as its label says", Quantity::Time, |c| c.discharge_wait.clone(), |c, wait| c.discharge_wait = wait)}
    }
    .into_any()
}
