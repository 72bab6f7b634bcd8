//! Parts of a line with a leading word that are not said yet.

use super::Leading;

/// A part that is missing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Gap {
    /// What is dangerous.
    Hazard,
    /// What it does.
    Consequence,
    /// How to avoid it.
    Avoidance,
    /// What is read, photographed, missing, brought or remembered.
    What,
    /// The accepted values.
    Limits,
    /// What to do when a value is out of its limits.
    OnFail,
    /// How long.
    Duration,
    /// Before which step a running wait must be over.
    Before,
    /// The question.
    Question,
    /// Who lifts a hold.
    Role,
    /// What is done on an answer.
    Words,
    /// The reason.
    Reason,
    /// Who finds it out.
    Who,
    /// The list of the kit.
    List,
}

impl Leading {
    /// The parts that are missing, in the order in which they are asked for.
    pub fn gaps(&self) -> Vec<Gap> {
        let asked: Vec<(Gap, bool)> = match self {
            Self::Message(message) => vec![
                (Gap::Hazard, message.hazard.is_empty()),
                (Gap::Consequence, message.consequence.is_empty()),
                (Gap::Avoidance, message.avoidance.is_empty()),
            ],
            Self::Read { what, limits, out, .. } => vec![
                (Gap::What, what.is_empty()),
                (Gap::Limits, limits.is_none()),
                (Gap::OnFail, out.is_empty()),
            ],
            Self::Wait { duration, at_most, .. } => {
                vec![(Gap::Duration, duration.is_none() && at_most.is_none())]
            }
            Self::Start { duration, until, .. } => {
                vec![(Gap::Duration, duration.is_none()), (Gap::Before, until.is_none())]
            }
            Self::Ask { question } => vec![(Gap::Question, question.is_empty())],
            Self::If { words, .. } => vec![(Gap::Words, words.is_empty())],
            Self::Hold { role, what } => vec![(Gap::Role, role.is_empty()), (Gap::What, what.is_empty())],
            Self::Photo { of } => vec![(Gap::What, of.is_empty())],
            Self::Why { reason } => vec![(Gap::Reason, reason.is_empty())],
            Self::Later { what, who } => vec![(Gap::What, what.is_empty()), (Gap::Who, who.is_empty())],
            Self::Bring { list, name, .. } => {
                vec![(Gap::What, name.is_empty()), (Gap::List, list.is_none())]
            }
            Self::Back { what } => vec![(Gap::What, what.is_empty())],
        };
        asked.into_iter().filter(|(_, missing)| *missing).map(|(gap, _)| gap).collect()
    }
}
