//! English: words of layout, not of the trade.

use crate::model::Stage;

/// What stands before the number of a step.
pub(super) const NUMBERED: &[&str] = &["step", "item", "task"];

/// Headings beyond those of the lexicon whose stage is clear.
pub(super) const HEADINGS: &[(&str, Stage)] = &[
    ("test", Stage::Recommission),
    ("tests", Stage::Recommission),
    ("final tests", Stage::Recommission),
    ("final checks", Stage::Recommission),
    ("shut down", Stage::MakeSafe),
    ("shutting down", Stage::MakeSafe),
    ("shutdown", Stage::MakeSafe),
    ("disassembly", Stage::Strip),
    ("installation", Stage::Refit),
    ("fitting", Stage::Refit),
    ("fit", Stage::Refit),
    ("reinstall", Stage::Refit),
    ("commission", Stage::Recommission),
    ("fill and vent", Stage::Recommission),
    ("before starting", Stage::Prepare),
    ("cleaning", Stage::BenchWork),
];

/// Heads of columns whose cells are steps, or numbers of them.
pub(super) const STEP_COLUMNS: &[&str] =
    &["action", "instruction", "no", "no.", "nr", "step", "steps", "task", "what to do", "work", "#"];

/// Heads of columns and the leading word that their cells would have.
pub(super) const COLUMNS: &[(&str, &str)] = &[
    ("reason", "why"),
    ("why", "why"),
    ("danger", "danger"),
    ("warning", "warning"),
    ("hazard", "warning"),
    ("hazards", "warning"),
    ("caution", "caution"),
    ("notice", "notice"),
    ("reading", "read"),
    ("readings", "read"),
    ("value", "read"),
    ("photo", "photo"),
    ("bring", "bring"),
    ("tool", "bring"),
    ("tools", "bring"),
];

/// Heads of columns whose cells are further words.
pub(super) const OTHER_COLUMNS: &[&str] =
    &["comment", "note", "notes", "remark", "remarks", "where", "torque", "done", "ok"];

/// Words after which a line is not at its end.
pub(super) const GOES_ON: &[&str] = &[
    "a", "an", "and", "at", "by", "for", "from", "in", "into", "of", "on", "or", "the", "to", "until", "with",
];

/// Ends of words after which a full stop ends no sentence.
pub(super) const ABBREVIATIONS: &[&str] =
    &["approx", "ca", "e.g", "etc", "fig", "i.e", "max", "min", "no", "nos", "nr", "resp", "vs"];
