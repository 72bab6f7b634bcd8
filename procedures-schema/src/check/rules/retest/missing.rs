//! `retest/missing`: something was touched, released or restored and not tested after that.

use crate::check::cause::{causes, section_of};
use crate::check::context::Context;
use crate::check::finding::{Finding, Level};
use crate::check::ladder::since;
use crate::check::rule::Rule;
use crate::check::wording::{capital, test_name};
use crate::simulate::{Reason, Thing, Unmet};

pub(in crate::check) static RULE: Rule = Rule {
    code: "retest/missing",
    level: Level::Reject,
    summary: "something was touched, released or restored and not tested after that",
    documentation: include_str!("missing.md"),
    check,
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    let found = causes(context, |unmet| match &unmet.reason {
        Reason::ConnectionNotTested { .. } | Reason::SectionNotTested { .. } | Reason::FunctionNotShown => {
            Some(&unmet.reason)
        }
        _ => None,
    });
    for cause in found {
        findings.push(finding(rule, context, cause.first));
    }
}

fn finding(rule: &Rule, context: &Context<'_>, unmet: &Unmet) -> Finding {
    let (the, test, done) = match &unmet.reason {
        Reason::ConnectionNotTested { connection, any_of } => {
            (context.the(Thing::Connection(*connection)), test_name(any_of), "last touched")
        }
        Reason::SectionNotTested { section, any_of } => {
            (context.the_section(*section), test_name(any_of), "last released or filled")
        }
        _ => ("the appliance".to_owned(), "a function test".to_owned(), "last changed"),
    };
    let after = context.step_name(unmet.since);
    let mut finding =
        rule.finding(format!("{} gets no {} after {after}", capital(&the), without_article(&test)));
    finding.step = context.step_id_at(unmet.since);
    finding.action = unmet.since.action();
    finding.span = context.action_at(unmet.since).and_then(|action| action.says.first().copied());
    finding.circuit = match &unmet.reason {
        Reason::ConnectionNotTested { connection, .. } => context
            .trace
            .plant()
            .connection(*connection)
            .and_then(|plan| plan.section)
            .and_then(|section| context.circuit_id(section)),
        reason => section_of(reason).and_then(|section| context.circuit_id(section)),
    };
    finding.because.push(since(context, unmet.since, &format!("{the} was {done}")));
    finding.remedy.push(format!(
        "Add {test} after {after} while it loads {the}; a test covers only what it loads and, by sight, \
         what can be seen"
    ));
    finding
}

fn without_article(test: &str) -> &str {
    test.strip_prefix("a ").or_else(|| test.strip_prefix("an ")).unwrap_or(test)
}
