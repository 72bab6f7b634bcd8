//! The house rules as tests: what every source file of the repository keeps to.
//!
//! Each rule has a list of known offenders that may only shrink: a new offender fails, and so does an entry
//! whose offence is gone. Clippy and rustc check what they can; here is what they cannot see.

mod arrows;
mod headers;
mod purity;
mod rules;
mod sizes;
mod source;
mod wording;

/// Fails when somebody offends who is not known for it, or somebody known no longer offends.
///
/// An offence is `place: what is wrong`; the list of the known names places only.
fn judge(rule: &str, offences: &[(String, String)], known: &[&str]) {
    let unknown: Vec<String> = offences
        .iter()
        .filter(|(place, _)| !known.contains(&place.as_str()))
        .map(|(place, what)| format!("{place}: {what}"))
        .collect();
    let reformed: Vec<&str> =
        known.iter().copied().filter(|known| !offences.iter().any(|(place, _)| place == known)).collect();
    assert!(unknown.is_empty(), "{rule}\n  {}\n", unknown.join("\n  "));
    assert!(reformed.is_empty(), "{rule}: strike off the list of known offenders: {reformed:?}");
}

#[test]
fn a_new_offence_and_a_mended_one_both_fail() {
    let offences = [("a.rs".to_owned(), "too long".to_owned())];
    judge("sizes", &offences, &["a.rs"]);
    assert!(std::panic::catch_unwind(|| judge("sizes", &offences, &[])).is_err());
    assert!(std::panic::catch_unwind(|| judge("sizes", &[], &["a.rs"])).is_err());
}
