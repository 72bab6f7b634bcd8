//! The lists of the kit and what is filled in for each entry.

use procedures_schema::model::{Kit, KitList, Known};
use procedures_schema::units::{Measured, Range};

/// A list of the kit.
pub struct Listed {
    /// Which.
    pub list: KitList,
    /// Its heading.
    pub heading: &'static str,
    /// What one entry is called.
    pub one: &'static str,
    /// The key that adds one.
    pub add: &'static str,
    /// How many entries it has.
    pub count: fn(&Kit) -> usize,
    /// What is filled in for an entry.
    pub columns: &'static [Column],
}

/// Something that is filled in for an entry.
pub struct Column {
    /// What it is called.
    pub label: &'static str,
    /// An example.
    pub hint: &'static str,
    /// What the kit says.
    pub get: fn(&Kit, usize) -> Option<String>,
    /// What becomes of what is typed.
    pub set: Kept,
}

/// How something that is typed is kept.
pub enum Kept {
    /// Key by key.
    Words(fn(&mut Kit, usize, String)),
    /// A whole number of at least one; what is none is left as it was.
    Count(fn(&mut Kit, usize, u32)),
    /// A range with its unit, once it is typed to its end.
    Range(fn(&mut Kit, usize, Option<Range>)),
    /// A value with its unit, once it is typed to its end.
    Amount(fn(&mut Kit, usize, Option<Measured>)),
}

/// Every list, in the order in which a van is loaded.
pub static LISTS: [Listed; 5] = [
    Listed {
        list: KitList::Tools,
        heading: "Tools",
        one: "tool",
        add: "Add a tool",
        count: |kit| kit.tools.len(),
        columns: &[
            Column {
                label: "Name",
                hint: "spanner",
                get: |kit, at| kit.tools.get(at).map(|tool| tool.name.clone()),
                set: Kept::Words(|kit, at, typed| in_place(&mut kit.tools, at, |t| t.name = typed)),
            },
            Column {
                label: "Size",
                hint: "17 mm",
                get: |kit, at| kit.tools.get(at).map(|tool| tool.size.clone()),
                set: Kept::Words(|kit, at, typed| in_place(&mut kit.tools, at, |t| t.size = typed)),
            },
            Column {
                label: "Can be set to",
                hint: "5 to 25 N·m",
                get: |kit, at| kit.tools.get(at).map(|tool| shown(tool.range.as_ref())),
                set: Kept::Range(|kit, at, range| in_place(&mut kit.tools, at, |t| t.range = range)),
            },
        ],
    },
    Listed {
        list: KitList::Instruments,
        heading: "Instruments",
        one: "instrument",
        add: "Add an instrument",
        count: |kit| kit.instruments.len(),
        columns: &[
            Column {
                label: "Name",
                hint: "voltage tester",
                get: |kit, at| kit.instruments.get(at).map(|instrument| instrument.name.clone()),
                set: Kept::Words(|kit, at, typed| in_place(&mut kit.instruments, at, |i| i.name = typed)),
            },
            Column {
                label: "What it must be",
                hint: "two-pole, calibrated within 12 months",
                get: |kit, at| kit.instruments.get(at).map(|instrument| instrument.demand.clone()),
                set: Kept::Words(|kit, at, typed| in_place(&mut kit.instruments, at, |i| i.demand = typed)),
            },
            Column {
                label: "Shows",
                hint: "0 to 60 mbar",
                get: |kit, at| kit.instruments.get(at).map(|instrument| shown(instrument.range.as_ref())),
                set: Kept::Range(|kit, at, range| in_place(&mut kit.instruments, at, |i| i.range = range)),
            },
            Column {
                label: "To the nearest",
                hint: "0.1 mbar",
                get: |kit, at| {
                    kit.instruments.get(at).map(|instrument| shown(instrument.resolution.as_ref()))
                },
                set: Kept::Amount(|kit, at, amount| {
                    in_place(&mut kit.instruments, at, |i| i.resolution = amount);
                }),
            },
        ],
    },
    Listed {
        list: KitList::Consumables,
        heading: "Used up",
        one: "consumable",
        add: "Add a consumable",
        count: |kit| kit.consumables.len(),
        columns: &[
            Column {
                label: "Name",
                hint: "leak detection fluid",
                get: |kit, at| kit.consumables.get(at).map(|used| used.name.clone()),
                set: Kept::Words(|kit, at, typed| in_place(&mut kit.consumables, at, |c| c.name = typed)),
            },
            Column {
                label: "How much",
                hint: "10 l",
                get: |kit, at| kit.consumables.get(at).map(|used| shown(used.amount.as_ref())),
                set: Kept::Amount(|kit, at, amount| {
                    in_place(&mut kit.consumables, at, |c| c.amount = amount);
                }),
            },
        ],
    },
    Listed {
        list: KitList::Protection,
        heading: "Protection",
        one: "piece of protection",
        add: "Add a piece of protection",
        count: |kit| kit.protection.len(),
        columns: &[
            Column {
                label: "Name",
                hint: "gloves",
                get: |kit, at| kit.protection.get(at).map(|worn| worn.name.clone()),
                set: Kept::Words(|kit, at, typed| in_place(&mut kit.protection, at, |p| p.name = typed)),
            },
            Column {
                label: "Class or standard",
                hint: "against cuts",
                get: |kit, at| kit.protection.get(at).map(|worn| worn.demand.clone()),
                set: Kept::Words(|kit, at, typed| in_place(&mut kit.protection, at, |p| p.demand = typed)),
            },
        ],
    },
    Listed {
        list: KitList::Spares,
        heading: "Spares",
        one: "spare",
        add: "Add a spare",
        count: |kit| kit.spares.len(),
        columns: &[
            Column {
                label: "Name",
                hint: "flat washer 1 in",
                get: |kit, at| kit.spares.get(at).map(|spare| spare.name.clone()),
                set: Kept::Words(|kit, at, typed| in_place(&mut kit.spares, at, |s| s.name = typed)),
            },
            Column {
                label: "How many",
                hint: "1",
                get: |kit, at| kit.spares.get(at).map(|spare| spare.quantity.to_string()),
                set: Kept::Count(|kit, at, count| in_place(&mut kit.spares, at, |s| s.quantity = count)),
            },
            Column {
                label: "Number",
                hint: "as it is ordered",
                get: |kit, at| {
                    let number = kit.spares.get(at)?.number.as_ref();
                    Some(number.and_then(Known::value).cloned().unwrap_or_default())
                },
                set: Kept::Words(|kit, at, typed| {
                    let number = (!typed.trim().is_empty()).then(|| Known::Value(typed));
                    in_place(&mut kit.spares, at, |s| s.number = number);
                }),
            },
        ],
    },
];

fn shown<T: ToString>(value: Option<&T>) -> String {
    value.map(ToString::to_string).unwrap_or_default()
}

fn in_place<T>(list: &mut [T], at: usize, set: impl FnOnce(&mut T)) {
    if let Some(entry) = list.get_mut(at) {
        set(entry);
    }
}
