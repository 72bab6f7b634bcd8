//! `words/not-checked`: the words of the steps are in a language that the rules cannot read.

use crate::check::context::Context;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::lexicon::Lexicon;

pub(in crate::check) static RULE: Rule = Rule {
    code: "words/not-checked",
    level: Level::Warn,
    summary: "the words of the steps are in a language that the rules cannot read",
    documentation: documentation!("not_checked.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    let procedure = context.procedure;
    if procedure.steps.is_empty() || Lexicon::for_language(&procedure.language).is_some() {
        return;
    }
    let language = &procedure.language;
    let mut finding = rule.finding(format!(
        "The words of the steps are not checked: no rule can read the language \"{language}\""
    ));
    finding
        .remedy
        .push("Let somebody who knows the language compare each sentence with its actions".to_owned());
    findings.push(finding);
}
