//! `words/not-typed`: a sentence says something to do that no action holds.

use crate::capture::{begins_with_a_seal, begins_with_a_thing};
use crate::check::context::Context;
use crate::check::document::steps;
use crate::check::finding::{Finding, Level};
use crate::check::rule::{Looks, Rule, documentation};
use crate::check::untyped::{is_conditional, moves_a_thing, rest_of_clause, says_again, says_likewise};
use crate::lexicon::{Break, Said, tokens};
use crate::model::{Span, Step, Verb};

pub(in crate::check) static RULE: Rule = Rule {
    code: "words/not-typed",
    level: Level::Warn,
    summary: "a sentence says something to do that no action holds",
    documentation: documentation!("not_typed.md"),
    looks: Looks::AtDocument(check),
};

fn check(rule: &Rule, context: &Context<'_>, findings: &mut Vec<Finding>) {
    for at in steps(context) {
        let said = context.heard.said(at.number - 1);
        let covered = |word: &Span| {
            let spans = at.step.actions.iter().flat_map(|action| &action.says);
            spans.into_iter().any(|span| span.0 < word.1 && word.0 < span.1)
        };
        for again in
            says_again(at.step).into_iter().chain(says_likewise(at.step)).chain(moves_a_thing(at.step, said))
        {
            let text = again.of(&at.step.words);
            if !at.step.declined.iter().any(|known| known.eq_ignore_ascii_case(text)) {
                let title = format!("Step {} says \"{text}\", and no action holds it", at.number);
                let mut finding = at.finding(rule, title, "Write what is done, or decline the reading");
                finding.span = Some(again);
                findings.push(finding);
            }
        }
        let mut told = None;
        for phrase in said.iter().filter(|phrase| !phrase.unsaid && !phrase.means.is_empty()) {
            let Some(first) = phrase.words.first() else { continue };
            // The same words may be phrases of several verbs.
            if told == Some(first.0)
                || at.step.actions.iter().any(|action| phrase.says(&action.verb))
                || phrase.words.iter().any(covered)
                || !begins_a_clause(&at.step.words, first.0)
                || !(names_a_thing(context, &at.step.words, first.1)
                    || changes(at.step, phrase)
                    || changes_a_thing(context, at.step, phrase, said)
                    || may_mean_one_of_several(context, &at.step.words, phrase))
            {
                continue;
            }
            let span = run(&at.step.words, &phrase.words);
            let (text, verb) = (span.of(&at.step.words), first.of(&at.step.words));
            let is = |known: &String| known.eq_ignore_ascii_case(text) || known.eq_ignore_ascii_case(verb);
            if !at.step.declined.iter().any(is) {
                let title = format!("Step {} says \"{text}\", and no action holds it", at.number);
                let mut finding = at.finding(rule, title, "Type it as an action, or decline the reading");
                finding.span = Some(span);
                findings.push(finding);
                told = Some(first.0);
            }
        }
    }
}

/// The first words of a phrase as far as nothing stands between them: "take off" of "take off the lid", "take"
/// of "take the lid off". So an action of them marks them, and so they are declined.
fn run(words: &str, phrase: &[Span]) -> Span {
    let mut run = phrase.first().copied().unwrap_or(Span(0, 0));
    for word in phrase.iter().skip(1) {
        if !Span(run.1, word.0).of(words).trim().is_empty() {
            break;
        }
        run.1 = word.1;
    }
    run
}

/// Whether a sentence of which no action says anything begins with a phrase that changes the appliance: what it is
/// done to may be on no map yet.
fn changes(step: &Step, phrase: &Said) -> bool {
    let Some(first) = phrase.words.first() else { return false };
    let before = Span(0, first.0).of(&step.words).trim_end();
    let begins = before.is_empty() || before.ends_with(['.', '!']);
    let rest = step.words.get(Span(0, first.0).of(&step.words).len()..).unwrap_or_default();
    let length = rest.find(['.', '!']).map_or(rest, |end| rest.get(..end).unwrap_or(rest)).chars().count();
    let end = first.0.saturating_add(u32::try_from(length).unwrap_or(u32::MAX));
    let mut said = step.actions.iter().flat_map(|action| &action.says);
    begins
        && !said.any(|span| span.0 < end && first.0 < span.1)
        && phrase.means.iter().any(Verb::changes_the_appliance)
        && !tokens(&step.words).iter().any(|token| SURROUNDINGS.contains(&token.text.as_ref()))
}

/// Whether a phrase that changes the appliance is done to what an appliance has, and no action says anything of it up to
/// the next phrase: "*unbolt the motor*, unplug the fan" of which only the plug was read.
fn changes_a_thing(context: &Context<'_>, step: &Step, phrase: &Said, said: &[Said]) -> bool {
    let (Some(first), true) = (phrase.words.first(), phrase.means.iter().any(Verb::changes_the_appliance))
    else {
        return false;
    };
    let begins = said.iter().filter(|other| !other.unsaid && !other.means.is_empty());
    let next = begins
        .filter_map(|other| other.words.first())
        .map(|next| next.0)
        .filter(|next| *next > first.1)
        .min();
    let rest = rest_of_clause(&step.words, first.1);
    let mut acted = step.actions.iter().flat_map(|action| &action.says);
    let is_free = !acted.any(|span| span.0 < next.unwrap_or(u32::MAX) && first.0 < span.1);
    // "Undo the bolts of the motor and draw *the motor* out" is held by another action's words.
    let is_held = || {
        let names =
            step.actions.iter().flat_map(|action| &action.on).map(|id| context.procedure.map.name_of(id));
        let heads: Vec<&str> = names.filter_map(|name| name.rsplit(' ').next()).collect();
        tokens(rest).iter().take_while(|token| token.text != "and").any(|token| heads.contains(&&*token.text))
    };
    // "Draw the lead out": how something is handled belongs to what is done to it.
    let verb = first.of(&step.words).to_lowercase();
    // "Put the cover *back*" ends what was begun; "put the probe in" may be said by what is measured.
    let puts_back = || verb != "put" || phrase.words.iter().any(|word| word.of(&step.words) == "back");
    let is_done = phrase.words.len() == 1 || (DONE.contains(&verb.as_str()) && puts_back());
    // "*Fit a new gasket* to the plate": it is renewed by what makes the joint, if anything does.
    let is_seal_lost = || {
        let renews = phrase.means.iter().any(|verb| matches!(verb, Verb::Fit | Verb::Make));
        let is_made = step.actions.iter().any(|action| action.verb == Verb::Make && action.seal.is_some());
        renews && !is_made && begins_with_a_seal(rest)
    };
    let names_something =
        || begins_with_a_thing(rest) || (begins_with_one(rest) && !is_conditional(&step.words, first.0));
    is_free && ((is_done && names_something()) || is_seal_lost()) && !is_held()
}

/// Whether words begin with what stands for a thing that was named before: "plug *the other one* in", "open *it*".
fn begins_with_one(rest: &str) -> bool {
    const MOST_WORDS: usize = 3;
    let all = tokens(rest);
    let text = |i: usize| all.get(i).map_or("", |token| &*token.text);
    let joined = |i: usize| i == 0 || all.get(i).is_some_and(|token| token.before == Break::None);
    let stands = |i: &usize| matches!(text(*i), "one" | "ones");
    // "Screw *one* back on", not "turn one notch".
    let is_one = || text(0) == "one" && joined(1) && matches!(text(1), "back" | "in" | "off" | "on" | "out");
    matches!(text(0), "it" | "them")
        || is_one()
        || (text(0) == "the" && (1..=MOST_WORDS).take_while(|i| joined(*i)).any(|i| stands(&i)))
}

/// Verbs of several words that do more than to move a thing.
const DONE: &[&str] = &["close", "plug", "put", "screw", "shut", "swing", "switch", "take", "throw", "turn"];

/// What is worn, brought along or around the appliance.
const SURROUNDINGS: &[&str] = &[
    "tool",
    "tools",
    "window",
    "windows",
    "room",
    "gloves",
    "goggles",
    "glasses",
    "mask",
    "shoes",
    "clothes",
    "hands",
    "van",
    "ladder",
    "rubbish",
    "packaging",
    "furniture",
    "floor",
    "carpet",
    "radio",
    "torch",
];

/// Whether a word stands where an instruction begins: first, or after "and", "then" or a stop.
fn begins_a_clause(words: &str, from: u32) -> bool {
    let before = Span(0, from).of(words).trim_end();
    let ends_with = |end: &&str| {
        let last = before.len().checked_sub(end.len()).and_then(|from| before.get(from..));
        last.is_some_and(|last| last.eq_ignore_ascii_case(end))
    };
    before.is_empty() || [" and", " then", ",", ";", "."].iter().any(ends_with)
}

/// Whether the rest of the clause names a thing of the map.
fn names_a_thing(context: &Context<'_>, words: &str, from: u32) -> bool {
    context.names().stand_in(&rest_of_clause(words, from).to_lowercase())
}

/// Whether a phrase that changes the appliance is done to what the map calls by the same last word: "the valve" where
/// there are a suction valve and a discharge valve, which somebody was asked about and has left open.
fn may_mean_one_of_several(context: &Context<'_>, words: &str, phrase: &Said) -> bool {
    let Some(last) = phrase.words.last() else { return false };
    if !phrase.means.iter().any(Verb::changes_the_appliance) {
        return false;
    }
    let clause = rest_of_clause(words, last.1);
    let all = tokens(clause);
    let mut object = all.iter().skip_while(|token| matches!(&*token.text, "the" | "a" | "both" | "all"));
    let Some(noun) = object.next().filter(|_| all.first().is_some_and(|first| first.text == "the")) else {
        return false;
    };
    context.procedure.map.things().any(|(_, _, name, _)| {
        name.rsplit(' ').next().is_some_and(|head| head.eq_ignore_ascii_case(&noun.text))
    })
}
