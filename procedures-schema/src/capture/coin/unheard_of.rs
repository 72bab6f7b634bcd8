//! Words that nobody knows as a noun. With an article or a number they name a part: "slide out the *mixer*". Bare they
//! may be anything, "push it home *square*": so they are asked about, and what can be no noun names nothing.

use super::super::mention::COLOURS;
use super::bench::Bench;
use super::nouns::{Noun, noun};
use super::phrase::Phrase;
use super::wanted::is_appliance;
use super::{Meaning, Question};

/// What is no noun though it may stand where one does.
const NO_NOUNS: &[&str] = &[
    "but", "come", "comes", "done", "former", "go", "goe", "goes", "gone", "kept", "latter", "look", "looks",
    "make", "makes", "say", "says", "see", "sees", "split", "upright", "well", "whatever", "who",
];

/// How words end that say how something is.
const NO_NOUN_ENDS: &[&str] = &["-free", "-tight", "able", "ward", "wards", "wise"];

impl Bench<'_> {
    /// Whether a phrase names a thing; asked for, where that is not certain.
    pub(super) fn is_a_thing(&mut self, phrase: &Phrase) -> bool {
        let stem = phrase.stem();
        if noun(&stem) != Noun::Unknown {
            return true;
        }
        // "Boiler 1": one of several, and no part of any.
        if is_appliance(&stem) {
            return false;
        }
        // "The *red* and the clear tube": a colour alone is no part.
        let is_colour = phrase.words.iter().all(|word| COLOURS.contains(&word.as_str()));
        if is_colour || phrase.words.iter().any(|word| is_no_noun(word)) {
            return false;
        }
        if phrase.start < phrase.from || self.answer(phrase).is_some() {
            return true;
        }
        let name = stem.join(" ");
        let question = format!("Is \"{name}\" a part?");
        let (span, choices) = (self.span_of(phrase), vec![Meaning::New { name }]);
        self.asked.push(Question { span, question, choices, thing: None });
        false
    }
}

fn is_no_noun(word: &str) -> bool {
    NO_NOUNS.contains(&word) || NO_NOUN_ENDS.iter().any(|end| word.ends_with(end))
}
