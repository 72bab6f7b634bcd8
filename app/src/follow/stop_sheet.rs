//! What STOP opens: large words, and where this appliance is shut off. It works while storing fails.

use super::job_store::JobStore;
use crate::components::caution::Caution;
use leptos::prelude::*;
use procedures_schema::model::{ApplianceMap, CircuitKind, Country, Handle, Isolator};

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
        "I must leave",
        "Leave it shut and locked. Close every open end. Hang a notice. Tell somebody. What you have ticked is kept.",
        &[],
    ),
];

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
    let map = move || jobs.moment().with(|moment| moment.procedure.map.clone());
    view! {
        <dialog class="stop-sheet" node_ref=stop aria-labelledby="stop-title">
            <div class="stop-head">
                <h2 id="stop-title">"STOP"</h2>
                <button type="button" class="back" on:click=close>"Back to the step"</button>
            </div>
            <p class="call">{call}</p>
            {move || EMERGENCIES.map(|(name, first, kinds)| emergency(name, first, kinds, &map()))}
            <h3>"Every isolator of this appliance"</h3>
            {move || isolators(&map(), None)}
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

fn emergency(
    name: &'static str,
    first: &'static str,
    kinds: &'static [CircuitKind],
    map: &ApplianceMap,
) -> impl IntoView + use<> {
    view! {
        <section class="emergency">
            <h3>{name}</h3>
            <p>{first}</p>
            {(!kinds.is_empty()).then(|| isolators(map, Some(kinds)))}
        </section>
    }
}

/// The isolators of the circuits of some kinds, or of all, with the place where they are.
fn isolators(map: &ApplianceMap, kinds: Option<&[CircuitKind]>) -> impl IntoView + use<> {
    let is_wanted = |kind: &CircuitKind| kinds.is_none_or(|kinds| kinds.contains(kind));
    let borders = |isolator: &&Isolator| {
        let mut sections = map.sections().filter(|(circuit, _)| is_wanted(&circuit.kind));
        sections.any(|(_, section)| isolator.between.0 == section.id || isolator.between.1 == section.id)
    };
    let by_hand =
        |isolator: &&Isolator| !matches!(isolator.handle, Handle::Automatic | Handle::Relief | Handle::None);
    let line = |isolator: &Isolator| {
        let place = (!isolator.location.is_empty()).then(|| format!(": {}", isolator.location));
        view! { <li><strong>{isolator.name.clone()}</strong>{place}</li> }
    };
    let lines: Vec<_> = map.isolators.iter().filter(by_hand).filter(borders).map(line).collect();
    (!lines.is_empty()).then(|| view! { <ul class="isolators">{lines}</ul> })
}

#[cfg(test)]
mod tests {
    use super::{Country, whom_to_call};
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test]
    fn a_number_is_told_only_where_it_is_known() {
        assert!(whom_to_call(Some(&Country::UnitedStates)).contains("call 911 in US"));
        for unknown in [None, Some(Country::Elsewhere), Some(Country::Other("XX".into()))] {
            assert!(!whom_to_call(unknown.as_ref()).contains(|letter: char| letter.is_ascii_digit()));
        }
    }
}
