//! What a line with a leading word adds, and what it still lacks.

use procedures_schema::capture::{Gap, Leading};

/// In a few words, for the line below what is typed.
pub fn leading_words(leading: &Leading) -> String {
    let what = match leading {
        Leading::Message(message) => format!("{} for the next step", message.word),
        Leading::Read { .. } => "a reading of the step before".to_owned(),
        Leading::Wait { .. } => "a wait, as a step".to_owned(),
        Leading::Start { .. } => "a wait that runs while other steps are done".to_owned(),
        Leading::Ask { .. } => "a question, as a step".to_owned(),
        Leading::If { answer, .. } => format!("a step that is done if the answer is {answer}"),
        Leading::Hold { .. } => "a hold of the step before".to_owned(),
        Leading::Photo { .. } => "a photograph of the step before".to_owned(),
        Leading::Why { .. } => "the reason for the step before".to_owned(),
        Leading::Later { .. } => "to be found out later".to_owned(),
        Leading::Bring { .. } => "an entry of the kit".to_owned(),
        Leading::Back { .. } => "a reminder for the way back".to_owned(),
    };
    let gaps: Vec<&str> = leading.gaps().into_iter().map(name).collect();
    if gaps.is_empty() { what } else { format!("{what} · not said yet: {}", gaps.join(", ")) }
}

/// Whether a gap is filled by words: which list of the kit it is, and before which step, are not.
pub fn is_field(gap: Gap) -> bool {
    !matches!(gap, Gap::List | Gap::Before)
}

/// What a gap lacks.
pub fn name(gap: Gap) -> &'static str {
    match gap {
        Gap::Hazard => "the hazard",
        Gap::Consequence => "what can happen",
        Gap::Avoidance => "how to avoid it",
        Gap::What => "what",
        Gap::Limits => "the limits",
        Gap::OnFail => "what to do when it is out",
        Gap::Duration => "how long",
        Gap::Before => "before which step",
        Gap::Question => "the question",
        Gap::Role => "who lifts it",
        Gap::Words => "what is done",
        Gap::Reason => "the reason",
        Gap::Who => "who finds it out",
        Gap::List => "tools, instruments or what else",
    }
}
