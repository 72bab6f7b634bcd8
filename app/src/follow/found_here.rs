//! What is found out on a job: what is typed, and what is kept of it.
//!
//! What is typed holds nothing up. It goes with the next change of the job, in the same transaction, so a tick after
//! it loses nothing; and it is kept only when that transaction has completed.

use super::job_store::{JobStore, Running};
use crate::state::clock;
use crate::storage::giving;
use leptos::prelude::*;
use leptos::task::spawn_local;
use procedures_schema::derive::open_at::{OpenAt, open_at};
use procedures_schema::format;
use procedures_schema::model::{Found, FoundOnJob, OpenValue};

/// What is typed and not kept yet, and by whom.
#[derive(Clone, Copy, Default)]
pub struct Typed {
    answers: RwSignal<Vec<(OpenValue, String)>>,
    by: RwSignal<String>,
}

impl Typed {
    /// The answers that are typed and not kept.
    pub(super) fn now(self) -> Vec<(OpenValue, String)> {
        self.answers.get_untracked()
    }

    /// Lets go of what has been kept, unless more was typed meanwhile.
    pub(super) fn kept(self, kept: &[(OpenValue, String)]) {
        self.answers.update(|now| now.retain(|typed| !kept.contains(typed)));
    }

    /// Lets go of everything.
    pub(super) fn forget(self) {
        self.answers.set(Vec::new());
        self.by.set(String::new());
    }
}

/// What came of giving away what was found out.
#[derive(Clone)]
pub struct Given {
    /// It, in words.
    pub words: String,
    answers: Vec<(String, String)>,
}

impl Given {
    /// Whether nothing has been found out since.
    pub fn is_of(&self, found: &FoundOnJob) -> bool {
        self.answers == answers_of(found)
    }
}

fn answers_of(found: &FoundOnJob) -> Vec<(String, String)> {
    found.answers.iter().map(|found| (found.what.clone(), found.answer.clone())).collect()
}

impl JobStore {
    /// What is open in the procedure that is followed, each with its step.
    pub fn open_at(self) -> Memo<Vec<OpenAt>> {
        let moment = self.moment();
        Memo::new(move |_| moment.with(|moment| open_at(&moment.procedure)))
    }

    /// What is kept as found out on this job.
    pub fn found(self) -> Option<FoundOnJob> {
        self.running.with(|running| running.as_ref().map(|running| running.found.clone()))
    }

    /// The kept answer to a value.
    pub fn found_for(self, open: &OpenValue) -> Option<Found> {
        self.running.with(|running| {
            let running = running.as_ref()?;
            let sought = Found::new(&running.procedure, open, "", clock::moment(0));
            running.found.answers.iter().find(|found| found.is_of_the_same(&sought)).cloned()
        })
    }

    /// What is typed for a value, if that is not kept.
    pub fn typed_for(self, open: &OpenValue) -> Option<String> {
        let typed = self.typed.answers;
        typed.with(|typed| typed.iter().find(|(of, _)| of == open).map(|(_, text)| text.clone()))
    }

    /// Notes what is typed for a value.
    pub fn type_found(self, open: &OpenValue, text: String) {
        let kept = self.found_for(open).map(|found| found.answer).unwrap_or_default();
        self.typed.answers.update(|typed| {
            typed.retain(|(of, _)| of != open);
            if text.trim() != kept {
                typed.push((open.clone(), text));
            }
        });
    }

    /// Who finds it out, if they say so.
    pub fn found_by(self) -> RwSignal<String> {
        self.typed.by
    }

    /// A job with what is typed.
    pub(super) fn with_typed(self, running: &Running) -> Running {
        let now = clock::moment(clock::now_ms());
        let answers = self.typed.now().into_iter();
        let answers = answers.map(|(open, text)| Found::new(&running.procedure, &open, &text, now));
        let mut found = answers.fold(running.found.clone(), FoundOnJob::with);
        let by = self.typed.by.get_untracked();
        for answer in found.answers.iter_mut().filter(|answer| answer.by.is_empty()) {
            by.trim().clone_into(&mut answer.by);
        }
        Running { found, ..running.clone() }
    }

    /// Gives the person what was found out as a file, and says in `told` what came of it.
    pub fn save_found(self, told: RwSignal<Option<Given>>) {
        let Some(running) = self.running.get_untracked() else { return };
        let found = self.with_typed(&running).found;
        self.keep_found();
        let name = file_name(&found.title);
        spawn_local(async move {
            let words = match giving::give(&name, &format::write_found(&found)).await {
                Ok(true) => format!("saved {}", clock::to_the_minute(clock::now_ms())),
                Ok(false) => return,
                Err(reason) => format!("Nothing was saved: {reason}."),
            };
            // The screen may have been left meanwhile.
            let _ = told.try_set(Some(Given { words, answers: answers_of(&found) }));
        });
    }
}

/// `renew-the-pump.found.json`.
fn file_name(title: &str) -> String {
    let words = title.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty());
    let words: Vec<String> = words.map(str::to_lowercase).collect();
    let name = if words.is_empty() { "procedure".to_owned() } else { words.join("-") };
    format!("{name}.found.json")
}

#[cfg(test)]
mod tests {
    use super::file_name;
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test]
    fn a_file_is_named_after_the_procedure() {
        assert_eq!(file_name("Renew the pump, A24 (invented)"), "renew-the-pump-a24-invented.found.json");
        assert_eq!(file_name("…"), "procedure.found.json");
    }
}
