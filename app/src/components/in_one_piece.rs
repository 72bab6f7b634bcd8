//! Figures with their units, which no line may end within: "40" above and "N·m" below it are misread.
//!
//! The words stay what they are; only how they are drawn changes, so that what is copied from the page is what was written.

use leptos::prelude::*;
use procedures_schema::units::Unit;
use std::ops::Range;

/// Words with each figure and its unit, each range of such, and each pair of conductors in a piece of its own.
pub fn in_one_piece(words: &str) -> AnyView {
    let pieces = pieces(words);
    if pieces.is_empty() {
        return words.to_owned().into_any();
    }
    let mut out = Vec::new();
    let mut from = 0;
    for piece in pieces {
        push(&mut out, words.get(from..piece.start));
        from = piece.end;
        let kept = words.get(piece).unwrap_or_default().to_owned();
        out.push(view! { <span class="in-one-piece">{kept}</span> }.into_any());
    }
    push(&mut out, words.get(from..));
    out.into_any()
}

fn push(out: &mut Vec<AnyView>, words: Option<&str>) {
    if let Some(words) = words.filter(|words| !words.is_empty()) {
        out.push(words.to_owned().into_any());
    }
}

/// Where the pieces are that stay together.
fn pieces(words: &str) -> Vec<Range<usize>> {
    if !words.contains(|letter: char| letter.is_ascii_digit()) && !words.contains(" to ") {
        return Vec::new();
    }
    let words_at = each_word(words);
    let word = |at: usize| words_at.get(at).and_then(|range| words.get(range.clone())).unwrap_or_default();
    let mut found = Vec::new();
    let mut at = 0;
    while at < words_at.len() {
        let n = n_together([word(at), word(at + 1), word(at + 2), word(at + 3), word(at + 4)]);
        if let (true, Some(first), Some(last)) = (n > 1, words_at.get(at), words_at.get(at + n - 1)) {
            found.push(first.start..last.end);
        }
        at += n.max(1);
    }
    found
}

/// How many of these words stay together, from the first on.
fn n_together(words: [&str; 5]) -> usize {
    let [first, second, third, fourth, fifth] = words;
    let is_measured = |figure: &str, unit: &str| is_figure(figure) && is_unit(unit);
    if is_measured(first, second) {
        return if third == "to" && is_measured(fourth, fifth) { 5 } else { 2 };
    }
    if second == "to" && is_figure(first) && is_measured(third, fourth) {
        return 4;
    }
    if second == "to" && is_conductor(first) && is_conductor(third) { 3 } else { 1 }
}

fn is_figure(word: &str) -> bool {
    let word = word.trim_start_matches(['(', '−', '-', '±', '<', '>']);
    word.starts_with(|letter: char| letter.is_ascii_digit()) && !word.ends_with([',', ';', ':', '.', ')'])
}

fn is_unit(word: &str) -> bool {
    const SPELT: [&str; 3] = ["s", "%", "Nm"];
    let word = word.trim_end_matches([',', ';', ':', '.', ')', '?', '!']);
    SPELT.contains(&word) || Unit::ALL.iter().any(|unit| unit.shown() == word)
}

/// One letter, as the conductors of a mains supply are called.
fn is_conductor(word: &str) -> bool {
    let word = word.trim_start_matches('(').trim_end_matches([',', ';', ':', '.', ')']);
    matches!(word, "L" | "N" | "E" | "PE" | "L1" | "L2" | "L3")
}

fn each_word(words: &str) -> Vec<Range<usize>> {
    let mut at = 0;
    let mut found = Vec::new();
    for word in words.split(' ') {
        if !word.is_empty() {
            found.push(at..at + word.len());
        }
        at += word.len() + 1;
    }
    found
}

#[cfg(test)]
mod tests {
    use super::pieces;
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test]
    fn figures_stay_with_their_units_and_ranges_with_their_ends() {
        let kept = |words: &str| {
            let of = |range| words.get(range).map(str::to_owned);
            pieces(words).into_iter().filter_map(of).collect::<Vec<_>>()
        };
        assert_eq!(kept("Tighten to 40 N·m to 45 N·m, in 2 passes."), ["40 N·m to 45 N·m,"]);
        assert_eq!(kept("hold 1 to 2 bar for 60 s."), ["1 to 2 bar", "60 s."]);
        assert_eq!(kept("live, L to N (0 V to 5 V)"), ["L to N", "(0 V to 5 V)"]);
        assert_eq!(kept("live (L to E 0 V)"), ["(L to E", "0 V)"]);
        assert!(kept("step 3. In 2 passes").is_empty());
    }
}
