//! Which earlier versions of a procedure stay: the last twenty, and of each of the last fourteen days the last
//! one. Versions are known here by when they were kept alone; days are numbered by the caller, who knows where
//! midnight is.

use std::collections::BTreeMap;

/// So many of the last versions stay.
pub const LAST: usize = 20;
/// For so many days, today included, the last version of each stays.
pub const DAYS: i64 = 14;

/// When a version was kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Moment {
    /// Milliseconds since 1970.
    pub at_ms: u64,
    /// The number of the day that it was, counted from any day.
    pub day: i64,
}

/// Whether each of the versions stays, in the order in which they are given.
///
/// A version that is from tomorrow, because a clock was set back, counts as one of the last.
pub fn staying(versions: &[Moment], today: i64) -> Vec<bool> {
    let mut order: Vec<usize> = (0..versions.len()).collect();
    order.sort_by_key(|position| std::cmp::Reverse((versions.get(*position), *position)));
    let mut stays = vec![false; versions.len()];
    let mut last_of_day: BTreeMap<i64, usize> = BTreeMap::new();
    for (rank, position) in order.into_iter().enumerate() {
        let (Some(version), Some(stay)) = (versions.get(position), stays.get_mut(position)) else { continue };
        let is_recent = today.saturating_sub(version.day) < DAYS;
        let is_last_of_day = *last_of_day.entry(version.day).or_insert(position) == position;
        *stay = rank < LAST || (is_recent && is_last_of_day);
    }
    stays
}

#[cfg(test)]
mod tests;
