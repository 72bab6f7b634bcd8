//! What the head of a screen tells of the document and of the verdict on it.
//!
//! Every key changes the document and hardly one changes this, so those who show it hang on this and not on the
//! document: a view that is only asked whether anything has changed costs a key as much as a short one that is drawn.

use super::judged::Judged;
use procedures_schema::model::Stage;

/// Title and verdict of a document.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Told {
    /// Its title.
    pub title: String,
    /// The stage of its last step; none, if it has no step.
    pub last_stage: Option<Stage>,
    /// Whether the checker rejects it.
    pub is_rejected: bool,
    /// Whether it is accepted, and something is still to be found out.
    pub is_draft: bool,
    /// The stamp: `REJECTED · 2 to mend`, `ACCEPTED · DRAFT, 3 later` or `ACCEPTED`.
    pub stamp: String,
    /// What is found besides what rejects: `3 doubts, 2 advice`, or nothing.
    pub besides: String,
    /// By what it was judged, and that it is not for work yet.
    pub judged_by: String,
    /// Whether anything is found.
    pub has_findings: bool,
    /// By how many rules it was judged.
    pub n_rules: usize,
    /// How many values are left for later.
    pub n_later: usize,
    /// The kinds of circuits that the checker was told of.
    pub told_of: Vec<String>,
}

impl Told {
    /// Of a document that was judged.
    pub(super) fn of(judged: &Judged) -> Self {
        let (document, report) = (&judged.document, &judged.report);
        Self {
            title: document.title.clone(),
            last_stage: document.steps.last().map(|step| step.stage.clone()),
            is_rejected: judged.is_rejected(),
            is_draft: judged.is_draft(),
            stamp: judged.stamp(),
            besides: judged.counts().beside_the_stamp(),
            judged_by: judged.judged_by(),
            has_findings: !report.findings.is_empty(),
            n_rules: report.n_rules,
            n_later: report.n_later,
            told_of: report.told_of.clone(),
        }
    }
}
