//! Words cut into clauses: a verb phrase and the tokens that belong to it.

use super::coin::noun;
use super::mention::singular;
use super::no_order::{
    ends_at_a_stop, ends_in_a_name, ends_with_a_quality, is_expected, is_noun, is_of_name,
    is_quantified_doing, is_quoted, is_said_of_any, is_set_already, is_state, is_to_lock, is_told,
    leads_to_a_place, stays_so,
};
use super::unknown;
use crate::lexicon::{Break, Said, Token, amount};
use crate::model::{Span, Verb};

/// A verb phrase with its tokens.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Clause {
    /// The verbs that the phrase may mean.
    pub(super) means: Vec<Verb>,
    /// The tokens of the phrase.
    pub(super) phrase: Vec<usize>,
    /// The first token of the clause: of the phrase, or of its sentence if that begins with something else.
    pub(super) from: usize,
    /// The token after the last; a sentence without a verb belongs to the clause before it.
    pub(super) to: usize,
    /// "After removing the screws": it comes before the clause beside it, if it has not been done long ago.
    pub(super) is_before: bool,
}

impl Clause {
    /// The first token of the phrase.
    pub(super) fn verb(&self) -> usize {
        self.phrase.first().copied().unwrap_or(self.from)
    }
}

/// Words that begin a condition: what follows is not an order.
const CONDITIONS: &[&str] = &[
    "after", "as", "because", "if", "once", "so", "that", "till", "until", "when", "whenever", "where",
    "which", "while",
];

/// Those of them that tell how things stand while something else is done.
const STANDING: &[&str] = &["as", "because", "if", "when", "whenever", "where", "while"];

/// Cuts words into clauses.
pub(super) fn clauses(words: &str, tokens: &[Token<'_>], said: &[Said]) -> Vec<Clause> {
    let mut clauses: Vec<Clause> = Vec::new();
    let read = behind_read(tokens, said);
    for phrase in said.iter().filter(|said| !said.unsaid && !said.means.is_empty()) {
        let Some(first) = phrase.tokens.first().copied() else { continue };
        if read.iter().any(|(from, to)| (*from..*to).contains(&first))
            || is_no_order(words, tokens, phrase, first)
        {
            continue;
        }
        // "Until the gauge reads 0" shows zero; "while the pressure is at zero" only says when.
        let shows = phrase.means.contains(&Verb::Prove) && !is_conditional(tokens, first, STANDING);
        let is_order = !is_conditional(tokens, first, CONDITIONS) || shows || is_done_before(tokens, first);
        let overlaps = |clause: &Clause| clause.phrase.iter().any(|token| phrase.tokens.contains(token));
        if let Some(before) = clauses.iter_mut().find(|clause| overlaps(clause)) {
            // Two phrases over the same words: either may be meant.
            if before.verb() == first && !before.means.is_empty() {
                before.means.extend(
                    phrase
                        .means
                        .iter()
                        .filter(|verb| !before.means.contains(verb))
                        .cloned()
                        .collect::<Vec<_>>(),
                );
                before.phrase.extend(&phrase.tokens);
                before.phrase.sort_unstable();
                before.phrase.dedup();
            }
            continue;
        }
        // "Test for 2 minutes": so long the test lasts, and nobody waits beside it.
        let tests = |clause: &Clause| {
            // "Run a hot tap for 5 min" waits beside it, unless it says how hot it comes.
            let is_test = !clause.means.contains(&Verb::Start) || tokens.iter().any(is_degrees);
            clause.means.contains(&Verb::Test) && is_test && !ended_between(tokens, clause.verb(), first)
        };
        let lasts = tokens.get(first).is_some_and(|token| token.text == "for");
        if is_order && !(lasts && clauses.last().is_some_and(tests)) {
            // What an order is for is a clause of its own and says nothing to do.
            let for_that = is_purpose(tokens, &clauses, first, phrase.means);
            let means = if for_that { Vec::new() } else { phrase.means.to_vec() };
            let (phrase, is_before) = (phrase.tokens.to_vec(), is_done_before(tokens, first));
            clauses.push(Clause { means, phrase, from: first, to: tokens.len(), is_before });
        }
    }
    add_idle(tokens, said, &mut clauses);
    keep_news(tokens, &mut clauses);
    wash_what_is_sprayed(tokens, &mut clauses);
    undo_what_supplies(tokens, &mut clauses);
    clauses.sort_by_key(Clause::verb);
    leave_conditional(words, tokens, &mut clauses);
    set_ends(tokens, &mut clauses);
    for i in 1..clauses.len() {
        let ends = clauses.get(i).map(Clause::verb).zip(clauses.get(i - 1).map(Clause::verb));
        let is_same = ends.is_some_and(|(this, before)| !ended_between(tokens, before, this));
        if is_same && clauses.get(i).is_some_and(|clause| clause.is_before) {
            clauses.swap(i - 1, i);
        }
    }
    clauses
}

/// Whether a phrase that begins at a token only looks like the verb of an order.
fn is_no_order(words: &str, tokens: &[Token<'_>], phrase: &Said, first: usize) -> bool {
    is_noun(tokens, first)
        || is_state(tokens, first)
        || is_set_already(tokens, first)
        || is_quoted(words, tokens, first)
        || is_to_lock(tokens, first)
        || is_expected(tokens, first)
        || is_told(tokens, first, phrase.means)
        || is_of_name(tokens, first)
        || leads_to_a_place(tokens, phrase)
        || stays_so(tokens, phrase)
        || is_quantified_doing(tokens, first)
        || ends_with_a_quality(tokens, phrase)
        || ends_in_a_name(tokens, phrase)
        || ends_at_a_stop(tokens, phrase)
        || is_said_of_any(tokens, first)
}

/// "Let them *know* that they have air" lets no air in.
fn keep_news(tokens: &[Token<'_>], clauses: &mut [Clause]) {
    let is_know = |i: &usize| tokens.get(*i).is_some_and(|token| token.text == "know");
    for clause in clauses.iter_mut().filter(|clause| clause.means.contains(&Verb::Tell)) {
        if let Some(know) = clause.phrase.iter().find(|i| is_know(i)).copied() {
            let verb = clause.verb();
            (clause.means, clause.phrase) = (vec![Verb::Tell], vec![verb, know]);
        }
    }
}

/// "Disconnect the *supply lead* of the pump" undoes a lead, and cuts off no supply.
fn undo_what_supplies(tokens: &[Token<'_>], clauses: &mut [Clause]) {
    let goes_on = |i: &usize| {
        let next = tokens.get(i + 1).filter(|next| next.before == Break::None);
        let is_supply = tokens.get(*i).is_some_and(|token| token.text == "supply");
        is_supply && next.is_some_and(|next| noun(&[singular(&next.text)]).is_worked_on())
    };
    for clause in clauses.iter_mut().filter(|clause| clause.means.contains(&Verb::Undo)) {
        let is_of_verb = |i: &usize| *i != clause.verb() && goes_on(i);
        if clause.phrase.iter().any(is_of_verb) {
            clause.means.retain(|verb| *verb != Verb::Isolate);
        }
    }
}

/// With what something is washed that is sprayed.
pub(super) const WASHING: &[&str] =
    &["cleaner", "degreaser", "detergent", "disinfectant", "solvent", "water"];
/// What is looked for, or by what, when something is sprayed for leaks.
pub(super) const SEEKING: &[&str] =
    &["bubble", "bubbles", "detection", "detector", "finder", "leak", "leaks", "soap", "soapy", "watch"];

/// "*Spray* the coil with cleaner" cleans it, and only that; without what washes it looks for leaks.
fn wash_what_is_sprayed(tokens: &[Token<'_>], clauses: &mut [Clause]) {
    for clause in clauses.iter_mut().filter(|clause| clause.means.contains(&Verb::Test)) {
        let verb = clause.verb();
        let sprays = tokens.get(verb).is_some_and(|token| token.text.starts_with("spray"));
        let rest = tokens.iter().skip(verb + 1).take_while(|token| token.before != Break::Sentence);
        let says = |words: &[&str]| rest.clone().any(|token| words.contains(&&*token.text));
        if sprays {
            let washes = says(WASHING) && !says(SEEKING);
            clause.means = vec![if washes { Verb::Clean } else { Verb::Test }];
        }
    }
}

/// Adds clauses that say nothing to do, so that what they act on is none of what the verb before them acts on.
fn add_idle(tokens: &[Token<'_>], said: &[Said], clauses: &mut Vec<Clause>) {
    let left = said.iter().filter(|said| leaves_another(tokens, said)).map(|said| said.tokens.to_vec());
    let unknown = unknown::verbs(tokens, said).into_iter().map(|verb| vec![verb]);
    for phrase in left.chain(unknown) {
        let Some(from) = phrase.first().copied() else { continue };
        if !clauses.iter().any(|clause| clause.phrase.contains(&from)) {
            clauses.push(Clause { means: Vec::new(), phrase, from, to: tokens.len(), is_before: false });
        }
    }
}

/// What stands behind "read:" and its like up to the end of that sentence: what is to be seen, and no orders.
fn behind_read(tokens: &[Token<'_>], said: &[Said]) -> Vec<(usize, usize)> {
    let begins = |i: &usize| tokens.get(*i).is_none_or(|token| token.before == Break::Sentence);
    let reads = |said: &&Said| !said.unsaid && said.means == [Verb::Read] && said.tokens.len() == 1;
    let behind = said.iter().filter(reads).filter_map(|said| {
        let from = said.tokens.first()? + 1;
        let to = (from + 1..=tokens.len()).find(begins)?;
        (from < tokens.len() && begins(&from)).then_some((from, to))
    });
    behind.collect()
}

/// Takes their verbs from orders that hold only on a condition: "if the pressure is above 2 bar, open the vent", "renew
/// the seal if it is worn". They are no orders to every reader; a question says on which answer they are done.
fn leave_conditional(words: &str, tokens: &[Token<'_>], clauses: &mut [Clause]) {
    const ASKS: &[Verb] = &[Verb::Inspect, Verb::Test, Verb::Read, Verb::Ask, Verb::Prove, Verb::Tell];
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let is_if = |i: usize| {
        let before = i.checked_sub(1).map_or("", text);
        let begins_part = || tokens.get(i).is_some_and(|token| token.before != Break::None);
        let of_where =
            text(i) == "where" && begins_part() && matches!(text(i + 1), "it" | "they" | "there" | "this");
        // "*Should a* bubble grow, shut the cock."
        let of_should = text(i) == "should"
            && (i == 0 || begins_part())
            && matches!(
                text(i + 1),
                "a" | "an"
                    | "any"
                    | "either"
                    | "it"
                    | "its"
                    | "one"
                    | "that"
                    | "the"
                    | "there"
                    | "they"
                    | "this"
            );
        (matches!(text(i), "if" | "unless") || of_where || of_should) && !matches!(before, "as" | "even")
    };
    let verbs: Vec<usize> = clauses.iter().map(Clause::verb).collect();
    for (n, clause) in clauses.iter_mut().enumerate() {
        let at = clause.verb();
        let begins = |i: &usize| tokens.get(*i).is_some_and(|token| token.before == Break::Sentence);
        // "If it hangs above zero the valve is passing: stop": a colon ends no sentence.
        let ended = |i: &usize| begins(i) && !is_behind_colon(words, tokens, *i);
        let sentence = (0..=at).rev().find(ended).unwrap_or(0);
        let leads = |i: usize| {
            let before = i.checked_sub(1).map_or("", text);
            let is_first = i == sentence || matches!(before, "and" | "but" | "then" | "or");
            is_if(i) && (is_first || tokens.get(i).is_some_and(|token| token.before != Break::None))
        };
        let next = verbs.get(n + 1).copied().unwrap_or(tokens.len());
        let end = (at + 1..next).find(begins).unwrap_or(next);
        let asks = clause.means.iter().any(|verb| ASKS.contains(verb));
        if (sentence..at).any(leads) || (!asks && (at + 1..end).any(is_if)) {
            clause.means.clear();
        }
    }
}

/// Whether a colon stands before a token.
fn is_behind_colon(words: &str, tokens: &[Token<'_>], at: usize) -> bool {
    let before = at.checked_sub(1).and_then(|before| tokens.get(before));
    before
        .zip(tokens.get(at))
        .is_some_and(|(before, token)| Span(before.span.1, token.span.0).of(words).contains(':'))
}

/// "Lift the casing off *after undoing* its screws."
fn is_done_before(tokens: &[Token<'_>], at: usize) -> bool {
    let is_after = |i: usize| tokens.get(i).is_some_and(|token| token.text == "after");
    at.checked_sub(1).is_some_and(is_after) && tokens.get(at).is_some_and(|token| token.text.ends_with("ing"))
}

/// Whether a verb tells what an order before it is for: "open the vent *to let* air in". What is let out or read
/// to that end is done all the same.
fn is_purpose(tokens: &[Token<'_>], clauses: &[Clause], at: usize, means: &[Verb]) -> bool {
    const DONE: &[Verb] = &[Verb::Release, Verb::Prove, Verb::Isolate, Verb::Lock];
    let led = at.checked_sub(1).and_then(|i| tokens.get(i)).is_some_and(|token| token.text == "to");
    let ordered = clauses.last().is_some_and(|clause| !ended_between(tokens, clause.verb(), at));
    led && ordered && !means.iter().any(|verb| DONE.contains(verb))
}

fn is_degrees(token: &Token<'_>) -> bool {
    token.text.ends_with("°c") || matches!(&*token.text, "celsius" | "degrees")
}

/// Whether a sentence ends between two tokens.
fn ended_between(tokens: &[Token<'_>], one: usize, other: usize) -> bool {
    let between = tokens.iter().take(other + 1).skip(one + 1);
    between.into_iter().any(|token| token.before == Break::Sentence)
}

/// Gives each clause its first and last token.
fn set_ends(tokens: &[Token<'_>], clauses: &mut [Clause]) {
    let mut before = 0;
    for i in 0..clauses.len() {
        let Some(verb) = clauses.get(i).map(Clause::verb) else { continue };
        let begins = |j: &usize| tokens.get(*j).is_some_and(|token| token.before == Break::Sentence);
        let sentence = (before..=verb).rev().find(begins);
        let from = match sentence {
            Some(sentence) => sentence,
            None if i == 0 => 0,
            None => verb,
        };
        if let Some(clause) = clauses.get_mut(i) {
            clause.from = from;
        }
        if let Some(previous) = i.checked_sub(1).and_then(|i| clauses.get_mut(i)) {
            previous.to = from;
        }
        before = verb + 1;
    }
}

/// "When water comes at the vent screw tighten it": the order follows its condition without a comma.
fn is_main_order(tokens: &[Token<'_>], condition: usize, at: usize) -> bool {
    const SUBJECTS: &[&str] = &["he", "it", "she", "they", "we", "you"];
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let ends_alone = matches!(text(at + 1), "it" | "them");
    let subject = at.checked_sub(1).is_some_and(|before| SUBJECTS.contains(&text(before)));
    ends_alone && !subject && at > condition + 3
}

/// "Close the drain cock *but leave the tap open*": nothing is done to what is left as it is.
fn leaves_another(tokens: &[Token<'_>], said: &Said) -> bool {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let Some(first) = said.tokens.first().copied().filter(|_| said.means.is_empty()) else { return false };
    let leaves = ["keep", "leav"].iter().any(|begin| text(first).starts_with(begin));
    let follows = first.checked_sub(1).is_some_and(|before| matches!(text(before), "and" | "but" | "then"));
    leaves && follows && matches!(text(first + 1), "a" | "all" | "both" | "the" | "your")
}

/// "Press it in till it clicks *and push the* plug home": what follows on what is waited for is an order again,
/// unless people do both.
fn follows_what_is_awaited(tokens: &[Token<'_>], condition: usize, at: usize) -> bool {
    const OBJECTS: &[&str] = &["a", "all", "both", "it", "its", "the", "them", "your"];
    const PEOPLE: &[&str] = &["i", "somebody", "they", "we", "you"];
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    matches!(text(condition), "till" | "until")
        && at > condition + 3
        && matches!(text(at - 1), "and" | "then")
        && OBJECTS.contains(&text(at + 1))
        && !PEOPLE.contains(&text(condition + 1))
}

/// "*After ten minutes* read the gauge": a time without a comma behind it.
fn is_so_much_later(tokens: &[Token<'_>], condition: usize, at: usize) -> bool {
    const OF_TIME: &[&str] = &[
        "a", "about", "an", "another", "at", "few", "further", "half", "hour", "hours", "least", "minute",
        "minutes", "of", "or", "quarter", "second", "seconds", "so", "some", "the", "fifteen", "twenty",
        "thirty",
    ];
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let is_of_time = |i: usize| {
        let is_figure = |text: &str| text.starts_with(|c: char| c.is_ascii_digit());
        OF_TIME.contains(&text(i)) || is_figure(text(i)) || amount(text(i)).is_some()
    };
    let names_time = (condition + 1..at)
        .any(|i| matches!(text(i), "hour" | "hours" | "minute" | "minutes" | "second" | "seconds"));
    text(condition) == "after" && names_time && (condition + 1..at).all(is_of_time)
}

/// "*After that* take off the cover", "once this is done carefully open the cock": what was said before comes first.
fn is_after_that(tokens: &[Token<'_>], condition: usize, at: usize) -> bool {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let is_that = matches!(text(condition + 1), "that" | "this" | "which");
    let is_done = matches!(text(condition + 2), "has" | "is" | "was")
        && (condition + 3..condition + 5).any(|i| text(i) == "done");
    let behind = match text(condition) {
        "after" | "once" | "when" if is_that && is_done => {
            (condition + 3..at).find(|i| text(*i) == "done").map_or(at, |done| done + 1)
        }
        "after" if is_that => condition + 2,
        _ => return false,
    };
    let is_how = |i: usize| {
        text(i).ends_with("ly") || matches!(text(i), "can" | "just" | "may" | "now" | "please" | "you")
    };
    behind <= at && (behind..at).all(is_how)
}

/// Whether a token stands in a condition: after "when", "until", up to a comma or the end of the sentence.
fn is_conditional(tokens: &[Token<'_>], at: usize, conditions: &[&str]) -> bool {
    for i in (0..=at).rev() {
        let Some(token) = tokens.get(i) else { return false };
        let ends = tokens.get(at + 1).is_none_or(|next| next.before != Break::None);
        // "With the vent open, drain the pump": how it stands, not what to do.
        if i < at && matches!(&*token.text, "once" | "when") && is_main_order(tokens, i, at) {
            return false;
        }
        let goes_on = || {
            follows_what_is_awaited(tokens, i, at)
                || is_so_much_later(tokens, i, at)
                || is_after_that(tokens, i, at)
                || i.checked_sub(1).is_some_and(|before| is_after_that(tokens, before, at))
        };
        if i < at && goes_on() {
            return false;
        }
        let is_also = token.text == "as" && tokens.get(i + 1).is_some_and(|next| next.text == "well");
        // "The pipe has to come out, *so undo* the nut" orders what follows from it.
        let just = usize::from(tokens.get(i + 1).is_some_and(|next| next.text == "just"));
        let orders = token.text == "so" && i + 1 + just == at;
        if i < at && orders {
            return false;
        }
        if i < at && !is_also && (conditions.contains(&token.text.as_ref()) || (ends && token.text == "with"))
        {
            return true;
        }
        let in_brackets = i.checked_sub(1).and_then(|i| tokens.get(i)).is_some_and(|before| {
            // More than a blank between two words is a bracket or a quotation mark.
            token.span.0 > before.span.1 + 1
        });
        if token.before != Break::None || in_brackets {
            return false;
        }
    }
    false
}
