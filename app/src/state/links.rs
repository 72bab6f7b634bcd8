//! Links to steps as people read and type them: by the number that the step has now.
//!
//! The number of a link follows when steps move; a number that is typed is offered to become a link and stays
//! words until somebody says so.

use super::attention::Focus;
use super::doubts::step_of;
use super::editor_store::EditorStore;
use super::rereading;
use leptos::prelude::*;
use procedures_schema::edit::Edit;
use procedures_schema::model::{Id, Procedure, Span, Step, link_to, step_links};
use std::sync::Arc;

/// The word before a number that can be meant as a link.
const STEP: &str = "step ";

/// A number in words that names another step and is no link.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LinkOffer {
    /// Where it stands.
    pub span: Span,
    /// What it says: `step 12`.
    pub said: String,
    /// The step that has this number.
    pub target: Id,
    /// The words of that step.
    pub words: String,
}

/// The first number in the words of a step that could be a link, and has not been declined.
pub(super) fn offer(document: &Procedure, position: usize, step: &Step) -> Option<LinkOffer> {
    let lower = step.words.to_ascii_lowercase();
    let links = step_links(&step.words);
    for (at, _) in lower.match_indices(STEP) {
        let digits = lower.get(at + STEP.len()..).unwrap_or_default();
        let n_digits = digits.bytes().take_while(u8::is_ascii_digit).count();
        let end = at + STEP.len() + n_digits;
        let is_word = |c: Option<char>| c.is_some_and(char::is_alphanumeric);
        let before = lower.get(..at).and_then(|text| text.chars().next_back());
        let number = lower.get(at + STEP.len()..end).and_then(|digits| digits.parse::<usize>().ok());
        let target = number.and_then(|number| number.checked_sub(1)).filter(|target| *target != position);
        let Some(target) = target.and_then(|target| document.steps.get(target)) else { continue };
        let point = |to: usize| u32::try_from(step.words.get(..to).unwrap_or_default().chars().count());
        let (Ok(from), Ok(to)) = (point(at), point(end)) else { continue };
        let span = Span(from, to);
        let said = span.of(&step.words).to_owned();
        let is_linked = links.iter().any(|link| link.span.0 < to && from < link.span.1);
        let is_declined = step.declined.iter().any(|known| known.eq_ignore_ascii_case(&said));
        if !is_word(before)
            && !is_word(lower.get(end..).and_then(|rest| rest.chars().next()))
            && !is_linked
            && !is_declined
        {
            let words = document.words_of(target);
            return Some(LinkOffer { span, said, target: target.id.clone(), words });
        }
    }
    None
}

impl EditorStore {
    /// The words of a step as people read them; followed when steps move.
    pub fn shown_words(self, step: &Step) -> String {
        if step_links(&step.words).is_empty() {
            return step.words.clone();
        }
        self.order().track();
        self.document().with_untracked(|document| document.words_of(step))
    }

    /// Lets a number in the words of a step point at the step that has it now.
    pub(super) fn link_step(self, id: &Id, offer: &LinkOffer) {
        let judged = self.judged_now();
        let Some((position, step)) = step_of(&judged.document, id) else { return };
        if offer.span.of(&step.words) != offer.said {
            return;
        }
        let length = u32::try_from(step.words.chars().count()).unwrap_or(u32::MAX);
        let (head, tail) =
            (Span(0, offer.span.0).of(&step.words), Span(offer.span.1, length).of(&step.words));
        let words = format!("{head}{}{tail}", link_to(offer.target.as_str()));
        let linked = rereading::reread(&judged, position, step, step, &words);
        let label = format!("point at {}", offer.said.to_lowercase());
        if self.edit(&[Edit::SetStep { step: Arc::new(linked) }], &label, None) {
            self.look_at(Focus::Row(id.clone()));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::offer;
    use procedures_schema::model::{Procedure, Stage, Step};
    use std::sync::Arc;
    use wasm_bindgen_test::wasm_bindgen_test;

    fn offered(words: &str) -> Option<(String, String)> {
        let mut document = Procedure::new("p".into(), "P");
        document.steps = ["a", "b", "c"].map(|id| Arc::new(Step::new(id.into(), Stage::Strip, id))).to_vec();
        let step = Step { declined: vec!["step 3".to_owned()], ..Step::new("b".into(), Stage::Strip, words) };
        offer(&document, 1, &step).map(|offer| (offer.said, offer.words))
    }

    #[wasm_bindgen_test]
    fn a_number_of_another_step_is_offered() {
        assert_eq!(offered("Löse es wie in Step 1."), Some(("Step 1".into(), "a".into())));
        for words in ["step 2", "step 9", "step 0", "misstep 1", "step 1a", "step 3", "{step:a}", "steps 1"] {
            assert_eq!(offered(words), None, "{words}");
        }
    }
}
