//! Changing the questions of the job: each change is one entry of undo, with the steps that it touches.

use super::editor_store::EditorStore;
use super::ids::RandomIds;
use leptos::prelude::Set;
use procedures_schema::edit::questions::{
    add_answer, do_on_answer, remove_answer, remove_question, rename_answer,
};
use procedures_schema::edit::{Edit, EditError};
use procedures_schema::model::{Id, IdSource, Procedure, Question};
use procedures_schema::units::Rest;

impl EditorStore {
    /// Adds a question with the answers yes and no; gives its id.
    pub fn add_question(self) -> Id {
        let id = RandomIds.next_id("question");
        let answers = vec!["yes".to_owned(), "no".to_owned()];
        let question = Question { id: id.clone(), words: String::new(), answers, rest: Rest::default() };
        self.change_scope("add a question", None, |scope| scope.questions.push(question));
        id
    }

    /// Changes the wording of a question.
    pub fn word_question(self, id: &Id, words: String) {
        self.change_scope("change a question", Some(&format!("words of {id}")), |scope| {
            if let Some(question) = scope.questions.iter_mut().find(|question| question.id == *id) {
                question.words = words;
            }
        });
    }

    /// Takes a question away that no step is tied to.
    pub fn remove_question(self, id: &Id) {
        self.change_question("take a question out", |document| remove_question(document, id));
    }

    /// Adds an answer.
    pub fn add_answer(self, id: &Id) {
        self.change_question("add an answer", |document| add_answer(document, id));
    }

    /// Gives an answer another name, in the steps too.
    pub fn rename_answer(self, id: &Id, at: usize, name: &str) {
        self.change_question("rename an answer", |document| rename_answer(document, id, at, name));
    }

    /// Takes an answer away on which no step is done.
    pub fn remove_answer(self, id: &Id, at: usize) {
        self.change_question("take an answer out", |document| remove_answer(document, id, at));
    }

    /// Lets a step be done on an answer; on none, always.
    pub fn do_on_answer(self, id: &Id, step: &Id, answer: Option<&str>) {
        let number = self.document_now().position(step).map_or(0, |at| at + 1);
        let label = match answer {
            Some(answer) => format!("do step {number} on \"{answer}\""),
            None => format!("do step {number} always"),
        };
        self.change_question(&label, |document| do_on_answer(document, id, step, answer));
    }

    fn change_question(self, label: &str, edits: impl FnOnce(&Procedure) -> Result<Vec<Edit>, EditError>) {
        match edits(&self.document_now()) {
            Ok(edits) => {
                self.edit(&edits, label, None);
            }
            Err(refused) => self.notice().set(Some(refused.to_string())),
        }
    }
}
