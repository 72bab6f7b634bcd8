//! Singular and plural of a noun.

/// Whether a noun stands in the plural.
pub(in crate::capture) fn is_plural(word: &str) -> bool {
    singular(word) != word
}

/// The singular of a noun, well enough to compare two forms of one word.
pub(in crate::capture) fn singular(word: &str) -> String {
    let cut = |n: usize| word.get(..word.len() - n).unwrap_or(word).to_owned();
    if word.len() > 4 && word.ends_with("ies") {
        return cut(3) + "y";
    }
    // "Hoses", "cases" and "fuses" lose one letter, "glasses" and "gases" two.
    let ends = ["sses", "xes", "ches", "shes"].iter().any(|end| word.ends_with(end)) && word.len() > 4;
    if ends || matches!(word, "buses" | "gases" | "lenses") {
        return cut(2);
    }
    let keeps_s = word == "mains" || ["ss", "us", "is", "as"].iter().any(|end| word.ends_with(end));
    if word.ends_with('s') && word.len() > 3 && !keeps_s { cut(1) } else { word.to_owned() }
}

#[cfg(test)]
mod tests {
    use super::singular;

    #[test]
    fn plurals_meet_their_singulars() {
        for (plural, one) in [
            ("valves", "valve"),
            ("unions", "union"),
            ("screws", "screw"),
            ("bushes", "bush"),
            ("boxes", "box"),
            ("batteries", "battery"),
            ("gas", "gas"),
            ("gases", "gas"),
            ("hoses", "hose"),
            ("fuses", "fuse"),
            ("glasses", "glass"),
            ("mains", "mains"),
            ("pins", "pin"),
            ("glass", "glass"),
        ] {
            assert_eq!(singular(plural), one);
            assert_eq!(singular(one), one, "a singular stays");
        }
    }
}
