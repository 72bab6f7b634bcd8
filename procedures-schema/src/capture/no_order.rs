//! Words that look like a verb of an order and are none: a noun, a state, what a thing does by itself, what somebody would
//! do.

use super::coin::{Noun, is_label, named_kind, noun};
use super::mention::{is_plural, singular};
use super::read_value::begins_a_name;
use crate::lexicon::{Break, Said, Token, amount};
use crate::model::Verb;

/// Whether a verb tells what a thing or somebody does by itself: "the valve must *shut* dry", "they *snap* in the
/// cold".
pub(super) fn is_expected(tokens: &[Token<'_>], at: usize) -> bool {
    const MODALS: &[&str] = &["can", "could", "may", "might", "must", "should", "will", "would"];
    const SUBJECTS: &[&str] = &["he", "she", "they", "which", "who"];
    let text =
        |back: usize| at.checked_sub(back).and_then(|i| tokens.get(i)).map_or("", |token| &*token.text);
    // "He'll *have turned* the heating off": done by somebody else.
    let has_done =
        matches!(text(1), "had" | "has" | "have") && !matches!(text(2), "" | "you" | "must" | "to");
    // "You must lock it" is an order; "the glass *will otherwise crack*".
    let is_between = |word: &str| {
        word.ends_with("ly")
            || matches!(word, "also" | "even" | "never" | "not" | "otherwise" | "soon" | "still" | "then")
    };
    let back = if is_between(text(1)) { 2 } else { 1 };
    let is_modal = MODALS.contains(&text(back)) && !matches!(text(back + 1), "" | "you");
    // "This one was pumping up."
    let is_doing = matches!(text(1), "are" | "is" | "was" | "were" | "it's" | "she's" | "they're")
        && text(0).ends_with("ing");
    // "*Drain's stopped* now", "the *drip stopped*": what runs stops by itself.
    let is_over = (text(1).ends_with("'s") && !matches!(text(1), "it's" | "let's" | "that's"))
        && ["ed", "ing"].iter().any(|end| text(0).ends_with(end));
    let runs = ["bleed", "drain", "draining", "drip", "dripping", "flow", "leak", "trickle", "water"];
    let is_dry = matches!(text(0), "stop" | "stopped") && runs.contains(&text(1));
    // "Or *you start* again."
    let is_consequence = matches!(text(1), "it" | "you") && matches!(text(2), "else" | "or" | "otherwise");
    is_modal
        || has_done
        || is_doing
        || is_over
        || is_dry
        || SUBJECTS.contains(&text(1))
        || text(1).ends_with("'ll")
        || is_consequence
        || is_left_so(tokens, at)
        || is_thought(tokens, at)
        || is_expected_too(tokens, at)
}

/// "Leave the heating flow sensor *clipped* on the pipe."
fn is_left_so(tokens: &[Token<'_>], at: usize) -> bool {
    const LEAVING: &[&str] = &["keep", "keeping", "keeps", "leave", "leaves", "leaving"];
    let joined = |i: &usize| tokens.get(i + 1).is_some_and(|next| next.before == Break::None);
    let is_done = tokens.get(at).is_some_and(|token| token.text.ends_with("ed"));
    let mut before =
        (0..at).rev().take_while(joined).take_while(|i| tokens.get(*i).is_some_and(|t| t.text != "and"));
    is_done && before.any(|i| tokens.get(i).is_some_and(|token| LEAVING.contains(&&*token.text)))
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
    // "The tube *is only pushed* in."
    let mut words = before.clone();
    if words.next() == Some("only") && words.next().is_some_and(|word| matches!(word, "are" | "is" | "was")) {
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

/// "The compressor *should stop* at 10 bar and *start* again at 8": both are what a thing does.
fn is_expected_too(tokens: &[Token<'_>], at: usize) -> bool {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    // "*And the burner light*."
    let article = (at.saturating_sub(4)..at).rev().find(|i| matches!(text(*i), "a" | "its" | "the"));
    let joins = |i: usize| i > 0 && text(i - 1) == "and" && i + 1 < at;
    let and = if at > 0 && text(at - 1) == "and" { Some(at) } else { article.filter(|i| joins(*i)) };
    let Some(at) = and.filter(|_| !text(at).ends_with("ed")) else { return false };
    let begins = |i: &usize| tokens.get(*i).is_none_or(|token| token.before == Break::Sentence);
    let from = (0..=at).rev().find(begins).unwrap_or(0);
    let people = |i: usize| matches!(text(i), "i" | "somebody" | "they" | "we" | "you");
    (from + 1..at - 1).any(|i| {
        let modal = matches!(text(i), "may" | "might" | "should" | "will" | "would");
        modal && text(i + 1) != "be" && !people(i - 1) && text(from) != "if"
    })
}

/// Whether what a phrase says of a thing only stays as it is: "the tube to the switch *stays on*".
pub(super) fn stays_so(tokens: &[Token<'_>], said: &Said) -> bool {
    let (Some(&first), Some(&last)) = (said.tokens.first(), said.tokens.last()) else { return false };
    let before = last.checked_sub(1).filter(|before| *before > first && !said.tokens.contains(before));
    let text = before.and_then(|before| tokens.get(before)).map_or("", |token| &*token.text);
    matches!(text, "remain" | "remains" | "stay" | "stayed" | "stays")
}

/// Whether the word that ends a phrase only says how a thing is: "pull the two *clear* tubes off" pulls none clear.
pub(super) fn ends_with_a_quality(tokens: &[Token<'_>], said: &Said) -> bool {
    const QUALITIES: &[&str] = &["clean", "clear", "dry", "free", "loose", "slack", "tight"];
    const BEFORE: &[&str] = &[
        "a", "an", "any", "big", "its", "large", "little", "long", "new", "old", "short", "small", "the",
        "their", "your",
    ];
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let Some(&last) =
        said.tokens.last().filter(|last| said.tokens.len() > 1 && QUALITIES.contains(&text(**last)))
    else {
        return false;
    };
    let before = text(last - 1);
    let leads = BEFORE.contains(&before) || amount(before).is_some();
    leads && tokens.get(last + 1).is_some_and(|next| next.before == Break::None)
}

/// Whether the value that ends a phrase begins the name of a thing: "take the *temperature* relief valve off" takes none.
pub(super) fn ends_in_a_name(tokens: &[Token<'_>], said: &Said) -> bool {
    const VALUES: &[&str] = &["pressure", "temperature"];
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let last = said.tokens.last().filter(|last| said.tokens.len() > 1 && VALUES.contains(&text(**last)));
    last.is_some_and(|last| begins_a_name(tokens.get(last + 1)))
}

/// "Let it down to *the stop* level": where something stops, and nothing that is stopped.
pub(super) fn ends_at_a_stop(tokens: &[Token<'_>], said: &Said) -> bool {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let led = |last: &usize| text(*last) == "stop" && *last > 0 && matches!(text(last - 1), "a" | "the");
    said.tokens.len() > 1 && said.tokens.last().is_some_and(led)
}

/// "*A weeping joint is* to be *drained*": what is said of any such thing is a rule, and nothing to do.
pub(super) fn is_said_of_any(tokens: &[Token<'_>], at: usize) -> bool {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let begins = |i: &usize| tokens.get(*i).is_none_or(|token| token.before != Break::None);
    let from = (0..=at).rev().find(begins).unwrap_or(0);
    let passive = (from + 2..at).any(|i| matches!(text(i), "be" | "is" | "are"));
    matches!(text(from), "a" | "an" | "any" | "anything")
        && from < at
        && passive
        && !text(at).ends_with("ing")
}

/// Whether a verb is what something gets: "give it *a good brush*", "the tray gets *a proper scrub*".
pub(super) fn is_quantified_doing(tokens: &[Token<'_>], at: usize) -> bool {
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

/// Whether a verb tells what a thing does: "the zone valve *opens*". What people do in that form is an order: "the
/// engineer closes the valve".
pub(super) fn is_told(tokens: &[Token<'_>], at: usize, means: &[Verb]) -> bool {
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
        && means.iter().all(|verb| verb.changes_the_appliance() || matches!(verb, Verb::Place | Verb::Start))
}

/// Whether a word that is a verb as often as a state ends what another verb says: "the valve drives *open*".
pub(super) fn is_state(tokens: &[Token<'_>], at: usize) -> bool {
    const STATES: &[&str] = &["clear", "close", "open", "shut"];
    let Some(token) = tokens.get(at).filter(|token| token.before == Break::None) else { return false };
    let before = at.checked_sub(1).and_then(|i| tokens.get(i)).map_or("", |token| &*token.text);
    let behind =
        tokens.get(at + 1).filter(|next| next.before == Break::None).map_or("", |token| &*token.text);
    let goes_on = matches!(behind, "the" | "a" | "an" | "it" | "them" | "both" | "all" | "its");
    STATES.contains(&token.text.as_ref()) && before.ends_with('s') && !before.ends_with("ss") && !goes_on
}

/// Whether a token stands in quotation marks: a tag "do not *switch on*".
pub(super) fn is_quoted(words: &str, tokens: &[Token<'_>], at: usize) -> bool {
    let before = tokens.get(at).map_or("", |token| crate::model::Span(0, token.span.0).of(words));
    let n_open = before.chars().filter(|c| *c == '\u{201c}').count();
    let n_closed = before.chars().filter(|c| *c == '\u{201d}').count();
    // Behind a figure it is a measure: 1 1/2".
    let is_mark = |(one, next): (char, char)| next == '"' && !one.is_ascii_digit();
    let n_marks =
        std::iter::once(' ').chain(before.chars()).zip(before.chars()).filter(|pair| is_mark(*pair)).count();
    n_marks % 2 == 1 || n_open > n_closed
}

/// "Turn the catches *to lock*": what that is for, and no lock on an isolator.
pub(super) fn is_to_lock(tokens: &[Token<'_>], at: usize) -> bool {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let ends = tokens.get(at + 1).is_none_or(|next| next.before != Break::None);
    text(at) == "lock" && ends && at > 0 && text(at - 1) == "to"
}

/// Whether "set" says at what something stands: "the frequency *set* on the inverter", "the rate each meter is set to".
pub(super) fn is_set_already(tokens: &[Token<'_>], at: usize) -> bool {
    const BEFORE: &[&str] = &[
        "again", "also", "always", "and", "back", "but", "first", "next", "now", "only", "or", "please",
        "should", "then", "to", "you",
    ];
    let is_set = tokens.get(at).is_some_and(|token| token.text == "set" && token.before == Break::None);
    let before = at.checked_sub(1).and_then(|i| tokens.get(i)).map_or("", |before| &*before.text);
    let next = tokens.get(at + 1).filter(|next| next.before == Break::None).map_or("", |next| &*next.text);
    let is_word = before.chars().all(char::is_alphabetic) && !before.ends_with("ly");
    is_set && is_word && !BEFORE.contains(&before) && matches!(next, "at" | "by" | "for" | "in" | "on" | "to")
}

/// Whether a word that is a noun as often as a verb ends a name: "the fan *plug*", "the flue *cap*".
pub(super) fn is_noun(tokens: &[Token<'_>], at: usize) -> bool {
    const BOTH: &[&str] = &[
        "blank", "block", "bolt", "bond", "brush", "bung", "call", "cap", "clip", "coupling", "drain",
        "fire", "insert", "latch", "lead", "plug", "pocket", "pump", "screw", "setting", "strap", "strip",
        "tag", "tap", "valve", "vent", "warning", "wedge",
    ];
    const LISTED: &[&str] = &["bolt", "clip", "latch", "plug", "screw", "strap"];
    const JOINING: &[&str] = &[
        "and", "again", "always", "away", "back", "down", "first", "in", "it", "now", "off", "on", "or",
        "out", "please", "them", "then", "to", "up", "with",
    ];
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    // "Put it *in place* on its seals."
    if text(at) == "place" && at > 0 && matches!(text(at - 1), "in" | "into") {
        return true;
    }
    // "Plug A and *plug B*."
    let joined = |i: usize| tokens.get(i).is_some_and(|token| token.before == Break::None);
    let is_labelled = || {
        let label = tokens.get(at + 1).is_some_and(|next| is_label(next.raw));
        let ends =
            !joined(at + 2) || matches!(text(at + 2), "and" | "from" | "of" | "off" | "on" | "out" | "to");
        label && joined(at + 1) && ends
    };
    if BOTH.contains(&text(at)) && is_labelled() {
        return true;
    }
    // "The hot *check valve*", but not "then check valve 2".
    let is_check_valve = text(at) == "check" && matches!(text(at + 1), "valve" | "valves");
    if is_check_valve && at > 0 && joined(at) && joined(at + 1) && !JOINING.contains(&text(at - 1)) {
        return true;
    }
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
    if ends_a_compound(&before.text, &token.text)
        || is_purpose_of_a_thing(tokens, at)
        || is_named_switch(tokens, at)
    {
        return true;
    }
    // "The fan's *plug*", "the pump 1 *plug*".
    let is_owned = before.text.ends_with("'s") && !matches!(&*before.text, "it's" | "let's" | "that's");
    if (is_owned || is_labelled_thing(tokens, at - 1)) && BOTH.contains(&&*singular(&token.text)) {
        return true;
    }
    // "Two traps *sit* in the return."
    let stands = matches!(&*token.text, "hang" | "lie" | "sit" | "stand");
    if stands && is_plural(&before.text) && is_thing(&before.text) {
        return true;
    }
    BOTH.contains(&&*token.text) && is_of_a_name(&before.text) && !JOINING.contains(&&*before.text)
}

/// "The *2-pin* plug", "the *M4* screw in the cover".
fn is_of_a_name(before: &str) -> bool {
    let is_word = |c: char| c.is_alphabetic() || c == '-';
    let names = before.chars().all(|c| is_word(c) || c.is_ascii_digit())
        && before.contains(char::is_alphabetic)
        && !before.ends_with("ly");
    let is_thread = matches!(before.as_bytes(), [b'm', digit, ..] if digit.is_ascii_digit());
    names || is_thread
}

/// "Turn off the service *switch on the* boiler": a switch of a name, and where it is.
fn is_named_switch(tokens: &[Token<'_>], at: usize) -> bool {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let joined = |i: usize| tokens.get(i).is_some_and(|token| token.before == Break::None);
    at > 1
        && (at - 1..=at + 2).all(joined)
        && matches!((text(at), text(at + 1)), ("switch", "on"))
        && matches!(text(at + 2), "a" | "its" | "the")
        && matches!(text(at - 2), "a" | "its" | "the")
        && !matches!(text(at - 1), "and" | "or" | "then" | "to")
}

/// "Undo *the pump 1* plug": a label behind an article and a thing.
fn is_labelled_thing(tokens: &[Token<'_>], label: usize) -> bool {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let joined = |i: usize| tokens.get(i).is_some_and(|token| token.before == Break::None);
    let is_one = tokens.get(label).is_some_and(|token| is_label(token.raw)) && joined(label);
    is_one && label > 0 && joined(label - 1) && is_thing(text(label - 1))
}

/// "The pressure *adjusting* screw", "the cylinder *charging* pump": what a thing is for, within its name.
fn is_purpose_of_a_thing(tokens: &[Token<'_>], at: usize) -> bool {
    const PURPOSES: &[&str] = &[
        "adjusting",
        "balancing",
        "blanking",
        "bleeding",
        "charging",
        "circulating",
        "draining",
        "filling",
        "locking",
        "measuring",
        "mixing",
        "regulating",
        "setting",
        "tensioning",
        "venting",
    ];
    const MOST_WORDS: usize = 3;
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let joined = |i: usize| tokens.get(i).is_some_and(|token| token.before == Break::None);
    let is_led =
        |i: usize| matches!(text(i), "a" | "an" | "both" | "each" | "its" | "the" | "their" | "your");
    if !PURPOSES.contains(&text(at)) || !joined(at + 1) || !is_thing(text(at + 1)) {
        return false;
    }
    let mut before = (at.saturating_sub(MOST_WORDS)..at).rev().take_while(|i| joined(i + 1));
    let is_name = |i: usize| !is_led(i) && is_thing(text(i));
    at.checked_sub(1).is_some_and(is_name) && before.any(is_led)
}

/// Whether a word by itself names a part, a medium or what shuts, joins or sets something.
fn is_thing(word: &str) -> bool {
    let stem = [singular(word)];
    noun(&stem).is_worked_on()
        || named_kind(&stem, true).is_some()
        || noun(&stem) == Noun::Setting
        || word == "pressure"
}

/// "The emergency *switch*", "the belt *run*": words that with the one before them name a thing.
fn ends_a_compound(before: &str, word: &str) -> bool {
    const SWITCHES: &[&str] = &[
        "changeover",
        "control",
        "double-pole",
        "emergency",
        "float",
        "flow",
        "isolating",
        "isolator",
        "light",
        "limit",
        "local",
        "main",
        "mains",
        "pole",
        "pressure",
        "reset",
        "rocker",
        "rotary",
        "toggle",
        "wall",
    ];
    const RUNS: &[&str] = &["belt", "cable", "duct", "flue", "pipe"];
    match word {
        "switch" | "switches" => SWITCHES.contains(&before),
        "run" | "runs" => RUNS.contains(&before),
        _ => false,
    }
}

/// Whether a word that says how something is stands before what it is said of: "in a *clean* can", "catch it in *clean*
/// cans", "by *test* menu".
pub(super) fn is_of_name(tokens: &[Token<'_>], at: usize) -> bool {
    const QUALITIES: &[&str] = &["clean", "close", "clear", "empty", "open", "test"];
    const LEADS: &[&str] = &["at", "by", "for", "from", "in", "into", "of", "onto", "under", "with"];
    let joined = |i: usize| tokens.get(i).is_some_and(|token| token.before == Break::None);
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let Some(before) = at.checked_sub(1).filter(|_| joined(at)) else { return false };
    // "Keep it for *refill*", but not "look for leaks for 5 minutes".
    let is_end = text(before) == "for" && !text(at).ends_with("ing") && text(at) != "for";
    is_end || (LEADS.contains(&text(before)) && QUALITIES.contains(&text(at)) && joined(at + 1))
}

/// "Repair *switch on* the left-hand side to 0": which switch, and nothing that is switched on.
fn is_switch_at_a_place(tokens: &[Token<'_>], first: usize, last: usize) -> bool {
    const SIDES: &[&str] = &["back", "front", "left", "left-hand", "rear", "right", "right-hand"];
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let joined = |i: usize| tokens.get(i).is_some_and(|token| token.before == Break::None);
    let is_side = |i: usize| SIDES.contains(&text(i)) && matches!(text(i + 1), "side" | "wall" | "to");
    last == first + 1
        && (text(first), text(last), text(last + 1)) == ("switch", "on", "the")
        && first > 0
        && joined(first)
        && (is_side(last + 2) || text(last + 2) == "wall")
}

/// Whether "on" or "off" at the end of a phrase leads to where something is: "turn the spindle with pliers *on the* flat"
/// switches nothing on.
pub(super) fn leads_to_a_place(tokens: &[Token<'_>], said: &Said) -> bool {
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
    if is_switch_at_a_place(tokens, first, last) {
        return true;
    }
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
