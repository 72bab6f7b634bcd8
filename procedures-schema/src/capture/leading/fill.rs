//! A line with a leading word once a part that was missing is said.

use super::parse::leading;
use super::{Gap, Leading};

/// The line with a part in the place of a gap. Where a line cannot be written that says just that, the part stands
/// at its end.
pub fn with_gap_filled(line: &str, gap: Gap, text: &str) -> String {
    let (line, text) = (line.trim(), text.trim());
    let Some(before) = leading(line).filter(|_| !text.is_empty()) else { return line.to_owned() };
    let fills = |filled: &String| {
        let Some(after) = leading(filled) else { return false };
        let mut left = before.gaps();
        left.retain(|known| *known != gap);
        after.gaps() == left && keeps(&before, &after)
    };
    let filled = written(line, &before, gap, text).filter(fills);
    filled.unwrap_or_else(|| {
        let mark = if line.ends_with([':', ';', ',']) { "" } else { ";" };
        format!("{line}{mark} {text}")
    })
}

fn written(line: &str, known: &Leading, gap: Gap, text: &str) -> Option<String> {
    let word = line.get(..line.find([':', '!'])? + 1).map(|word| word.trim_end_matches('!'));
    let word = word.map(|word| word.trim_end_matches(':').trim_end());
    let led = |rest: String| word.map(|word| format!("{word}: {rest}"));
    match known {
        Leading::Message(message) => {
            let part = |own: Gap, known: &str| if gap == own { text.to_owned() } else { known.to_owned() };
            let parts = [
                part(Gap::Hazard, &message.hazard),
                part(Gap::Consequence, &message.consequence),
                part(Gap::Avoidance, &message.avoidance),
            ];
            led(parts.join("; ").trim_end_matches([';', ' ']).to_owned())
        }
        Leading::Hold { role, what } => match gap {
            Gap::Role => led(format!("{text}, {what}")),
            _ => led(format!("{role}, {text}")),
        },
        Leading::Read { what, limits, .. } => match gap {
            Gap::What => {
                led(format!("{text} {}", limits.as_ref().map(ToString::to_string).unwrap_or_default()))
            }
            Gap::Limits => led(format!("{what} {text}")),
            _ => Some(format!("{line} (out: {text})")),
        },
        Leading::Later { what, .. } if gap == Gap::Who => led(format!("{what}, {text}")),
        Leading::Wait { words, .. } => led(format!("{text} {words}").trim_end().to_owned()),
        _ => led(text.to_owned()),
    }
}

/// Whether all that was said is still said.
fn keeps(before: &Leading, after: &Leading) -> bool {
    match (before, after) {
        (Leading::Message(before), Leading::Message(after)) => {
            let same = |one: &str, other: &str| one.is_empty() || one == other;
            same(&before.hazard, &after.hazard)
                && same(&before.consequence, &after.consequence)
                && same(&before.avoidance, &after.avoidance)
        }
        (Leading::Hold { what: before, .. }, Leading::Hold { what: after, .. })
        | (Leading::Read { what: before, .. }, Leading::Read { what: after, .. }) => {
            before.is_empty() || before == after
        }
        _ => std::mem::discriminant(before) == std::mem::discriminant(after),
    }
}
