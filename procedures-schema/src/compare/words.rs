//! What differs, in words for people.

use super::{Changes, Named, Parts};
use crate::model::listed;

/// More than these are counted and not named.
const MOST_NAMED: usize = 3;

impl Changes {
    /// One line a sort of change, the steps first: `2 steps added: 4 and 5`, `pump changed`.
    pub fn lines(&self) -> Vec<String> {
        let mut lines = lines(&self.steps, "step", numbers);
        lines.extend(lines_of_things(&self.things));
        if !self.others.is_empty() {
            lines.push(format!("{} changed", listed(&self.others)));
        }
        lines
    }
}

fn lines_of_things(things: &Parts) -> Vec<String> {
    lines(things, "thing", |names| listed(&names.iter().map(|named| named.name.as_str()).collect::<Vec<_>>()))
}

fn lines(parts: &Parts, what: &str, call: impl Fn(&[Named]) -> String) -> Vec<String> {
    let sorts = [
        (&parts.added, "added"),
        (&parts.gone, "taken out"),
        (&parts.changed, "changed"),
        (&parts.moved, "moved"),
    ];
    let line = |(list, done): (&Vec<Named>, &str)| {
        let which = if list.len() <= MOST_NAMED { format!(": {}", call(list)) } else { String::new() };
        let plural = if list.len() == 1 { "" } else { "s" };
        format!("{} {what}{plural} {done}{which}", list.len())
    };
    sorts.into_iter().filter(|(list, _)| !list.is_empty()).map(line).collect()
}

/// `4 and 5`, of `step 4` and `step 5`.
fn numbers(names: &[Named]) -> String {
    listed(&names.iter().map(|named| named.name.trim_start_matches("step ")).collect::<Vec<_>>())
}
