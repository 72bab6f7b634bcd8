//! Whether the writer's own lists name what the steps need.

use super::Needed;
use crate::model::{Kit, KitList, Known};
use crate::units::{Measured, Range};

pub(super) fn is_listed(kit: &Kit, needed: &Needed) -> bool {
    match needed.list {
        KitList::Tools => kit.tools.iter().any(|tool| {
            let is_it = is_sized(needed, &tool.size) || is_same(needed, &tool.name, &tool.size);
            needed.range.as_ref().map_or(is_it, |range| holds(tool.range.as_ref(), range))
        }),
        KitList::Instruments => kit.instruments.iter().any(|known| {
            // "Voltage tester" is a two-pole voltage tester that is named in fewer words.
            let noun = needed.name.rsplit(' ').next().unwrap_or(&needed.name);
            is_like(&known.name, noun) || is_like(&known.name, &needed.name)
        }),
        KitList::Consumables => kit.consumables.iter().any(|known| is_like(&known.name, &needed.name)),
        KitList::Spares => kit.spares.iter().any(|known| {
            let is_it = known.thing.is_some() && known.thing == needed.thing;
            is_it || is_same(needed, &known.name, "")
        }),
        _ => false,
    }
}

/// Whether what a tool can be set to holds what it has to be set to.
fn holds(tool: Option<&Range>, needed: &Range) -> bool {
    let ends = || [&needed.min, &needed.max].into_iter().flatten();
    let accepts = |range: &Range| {
        ends().all(|end| range.accepts(&Measured::new(end.clone(), needed.unit.clone())) == Some(true))
    };
    tool.is_some_and(accepts)
}

fn is_like(name: &str, sought: &str) -> bool {
    name.to_lowercase().contains(&sought.to_lowercase())
}

/// Whether a tool is of the size that is needed: `37 mm` in a size of its own.
fn is_sized(needed: &Needed, size: &str) -> bool {
    let plain = |size: &str| size.replace(' ', "").to_lowercase();
    needed.size.as_ref().and_then(Known::value).is_some_and(|wanted| plain(wanted) == plain(size))
}

/// Whether an entry has the words of what is needed and of its size, in any order: `17 mm spanner`.
fn is_same(needed: &Needed, name: &str, size: &str) -> bool {
    let words = |name: &str, size: &str| {
        let all = format!("{name} {size}").to_lowercase();
        let mut words: Vec<String> = all.split_whitespace().map(str::to_owned).collect();
        words.sort_unstable();
        words
    };
    let wanted = needed.size.as_ref().and_then(Known::value).map_or("", String::as_str);
    words(name, size) == words(&needed.name, wanted)
}
