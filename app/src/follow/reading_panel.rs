//! A figure to be read: what, how much so far, against which limits, and the keypad.

use super::task::{Task, Wanted};
use crate::components::keypad::Keypad;
use crate::components::limits_bar::limits_bar;
use leptos::prelude::*;
use procedures_schema::units::{Figure, Measured};

/// The figure and the keypad, with a minus key only where the limits reach below zero or are unknown.
#[component]
pub fn ReadingPanel(
    /// What has to be done next.
    task: Memo<Task>,
    /// The figure being typed.
    figure: RwSignal<String>,
) -> impl IntoView {
    let wanted = Memo::new(move |_| match task.get() {
        Task::Reading(wanted) => Some(wanted),
        _ => None,
    });
    move || {
        wanted.get().map(|wanted| {
            let allows_minus = allows_minus(&wanted);
            view! {
                <section class="panel" aria-label="Reading">
                    {figure_so_far(wanted, figure)}
                    <Keypad figure allows_minus />
                </section>
            }
        })
    }
}

fn allows_minus(wanted: &Wanted) -> bool {
    let limits = wanted.reading.limits.as_ref();
    limits.and_then(|limits| limits.min.as_ref()).is_none_or(|min| min.value() < 0.0)
}

fn figure_so_far(wanted: Wanted, figure: RwSignal<String>) -> impl IntoView {
    let limits = wanted.reading.limits;
    let unit = limits.as_ref().map(|limits| limits.unit.clone());
    let shown_unit = unit.as_ref().map(|unit| unit.shown().to_owned());
    let allowed = limits.as_ref().map(|limits| format!("allowed: {limits}"));
    let value = move || Some(Measured::new(Figure::parse(&figure.get()).ok()?, unit.clone()?));
    let bar = move || limits.as_ref().and_then(|limits| limits_bar(limits, value().as_ref()));
    let typed = move || match figure.get() {
        figure if figure.is_empty() => view! { <span class="to-fill"></span> }.into_any(),
        figure => figure.into_any(),
    };
    view! {
        <div class="figure">
            <p class="what">{wanted.reading.what}</p>
            <p class="value" aria-live="polite">{typed} " " {shown_unit}</p>
            {bar}
            {allowed.map(|allowed| view! { <p class="why">{allowed}</p> })}
        </div>
    }
}
