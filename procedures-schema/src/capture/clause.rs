//! Words cut into clauses: a verb phrase and the tokens that belong to it.

use super::unknown;
use crate::lexicon::{Break, Said, Token};
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
            || is_noun(tokens, first)
            || is_state(tokens, first)
            || is_expected(tokens, first)
            || is_told(tokens, first, phrase.means)
            || is_of_name(tokens, first)
            || leads_to_a_place(tokens, phrase)
            || stays_so(tokens, phrase)
            || is_quantified_doing(tokens, first)
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
        matches!(text(i), "if" | "unless") && !matches!(before, "as" | "even")
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

/// Whether a word that is a noun as often as a verb ends a name: "the fan *plug*", "the flue *cap*".
fn is_noun(tokens: &[Token<'_>], at: usize) -> bool {
    const BOTH: &[&str] = &[
        "blank", "block", "bolt", "bond", "brush", "bung", "call", "cap", "clip", "drain", "fire", "latch",
        "lead", "plug", "screw", "setting", "strap", "strip", "tag", "tap", "vent", "warning", "wedge",
    ];
    const LISTED: &[&str] = &["bolt", "clip", "latch", "plug", "screw", "strap"];
    const JOINING: &[&str] = &[
        "and", "again", "always", "away", "back", "down", "first", "in", "it", "now", "off", "on", "or",
        "out", "please", "them", "then", "to", "up", "with",
    ];
    let tells =
        |next: &Token<'_>| next.before == Break::None && matches!(&*next.text, "is" | "are" | "has" | "was");
    // "*Block* is scrap."
    if tokens.get(at).is_some_and(|token| BOTH.contains(&token.text.as_ref()))
        && tokens.get(at + 1).is_some_and(tells)
    {
        return true;
    }
    // "Silencer, *clip*, both plugs": in a list of things.
    let ends = tokens.get(at + 1).is_none_or(|next| next.before != Break::None);
    let is_listed =
        tokens.get(at).is_some_and(|token| token.before == Break::Comma && LISTED.contains(&&*token.text));
    if is_listed && ends {
        return true;
    }
    let Some(token) = tokens.get(at).filter(|token| token.before == Break::None) else { return false };
    let Some(before) = at.checked_sub(1).and_then(|i| tokens.get(i)) else { return false };
    // "The 2-pin *plug*."
    let is_word = |c: char| c.is_alphabetic() || c == '-';
    let names = before.text.chars().all(|c| is_word(c) || c.is_ascii_digit())
        && before.text.contains(char::is_alphabetic)
        && !before.text.ends_with("ly");
    // "The M4 *screw* in the cover."
    let is_thread =
        before.text.starts_with('m') && before.text.bytes().nth(1).is_some_and(|b| b.is_ascii_digit());
    BOTH.contains(&token.text.as_ref()) && (names || is_thread) && !JOINING.contains(&before.text.as_ref())
}

/// "When water comes at the vent screw tighten it": the order follows its condition without a comma.
fn is_main_order(tokens: &[Token<'_>], condition: usize, at: usize) -> bool {
    const SUBJECTS: &[&str] = &["he", "it", "she", "they", "we", "you"];
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let ends_alone = matches!(text(at + 1), "it" | "them");
    let subject = at.checked_sub(1).is_some_and(|before| SUBJECTS.contains(&text(before)));
    ends_alone && !subject && at > condition + 3
}

/// Whether a verb tells what a thing or somebody does by itself: "the valve must *shut* dry", "they *snap* in the
/// cold".
fn is_expected(tokens: &[Token<'_>], at: usize) -> bool {
    const MODALS: &[&str] = &["can", "could", "may", "might", "must", "should", "will", "would"];
    const SUBJECTS: &[&str] = &["he", "she", "they", "which", "who"];
    let text =
        |back: usize| at.checked_sub(back).and_then(|i| tokens.get(i)).map_or("", |token| &*token.text);
    // "He'll *have turned* the heating off": done by somebody else.
    let has_done =
        matches!(text(1), "had" | "has" | "have") && !matches!(text(2), "" | "you" | "must" | "to");
    // "You must lock it" is an order.
    let is_modal = MODALS.contains(&text(1)) && !matches!(text(2), "" | "you");
    // "This one was pumping up."
    let is_doing = matches!(text(1), "are" | "is" | "was" | "were" | "it's" | "she's" | "they're")
        && text(0).ends_with("ing");
    // "*Drain's stopped* now", "the *drip stopped*": what runs stops by itself.
    let is_over = (text(1).ends_with("'s") && !matches!(text(1), "it's" | "let's" | "that's"))
        && ["ed", "ing"].iter().any(|end| text(0).ends_with(end));
    let runs = ["bleed", "drain", "draining", "drip", "dripping", "flow", "leak", "trickle", "water"];
    let is_dry = matches!(text(0), "stop" | "stopped") && runs.contains(&text(1));
    is_modal
        || has_done
        || is_doing
        || is_over
        || is_dry
        || SUBJECTS.contains(&text(1))
        || text(1).ends_with("'ll")
        || is_thought(tokens, at)
}

/// Whether a verb tells what somebody would do, does as a rule or comes to see: "*I'd lock* it only there's no hole",
/// "*normally rinsed*", "*you can see* the coupling", "*nothing undone* there".
fn is_thought(tokens: &[Token<'_>], at: usize) -> bool {
    const RULES: &[&str] = &["normally", "often", "sometimes", "usually"];
    const SEEING: &[&str] = &["feel", "find", "hear", "notice", "see", "spot"];
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let joined = |i: &usize| tokens.get(i + 1).is_some_and(|next| next.before == Break::None);
    let is_between = |word: &str| {
        word.ends_with("ly")
            || matches!(word, "always" | "can" | "could" | "just" | "never" | "often" | "should")
    };
    let mut before = (0..at).rev().take_while(joined).map(text);
    if before.clone().next().is_some_and(|word| RULES.contains(&word) || matches!(word, "none" | "nothing")) {
        return true;
    }
    // "*Opening the supply* in one go would cause hammer."
    let begins = |i: usize| tokens.get(i).is_none_or(|token| token.before != Break::None) || i == 0;
    let would = tokens.iter().skip(at + 1).take_while(|next| next.before == Break::None);
    if begins(at)
        && text(at).ends_with("ing")
        && would
            .into_iter()
            .any(|next| matches!(&*next.text, "can" | "could" | "may" | "might" | "will" | "would"))
    {
        return true;
    }
    let subject = before.find(|word| !is_between(word)).unwrap_or("");
    subject.ends_with("'d") || (SEEING.contains(&text(at)) && matches!(subject, "i" | "we" | "you"))
}

/// Whether a word that says how something is stands before what it is said of: "in a *clean* can", "catch it in *clean*
/// cans", "by *test* menu".
fn is_of_name(tokens: &[Token<'_>], at: usize) -> bool {
    const QUALITIES: &[&str] = &["clean", "close", "clear", "empty", "open", "test"];
    const LEADS: &[&str] = &["at", "by", "for", "from", "in", "into", "of", "onto", "under", "with"];
    let joined = |i: usize| tokens.get(i).is_some_and(|token| token.before == Break::None);
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let Some(before) = at.checked_sub(1).filter(|_| joined(at)) else { return false };
    // "Keep it for *refill*", but not "look for leaks for 5 minutes".
    let is_end = text(before) == "for" && !text(at).ends_with("ing") && text(at) != "for";
    is_end || (LEADS.contains(&text(before)) && QUALITIES.contains(&text(at)) && joined(at + 1))
}

/// "Close the drain cock *but leave the tap open*": nothing is done to what is left as it is.
fn leaves_another(tokens: &[Token<'_>], said: &Said) -> bool {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let Some(first) = said.tokens.first().copied().filter(|_| said.means.is_empty()) else { return false };
    let leaves = ["keep", "leav"].iter().any(|begin| text(first).starts_with(begin));
    let follows = first.checked_sub(1).is_some_and(|before| matches!(text(before), "and" | "but" | "then"));
    leaves && follows && matches!(text(first + 1), "a" | "all" | "both" | "the" | "your")
}

/// Whether what a phrase says of a thing only stays as it is: "the tube to the switch *stays on*".
fn stays_so(tokens: &[Token<'_>], said: &Said) -> bool {
    let (Some(&first), Some(&last)) = (said.tokens.first(), said.tokens.last()) else { return false };
    let before = last.checked_sub(1).filter(|before| *before > first && !said.tokens.contains(before));
    let text = before.and_then(|before| tokens.get(before)).map_or("", |token| &*token.text);
    matches!(text, "remain" | "remains" | "stay" | "stayed" | "stays")
}

/// Whether a verb is what something gets: "give it *a good brush*", "the tray gets *a proper scrub*".
fn is_quantified_doing(tokens: &[Token<'_>], at: usize) -> bool {
    const DOINGS: &[&str] = &["brush", "check", "clean", "look", "rinse", "rub", "scrub", "wash", "wipe"];
    let text =
        |back: usize| at.checked_sub(back).and_then(|i| tokens.get(i)).map_or("", |token| &*token.text);
    let joined = |i: usize| tokens.get(i).is_some_and(|token| token.before == Break::None);
    let next = tokens.get(at + 1).map_or("", |token| &*token.text);
    DOINGS.contains(&text(0))
        && joined(at)
        && at > 1
        && joined(at - 1)
        && matches!(text(2), "a" | "an" | "another")
        && !matches!(next, "a" | "all" | "an" | "both" | "it" | "its" | "the" | "them" | "your")
}

/// Whether "on" or "off" at the end of a phrase leads to where something is: "turn the spindle with pliers *on the* flat"
/// switches nothing on.
fn leads_to_a_place(tokens: &[Token<'_>], said: &Said) -> bool {
    const SWITCHES: &[&str] = &["flick", "power", "switch", "throw", "turn"];
    const ARTICLES: &[&str] = &["a", "an", "its", "the", "their", "your"];
    const BEHIND_ON: &[&str] = &[
        "again", "and", "as", "at", "before", "both", "by", "first", "for", "from", "full", "fully", "high",
        "if", "in", "last", "low", "max", "maximum", "min", "minimum", "once", "or", "outside", "so", "then",
        "till", "to", "until", "when", "while", "with", "without",
    ];
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let (Some(&first), Some(&last)) = (said.tokens.first(), said.tokens.last()) else { return false };
    let switches = SWITCHES.iter().any(|begin| text(first).starts_with(begin));
    let is_apart = said.tokens.len() == 2 && last > first + 1;
    let next = tokens.get(last + 1).filter(|next| next.before == Break::None);
    let Some(next) = next.filter(|_| switches && is_apart) else { return false };
    // "Switch the isolator on the wall *back on*."
    let behind = tokens.iter().skip(last + 1).take_while(|token| token.before == Break::None);
    if behind.into_iter().any(|token| token.text == text(last)) {
        return false;
    }
    let names = next.text.chars().all(char::is_alphabetic) && !next.text.ends_with("ly");
    match text(last) {
        "on" => names && !BEHIND_ON.contains(&&*next.text),
        "off" => ARTICLES.contains(&&*next.text),
        _ => false,
    }
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

/// Whether a word that is a verb as often as a state ends what another verb says: "the valve drives *open*".
fn is_state(tokens: &[Token<'_>], at: usize) -> bool {
    const STATES: &[&str] = &["clear", "close", "open", "shut"];
    let Some(token) = tokens.get(at).filter(|token| token.before == Break::None) else { return false };
    let before = at.checked_sub(1).and_then(|i| tokens.get(i)).map_or("", |token| &*token.text);
    let behind =
        tokens.get(at + 1).filter(|next| next.before == Break::None).map_or("", |token| &*token.text);
    let goes_on = matches!(behind, "the" | "a" | "an" | "it" | "them" | "both" | "all" | "its");
    STATES.contains(&token.text.as_ref()) && before.ends_with('s') && !before.ends_with("ss") && !goes_on
}

/// Whether a verb tells what a thing does: "the zone valve *opens*". What people do in that form is an order: "the
/// engineer closes the valve".
fn is_told(tokens: &[Token<'_>], at: usize, means: &[Verb]) -> bool {
    const PEOPLE: &[&str] =
        &["colleague", "engineer", "fitter", "installer", "keeper", "operator", "person", "technician"];
    let Some(token) = tokens.get(at).filter(|token| token.before == Break::None) else { return false };
    let Some(before) = at.checked_sub(1).and_then(|i| tokens.get(i)) else { return false };
    let in_third = token.text.ends_with('s') && !token.text.ends_with("ss");
    // "The plug on the fan *comes off the same way*" orders what is done to it.
    if token.text == "comes" {
        return false;
    }
    let subject = before.text.chars().all(|c| c.is_alphabetic() || c == '-')
        && !matches!(&*before.text, "and" | "or" | "then" | "to");
    in_third
        && subject
        && !PEOPLE.contains(&before.text.as_ref())
        && means.iter().all(|verb| verb.changes_the_appliance() || *verb == Verb::Start)
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
        if i < at && follows_what_is_awaited(tokens, i, at) {
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
