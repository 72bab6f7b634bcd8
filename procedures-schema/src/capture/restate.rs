//! The words of a step when a figure of it is set otherwise: the sentence says what the step means.

use super::quantity::{Figures, Quantity, quantities};
use crate::edit::put;
use crate::lexicon::{Lexicon, tokens};
use crate::model::{Span, Step};
use crate::units::Range;

/// Writes the new limits where the words of a step say the old ones, nearest to the words of the action at `at`; the
/// spans follow. Says whether the words held them.
pub fn restate(step: &mut Step, at: usize, old: &Range, new: &Range) -> bool {
    let Some(lexicon) = Lexicon::for_language("en") else { return false };
    if old == new || (new.min.is_none() && new.max.is_none()) {
        return false;
    }
    let says: Vec<Span> = step.actions.get(at).map(|action| action.says.clone()).unwrap_or_default();
    let found = quantities(&step.words, &tokens(&step.words), lexicon, &|_| false);
    let is_old = |quantity: &&Quantity| matches!(&quantity.figures, Figures::Range(range) if range == old);
    let nearest = found.iter().filter(is_old).min_by_key(|quantity| distance(quantity.span, &says));
    let Some(span) = nearest.map(|quantity| quantity.span) else { return false };
    let text = new.in_words(&old.unit, span.of(&step.words));
    put(step, span, &text).is_some()
}

/// How far a quantity stands from the words of an action.
fn distance(quantity: Span, says: &[Span]) -> u32 {
    let to = |span: &Span| span.0.saturating_sub(quantity.1).max(quantity.0.saturating_sub(span.1));
    says.iter().map(to).min().unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::restate;
    use crate::model::{Action, Span, Stage, Step, Verb};
    use crate::units::{Figure, Range, Unit};

    fn range(min: &str, max: &str, unit: Unit) -> Range {
        let figure = |text: &str| Figure::parse(text).ok();
        Range::new(figure(min), figure(max), unit)
    }

    fn step(words: &str, says: &[(u32, u32)]) -> Step {
        let mut step = Step::new("s".into(), Stage::Refit, words);
        let action = |span: &(u32, u32)| Action {
            says: vec![Span(span.0, span.1)],
            ..Action::new(Verb::Make, vec!["joint".into()])
        };
        step.actions = says.iter().map(action).collect();
        step
    }

    #[test]
    fn the_sentence_follows_the_figure_and_the_spans_follow_the_sentence() {
        let nm = |min, max| range(min, max, Unit::NewtonMetre);
        for (words, old, new, now) in [
            (
                "Tighten to 40 to 50 Nm, then go on.",
                nm("40", "50"),
                nm("30", "35"),
                "Tighten to 30 to 35 Nm, then go on.",
            ),
            ("Tighten to 12 Nm.", nm("12", "12"), nm("14", "14"), "Tighten to 14 Nm."),
            (
                "Tighten to 12 Nm.",
                nm("12", "12"),
                range("10", "10", Unit::PoundForceFoot),
                "Tighten to 10 lbf\u{b7}ft.",
            ),
            ("At 9.0 Nm \u{b1} 0.5 stop.", nm("8.5", "9.5"), nm("9", "10"), "At 9 to 10 N\u{b7}m stop."),
            ("Tighten, at most 12 Nm.", nm("", "12"), nm("", "15"), "Tighten, at most 15 Nm."),
        ] {
            let mut changed =
                step(words, &[(0, 3), (0, u32::try_from(words.chars().count()).expect("short"))]);
            assert!(restate(&mut changed, 0, &old, &new), "{words}");
            assert_eq!(changed.words, now);
            assert_eq!(changed.actions[1].says[0].of(&changed.words), now);
        }
    }

    #[test]
    fn of_two_equal_figures_the_nearest_is_meant() {
        let words = "Make one to 12 Nm and the other to 12 Nm.";
        let nm = |figure| range(figure, figure, Unit::NewtonMetre);
        let mut second = step(words, &[(0, 8), (22, 31)]);
        assert!(restate(&mut second, 1, &nm("12"), &nm("20")));
        assert_eq!(second.words, "Make one to 12 Nm and the other to 20 Nm.");
    }

    #[test]
    fn words_without_the_figure_stay() {
        let nm = |figure| range(figure, figure, Unit::NewtonMetre);
        let mut plain = step("Tighten it as the map says.", &[(0, 7)]);
        assert!(!restate(&mut plain, 0, &nm("12"), &nm("14")));
        assert_eq!(plain.words, "Tighten it as the map says.");
    }
}
