//! The sheet of a setting.

use crate::components::fields::FlagField;
use crate::frame::sheet::{Sheet, listed};
use leptos::prelude::*;
use procedures_schema::model::{Setting, TestKind, ThingKind};

/// Its fields.
pub fn fields(sheet: Sheet<Setting>) -> AnyView {
    view! {
        {sheet.one_of("Belongs to", &[ThingKind::Component], |s| s.of.clone(), |s, id| s.of = id)}
        {sheet.one_of("Read while this is live", &[ThingKind::Circuit], |s| s.readable_when.clone(), |s, id| s.readable_when = id)}
        {sheet.flag("Is in a menu, so nothing has to be off to reach it", |s| s.in_menu, |s, is_so| s.in_menu = is_so)}
        {tests(sheet)}
        {sheet.text("Other names", "with commas between", |s| s.aliases.join(", "), |s, text| s.aliases = listed(&text))}
    }
    .into_any()
}

/// The tests that a change of it makes stale.
fn tests(sheet: Sheet<Setting>) -> AnyView {
    let affects = sheet.read(|setting| setting.affects.clone());
    let flag = move |kind: &'static TestKind| {
        let value = Signal::derive(move || affects.with(|kinds| kinds.contains(kind)));
        let send = Callback::new(move |is_so| {
            sheet.write("tests", |setting| {
                setting.affects.retain(|known| known != kind);
                if is_so {
                    setting.affects.push(kind.clone());
                }
            });
        });
        view! { <FlagField label=kind.word() value send /> }
    };
    view! {
        <fieldset class="field things">
            <legend>"After a change, taken again"</legend>
            {TestKind::ALL.iter().map(flag).collect_view()}
        </fieldset>
    }
    .into_any()
}
