//! `words/comma-figure`: the comma of a figure can set thousands apart or be a decimal comma.

use crate::check::context::Context;
use crate::check::document::steps;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::lexicon::tokens;
use crate::units::may_be_thousands;

pub(in crate::check) static RULE: Rule = Rule {
    code: "words/comma-figure",
    level: Level::Reject,
    summary: "the comma of a figure can set thousands apart or be a decimal comma",
    documentation: documentation!("comma_figure.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for at in steps(context) {
        let words = &at.step.words;
        let bytes = words.as_bytes();
        // Few words have a digit right behind a comma.
        if !bytes.windows(2).any(|pair| matches!(pair, [b',', digit] if digit.is_ascii_digit())) {
            continue;
        }
        for token in tokens(words).iter().filter(|token| may_be_thousands(token.raw)) {
            let title = format!("Step {} says \"{}\", which can be read in two ways", at.number, token.raw);
            let plain = token.raw.replace(',', "");
            let point = token.raw.replace(',', ".");
            let mut finding =
                at.finding(rule, title, &format!("Write {plain} or {point}, whichever is meant"));
            finding.span = Some(token.span);
            findings.push(finding);
        }
    }
}
