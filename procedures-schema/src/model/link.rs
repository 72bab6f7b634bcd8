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

fn points(text: &str) -> u32 {
    u32::try_from(text.chars().count()).unwrap_or(u32::MAX)
}

#[cfg(test)]
mod tests {
    use super::{Span, StepLink, step_links, with_links_named};

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
}
