//! What STOP opens: large words, and where this appliance is shut off. It works while storing fails.

use super::isolators::IsolatorNow;
use super::job_store::JobStore;
use crate::components::caution::Caution;
use leptos::prelude::*;
use procedures_schema::model::{ApplianceMap, CircuitKind, Country, Id};

/// How the last of them is called.
const LEAVING: &str = "I must leave";
/// What may have happened, what to do first, and which circuits to shut.
const EMERGENCIES: [(&str, &str, &[CircuitKind]); 6] = [
    (
        "Smell of gas",
        "No flame, no switch, no plug. Open windows and doors. Shut the gas if you can reach it. Everybody out; call from outside.",
        &[CircuitKind::FuelGas],
    ),
    (
        "Water escaping",
        "Keep away from hot water and from anything electrical that is wet. Switch off, then shut the water.",
        &[
            CircuitKind::MainsElectricity,
            CircuitKind::HeatingWater,
            CircuitKind::DomesticWater,
            CircuitKind::NetworkPrimary,
        ],
    ),
    (
        "Electric shock",
        "Do not touch the person before it is switched off. Then call for help and give first aid.",
        &[CircuitKind::MainsElectricity, CircuitKind::DcBus],
    ),
    ("Fire", "Warn everybody and get out. Shut off only what is on your way. Call from outside.", &[]),
    (
        "CO alarm, headache, sickness",
        "Out into fresh air, everybody. Appliance off and gas shut only if that costs no time. Call from outside.",
        &[CircuitKind::FuelGas],
    ),
    (
        LEAVING,
        "Leave it shut and locked. Close every open end. Hang a notice. Tell somebody. What you have ticked is kept.",
        &[],
    ),
];

/// Where the sheet says how to leave.
pub const LEAVE: &str = "stop-leave";

/// The sheet.
#[component]
pub fn StopSheet(
    /// The state of Follow.
    jobs: JobStore,
    /// The sheet itself, for the key that opens it.
    stop: NodeRef<leptos::html::Dialog>,
) -> impl IntoView {
    let close = move |_| {
        if let Some(sheet) = stop.get_untracked() {
            sheet.close();
        }
    };
    let call = move || jobs.moment().with(|moment| whom_to_call(moment.procedure.country.as_ref()));
    let call_key = move || jobs.moment().with(|moment| moment.procedure.country.as_ref().and_then(call_key));
    let every =
        move || jobs.moment().with(|moment| isolators(&moment.procedure.map, &moment.isolators, None));
    let emergencies = move || {
        jobs.moment().with(|moment| {
            EMERGENCIES.map(|(name, first, kinds)| {
                let shut = (!kinds.is_empty())
                    .then(|| isolators(&moment.procedure.map, &moment.isolators, Some(kinds)));
                emergency(name, first, shut)
            })
        })
    };
    view! {
        <dialog class="stop-sheet" node_ref=stop aria-labelledby="stop-title">
            <div class="stop-head">
                <h2 id="stop-title">"STOP"</h2>
                <button type="button" class="back" on:click=close>"Back to the step"</button>
            </div>
            {call_key}
            <p class="call">{call}</p>
            <h3>"Every isolator of this appliance, as it stands now"</h3>
            {every}
            {emergencies}
            <Caution />
        </dialog>
    }
}

/// The numbers of the country that the procedure is written for; the reader may be elsewhere.
fn whom_to_call(country: Option<&Country>) -> String {
    match country.and_then(|country| Some((country, country.emergency_numbers()?))) {
        Some((country, numbers)) => {
            format!("In danger: call {numbers} in {}, elsewhere the emergency number there.", country.word())
        }
        None => "In danger: call the emergency number of your country.".to_owned(),
    }
}

/// The key that calls the first of the numbers.
fn call_key(country: &Country) -> Option<impl IntoView + use<>> {
    let numbers = country.emergency_numbers()?;
    let address = call_address(numbers)?;
    Some(view! { <a class="call-key" href=address>"Call " {numbers}</a> })
}

fn call_address(numbers: &str) -> Option<String> {
    let first = numbers.split_whitespace().next()?;
    Some(format!("tel:{first}"))
}

fn emergency(
    name: &'static str,
    first: &'static str,
    isolators: Option<impl IntoView + 'static>,
) -> impl IntoView {
    let id = (name == LEAVING).then_some(LEAVE);
    view! {
        <section class="emergency" id=id>
            <h3>{name}</h3>
            <p>{first}</p>
            {isolators}
        </section>
    }
}

/// The isolators of the circuits of some kinds, or of all: how each stands, and the place where it is.
fn isolators(
    map: &ApplianceMap,
    now: &[IsolatorNow],
    kinds: Option<&[CircuitKind]>,
) -> impl IntoView + use<> {
    let is_wanted = |kind: &CircuitKind| kinds.is_none_or(|kinds| kinds.contains(kind));
    let borders = |id: &Id| {
        let between =
            map.isolators.iter().find(|isolator| isolator.id == *id).map(|isolator| &isolator.between);
        let mut sections = map.sections().filter(|(circuit, _)| is_wanted(&circuit.kind));
        between.is_some_and(|ends| sections.any(|(_, section)| ends.0 == section.id || ends.1 == section.id))
    };
    let line = |isolator: &IsolatorNow| {
        let place = (!isolator.location.is_empty()).then(|| format!(", {}", isolator.location));
        view! {
            <li>
                <strong>{isolator.name.clone()}</strong>
                {place}
                ": "
                <span class:still-open=isolator.is_open>{isolator.words.clone()}</span>
            </li>
        }
    };
    let lines: Vec<_> = now.iter().filter(|isolator| borders(&isolator.id)).map(line).collect();
    (!lines.is_empty()).then(|| view! { <ul class="isolators">{lines}</ul> })
}

#[cfg(test)]
mod tests {
    use super::{Country, call_address, whom_to_call};
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test]
    fn a_number_is_told_only_where_it_is_known() {
        assert!(whom_to_call(Some(&Country::UnitedStates)).contains("call 911 in US"));
        for unknown in [None, Some(Country::Elsewhere), Some(Country::Other("XX".into()))] {
            assert!(!whom_to_call(unknown.as_ref()).contains(|letter: char| letter.is_ascii_digit()));
        }
    }

    #[wasm_bindgen_test]
    fn the_key_calls_the_first_number() {
        assert_eq!(call_address("999 or 112").as_deref(), Some("tel:999"));
    }
}
