//! "Turn the repair switch *to 0*", "switch *to 1*": how switches are marked.

use crate::lexicon::Token;

/// At most so many words stand between the switch and its mark.
const MOST_WORDS: usize = 6;

/// The tokens with "off" and "on" for the marks behind a switch.
pub(super) fn with_marks_of_switches(mut tokens: Vec<Token<'_>>) -> Vec<Token<'_>> {
    for at in 1..tokens.len() {
        let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
        let marked = match text(at) {
            "0" => "off",
            "1" => "on",
            _ => continue,
        };
        let is_word = |word: &str| (at.saturating_sub(MOST_WORDS)..at).any(|i| text(i) == word);
        let is_isolator = ["disconnector", "isolator", "switch"].into_iter().any(is_word);
        // A switch with steps is no isolator.
        let has_steps = ["dip", "selector", "speed", "stage", "step"].into_iter().any(is_word);
        // "To 1 turn", "to 1 bar" and "to 1.5" count.
        let ends = tokens.get(at + 1).is_none_or(|next| {
            next.before != crate::lexicon::Break::None || matches!(&*next.text, "and" | "then")
        });
        let is_mark = text(at - 1) == "to" && is_isolator && !has_steps && ends;
        if let Some(token) = tokens.get_mut(at).filter(|_| is_mark) {
            *token = token.taken_for(marked);
        }
    }
    tokens
}
