//! `putback rules` and `putback explain CODE`.

use crate::Outcome;
use crate::source::say;
use lexopt::ValueExt;
use lexopt::prelude::Value;
use procedures_schema::check::{catalogue, rule_named};

pub(crate) fn rules(arguments: &mut lexopt::Parser) -> Result<Outcome, lexopt::Error> {
    if let Some(more) = arguments.next()? {
        return Err(more.unexpected());
    }
    let longest = catalogue().iter().map(|rule| rule.code.len()).max().unwrap_or(0);
    for rule in catalogue() {
        say(&format!("{:longest$}  {:6}  {}", rule.code, rule.level.word(), rule.summary));
    }
    Ok(Outcome::Good)
}

pub(crate) fn explain(arguments: &mut lexopt::Parser) -> Result<Outcome, lexopt::Error> {
    let code = match arguments.next()? {
        Some(Value(code)) => code.string()?,
        Some(other) => return Err(other.unexpected()),
        None => return Err("explain needs the code of a rule".into()),
    };
    match rule_named(&code) {
        Some(rule) => {
            say(rule.documentation.text.trim_end());
            Ok(Outcome::Good)
        }
        None => Err(format!("there is no rule {code}; putback rules lists them").into()),
    }
}
