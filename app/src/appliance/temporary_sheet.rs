//! The sheet of a temporary item.

use crate::frame::sheet::{Sheet, listed};
use leptos::prelude::*;
use procedures_schema::model::{Temporary, ThingKind};

/// Its fields.
pub fn fields(sheet: Sheet<Temporary>) -> AnyView {
    view! {
        {sheet.one_of("Sits on", &[ThingKind::Connection], |t| t.on.clone(), |t, id| t.on = id)}
        {sheet.flag("Closes the open end there", |t| t.closes, |t, is_so| t.closes = is_so)}
        {sheet.flag("Is a gauge", |t| t.gauge, |t, is_so| t.gauge = is_so)}
        {sheet.flag("Warns others not to switch on", |t| t.notice, |t, is_so| t.notice = is_so)}
        {sheet.one_of("Bonds the two sides of", &[ThingKind::Connection], |t| t.bonds.clone(), |t, id| t.bonds = id)}
        {sheet.one_of("Restrains the movement of", &[ThingKind::Circuit], |t| t.restrains.clone(), |t, id| t.restrains = id)}
        {sheet.one_of("Keeps inert gas flowing through", &[ThingKind::Section], |t| t.flow.clone(), |t, id| t.flow = id)}
        {sheet.one_of("Arrives with", &[ThingKind::Component], |t| t.arrives_with.clone(), |t, id| t.arrives_with = id)}
        {sheet.flag("Is there when the job begins", |t| t.initially, |t, is_so| t.initially = is_so)}
        {sheet.text("Stays after the job, because", "", |t| t.stays.clone().unwrap_or_default(), |t, text| t.stays = (!text.is_empty()).then_some(text))}
        {sheet.text("Other names", "with commas between", |t| t.aliases.join(", "), |t, text| t.aliases = listed(&text))}
    }
    .into_any()
}
