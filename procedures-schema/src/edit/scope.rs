//! What a document says of itself beside its map and its steps.

use crate::model::{CensusEntry, Country, Kit, Later, Procedure, Question, Waiver};

/// Purpose, right appliance, country, competence, the census of circuits, the lists that steps lean on, and the
/// warnings that were accepted.
#[derive(Clone, Debug, PartialEq)]
pub struct Scope {
    /// What the job is for.
    pub purpose: String,
    /// What the rating plate of the right appliance says.
    pub applies_to: String,
    /// The gases for which it holds.
    pub gases: Vec<String>,
    /// The country that it is written for.
    pub country: Option<Country>,
    /// What whoever follows it must be competent for.
    pub competence: Vec<String>,
    /// A remark on the whole document.
    pub note: String,
    /// The census of circuits.
    pub census: Vec<CensusEntry>,
    /// The questions that are put on the job.
    pub questions: Vec<Question>,
    /// Tools, spares, consumables, instruments and protection.
    pub kit: Kit,
    /// What somebody still has to find out.
    pub later: Vec<Later>,
    /// Warnings that somebody has decided to accept.
    pub waivers: Vec<Waiver>,
}

impl Scope {
    /// The scope of a document.
    pub fn of(document: &Procedure) -> Self {
        Self {
            purpose: document.purpose.clone(),
            applies_to: document.applies_to.clone(),
            gases: document.gases.clone(),
            country: document.country.clone(),
            competence: document.competence.clone(),
            note: document.note.clone(),
            census: document.census.clone(),
            questions: document.questions.clone(),
            kit: document.kit.clone(),
            later: document.later.clone(),
            waivers: document.waivers.clone(),
        }
    }

    /// Writes it into a document.
    pub(super) fn write(&self, document: &mut Procedure) {
        let Self {
            purpose,
            applies_to,
            gases,
            country,
            competence,
            note,
            census,
            questions,
            kit,
            later,
            waivers,
        } = self.clone();
        document.purpose = purpose;
        document.applies_to = applies_to;
        document.gases = gases;
        document.country = country;
        document.competence = competence;
        document.note = note;
        document.census = census;
        document.questions = questions;
        document.kit = kit;
        document.later = later;
        document.waivers = waivers;
    }
}
