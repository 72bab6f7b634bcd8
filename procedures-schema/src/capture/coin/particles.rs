//! Words around a name that belong to none: what belongs to the verb, says how it is done or with what.

/// Whether a word only says what a screw is turned with: "two Torx T20 screws".
pub(super) fn is_drive(text: &str) -> bool {
    let is_size =
        text.strip_prefix('t').is_some_and(|n| !n.is_empty() && n.bytes().all(|b| b.is_ascii_digit()));
    is_size || matches!(text, "cross-head" | "crosshead" | "hexagon" | "slotted" | "torx")
}

/// Whether a word may belong to a verb: "take it *off*".
pub(in crate::capture) fn is_particle(text: &str) -> bool {
    const PARTICLES: &[&str] = &[
        "apart",
        "aside",
        "away",
        "back",
        "beneath",
        "clear",
        "down",
        "dead",
        "home",
        "in",
        "into",
        "off",
        "on",
        "open",
        "out",
        "over",
        "shut",
        "through",
        "to",
        "under",
        "underneath",
        "up",
        "zero",
        "closed",
        "from",
        "across",
        "free",
        "loose",
        "slack",
        "0",
    ];
    PARTICLES.contains(&text)
}

/// Whether a word says how something is done.
pub(in crate::capture) fn is_adverb(text: &str) -> bool {
    const ADVERBS: &[&str] =
        &["anticlockwise", "clockwise", "crosswise", "crossways", "diagonally", "overnight", "together"];
    ADVERBS.contains(&text) || (text.ends_with("ly") && !matches!(text, "assembly" | "supply"))
}
