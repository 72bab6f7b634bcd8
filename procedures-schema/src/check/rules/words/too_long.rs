//! `words/too-long`: a sentence is longer than a newcomer can keep in mind.

use crate::check::context::Context;
use crate::check::document::steps;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};

pub(in crate::check) static RULE: Rule = Rule {
    code: "words/too-long",
    level: Level::Warn,
    summary: "a sentence is longer than a newcomer can keep in mind",
    documentation: documentation!("too_long.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for at in steps(context) {
        let words = &at.step.words;
        // So many words need at least so many bytes; few steps have them.
        if words.len() > 2 * MOST_WORDS && n_words(words) > MOST_WORDS && longest(words) > MOST_WORDS {
            let title = format!("Step {} has a sentence of more than 40 words", at.number);
            findings.push(at.finding(rule, title, "Cut it into two steps"));
        }
    }
}

/// Most words of a sentence.
const MOST_WORDS: usize = 40;

/// How many words the longest sentence has.
fn longest(words: &str) -> usize {
    let mut longest = 0;
    for line in words.lines() {
        let mut n = 0;
        for word in line.split_whitespace() {
            n += 1;
            longest = longest.max(n);
            if word.trim_end_matches([')', '"', '\'']).ends_with(['.', '!', '?']) {
                n = 0;
            }
        }
    }
    longest
}

/// How many words there are; some more perhaps, as long as these are few.
fn n_words(words: &str) -> usize {
    if words.is_ascii() {
        // One word more than blanks at most, and those with all control characters are soon counted.
        let n_blanks = words.bytes().filter(|byte| *byte <= b' ').count();
        if n_blanks < MOST_WORDS { n_blanks + 1 } else { words.split_ascii_whitespace().count() }
    } else {
        words.split_whitespace().count()
    }
}
