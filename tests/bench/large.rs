//! A large procedure made from the demo: the same job on as many like pumps as it takes.
//!
//! Circuits, sections and isolators stay one; components, connections, seals, temporary items and steps are
//! repeated with identities of their own. So the pattern is that of a real job, and so is the share of what
//! the checker has to look at.

use serde_json::Value;
use std::collections::BTreeSet;
use std::error::Error;

/// How many connections it has at least.
const N_CONNECTIONS: usize = 50;

/// The lists of the map whose entries are repeated.
const REPEATED: &[&str] = &["components", "connections", "seals", "temporary", "settings"];

/// Its text in the file format, of at least so many steps and with so many questions.
pub(crate) fn procedure(n_steps: usize, n_questions: usize) -> Result<String, Box<dyn Error>> {
    Ok(serde_json::to_string_pretty(&large(n_steps, n_questions)?)?)
}

/// The same with exactly so many steps: the last job is written half, as while somebody writes.
pub(crate) fn half_written(n_steps: usize) -> Result<String, Box<dyn Error>> {
    let mut large = large(n_steps, 0)?;
    large["steps"].as_array_mut().ok_or("it has no steps")?.truncate(n_steps);
    Ok(serde_json::to_string_pretty(&large)?)
}

fn large(n_steps: usize, n_questions: usize) -> Result<Value, Box<dyn Error>> {
    let demo = putback_tests::text_files("public/demo")?
        .into_iter()
        .find(|file| file.path.ends_with("circulation-pump.putback.json"))
        .ok_or("the pump demo is not in public/demo")?;
    let demo: Value = serde_json::from_str(&demo.text)?;
    let n_connections = length(&demo["map"]["connections"]).max(1);
    let by_steps = n_steps.div_ceil(length(&demo["steps"]).max(1));
    let n_copies = by_steps.max(N_CONNECTIONS.div_ceil(n_connections)).max(n_questions);
    let mut large = repeat(&demo, n_copies);
    ask(&mut large, n_questions);
    Ok(large)
}

/// Puts the photograph of a plug in each of the first copies on an answer of a question of its own, so that
/// each question touches a cell and none touches that of another.
fn ask(large: &mut Value, n_questions: usize) {
    let questions =
        (0..n_questions).map(|n| serde_json::json!({ "id": format!("q{n}"), "words": "Is it dry?" }));
    large["questions"] = questions.collect();
    let steps = large["steps"].as_array_mut().into_iter().flatten();
    let photographs = steps.filter(|step| step["actions"][0]["do"] == "photograph");
    for (n, step) in photographs.take(n_questions).enumerate() {
        step["when"] = serde_json::json!([{ "question": format!("q{n}"), "answer": "yes" }]);
        step["actions"][0]["on"] = serde_json::json!([format!("plug-{n}")]);
    }
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
