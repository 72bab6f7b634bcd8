//! What to bring, as the steps and the map say it: spares and seals over the worst way, spanners by their width across
//! flats, what torques and readings need, what is used up and what is placed for the job.
//!
//! What the writer puts on the lists of the kit stands for what it names and is not worked out again.

mod instruments;
mod listed;
mod spares;
mod tools;
mod torques;
mod used_up;
mod widest;

use crate::model::{Action, Answer, Id, KitList, Known, Procedure, Step};
use crate::units::{Measured, Range};

/// Something that has to be brought.
#[derive(Clone, Debug, PartialEq)]
pub struct Needed {
    /// The list on which it stands.
    pub list: KitList,
    /// Name.
    pub name: String,
    /// Size in words of the trade, or who finds it out.
    pub size: Option<Known<String>>,
    /// How many on the way that takes most of them.
    pub quantity: u32,
    /// What a tool is set to, or what an instrument shows.
    pub range: Option<Range>,
    /// The smallest difference that an instrument shows, as the limits are written.
    pub resolution: Option<Measured>,
    /// The number under which it is ordered, or who finds it out.
    pub number: Option<Known<String>>,
    /// The component, seal or temporary item.
    pub thing: Option<Id>,
    /// The numbers of the steps that need it, each once, in order.
    pub steps: Vec<usize>,
}

impl Needed {
    fn new(list: KitList, name: &str) -> Self {
        Self {
            list,
            name: name.to_owned(),
            size: None,
            quantity: 1,
            range: None,
            resolution: None,
            number: None,
            thing: None,
            steps: Vec::new(),
        }
    }

    fn at(&mut self, step: usize) {
        if self.steps.last() != Some(&step) {
            self.steps.push(step);
        }
    }
}

impl std::fmt::Display for Needed {
    /// In words, without its steps: `flat washer · 1 in · 2 of them · [later: number]`.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.name)?;
        if let Some(size) = &self.size {
            write!(f, " · {}", known(size, "size"))?;
        }
        if self.quantity > 1 {
            write!(f, " · {} of them", self.quantity)?;
        }
        if let Some(range) = &self.range {
            write!(f, " · {range}")?;
        }
        if let Some(resolution) = &self.resolution {
            write!(f, " · to the nearest {resolution}")?;
        }
        if let Some(number) = &self.number {
            write!(f, " · {}", known(number, "number"))?;
        }
        Ok(())
    }
}

fn known(value: &Known<String>, what: &str) -> String {
    value.value().cloned().unwrap_or_else(|| format!("[later: {what}]"))
}

/// What the steps of a procedure need and its kit does not name, by the lists of the kit, each in the order of the steps.
pub fn needed(procedure: &Procedure) -> Vec<Needed> {
    let done = done(procedure);
    let mut all = tools::tools(procedure, &done);
    all.extend(instruments::instruments(procedure, &done));
    all.extend(used_up::used_up(procedure, &done));
    all.extend(spares::spares(procedure, &done));
    all.retain(|needed| !listed::is_listed(&procedure.kit, needed));
    all
}

/// An action that may be done, with what it depends on.
struct Done<'p> {
    /// The number of its step; of the one whose test failed, if it follows that.
    number: usize,
    /// The answers on which it is done, a group for each step that it stands in; the answers of a group as those of a
    /// step.
    when: Vec<&'p [Answer]>,
    /// The connections of which only one is undone, the one that a failed test points at.
    one_of: Vec<&'p Id>,
    action: &'p Action,
}

/// Every action, those after a failed test among them.
fn done(procedure: &Procedure) -> Vec<Done<'_>> {
    let mut all = Vec::new();
    for (at, step) in procedure.steps.iter().enumerate() {
        gather(step, at + 1, &[], &[], &mut all);
    }
    all
}

fn gather<'p>(
    step: &'p Step,
    number: usize,
    outer: &[&'p [Answer]],
    one_of: &[&'p Id],
    all: &mut Vec<Done<'p>>,
) {
    let when: Vec<&[Answer]> = outer.iter().copied().chain([step.when.as_slice()]).collect();
    for action in &step.actions {
        all.push(Done { number, when: when.clone(), one_of: one_of.to_vec(), action });
        if let Some(on_fail) = &action.on_fail {
            let pointed_at =
                on_fail.steps.iter().flat_map(|after| &after.actions).filter(|undone| undone.one_of);
            let one_of: Vec<&Id> = pointed_at.flat_map(|undone| &undone.on).collect();
            for after in &on_fail.steps {
                gather(after, number, &when, &one_of, all);
            }
        }
    }
}
