//! Links from one step's words to another step, which keep pointing at it when steps move.
//!
//! In the words a link is the token `{step:ID}`; people read the number that the step has now. Only a token
//! whose braces and mark are complete is a link; every other brace is a brace. Spans count the token as it
//! is stored.

use super::Span;

const OPENING: &str = "{step:";
const CLOSING: char = '}';

/// A link in a step's words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct StepLink<'a> {
    /// Where the token stands, in code points.
    pub span: Span,
    /// The id of the step that it points at.
    pub step: &'a str,
}

/// The links in these words, in order.
pub fn step_links(words: &str) -> Vec<StepLink<'_>> {
    let mut links = Vec::new();
    // Few words have any brace, and a search for one byte is the quickest.
    if !words.as_bytes().contains(&b'{') {
        return links;
    }
    let mut before = 0;
    let mut left = words;
    while let Some((text, inside)) = left.split_once(OPENING) {
        let from = before + points(text);
        before = from + points(OPENING);
        left = inside;
        // A second opening before the brace closes means that the first was no token.
        let token = inside.split_once(CLOSING).filter(|(id, _)| !id.is_empty() && !id.contains('{'));
        if let Some((step, after)) = token {
            before += points(step) + 1;
            links.push(StepLink { span: Span(from, before), step });
            left = after;
        }
    }
    links
}

/// The words as people read them: each link becomes what `name` gives for the id, for example `step 12`.
pub fn with_links_named(words: &str, mut name: impl FnMut(&str) -> String) -> String {
    let mut shown = String::new();
    let mut end = 0;
    for link in step_links(words) {
        shown.push_str(Span(end, link.span.0).of(words));
        shown.push_str(&name(link.step));
        end = link.span.1;
    }
    shown.push_str(Span(end, points(words)).of(words));
    shown
}

/// The token that links to a step.
pub fn link_to(step: &str) -> String {
    format!("{OPENING}{step}{CLOSING}")
}

/// What the words are after somebody has typed over them as people read them: `typed` is what `before` became
/// with each link named by `name`. A link stays as long as nothing is typed into it; one that is touched, or
/// that a letter or digit is put right behind, becomes the words that it showed.
pub fn typed_over(before: &str, typed: &str, mut name: impl FnMut(&str) -> String) -> String {
    let links = step_links(before);
    if links.is_empty() {
        return typed.to_owned();
    }
    let names: Vec<String> = links.iter().map(|link| name(link.step)).collect();
    let mut names_left = names.iter();
    let shown = with_links_named(before, |_| names_left.next().cloned().unwrap_or_default());
    let (shown, typed): (Vec<char>, Vec<char>) = (shown.chars().collect(), typed.chars().collect());
    let alike = |pair: &(&char, &char)| pair.0 == pair.1;
    let from = shown.iter().zip(&typed).take_while(alike).count();
    let shorter = shown.len().min(typed.len()) - from;
    let same_end = shown.iter().rev().zip(typed.iter().rev()).take(shorter).take_while(alike).count();
    let (to_before, to_after) = (shown.len() - same_end, typed.len() - same_end);
    let goes_on = typed.get(from..to_after).and_then(<[char]>::first).is_some_and(|c| c.is_alphanumeric());
    let (mut words, mut at) = (String::new(), 0);
    let (mut typed_at, mut stored_at) = (0, 0);
    // Places in the typed words that still are links, with what is kept in their stead.
    for (link, name) in links.iter().zip(&names) {
        at += usize::try_from(link.span.0 - stored_at).unwrap_or_default();
        let end = at + name.chars().count();
        let is_before = end < from || (end == from && !goes_on);
        let moved = if is_before { Some(at) } else { (at >= to_before).then(|| at + to_after - to_before) };
        if let Some(place) = moved {
            words.extend(typed.get(typed_at..place).unwrap_or_default());
            words.push_str(link.span.of(before));
            typed_at = place + (end - at);
        }
        (at, stored_at) = (end, link.span.1);
    }
    words.extend(typed.get(typed_at..).unwrap_or_default());
    words
}

/// Words whose links point elsewhere, and where their spans have gone.
pub struct Relinked {
    /// The words.
    pub words: String,
    /// The end of each link in the old words, and by how much what follows has moved.
    moves: Vec<(u32, i64)>,
}

impl Relinked {
    /// The words with the links that `target` gives another step for.
    pub fn new(words: &str, mut target: impl FnMut(&str) -> Option<String>) -> Self {
        let (mut moves, mut total) = (Vec::new(), 0_i64);
        let mut links = step_links(words).into_iter();
        let words = with_links_named(words, |step| {
            let token = link_to(&target(step).unwrap_or_else(|| step.to_owned()));
            total += i64::from(points(&token)) - i64::from(points(&link_to(step)));
            moves.extend(links.next().map(|link| (link.span.1, total)));
            token
        });
        Self { words, moves }
    }

    /// The span that says the same in the new words.
    pub fn span(&self, span: Span) -> Span {
        let moved = |point: u32| {
            let by = self.moves.iter().take_while(|(end, _)| *end <= point).last().map_or(0, |(_, by)| *by);
            u32::try_from(i64::from(point) + by).unwrap_or(point)
        };
        Span(moved(span.0), moved(span.1))
    }
}

fn points(text: &str) -> u32 {
    u32::try_from(text.chars().count()).unwrap_or(u32::MAX)
}

#[cfg(test)]
mod tests {
    use super::{Relinked, Span, StepLink, step_links, typed_over, with_links_named};

    #[test]
    fn a_link_is_a_whole_token_and_nothing_else() {
        let links = |words: &'static str| step_links(words).iter().map(|link| link.step).collect::<Vec<_>>();
        assert_eq!(links("As in {step:s04}, before {step:a b}."), ["s04", "a b"]);
        assert_eq!(links("{step:{step:x}} {step:} {step:y {} step:z}"), ["x"]);
        assert_eq!(links("no link {} {step"), Vec::<&str>::new());
        let words = "Löse wie in {step:s4} ü";
        assert_eq!(step_links(words), [StepLink { span: Span(12, 21), step: "s4" }]);
        assert_eq!(Span(12, 21).of(words), "{step:s4}");
    }

    #[test]
    fn links_are_read_as_numbers_and_the_words_around_stay() {
        let name = |id: &str| format!("step {}", if id == "s4" { "12" } else { "?" });
        assert_eq!(with_links_named("Ü: {step:s4}, {step:s5}{step:s4}", name), "Ü: step 12, step ?step 12");
        assert_eq!(with_links_named("no link {x}", name), "no link {x}");
    }

    #[test]
    fn a_link_stays_while_the_words_around_it_are_typed_over() {
        let name = |id: &str| format!("step {}", if id == "a" { 12 } else { 3 });
        let typed = |before: &str, typed: &str| typed_over(before, typed, name);
        assert_eq!(typed("Ü as in {step:a}.", "Ü then as in step 12."), "Ü then as in {step:a}.");
        assert_eq!(typed("as in {step:a}.", "as in step 12, twice."), "as in {step:a}, twice.");
        assert_eq!(typed("{step:a} or {step:b}", "step 12, or step 3"), "{step:a}, or {step:b}");
        assert_eq!(typed("{step:a} or {step:b}", "or step 3"), "or {step:b}");
        assert_eq!(typed("no link", "no links"), "no links");
    }

    #[test]
    fn a_link_that_is_typed_into_becomes_words() {
        let name = |id: &str| format!("step {}", if id == "a" { 12 } else { 3 });
        let typed = |before: &str, typed: &str| typed_over(before, typed, name);
        assert_eq!(typed("as in {step:a}.", "as in step 1."), "as in step 1.");
        assert_eq!(typed("as in {step:a}.", "as in step 123."), "as in step 123.");
        assert_eq!(typed("{step:a} or {step:b}", "stop 12 or step 3"), "stop 12 or {step:b}");
        assert_eq!(typed("{step:a}", ""), "");
    }

    #[test]
    fn spans_follow_links_that_point_elsewhere() {
        let words = "As in {step:s4} close {step:x} it.";
        let other = Relinked::new(words, |step| (step == "s4").then(|| "longer-id".to_owned()));
        assert_eq!(other.words, "As in {step:longer-id} close {step:x} it.");
        for span in [Span(0, 5), Span(6, 15), Span(16, 21), Span(31, 33)] {
            let expected = span.of(words).replace("s4", "longer-id");
            assert_eq!(other.span(span).of(&other.words), expected);
        }
    }
}
