//! What stays of many versions, and that thinning often is thinning once.

use super::{DAYS, LAST, Moment, staying};

const HOUR: u64 = 3_600_000;
const DAY: u64 = 24 * HOUR;

fn at(at_ms: u64) -> Moment {
    Moment { at_ms, day: i64::try_from(at_ms / DAY).unwrap() }
}

/// The versions that stay.
fn kept(versions: &[Moment], today: i64) -> Vec<Moment> {
    versions
        .iter()
        .zip(staying(versions, today))
        .filter(|(_, stays)| *stays)
        .map(|(version, _)| *version)
        .collect()
}

#[test]
fn the_last_twenty_stay_however_old_they_are() {
    let versions: Vec<Moment> = (0..30).map(|n| at(n * HOUR / 2)).collect();
    assert_eq!(kept(&versions, 1_000), versions[10..]);
}

#[test]
fn of_each_of_fourteen_days_the_last_one_stays() {
    // Ten a day for thirty days: the last twenty are those of two days.
    let versions: Vec<Moment> =
        (0..30).flat_map(|day| (0..10).map(move |n| at(day * DAY + n * HOUR))).collect();
    let kept = kept(&versions, 29);
    let of_days: Vec<Moment> = (16..28).map(|day| at(day * DAY + 9 * HOUR)).collect();
    assert_eq!(kept[..12], of_days);
    assert_eq!(kept[12..], versions[280..]);
}

#[test]
fn the_order_in_which_they_are_given_does_not_matter() {
    let versions: Vec<Moment> = (0..60).map(|n| at(n * 7 * HOUR)).collect();
    let mut shuffled: Vec<Moment> = (0..60).map(|n| versions[(n * 37) % 60]).collect();
    let mut kept_of_shuffled = kept(&shuffled, 17);
    kept_of_shuffled.sort();
    assert_eq!(kept_of_shuffled, kept(&versions, 17));
    shuffled.reverse();
    assert_eq!(kept(&shuffled, 17).len(), kept_of_shuffled.len());
}

#[test]
fn thinning_after_every_version_leaves_what_thinning_at_the_end_leaves() {
    // Writing in spells of different lengths, thinned after each version as the page does.
    let mut step = 17_u64;
    let (mut all, mut thinned, mut now) = (Vec::new(), Vec::new(), 0);
    for _ in 0..400 {
        step = (step * 7_919 + 13) % 104_729;
        now += step % (9 * HOUR) * 1_000 % (9 * HOUR);
        let today = at(now).day;
        all.push(at(now));
        thinned.push(at(now));
        thinned = kept(&thinned, today);
        assert_eq!(thinned, kept(&all, today));
        assert!(thinned.len() <= LAST + usize::try_from(DAYS).unwrap());
    }
    assert!(all.len() > thinned.len());
}

#[test]
fn a_version_from_tomorrow_stays() {
    let versions: Vec<Moment> = (0..40).map(|n| at(n * HOUR)).collect();
    assert!(kept(&versions, 0).contains(&versions[39]));
    assert!(kept(&[], 0).is_empty());
}
