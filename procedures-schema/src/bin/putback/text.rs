//! A report as text: the step, the words concerned, the lanes at that boundary, what to do.

use procedures_schema::check::{Finding, Report, Standing, Verdict};
use procedures_schema::derive::lanes::{Lanes, in_words, lanes, sign};
use procedures_schema::model::{Procedure, Step};
use procedures_schema::simulate::{Replacement, Trace};
use std::fmt::Write;

/// Longest stretch of a sentence that is shown.
const WIDTH: usize = 96;

pub(crate) fn report(file: &str, procedure: &Procedure, trace: &Trace, report: &Report) -> String {
    // Writing into a text cannot fail.
    let mut text = format!("{file}: {}", verdict(report));
    let told = if report.told_of.is_empty() { "nothing".to_owned() } else { report.told_of.join(", ") };
    let _ = write!(text, "\n  by {} rules, not for work yet", report.n_rules);
    let _ = write!(text, "\n  told of: {told}; cannot know what nobody named");
    put_replaced(&mut text, procedure, trace, report);
    put_waived(&mut text, procedure, report);
    let lanes = lanes(procedure, trace);
    for finding in &report.findings {
        put(&mut text, procedure, &lanes, finding);
    }
    text
}

/// The demands in whose place the document puts others, for whoever approves it.
fn put_replaced(text: &mut String, procedure: &Procedure, trace: &Trace, report: &Report) {
    if report.n_replaced == 0 {
        return;
    }
    let demands = if report.n_replaced == 1 { "demand" } else { "demands" };
    // Writing into a text cannot fail.
    let _ = write!(text, "\n  {} {demands} replaced by the document:", report.n_replaced);
    for (given, became) in procedure.overrides.iter().zip(trace.plant().replacements()) {
        if *became == Replacement::Applied {
            let _ = write!(text, "\n    {}: {} ({})", given.demand, given.words, given.source);
        }
    }
}

/// The warnings that somebody has accepted, for whoever approves it.
fn put_waived(text: &mut String, procedure: &Procedure, report: &Report) {
    let n = report.waived.len();
    if n == 0 {
        return;
    }
    // Writing into a text cannot fail.
    let _ = write!(text, "\n  {n} {} accepted by the document:", if n == 1 { "warning" } else { "warnings" });
    for waived in &report.waived {
        let Some(waiver) = procedure.waivers.get(waived.waiver) else { continue };
        let date = waiver.date.map(|date| format!(", {date}")).unwrap_or_default();
        let finding = &waived.finding;
        let _ = write!(
            text,
            "\n    {}: {} ({}: {}{date})",
            finding.code, finding.title, waiver.reason, waiver.by
        );
    }
}

fn verdict(report: &Report) -> String {
    let rejecting = report.n_rejecting();
    let verdict = match report.verdict {
        Verdict::Accepted => "ACCEPTED".to_owned(),
        Verdict::Rejected => format!("REJECTED, {rejecting} to mend"),
    };
    match report.standing {
        Standing::Draft => format!("{verdict}; draft with {} later", report.n_later),
        Standing::Ready => verdict,
    }
}

fn put(text: &mut String, procedure: &Procedure, lanes: &Lanes, finding: &Finding) {
    text.push('\n');
    let position = finding.step.as_ref().and_then(|step| procedure.position(step));
    if let Some((at, step)) = position.and_then(|at| procedure.steps.get(at).map(|step| (at, step))) {
        put_step(text, at, step, finding);
        put_boundary(text, at, lanes, finding);
    }
    // Writing into a text cannot fail.
    let _ = write!(text, "\n  {} {}: {}", finding.level.word(), finding.code, finding.title);
    for because in &finding.because {
        let _ = write!(text, "\n    because {}", because.text);
    }
    for remedy in &finding.remedy {
        let _ = write!(text, "\n    do      {remedy}");
    }
    for answer in &finding.answers {
        let _ = write!(text, "\n    when    {answer}");
    }
    if !finding.also.is_empty() {
        let _ = write!(text, "\n    also    {}", finding.also.join(", "));
    }
    let again: Vec<String> = finding
        .again
        .iter()
        .filter_map(|step| procedure.position(step))
        .map(|at| (at + 1).to_string())
        .collect();
    if !again.is_empty() {
        let _ = write!(text, "\n    again   at step {}", again.join(", "));
    }
}

/// The sentence, with signs under the words concerned.
fn put_step(text: &mut String, at: usize, step: &Step, finding: &Finding) {
    let number = format!("{:4}  ", at + 1);
    let sentence: String = step.words.chars().take(WIDTH).collect();
    let cut = if step.words.chars().count() > WIDTH { " …" } else { "" };
    let _ = write!(text, "\n{number}{sentence}{cut}");
    if let Some(span) = finding.span {
        let from = usize::try_from(span.0).unwrap_or(WIDTH).min(WIDTH);
        let to = usize::try_from(span.1).unwrap_or(WIDTH).clamp(from, WIDTH);
        if to > from {
            let _ =
                write!(text, "\n{}{}{}", " ".repeat(number.len()), " ".repeat(from), "~".repeat(to - from));
        }
    }
}

/// The lane of the finding's circuit before and after the step.
fn put_boundary(text: &mut String, at: usize, lanes: &Lanes, finding: &Finding) {
    let lane = lanes.heads.iter().position(|head| Some(&head.circuit) == finding.circuit.as_ref());
    let cell = lane.and_then(|lane| Some((lanes.heads.get(lane)?, lanes.rows.get(at)?.cells.get(lane)?)));
    if let Some((head, cell)) = cell {
        let _ = write!(
            text,
            "\n      {} {} {}  {} before, {} after",
            head.name,
            sign(&cell.before),
            sign(&cell.after),
            in_words(&cell.before, &head.kind),
            in_words(&cell.after, &head.kind)
        );
    }
}
