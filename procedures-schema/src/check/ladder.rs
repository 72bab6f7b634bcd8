//! The rungs of a ladder, worded once for the three families that share them.

use super::cause::{causes, section_of};
use super::context::Context;
use super::finding::{Because, Finding};
use super::rule::Rule;
use super::wording::does;
use crate::model::Verb;
use crate::simulate::{Hazard, Lapse, Place, Proof, Reason, SectionCell, Unmet};

/// Findings for "still fed" of one family.
pub(super) fn still_fed(rule: &Rule, context: &Context<'_>, hazard: Hazard, findings: &mut Vec<Finding>) {
    let found = causes(context, |unmet| match &unmet.reason {
        Reason::StillFed { section, through } if is_of(context, *section, hazard) => {
            Some((through.clone(), unmet.since))
        }
        _ => None,
    });
    for cause in found {
        let Reason::StillFed { section, through } = &cause.first.reason else { continue };
        let ways = context.the_isolators(through);
        let part = context.the_section(*section);
        let mut finding = begin(rule, context, cause.first, &format!("while {part} is still fed"));
        let are = if through.len() == 1 { "is" } else { "are" };
        finding.because.push(since(context, cause.first.since, &format!("{ways} {are} open")));
        finding.remedy.push(format!("Isolate {part} at {ways} before this"));
        finding.again = cause.later_steps(context);
        findings.push(finding);
    }
}

/// Findings for "not locked" of one family.
pub(super) fn not_locked(rule: &Rule, context: &Context<'_>, hazard: Hazard, findings: &mut Vec<Finding>) {
    let found = causes(context, |unmet| match &unmet.reason {
        Reason::NotLocked { section, isolators } if is_of(context, *section, hazard) => {
            Some((isolators.clone(), unmet.since))
        }
        _ => None,
    });
    for cause in found {
        let Reason::NotLocked { section, isolators } = &cause.first.reason else { continue };
        let ways = context.the_isolators(isolators);
        let part = context.the_section(*section);
        let mut finding = begin(rule, context, cause.first, &format!("while {part} is off but not locked"));
        finding.because.push(since(context, cause.first.since, &format!("{ways} closed without a lock")));
        finding.remedy.push(format!("Lock {ways} right after closing, and keep the key"));
        finding.again = cause.later_steps(context);
        findings.push(finding);
    }
}

/// Findings for "not released" of one family.
pub(super) fn not_released(rule: &Rule, context: &Context<'_>, hazard: Hazard, findings: &mut Vec<Finding>) {
    let found = causes(context, |unmet| match &unmet.reason {
        Reason::NotReleased { section } if is_of(context, *section, hazard) => Some((*section, unmet.since)),
        _ => None,
    });
    for cause in found {
        let Some(section) = section_of(&cause.first.reason) else { continue };
        let part = context.the_section(section);
        let mut finding = begin(rule, context, cause.first, &format!("while {part} is under pressure"));
        let text = format!("{part} is cut off, but its pressure was not released");
        finding.because.push(since(context, cause.first.since, &text));
        finding.remedy.push(format!("Release {part} through a drain or vent before this"));
        finding.again = cause.later_steps(context);
        findings.push(finding);
    }
}

/// Findings for "not proved" of one family.
pub(super) fn not_proved(rule: &Rule, context: &Context<'_>, hazard: Hazard, findings: &mut Vec<Finding>) {
    let found = causes(context, |unmet| match &unmet.reason {
        Reason::NotProved { section } if is_of(context, *section, hazard) => Some((*section, unmet.since)),
        _ => None,
    });
    for cause in found {
        let Some(section) = section_of(&cause.first.reason) else { continue };
        let part = context.the_section(section);
        let zero = if hazard == Hazard::Isolation { "dead" } else { "at zero" };
        let mut finding =
            begin(rule, context, cause.first, &format!("while nothing shows {part} to be {zero}"));
        let state = context.trace.at(&section, before(cause.first.place)).map(|state| state.proof);
        finding.because.push(match state {
            Some(Proof::Lapsed(why)) => {
                let text = format!("{part} was proved before, and {}", lapsed(why));
                since(context, cause.first.since, &text)
            }
            _ => Because { text: format!("{part} was never proved {zero}"), step: None },
        });
        finding.remedy.push(format!("Prove {part} {zero} before this, with every reading of its kind"));
        finding.again = cause.later_steps(context);
        findings.push(finding);
    }
}

fn is_of(context: &Context<'_>, section: SectionCell, hazard: Hazard) -> bool {
    context.trace.plant().row_of(section).is_some_and(|row| row.hazard == hazard)
}

/// The moment just before an action: the end of the one before it.
fn before(place: Place) -> Place {
    match (place.execution(), place.action()) {
        (Some(execution), Some(0)) => Place::before(execution),
        (Some(execution), Some(action)) => Place::of_action(execution, action - 1),
        _ => place,
    }
}

fn lapsed(why: Lapse) -> &'static str {
    match why {
        Lapse::Restored => "its supply was opened again since",
        Lapse::Started => "the appliance was started since",
        Lapse::Filled => "it was filled or purged since",
        Lapse::LeftAlone => "it was left unattended since",
    }
}

/// "Step 9 undoes the pump unions …", at the place of the unmet demand.
fn begin(rule: &Rule, context: &Context<'_>, unmet: &Unmet, state: &str) -> Finding {
    let verb = unmet.verb.as_ref().map_or("goes on", does);
    let thing = match (&unmet.verb, &unmet.thing) {
        (Some(Verb::ShutDown | Verb::Start), _) => "the appliance".to_owned(),
        (_, Some(id)) => context.the_id(id),
        _ => String::new(),
    };
    let step = super::wording::capital(&context.step_name(unmet.place));
    let mut finding = rule.finding(format!("{step} {verb} {thing} {state}"));
    finding.step = context.step_id_at(unmet.place);
    finding.action = unmet.place.action();
    finding.span = context.action_at(unmet.place).and_then(|action| action.says.first().copied());
    finding.circuit = section_of(&unmet.reason).and_then(|section| context.circuit_id(section));
    finding
}

/// A state with the step since which it holds.
pub(super) fn since(context: &Context<'_>, place: Place, text: &str) -> Because {
    let step = context.step_id_at(place);
    let text = if step.is_some() {
        format!("{text}, since {}", context.step_name(place))
    } else {
        format!("{text}, from the start")
    };
    Because { text, step }
}
