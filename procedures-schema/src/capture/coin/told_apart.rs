//! "The fan" where names of the map tell a left fan from a right fan that are no things of the map themselves: it is no third
//! one, and which of them is meant is asked.

use super::super::agreement::says_nothing_of_which;
use super::super::clause::Clause;
use super::super::mention::singular;
use super::super::refer::nearest;
use super::super::twins::{are_opposite, is_side};
use super::bench::Bench;
use super::label::is_label;
use super::nouns::{Noun, noun};
use super::phrase::{Lead, Phrase};
use super::phrase_words::{ADJECTIVES, ARTICLES, ENDS, PREPOSITIONS};
use super::wanted::is_appliance;
use super::{Meaning, Question};
use crate::lexicon::{Break, Lexicon, Token, tokens};
use crate::model::{ThingKind, Verb};

/// Sides that one thing has: an inner and an outer fan cover are of one fan.
const OF_ONE: &[&str] = &["back", "bottom", "front", "inner", "inside", "outer", "outside", "rear", "top"];

impl Bench<'_> {
    /// Asks which one is meant by a part of a clause that is told apart only in the names of what belongs to it: "the
    /// screws of *the fan*" beside a left fan cover and a right fan cover. Whether there is such a part.
    pub(super) fn may_be_one_of_owners(&mut self, clause: &Clause) -> bool {
        let acts = |verb: &Verb| {
            let looks =
                matches!(verb, Verb::Clean | Verb::Inspect | Verb::Lock | Verb::Place | Verb::TakeAway);
            looks || verb.changes_the_appliance()
        };
        if !clause.means.iter().any(acts) {
            return false;
        }
        if self.next_off.as_ref().is_some_and(|next| self.told_apart_by(next).len() > 1) {
            // It is asked about where its own clause is worked.
            self.next_off = None;
        }
        // Where something is put, need not be known.
        let acted_on =
            |phrase: &Phrase| phrase.lead == Lead::Direct || phrase.is_after(&["from", "of", "off"]);
        let is_it = |phrase: &&Phrase| acted_on(phrase) && self.told_apart_by(phrase).len() > 1;
        let Some(open) = self.phrases.iter().find(is_it).cloned() else { return false };
        let sides = self.told_apart_by(&open).join(" or ");
        self.ask_which_or_new(&open, &sides);
        true
    }

    /// "The earth lead of *the panel*" of two panels of which neither was touched last: whose a new thing is, is asked.
    pub(super) fn is_of_one_of_several(&mut self, phrase: &Phrase) -> bool {
        let Some(of) = self.behind(phrase, &["from", "of", "off"]) else { return false };
        let known = self.known(&of, &[ThingKind::Component, ThingKind::Connection]);
        let is_bare = self.line.text(of.start) == "the" && !of.plural() && of.label.is_none();
        if !is_bare || known.len() < 2 || nearest(&self.line.here, &known).is_some() || self.is_another(&of) {
            return false;
        }
        let names: Vec<&str> = known.iter().map(|id| self.map.name_of(id)).collect();
        let names = names.join(" or ");
        self.ask_which_or_new(&of, &names);
        true
    }

    /// "Measure the resistance of *the sensor*" of two of which neither was touched last: which, is asked beside the reading.
    pub(super) fn ask_what_is_measured(&mut self, clause: &Clause) {
        const LEADS: &[&str] = &["across", "at", "of"];
        if !self.line.text(clause.verb()).starts_with("measur") {
            return;
        }
        let several = |phrase: &&Phrase| {
            let known = self.known(phrase, &[ThingKind::Component, ThingKind::Connection]);
            let is_bare = self.line.text(phrase.from.saturating_sub(1)) == "the"
                && !phrase.plural()
                && phrase.label.is_none();
            is_bare && known.len() > 1 && nearest(&self.line.here, &known).is_none()
        };
        let measured = |phrase: &&Phrase| phrase.lead == Lead::Direct || phrase.is_after(LEADS);
        let Some(open) = self.phrases.iter().filter(measured).find(several).cloned() else { return };
        let known = self.known(&open, &[ThingKind::Component, ThingKind::Connection]);
        let names: Vec<&str> = known.iter().map(|id| self.map.name_of(id)).collect();
        let question = format!("Which {} is it: {}? Say it in the words", open.name(), names.join(" or "));
        let span = self.span_of(&open);
        self.asked.push(Question { span, question, choices: Vec::new(), thing: None });
    }

    /// Asks which of some a phrase means, to be said in the words, or whether it is none of them.
    fn ask_which_or_new(&mut self, phrase: &Phrase, which: &str) {
        let name = phrase.name();
        let question = format!("Which {name} is it: {which}? Say it in the words");
        let choices = vec![Meaning::New { name: self.name_of_another(&name) }];
        self.asked.push(Question { span: self.span_of(phrase), question, choices, thing: None });
    }

    /// Whether a phrase is a noun in the singular that says nothing of which one it is.
    pub(super) fn is_bare(&self, phrase: &Phrase) -> bool {
        let is_thing =
            !matches!(noun(&phrase.stem()), Noun::Nothing | Noun::Seal | Noun::Setting | Noun::Side);
        is_thing
            && !phrase.words.iter().any(|word| is_side(word))
            && phrase.label.is_none()
            && !phrase.plural()
            // "Take out *the fan*", "*fan* out".
            && (self.line.text(phrase.start) == "the" || phrase.start == phrase.from)
            && !(phrase.start..phrase.from).any(|i| self.line.text(i) == "new")
            && !self.is_another(phrase)
    }

    /// The sides, letters and numbers by which names and earlier words tell several of a bare noun apart, where none of them is
    /// on the map by itself; none where they do not.
    fn told_apart_by(&self, phrase: &Phrase) -> Vec<String> {
        let sort = noun(&phrase.stem());
        if !self.is_bare(phrase) || self.mentions.iter().any(|mention| mention.to == phrase.head + 1) {
            return Vec::new();
        }
        let (head, stem) = (phrase.head_word(), phrase.stem());
        let mut telling = Telling::default();
        for (kind, _, name, _) in self.map.things() {
            if !matches!(kind, ThingKind::Circuit | ThingKind::Section | ThingKind::Seal) {
                telling.take(name, &stem);
            }
        }
        for step in self.given.before.iter().filter(|step| may_name(&step.words, &head)) {
            telling.take(&step.words, &stem);
        }
        telling.several(&sort)
    }
}

/// Whether some words may hold another, in lower case or at the beginning of a sentence.
pub(super) fn may_name(words: &str, head: &str) -> bool {
    let rest = head.get(1..).unwrap_or_default();
    let begins = |at: usize| {
        words.get(..at).and_then(|before| before.chars().next_back()).map(|c| c.to_ascii_lowercase())
    };
    words.match_indices(rest).any(|(at, _)| begins(at) == head.chars().next())
}

/// How words call each thing of a noun: "hot water", "left", "of the control box".
pub(super) fn how_called(words: &str, stem: &[String]) -> Vec<String> {
    let all = tokens(words);
    let text = |i: usize| all.get(i).map_or("", |token| &*token.text);
    let first = |last: usize| (last + 1).checked_sub(stem.len());
    let is_named = |last: &usize| {
        first(*last).is_some_and(|from| stem.iter().zip(from..).all(|(word, i)| singular(text(i)) == *word))
    };
    let named = (0..all.len()).filter(is_named);
    named
        .flat_map(|last| {
            let owner = owner_behind(&all, last).map(|(_, owner)| owner);
            first(last).and_then(|from| sort_before(&all, from)).into_iter().chain(owner)
        })
        .collect()
}

/// By what words tell several of a noun apart.
#[derive(Default)]
struct Telling {
    /// "The *left* fan."
    sides: Vec<String>,
    /// "Contactors *K1* and *K2*."
    labels: Vec<String>,
    /// "The *fan* motor."
    parts: Vec<String>,
    /// "The *hot water* sensor."
    sorts: Vec<String>,
    /// "The clip *of the motor*", "the valve *at the bath*".
    owners: Vec<String>,
}

impl Telling {
    /// Takes in how some words call what a name in the singular says.
    fn take(&mut self, words: &str, stem: &[String]) {
        let all = tokens(words);
        let text = |i: usize| all.get(i).map_or("", |token| &*token.text);
        let joined = |i: usize| all.get(i).is_some_and(|token| token.before == Break::None);
        let written = |i: usize| all.get(i).map_or("", |token| token.span.of(words));
        let is_mark = |i: usize| joined(i) && is_label(&written(i).to_uppercase()) && written(i).len() < 4;
        let is_named = |last: &usize| {
            let from = (last + 1).checked_sub(stem.len());
            from.is_some_and(|from| stem.iter().zip(from..).all(|(word, i)| singular(text(i)) == *word))
        };
        let (mut sorts, mut places) = (Vec::new(), Vec::new());
        for at in (0..all.len()).filter(is_named) {
            let first = at + 1 - stem.len();
            let before = first.checked_sub(1).filter(|_| joined(first)).map_or("", text);
            sorts.extend(sort_before(&all, first));
            match owner_behind(&all, at) {
                // What is on the one now may be on the other later.
                Some(("in" | "on", place)) => places.push(place),
                Some((_, owner)) => add(&mut self.owners, owner),
                None => {}
            }
            if is_side(before) {
                add(&mut self.sides, before.to_owned());
            } else if noun(&[before.to_owned()]) == Noun::Part {
                add(&mut self.parts, before.to_owned());
            }
            let is_last = text(at + 2).is_empty() || !joined(at + 2) || is_between(text(at + 2));
            if is_mark(at + 1) && is_last {
                add(&mut self.labels, written(at + 1).to_uppercase());
                if text(at + 2) == "and" && is_mark(at + 3) {
                    add(&mut self.labels, written(at + 3).to_uppercase());
                }
            }
        }
        // Two that are named together are two; one may be called this and that in different lines.
        for (named, known) in [(sorts, &mut self.sorts), (places, &mut self.owners)] {
            if named.len() > 1 {
                for one in named {
                    add(known, one);
                }
            }
        }
    }

    /// What tells at least two apart; an inner and an outer cover are of one fan, and a lead that is marked is still the lead.
    fn several(self, sort: &Noun) -> Vec<String> {
        let Self { mut sides, labels, parts, sorts, owners } = self;
        let all = sides.clone();
        sides.retain(|side| {
            !OF_ONE.contains(&side.as_str()) && all.iter().any(|other| are_opposite(side, other))
        });
        let is_labelled = matches!(sort, Noun::Part | Noun::Unknown);
        let is_of_parts = !matches!(sort, Noun::Fixing | Noun::Joint);
        if sides.len() > 1 {
            sides
        } else if labels.len() > 1 && is_labelled {
            labels
        } else if parts.len() > 1 && is_of_parts {
            parts
        } else if sorts.len() > 1 && is_of_parts && *sort != Noun::Unknown {
            sorts
        } else if owners.len() > 1 && *sort != Noun::Unknown {
            owners
        } else {
            Vec::new()
        }
    }
}

/// The words between an article, or the beginning, and a noun that say of which sort it is: "the *hot water* sensor".
fn sort_before(all: &[Token<'_>], noun: usize) -> Option<String> {
    const MOST_WORDS: usize = 3;
    let text = |i: usize| all.get(i).map_or("", |token| &*token.text);
    let joined = |i: usize| all.get(i).is_some_and(|token| token.before == Break::None);
    let leads = |i: usize| ARTICLES.contains(&text(i)) || matches!(text(i), "and" | "but" | "leave" | "or");
    let tells = |i: &usize| {
        let word = text(*i);
        // A heat pump is the appliance.
        let is_whole = word == "heat" && singular(text(i + 1)) == "pump";
        let is_any =
            is_whole || ADJECTIVES.contains(&word) || OF_ONE.contains(&word) || says_nothing_of_which(word);
        !is_any && !leads(*i) && word.chars().all(|c| c.is_alphabetic() || c == '-')
    };
    let n = (0..noun).rev().take_while(|i| joined(i + 1) && tells(i)).count();
    // "*Drain* water heater A": the verb is no sort.
    let verb = usize::from(n > 0 && noun == n && begins_an_order(all));
    let (from, n) = (noun - n + verb, n - verb);
    let is_led = from == verb || (leads(from - 1) && joined(from));
    ((1..=MOST_WORDS).contains(&n) && is_led).then(|| (from..noun).map(text).collect::<Vec<_>>().join(" "))
}

/// Whether the first of some words may be a verb.
fn begins_an_order(all: &[Token<'_>]) -> bool {
    let lexicon = Lexicon::for_language("en");
    all.first().zip(lexicon).is_some_and(|(first, lexicon)| lexicon.may_begin(first))
}

/// What a noun is said to be of or at, with what leads to it: "the clip *of the diverter motor*".
fn owner_behind<'t>(all: &'t [Token<'_>], noun_at: usize) -> Option<(&'t str, String)> {
    const MOST_WORDS: usize = 4;
    let text = |i: usize| all.get(i).map_or("", |token| &*token.text);
    let joined = |i: &usize| all.get(*i).is_some_and(|token| token.before == Break::None);
    let lead = text(noun_at + 1);
    let is_led = matches!(lead, "at" | "from" | "in" | "of" | "off" | "on") && text(noun_at + 2) == "the";
    let from = noun_at + 3;
    let is_word = |i: &usize| joined(i) && !is_between(text(*i)) && !ENDS.contains(&text(*i));
    let words: Vec<String> =
        (from..from + MOST_WORDS).take_while(is_word).map(|i| text(i).to_owned()).collect();
    let is_owner = match lead {
        // "The mixing valve *of the underfloor circuit*", "the valve *at the bath*": where it is, and not where it goes.
        "at" | "of" if matches!(noun(&words), Noun::Joint | Noun::Unknown) => !words.is_empty(),
        "in" | "on" => !matches!(noun(&words), Noun::Nothing | Noun::Temporary),
        _ => matches!(noun(&words), Noun::Part | Noun::Isolator(_)),
    };
    let is_whole = matches!(lead, "from" | "of" | "off") && is_appliance(&words);
    let lead = if matches!(lead, "from" | "off") { "of" } else { lead };
    let is_it = is_led && joined(&(noun_at + 1)) && is_owner && !is_whole;
    is_it.then(|| (lead, format!("{lead} the {}", words.join(" "))))
}

/// Whether a name ends before a word.
fn is_between(word: &str) -> bool {
    matches!(word, "and" | "or" | "then") || PREPOSITIONS.contains(&word)
}

fn add(found: &mut Vec<String>, word: String) {
    if !found.contains(&word) {
        found.push(word);
    }
}
