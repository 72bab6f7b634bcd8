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
    let keeps_s =
        matches!(word, "bellows" | "mains") || ["ss", "us", "is", "as"].iter().any(|end| word.ends_with(end));
    if word.ends_with('s') && word.len() > 3 && !keeps_s { cut(1) } else { word.to_owned() }
}

/// The plural of a noun in the singular, or of a name that ends with one.
pub(in crate::capture) fn plural(name: &str) -> String {
    let ends = |ends: &[&str]| ends.iter().any(|end| name.ends_with(end));
    let is_vowel = |c: char| matches!(c, 'a' | 'e' | 'i' | 'o' | 'u');
    match name.strip_suffix('y').filter(|before| !before.ends_with(is_vowel)) {
        Some(before) => format!("{before}ies"),
        None if ends(&["ch", "s", "sh", "x"]) => format!("{name}es"),
        None => format!("{name}s"),
    }
}

#[cfg(test)]
mod tests {
    use super::{plural, singular};

    #[test]
    fn singulars_meet_their_plurals() {
        for one in
            ["valve", "fan cover", "box", "pressure switch", "battery", "tray", "glass", "gas", "brush"]
        {
            assert_eq!(singular(&plural(one)), one);
        }
        assert_eq!(plural("limit switch"), "limit switches");
    }

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
