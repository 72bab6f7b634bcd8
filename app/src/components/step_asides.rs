//! What stands beside the words of a step in words of its own: on which answers it is done, and what is done if a value
//! is out.

use leptos::prelude::*;
use procedures_schema::model::{Action, Answer, Question, Step};

/// What each question has to be answered, in the order in which they are named.
pub fn conditions(when: &[Answer], questions: &[Question]) -> Vec<String> {
    let mut asked: Vec<(&Answer, Vec<&str>)> = Vec::new();
    for answer in when {
        match asked.iter_mut().find(|(first, _)| first.question == answer.question) {
            Some((_, answers)) => answers.push(&answer.answer),
            None => asked.push((answer, vec![&answer.answer])),
        }
    }
    let named = |(first, answers): (&Answer, Vec<&str>)| {
        let known = questions.iter().find(|question| question.id == first.question);
        let answers = answers.join(" or ");
        match known {
            Some(question) => format!("if {answers}: \"{}\"", question.words),
            None => format!("if {answers}, to a question that is not there"),
        }
    };
    asked.into_iter().map(named).collect()
}

/// What is done where a test fails or a value is out.
pub fn out_lines(actions: &[Action]) -> Vec<AnyView> {
    let line = |words: String| view! { <p class="why">"out: " {words}</p> }.into_any();
    actions.iter().filter_map(out_words).map(line).collect()
}

/// What is to be remembered when what a step takes apart goes back.
pub fn back_line(step: &Step) -> Option<AnyView> {
    let words = step.back.clone();
    (!words.is_empty()).then(|| view! { <p class="why">"back: " {words}</p> }.into_any())
}

/// What was to be remembered, at the step of the way back; the step that it was written at by its position.
pub fn reminder_line(from: usize, text: &str) -> AnyView {
    let (number, text) = (from + 1, text.to_owned());
    view! { <p class="reminder">"Remember, from step " {number} ": " {text}</p> }.into_any()
}

/// What the writer says for the case that a test fails or a value is out.
pub fn out_words(action: &Action) -> Option<String> {
    let on_fail = action.on_fail.as_ref()?;
    let again = (!on_fail.again.is_empty()).then(|| on_fail.again.clone());
    let steps = on_fail.steps.iter().map(|step| step.words.clone());
    let left = on_fail.leave_safe.then(|| "leave it safe".to_owned());
    let words = again.into_iter().chain(steps).chain(left).collect::<Vec<_>>().join("; ");
    (!words.is_empty()).then_some(words)
}

#[cfg(test)]
mod tests {
    use super::conditions;
    use procedures_schema::model::{Answer, Id, Question};
    use procedures_schema::units::Rest;
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test]
    fn answers_to_one_question_stand_together() {
        let answers = ["yes".to_owned(), "no".to_owned()].to_vec();
        let question =
            Question { id: Id::new("q"), words: "Is it sound?".to_owned(), answers, rest: Rest::default() };
        let when = [
            Answer::new(Id::new("q"), "yes"),
            Answer::new(Id::new("q"), "no"),
            Answer::new(Id::new("p"), "no"),
        ];
        assert_eq!(
            conditions(&when, &[question]),
            ["if yes or no: \"Is it sound?\"", "if no, to a question that is not there"]
        );
    }
}
