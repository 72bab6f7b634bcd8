//! The fields of a connection's size and of how tight it is made.

use super::sheet::{Sheet, in_unit};
use crate::components::fields::TextField;
use crate::state::typed_measure::typed_measure;
use leptos::prelude::*;
use procedures_schema::model::{Connection, Known, Size, Tight};
use procedures_schema::units::{Figure, Quantity, Range};

/// Thread, width across flats, torque, pattern and method.
pub fn fields(sheet: Sheet<Connection>) -> AnyView {
    view! { {size_fields(sheet)}{tightness(sheet)} }.into_any()
}

/// Thread and width across flats.
pub fn size_fields(sheet: Sheet<Connection>) -> AnyView {
    view! {
        {sheet.text("Thread", "M8, G 1 1/2", |k| size(k).thread.unwrap_or_default(), |k, text| change_size(k, |size| size.thread = said(text)))}
        {sheet.figure("Across flats", Quantity::Length, |k| size(k).across_flats, |k, flats| change_size(k, |size| size.across_flats = flats))}
    }
    .into_any()
}

/// Torque, pattern and method.
pub fn tightness(sheet: Sheet<Connection>) -> AnyView {
    view! {
        {torque(sheet, "Torque from", |range| range.min.clone(), |range, figure| range.min = figure)}
        {torque(sheet, "Torque to", |range| range.max.clone(), |range, figure| range.max = figure)}
        {manner(sheet)}
    }
    .into_any()
}

/// Pattern and method.
pub fn manner(sheet: Sheet<Connection>) -> AnyView {
    view! {
        {sheet.text("Pattern", "cross", |k| tight(k).pattern, |k, text| change_tight(k, |tight| tight.pattern = text))}
        {sheet.text("Or tight in words", "hand tight and a quarter turn", |k| tight(k).method, |k, text| change_tight(k, |tight| tight.method = text))}
    }
    .into_any()
}

/// One end of the torque range.
fn torque(
    sheet: Sheet<Connection>,
    label: &'static str,
    get: fn(&Range) -> Option<Figure>,
    set: fn(&mut Range, Option<Figure>),
) -> AnyView {
    let range = sheet.read(|k| tight(k).torque);
    let value = Signal::derive(move || {
        range.get().as_ref().and_then(get).map(|figure| figure.to_string()).unwrap_or_default()
    });
    let unit = sheet.unit(Quantity::Torque, move || range.get().map(|range| range.unit));
    let send = Callback::new(move |typed: String| {
        let measured = typed_measure(&typed, &unit.get_untracked(), Quantity::Torque);
        if measured.is_none() && !typed.trim().is_empty() {
            return;
        }
        sheet.write(label, |connection| {
            change_tight(connection, |tight| {
                let unit = measured.as_ref().map_or_else(|| unit.get_untracked(), |m| m.unit.clone());
                let mut range = tight.torque.take().unwrap_or(Range::new(None, None, unit.clone()));
                // A unit that is typed at one end is that of both.
                range.unit = unit;
                set(&mut range, measured.map(|measured| measured.value));
                tight.torque = (range.min.is_some() || range.max.is_some()).then_some(range);
            });
        });
    });
    view! { <TextField label=in_unit(label, unit) value send is_figure=true /> }.into_any()
}

fn said(text: String) -> Option<String> {
    (!text.trim().is_empty()).then_some(text)
}

fn size(connection: &Connection) -> Size {
    connection.size.as_ref().and_then(Known::value).cloned().unwrap_or_default()
}

fn tight(connection: &Connection) -> Tight {
    connection.tight.as_ref().and_then(Known::value).cloned().unwrap_or_default()
}

/// Changes the size; one of which nothing is left says nothing.
fn change_size(connection: &mut Connection, change: impl FnOnce(&mut Size)) {
    let mut size = size(connection);
    change(&mut size);
    connection.size = (size != Size::default()).then_some(Known::Value(size));
}

fn change_tight(connection: &mut Connection, change: impl FnOnce(&mut Tight)) {
    let mut tight = tight(connection);
    change(&mut tight);
    connection.tight = (tight != Tight::default()).then_some(Known::Value(tight));
}
