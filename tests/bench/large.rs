//! A large procedure made from the demo: the same job on as many like pumps as it takes.
//!
//! Circuits, sections and isolators stay one; components, connections, seals, temporary items and steps are
//! repeated with identities of their own. So the pattern is that of a real job, and so is the share of what
//! the checker has to look at.

use serde_json::Value;
use std::collections::BTreeSet;
use std::error::Error;

/// How many steps the large procedure has at least.
const N_STEPS: usize = 200;
/// How many connections it has at least.
const N_CONNECTIONS: usize = 50;

/// The lists of the map whose entries are repeated.
const REPEATED: &[&str] = &["components", "connections", "seals", "temporary", "settings"];

/// Its text in the file format.
pub(crate) fn procedure() -> Result<String, Box<dyn Error>> {
    let demo = putback_tests::text_files("public/demo")?
        .into_iter()
        .find(|file| file.is(".putback.json"))
        .ok_or("no demo in public/demo")?;
    let demo: Value = serde_json::from_str(&demo.text)?;
    let n_steps = length(&demo["steps"]).max(1);
    let n_connections = length(&demo["map"]["connections"]).max(1);
    let n_copies = N_STEPS.div_ceil(n_steps).max(N_CONNECTIONS.div_ceil(n_connections));
    Ok(serde_json::to_string_pretty(&repeat(&demo, n_copies))?)
}

fn length(list: &Value) -> usize {
    list.as_array().map_or(0, Vec::len)
}

fn repeat(demo: &Value, n_copies: usize) -> Value {
    let mut own_ids = BTreeSet::new();
    for list in REPEATED.iter().map(|name| &demo["map"][*name]).chain([&demo["steps"]]) {
        let entries = list.as_array().into_iter().flatten();
        own_ids.extend(entries.filter_map(|entry| entry["id"].as_str()).map(str::to_owned));
    }
    let mut large = demo.clone();
    for name in REPEATED {
        if let Some(list) = large["map"].get_mut(*name).and_then(Value::as_array_mut) {
            let once = std::mem::take(list);
            list.extend((0..n_copies).flat_map(|copy| renamed(&once, &own_ids, copy)));
        }
    }
    if let Some(steps) = large["steps"].as_array_mut() {
        let once = std::mem::take(steps);
        for copy in 0..n_copies {
            let is_last = copy + 1 == n_copies;
            let kept = renamed(&once, &own_ids, copy);
            steps.extend(kept.into_iter().filter(|step| is_last || !finishes(step)));
        }
    }
    large
}

/// Whether a step ends the way; only the last of the repeated jobs may.
fn finishes(step: &Value) -> bool {
    step["actions"].as_array().into_iter().flatten().any(|action| action["do"] == "finish")
}

fn renamed(list: &[Value], own_ids: &BTreeSet<String>, copy: usize) -> Vec<Value> {
    let mut list = list.to_vec();
    for value in &mut list {
        rename(value, own_ids, copy);
    }
    list
}

fn rename(value: &mut Value, own_ids: &BTreeSet<String>, copy: usize) {
    match value {
        Value::String(text) if own_ids.contains(text) => *text = format!("{text}-{copy}"),
        Value::Array(list) => list.iter_mut().for_each(|inner| rename(inner, own_ids, copy)),
        Value::Object(fields) => fields.values_mut().for_each(|inner| rename(inner, own_ids, copy)),
        _ => {}
    }
}
