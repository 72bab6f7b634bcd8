//! From a line to its leading word and parts.

use super::english::{BEFORE, CAN, DEADLY, FOLLOWS, FORBIDDING, KIT, OUT, ROLES, WORDS, Word};
use super::figures::{Limits, duration, limits};
use super::instruction::is_instruction;
use super::{Kind, Leading};
use crate::lexicon::{Amount, Lexicon, tokens};
use crate::model::{Id, KitList, SafetyMessage, SignalWord};
use crate::units::Rest;

/// Reads a line that begins with a leading word; none, if it is an ordinary line.
pub fn leading(line: &str) -> Option<Leading> {
    let line = line.trim();
    WORDS.iter().find_map(|(word, kind, loose)| {
        let (start, rest) = line.split_at_checked(word.len())?;
        let whole = !rest.starts_with(|c: char| c.is_alphanumeric());
        if !start.eq_ignore_ascii_case(word) || !whole {
            return None;
        }
        match text_after(rest, *loose) {
            Some(text) => Some(parts(kind, text)),
            None => timed(kind, rest),
        }
    })
}

/// The lines of a question that has its answers beside it: "ask: … ? if yes, … if no: …"; none, if it has none.
pub fn question_with_answers(line: &str) -> Option<Vec<String>> {
    let line = line.trim();
    let Some(Leading::Ask { .. }) = leading(line) else { return None };
    let asked = line.find('?')? + 1;
    let answers: Vec<(usize, &str, &str)> = (asked..line.len())
        .filter_map(|at| answer_at(line, at).map(|(word, text)| (at, word, text)))
        .collect();
    let ends = answers.iter().skip(1).map(|(at, ..)| *at).chain([line.len()]);
    let trimmed = |text: &str| text.trim().trim_end_matches([',', ';']).trim_end().to_owned();
    let mut lines = vec![trimmed(line.get(..answers.first()?.0)?)];
    for ((_, word, text), end) in answers.iter().zip(ends) {
        let text = text.get(..text.len() - (line.len() - end))?;
        lines.push(format!("{word}: {}", trimmed(text)));
    }
    Some(lines)
}

/// The answer that begins at a byte of a line, and the text behind it: "if yes, …".
fn answer_at(line: &str, at: usize) -> Option<(&str, &str)> {
    let (before, here) = line.split_at_checked(at)?;
    if before.ends_with(char::is_alphanumeric) {
        return None;
    }
    ["if yes", "if no"].iter().find_map(|answer| {
        let (start, rest) = here.split_at_checked(answer.len())?;
        let text = rest.trim_start().strip_prefix([',', ':'])?;
        start.eq_ignore_ascii_case(answer).then_some((start, text))
    })
}

/// The number of the step before which a running wait must be over, where it is said by its number alone.
pub fn number_of_step(before: &str) -> Option<usize> {
    let (word, number) = before.trim().split_once(' ')?;
    number.parse().ok().filter(|_| word.eq_ignore_ascii_case("step"))
}

/// A line that is a signal word and nothing else: its text stands on the next line.
pub(in crate::capture) fn is_signal_alone(line: &str) -> bool {
    let bare = line.trim().trim_end_matches([':', '!', '.', '-', '\u{2013}']).trim();
    let is_signal =
        |(word, kind, _): &Word| matches!(kind, Kind::Message(_)) && bare.eq_ignore_ascii_case(word);
    WORDS.iter().any(is_signal)
}

/// The text behind a leading word's mark.
fn text_after(rest: &str, loose: bool) -> Option<&str> {
    let rest_trimmed = rest.trim_start();
    if loose {
        // "WARNING!", "Warning!:", "Caution - hot".
        if let Some(text) = rest_trimmed.strip_prefix('!') {
            return Some(text.trim_start_matches(['!', ':', ' ']).trim());
        }
        let dash = ["-", "\u{2013}", "\u{2014}"].iter().find_map(|dash| rest_trimmed.strip_prefix(dash));
        if let Some(text) = dash.filter(|text| text.starts_with(' ')) {
            return Some(text.trim());
        }
    }
    rest_trimmed.strip_prefix(':').map(str::trim)
}

/// `wait 10 min` and `start 10 min, before …` need no colon: a duration follows at once.
fn timed(kind: &Kind, rest: &str) -> Option<Leading> {
    if !rest.starts_with(' ') {
        return None;
    }
    let (_, _, after) = duration(rest)?;
    let after = after.trim_matches(|c: char| c.is_whitespace() || matches!(c, '.' | ','));
    match kind {
        Kind::Wait if after.is_empty() => Some(parts(kind, rest)),
        Kind::Start if begins_with_before(after) => Some(parts(kind, rest)),
        _ => None,
    }
}

fn begins_with_before(text: &str) -> bool {
    text.split_whitespace().next().is_some_and(|word| word.eq_ignore_ascii_case(BEFORE))
}

fn parts(kind: &Kind, text: &str) -> Leading {
    match kind {
        Kind::Message(word) => Leading::Message(message(word.clone(), text)),
        Kind::Read => read(text),
        Kind::Wait => wait(text),
        Kind::Start => start(text),
        Kind::Ask => Leading::Ask { question: text.to_owned() },
        Kind::If(answer) => Leading::If { answer: (*answer).to_owned(), words: text.to_owned() },
        Kind::Hold => {
            let (role, what) = role_and_what(text);
            Leading::Hold { role: role.to_owned(), what: what.to_owned() }
        }
        Kind::Photo => Leading::Photo { of: text.to_owned() },
        Kind::Why => Leading::Why { reason: text.to_owned() },
        Kind::Later => {
            let (what, who) = text.rsplit_once([',', ';']).unwrap_or((text, ""));
            Leading::Later { what: what.trim().to_owned(), who: who.trim().to_owned() }
        }
        Kind::Bring => bring(text),
        Kind::Back => Leading::Back { what: text.to_owned() },
    }
}

/// Who lifts a hold, and what that person looks at, in whichever order they stand: the part that names a person is
/// the role. Where both do or neither does, the first is.
fn role_and_what(text: &str) -> (&str, &str) {
    let is_role = |part: &str| {
        let words = tokens(part);
        let named = |at: usize| words.get(at).is_some_and(|word| ROLES.contains(&word.text.as_ref()));
        (0..words.len().min(4)).any(named)
    };
    let (one, other) = text.split_once([',', ';']).unwrap_or((text, ""));
    let last = text.rsplit_once([',', ';']).map(|(before, last)| (last, before));
    match last {
        Some((last, before)) if !is_role(one) && is_role(last) => {
            (last.trim().trim_end_matches('.'), before.trim())
        }
        _ => (one.trim(), other.trim()),
    }
}

/// The three parts of a message: by semicolons, else by its sentences and by "can".
fn message(word: SignalWord, text: &str) -> SafetyMessage {
    if let Some((hazard, consequence, avoidance)) = in_places(text) {
        return SafetyMessage { word, hazard, consequence, avoidance, rest: Rest::default() };
    }
    let parts: Vec<&str> = text.split(';').map(str::trim).filter(|part| !part.is_empty()).collect();
    let (hazard, consequence, avoidance) = match parts.as_slice() {
        [] => Default::default(),
        [one] => by_sentences(one),
        [order, danger] if is_instruction(order) && !is_instruction(danger) => {
            let (hazard, consequence) = by_can(danger);
            (hazard, consequence, (*order).to_owned())
        }
        [danger, order] if is_instruction(order) => {
            let (hazard, consequence) = by_can(danger);
            (hazard, consequence, (*order).to_owned())
        }
        [hazard, consequence] => ((*hazard).to_owned(), (*consequence).to_owned(), String::new()),
        [hazard, consequence, avoidance @ ..] => {
            ((*hazard).to_owned(), (*consequence).to_owned(), avoidance.join("; "))
        }
    };
    let (hazard, consequence, avoidance) = (tidy(&hazard), tidy(&consequence), tidy(&avoidance));
    SafetyMessage { word, hazard, consequence, avoidance, rest: Rest::default() }
}

/// A part without the marks at which it was cut from the others; a mark alone is no part.
fn tidy(part: &str) -> String {
    let is_mark = |c: char| c.is_whitespace() || matches!(c, ',' | ';' | ':' | '-' | '\u{2013}' | '\u{2014}');
    let part = part.trim_matches(is_mark).trim_start_matches(|c: char| is_mark(c) || matches!(c, '.' | '!'));
    // "hot water, ." leaves the stop of the sentence behind its comma.
    let bare = part.trim_end_matches(|c: char| is_mark(c) || c == '.');
    let was_cut = part.get(bare.len()..).is_some_and(|rest| rest.contains([',', ';', ':']));
    if was_cut { bare.to_owned() } else { part.to_owned() }
}

/// "hot water; ; let it cool": parts by their places, where one before the last is left empty.
fn in_places(text: &str) -> Option<(String, String, String)> {
    let mut parts = text.splitn(3, ';').map(|part| part.trim().to_owned());
    let three = (parts.next()?, parts.next()?, parts.next()?);
    ((three.0.is_empty() || three.1.is_empty()) && !three.2.is_empty()).then_some(three)
}

fn by_sentences(text: &str) -> (String, String, String) {
    if is_instruction(text) {
        return (String::new(), String::new(), text.to_owned());
    }
    let order = text.char_indices().find(|(at, c)| {
        let after = text.get(at + c.len_utf8()..).unwrap_or_default();
        let lower = after.trim_start().to_lowercase();
        let forbids = FORBIDDING.iter().any(|words| lower.starts_with(words));
        let spaced = after.starts_with(' ');
        match c {
            '.' | '!' | ',' if spaced && is_instruction(after) => true,
            ',' | '-' | '\u{2013}' | '\u{2014}' | ':' => spaced && forbids,
            _ => false,
        }
    });
    let (danger, avoidance) = match order {
        Some((at, c)) => (text.get(..at), text.get(at + c.len_utf8()..)),
        None => (Some(text), None),
    };
    let (hazard, consequence) = by_can(danger.unwrap_or_default().trim());
    (hazard, consequence, avoidance.unwrap_or_default().trim().to_owned())
}

/// Hazard and consequence: "hot water | can scald"; two sentences without "can" are one each. "The pipes may be hot"
/// is a hazard as a whole; "it scalds" behind it tells what follows.
fn by_can(text: &str) -> (String, String) {
    let all = tokens(text);
    let tells_state = |at: usize| {
        let next = |n: usize| all.get(at + n).map_or("", |token| &*token.text);
        let be = if matches!(next(1), "already" | "still") { 2 } else { 1 };
        matches!(next(be), "be" | "contain" | "have" | "remain") && !DEADLY.contains(&next(be + 1))
    };
    let cans =
        (1..all.len()).filter(|at| all.get(*at).is_some_and(|token| CAN.contains(&token.text.as_ref())));
    let can = cans.into_iter().find(|at| !tells_state(*at)).and_then(|at| all.get(at));
    let at = can.map(|token| crate::model::Span(0, token.span.0).of(text).len());
    // "Escaping water. It can scald." is cut at the sentence, so that the consequence has its subject.
    let sentence = text.find(". ").map(|at| at + 1);
    let at = match (sentence, at) {
        (Some(sentence), Some(can)) if sentence < can => Some(sentence),
        (sentence, None) => sentence.or_else(|| FOLLOWS.iter().find_map(|follows| text.find(follows))),
        (_, can) => can,
    };
    let (hazard, consequence) = at.and_then(|at| text.split_at_checked(at)).unwrap_or((text, ""));
    (hazard.trim().to_owned(), consequence.trim_start_matches(',').trim().to_owned())
}

/// `quantity limits (out: …)`.
fn read(text: &str) -> Leading {
    let (text, then) = done_next(text);
    let lower = text.to_ascii_lowercase();
    let (value, out) = match lower.find(OUT).and_then(|at| text.split_at_checked(at)) {
        Some((value, out)) => {
            let out = out.get(OUT.len()..).unwrap_or_default().trim();
            let closed = if value.trim_end().ends_with('(') { out.trim_end_matches('.') } else { out };
            (value.trim_end().trim_end_matches(['(', ',', ';']), closed.strip_suffix(')').unwrap_or(closed))
        }
        None => (text, ""),
    };
    let (what, limits) = match limits(value) {
        Some(Limits { before, range, after }) => (joined(before, after), Some(range)),
        None => (value.trim().to_owned(), None),
    };
    Leading::Read { what, limits, out: out.trim().to_owned(), then }
}

/// A reading, and the instruction that follows it behind "then", a semicolon or a full stop. What to do when the
/// value is out of its limits goes on to the end.
fn done_next(text: &str) -> (&str, String) {
    let before_out = text.to_ascii_lowercase().find(OUT).unwrap_or(text.len());
    let marks = [", then ", "; ", ". "];
    let cuts = marks.iter().flat_map(|mark| text.match_indices(mark)).filter(|(at, _)| *at < before_out);
    let orders = cuts.filter_map(|(at, mark)| {
        let rest = text.get(at + mark.len()..)?.trim();
        let rest = rest.strip_prefix("then ").unwrap_or(rest);
        is_instruction(rest).then_some((at, rest))
    });
    match orders.min_by_key(|(at, _)| *at).filter(|_| before_out == text.len()) {
        Some((at, rest)) => (text.get(..at).unwrap_or(text), capitalised(rest)),
        None => (text, String::new()),
    }
}

/// The text as a sentence begins.
fn capitalised(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().into_iter().flat_map(char::to_uppercase).chain(letters).collect()
}

/// The words around limits, without the marks that led to them.
fn joined(before: &str, after: &str) -> String {
    let behind = after.trim_start();
    let before = before.trim_end_matches(|c: char| c.is_whitespace() || matches!(c, ':' | ',' | '=' | ';'));
    let before = before.trim();
    let after = after.trim_matches(|c: char| c.is_whitespace() || matches!(c, ',' | '.' | ';'));
    // What stands apart behind the figures goes on standing apart: "gauge, no flow".
    let apart = behind.starts_with([',', ';']) && !before.is_empty() && !after.is_empty();
    [before, after].into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(if apart {
        ", "
    } else {
        " "
    })
}

fn wait(text: &str) -> Leading {
    let (duration, at_most, words) = duration(text).unwrap_or((None, None, text));
    let words = words.trim().trim_end_matches('.').to_owned();
    Leading::Wait { duration, at_most, words }
}

fn start(text: &str) -> Leading {
    let (duration, after) = match duration(text) {
        Some((min, max, after)) => (min.or(max), after),
        None => (None, text),
    };
    let after = after.trim().trim_start_matches([',', ';']).trim();
    let before = if begins_with_before(after) { after.get(BEFORE.len()..).unwrap_or(after) } else { after };
    let until = before.split_once("{step:").and_then(|(_, rest)| rest.split_once('}'));
    let until = until.map(|(id, _)| Id::new(id));
    Leading::Start { duration, before: before.trim().trim_end_matches('.').to_owned(), until }
}

/// `2 new washers`, `17 mm spanner`: a whole number that no unit follows says how many.
fn bring(text: &str) -> Leading {
    let words = tokens(text);
    let list = KIT.iter().find(|(_, names)| words.iter().any(|word| names.contains(&word.text.as_ref())));
    let list: Option<KitList> = list.map(|(list, _)| list.clone());
    let counted = words.first().and_then(|first| {
        let lexicon = Lexicon::for_language("en")?;
        let Amount::Exactly(n) = lexicon.amount(&first.text)? else { return None };
        let name = text.get(crate::model::Span(0, first.span.1).of(text).len()..)?;
        let measures = super::figures::begins_with_quantity(text);
        (!measures && n > 0 && name.starts_with(' '))
            .then(|| (n, name.trim_start_matches([' ', 'x', '\u{d7}'])))
    });
    let (quantity, name) = counted.unwrap_or((1, text));
    Leading::Bring { list, quantity, name: name.trim().trim_end_matches('.').to_owned() }
}
