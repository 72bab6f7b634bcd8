//! Proofs that a break has made worthless: which they are, and what the run is with those taken again.
//!
//! A proof is taken again as it was taken first: with the readings of the step that proved it.

use super::job::{Job, ProofAgain};
use super::moment::Done;
use procedures_schema::derive::lanes::{LaneLevel, LaneState};
use procedures_schema::model::{Action, Circuit, Id, Procedure, Step, Verb};
use procedures_schema::simulate::Execution;
use std::sync::Arc;

/// A proof to take again.
#[derive(Clone, Debug, PartialEq)]
pub struct ProofDue {
    /// The step that proved it first, with nothing but the proof in it.
    pub step: Arc<Step>,
    /// The action of that step, by position.
    pub action: usize,
    /// What it proves, by name.
    pub names: String,
    /// When it was proved last.
    pub proved_ms: u64,
}

/// Whether an action proves something of a circuit.
pub fn proves(action: &Action, circuit: &Circuit) -> bool {
    let is_of = |id: &Id| circuit.id == *id || circuit.sections.iter().any(|section| section.id == *id);
    action.verb == Verb::Prove && action.on.iter().any(is_of)
}

/// The proofs that the last break has made worthless, each once, in the order in which they were taken.
pub fn proofs_due(
    procedure: &Procedure,
    done: &[Done],
    job: Option<&Job>,
    states: &[LaneState],
) -> Vec<ProofDue> {
    let Some((job, last)) = job.and_then(|job| Some((job, job.breaks.last()?))) else { return Vec::new() };
    let again = job.proofs.get(last.proofs..).unwrap_or_default();
    let is_again = |step: &Step, action: usize| {
        again.iter().any(|proof: &ProofAgain| proof.step == step.id && proof.action == action)
    };
    let mut found: Vec<(&Action, ProofDue)> = Vec::new();
    for done in done.iter().take(last.ticks) {
        let Some(step) = procedure.steps.get(done.position) else { continue };
        for (position, action) in step.actions.iter().enumerate() {
            let names = names_that_stood(procedure, action, states);
            if names.is_empty() {
                continue;
            }
            // Proved once more in the same place, the later proof stands for both.
            found.retain(|(known, _)| known.on != action.on || known.at != action.at);
            let step = Step {
                actions: vec![action.clone()],
                when: Vec::new(),
                why: String::new(),
                ..(**step).clone()
            };
            let due = ProofDue { step: Arc::new(step), action: position, names, proved_ms: done.at_ms };
            found.push((action, due));
        }
    }
    let due = found.into_iter().map(|(_, due)| due);
    due.filter(|due| !is_again(&due.step, due.action)).collect()
}

/// The circuits that an action proves, by name, if one of them stood proved.
fn names_that_stood(procedure: &Procedure, action: &Action, states: &[LaneState]) -> String {
    let circuits = procedure.map.circuits.iter().zip(states);
    let stood = circuits.filter(|(circuit, state)| {
        proves(action, circuit) && matches!(state.level, LaneLevel::Proved | LaneLevel::Lapsed)
    });
    stood.map(|(circuit, _)| circuit.name.as_str()).collect::<Vec<_>>().join(", ")
}

/// What was really executed: the steps done, and between them the proofs taken again.
pub fn executions(procedure: &Procedure, done: &[usize], job: Option<&Job>) -> Vec<Execution> {
    let proofs = job.map_or(&[][..], |job| job.proofs.as_slice());
    let mut executed = Vec::new();
    for (index, step) in done.iter().enumerate() {
        executed.extend(again(procedure, proofs, |after| after == index));
        executed.push(Execution { step: *step, instead: None, failed: false });
    }
    executed.extend(again(procedure, proofs, |after| after >= done.len()));
    executed
}

fn again<'a>(
    procedure: &'a Procedure,
    proofs: &'a [ProofAgain],
    is_then: impl Fn(usize) -> bool + 'a,
) -> impl Iterator<Item = Execution> + 'a {
    proofs.iter().filter(move |proof| is_then(proof.after_ticks)).filter_map(|proof| {
        let step = procedure.position(&proof.step)?;
        let action = procedure.steps.get(step)?.actions.get(proof.action)?;
        // Whoever proves again closes again where it is taken: no step of the procedure would.
        let action = Action { at: None, ..action.clone() };
        Some(Execution { step, instead: Some(vec![action]), failed: false })
    })
}

/// When a circuit was proved last.
pub fn proved_ms(procedure: &Procedure, circuit: &Circuit, done: &[Done], job: Option<&Job>) -> Option<u64> {
    let has_proof = |step: Option<&Arc<Step>>| {
        step.is_some_and(|step| step.actions.iter().any(|action| proves(action, circuit)))
    };
    let again = job.and_then(|job| {
        let is_its = |proof: &&ProofAgain| {
            let step = procedure.position(&proof.step).and_then(|position| procedure.steps.get(position));
            step.and_then(|step| step.actions.get(proof.action)).is_some_and(|action| proves(action, circuit))
        };
        job.proofs.iter().rfind(is_its).map(|proof| proof.at_ms)
    });
    let ticked = done.iter().rfind(|done| has_proof(procedure.steps.get(done.position)));
    again.max(ticked.map(|done| done.at_ms))
}

#[cfg(test)]
mod tests {
    use crate::follow::job::Job;
    use crate::follow::moment::Moment;
    use procedures_schema::derive::lanes::LaneLevel;
    use procedures_schema::format;
    use procedures_schema::model::{Id, Procedure};
    use std::sync::Arc;
    use wasm_bindgen_test::wasm_bindgen_test;

    fn procedure() -> Arc<Procedure> {
        let text = r#"{"putback":0,"id":"p","title":"t","map":{
                "circuits":[{"id":"mains","name":"mains","kind":"mains electricity","sections":[{"id":"m","name":"m"}]}],
                "isolators":[{"id":"switch","name":"switch","between":["supply","m"],"handle":"switch"}]},
            "steps":[{"id":"1","stage":"strip","words":"Off.","actions":[{"do":"isolate","on":["switch"]}]},
                {"id":"2","stage":"strip","words":"Prove.","actions":[{"do":"prove","on":["mains"]}]},
                {"id":"3","stage":"strip","words":"Work."}]}"#;
        Arc::new(format::read(text.as_bytes()).expect("a procedure"))
    }

    #[wasm_bindgen_test]
    fn a_break_asks_for_the_proof_once_more() {
        let moment = |job: &Job| Moment::of(procedure(), Some(job));
        let levels =
            |moment: &Moment| moment.circuits.iter().map(|circuit| circuit.state.level).collect::<Vec<_>>();
        let job = Job::new(Id::new("job"), 0, None).ticked(Id::new("1"), 5).ticked(Id::new("2"), 6);
        let before = moment(&job);
        assert_eq!((before.proofs.len(), levels(&before)), (0, vec![LaneLevel::Proved]));
        let job = job.after_break(1_000);
        let after = moment(&job);
        assert_eq!((after.proofs.len(), levels(&after)), (1, vec![LaneLevel::Lapsed]));
        assert_eq!(after.proof().map(|due| (due.names.as_str(), due.proved_ms)), Some(("mains", 6)));
        let job = job.proved_again(Id::new("2"), 0, 1_100);
        let again = moment(&job);
        assert_eq!((again.proofs.len(), levels(&again)), (0, vec![LaneLevel::Proved]));
        assert_eq!(again.circuits.first().and_then(|circuit| circuit.proved_ms), Some(1_100));
        assert_eq!(moment(&job.after_break(9_000)).proofs.len(), 1, "the next break asks for it again");
    }
}
