//! The other steps that ask the same and get the same answer: all of them, or those that are ticked.

use crate::components::fields::FlagField;
use crate::state::alike::Alike;
use leptos::prelude::*;
use procedures_schema::model::Id;

/// The line, and below it the steps once somebody wants to choose among them.
#[component]
pub fn AlsoFor(
    /// The other steps.
    alike: Vec<Alike>,
    /// Those that get the answer.
    also: RwSignal<Vec<Id>>,
) -> impl IntoView {
    let is_open = RwSignal::new(false);
    let n = alike.len();
    let all: Vec<Id> = alike.iter().map(|other| other.step.clone()).collect();
    let label = if n == 1 {
        alike.first().map(|only| format!("The same for step {} too", only.number)).unwrap_or_default()
    } else {
        format!("The same for all {} that ask it", n + 1)
    };
    let is_any = Signal::derive(move || also.with(|also| !also.is_empty()));
    let set_all = Callback::new(move |is_so: bool| also.set(if is_so { all.clone() } else { Vec::new() }));
    let alike = StoredValue::new(alike);
    let each = move |other: Alike| {
        let (mine, toggled) = (other.step.clone(), other.step);
        let value = Signal::derive(move || also.with(|also| also.contains(&mine)));
        let send = Callback::new(move |is_so: bool| {
            also.update(|also| {
                also.retain(|known| *known != toggled);
                if is_so {
                    also.push(toggled.clone());
                }
            });
        });
        let label = format!("{} {}", other.number, other.words);
        view! { <FlagField label value send /> }
    };
    let which = move || {
        is_open.get().then(|| {
            view! {
                <div class="which" role="group" aria-label="Steps that get the answer">
                    {alike.get_value().into_iter().map(each).collect_view()}
                </div>
            }
        })
    };
    let key = (n > 1).then(|| {
        view! {
            <button
                type="button" class="quiet" aria-expanded=move || is_open.get().to_string()
                on:click=move |_| is_open.update(|is_open| *is_open = !*is_open)
            >"Choose which"</button>
        }
    });
    view! { <div class="also-for"><FlagField label value=is_any send=set_all /> {key} {which}</div> }
}
