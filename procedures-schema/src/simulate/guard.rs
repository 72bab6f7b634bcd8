//! Guards: on which answers something holds.
//!
//! A guard is a set of answers that must all have been given. The empty guard holds on every way. Two
//! guards are *compatible* if some way satisfies both.

/// A question, by position in the document.
pub type QuestionIndex = u16;
/// An answer, by position in its question.
pub type AnswerIndex = u8;

/// A set of answers, at most one a question.
#[derive(Clone, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Guard {
    // Invariant: sorted by question, each question once.
    answers: Vec<(QuestionIndex, AnswerIndex)>,
}

impl Guard {
    /// Holds on every way.
    pub const ALWAYS: Self = Self { answers: Vec::new() };

    /// The answer that this guard asks of a question.
    pub fn answer(&self, question: QuestionIndex) -> Option<AnswerIndex> {
        let at = self.answers.binary_search_by_key(&question, |(q, _)| *q).ok()?;
        self.answers.get(at).map(|(_, answer)| *answer)
    }

    /// This guard with one more answer; the new answer replaces an old one.
    #[must_use]
    pub fn with(&self, question: QuestionIndex, answer: AnswerIndex) -> Self {
        let mut answers = self.answers.clone();
        match answers.binary_search_by_key(&question, |(q, _)| *q) {
            Ok(at) => {
                if let Some(known) = answers.get_mut(at) {
                    known.1 = answer;
                }
            }
            Err(at) => answers.insert(at, (question, answer)),
        }
        Self { answers }
    }

    /// This guard without what it asks of a question.
    #[must_use]
    pub fn without(&self, question: QuestionIndex) -> Self {
        Self { answers: self.answers.iter().copied().filter(|(known, _)| *known != question).collect() }
    }

    /// Whether every way of this guard is a way of the other.
    pub fn implies(&self, other: &Self) -> bool {
        other.answers.iter().all(|(question, answer)| self.answer(*question) == Some(*answer))
    }

    /// Whether some way satisfies both.
    pub fn is_compatible(&self, other: &Self) -> bool {
        other
            .answers
            .iter()
            .all(|(question, answer)| self.answer(*question).is_none_or(|known| known == *answer))
    }

    /// The ways of this guard that are not ways of the other, as guards that exclude each other.
    pub fn except(&self, other: &Self, n_answers: &impl Fn(QuestionIndex) -> AnswerIndex) -> Vec<Self> {
        if !self.is_compatible(other) {
            return vec![self.clone()];
        }
        let mut rest = Vec::new();
        let mut shared = self.clone();
        for (question, answer) in &other.answers {
            if shared.answer(*question).is_some() {
                continue;
            }
            let others = (0..n_answers(*question)).filter(|other| other != answer);
            rest.extend(others.map(|other| shared.with(*question, other)));
            shared = shared.with(*question, *answer);
        }
        rest
    }

    /// Both guards at once; none if they contradict each other.
    pub fn and(&self, other: &Self) -> Option<Self> {
        if !self.is_compatible(other) {
            return None;
        }
        Some(other.answers.iter().fold(self.clone(), |both, (q, a)| both.with(*q, *a)))
    }

    /// A question that this guard asks and the other leaves open.
    pub fn beyond(&self, other: &Self) -> Option<QuestionIndex> {
        self.answers.iter().map(|(question, _)| *question).find(|question| other.answer(*question).is_none())
    }

    /// The answers in the order of their questions.
    pub fn answers(&self) -> &[(QuestionIndex, AnswerIndex)] {
        &self.answers
    }
}

#[cfg(test)]
mod tests {
    use super::Guard;

    #[test]
    fn guards_narrow_and_contradict() {
        let yes = Guard::ALWAYS.with(0, 0);
        let no = Guard::ALWAYS.with(0, 1);
        let both = yes.with(3, 1);
        assert!(both.implies(&yes) && !yes.implies(&both) && yes.implies(&Guard::ALWAYS));
        assert!(both.is_compatible(&yes) && !both.is_compatible(&no));
        assert_eq!(yes.and(&no), None);
        assert_eq!(yes.and(&Guard::ALWAYS.with(3, 1)), Some(both.clone()));
        assert_eq!(both.beyond(&yes), Some(3));
        let three = |_| 3;
        assert_eq!(yes.except(&no, &three), std::slice::from_ref(&yes));
        assert_eq!(yes.except(&Guard::ALWAYS, &three), []);
        assert_eq!(yes.except(&both, &three), [yes.with(3, 0), yes.with(3, 2)]);
        assert_eq!(yes.beyond(&both), None);
    }
}
