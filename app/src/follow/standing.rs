//! How the procedure stands, as Follow is told: it never judges by itself.

/// The verdict, in words.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Standing {
    /// Whether the checker rejects it.
    pub is_rejected: bool,
    /// The stamp, for example `REJECTED · 2 to mend`.
    pub stamp: String,
    /// By how many rules.
    pub n_rules: usize,
}
