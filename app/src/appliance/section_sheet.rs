//! The sheet of a section.

use crate::frame::sheet::Sheet;
use leptos::prelude::*;
use procedures_schema::model::Section;
use procedures_schema::units::Quantity;

/// Its fields.
pub fn fields(sheet: Sheet<Section>) -> AnyView {
    view! {
        {sheet.figure("Holds", Quantity::Volume, |s| s.volume.clone(), |s, volume| s.volume = volume)}
        {sheet.flag("Holds nothing in service, like a discharge pipe", |s| s.normally_empty, |s, is_so| s.normally_empty = is_so)}
    }
    .into_any()
}
