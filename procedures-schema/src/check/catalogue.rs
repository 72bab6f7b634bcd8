//! The list of all rules.

use super::rule::Rule;
use super::rules::{control, gas, isolation, pressure, putback, retest, seal, words};

static RULES: &[&Rule] = &[
    &control::no_steps::RULE,
    &control::cannot_judge::RULE,
    &isolation::still_fed::RULE,
    &isolation::not_locked::RULE,
    &isolation::not_proved::RULE,
    &gas::still_fed::RULE,
    &gas::not_proved::RULE,
    &pressure::still_fed::RULE,
    &pressure::not_released::RULE,
    &pressure::not_proved::RULE,
    &retest::missing::RULE,
    &putback::left_open::RULE,
    &putback::left_slack::RULE,
    &putback::left_off::RULE,
    &putback::temp_left::RULE,
    &putback::supply_off::RULE,
    &seal::not_renewed::RULE,
    &words::not_said::RULE,
];

/// Every rule, in the order in which they look.
pub fn catalogue() -> &'static [&'static Rule] {
    RULES
}

/// The rule with this code.
pub fn rule_named(code: &str) -> Option<&'static Rule> {
    RULES.iter().copied().find(|rule| rule.code == code)
}
