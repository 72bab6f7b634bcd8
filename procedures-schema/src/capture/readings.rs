//! What the words at one place can be read as, for a writer who wants another reading than the line took.
//!
//! First what the verb there says of what is named there; then, where a thing is named, the other verbs that can
//! be done to it here; then, behind the verb, other things to which it can be done here. Which of them is right
//! is for the writer to say, so what the line would never take by itself is offered too.

use super::clause::Clause;
use super::mention::{Candidate, Mention};
use super::reader::{Proposal, Reader};
use super::{Here, coin};
use crate::lexicon::{Break, Lexicon};
use crate::model::{Action, ApplianceMap, Id, Span, Stage, ThingKind, Verb};
use crate::notation::{GRAMMAR, entry};
use crate::simulate::{Place, Trace};

/// Other things are offered behind a verb until there are so many readings.
const ENOUGH: usize = 6;
/// More than a digit can pick are never offered.
const MOST: usize = 9;

/// What the words at a place can be read as.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Readings {
    /// The words in question.
    pub span: Span,
    /// What they can say, the likeliest first; each carries the spans that would say it.
    pub actions: Vec<Action>,
}

/// The readings of the words at `at` (a caret, or a stretch that is marked), for a line that stands right after
/// `place` of the run.
pub fn readings_at(
    words: &str,
    at: Span,
    map: &ApplianceMap,
    trace: &Trace,
    place: Place,
    stage: &Stage,
) -> Readings {
    let here = Here::from_trace(map, trace, place);
    let line = |lexicon| Reader::new(words, map, here, stage, lexicon).readings_at(at);
    Lexicon::for_language("en").map(line).unwrap_or_default()
}

/// What the words that say an action call its thing, where that is not a name that the map knows: "circulator"
/// in "undo the circulator".
pub fn called(words: &str, action: &Action, map: &ApplianceMap, stage: &Stage) -> Option<String> {
    let lexicon = Lexicon::for_language("en")?;
    Reader::new(words, map, Here::in_service(map), stage, lexicon).called(action)
}

impl Reader<'_> {
    fn readings_at(mut self, at: Span) -> Readings {
        let Some((from, to)) = self.touched(at) else { return Readings::default() };
        let clause = self.clause_at(from);
        let reach = clause.as_ref().map_or(from, Clause::verb);
        for earlier in self.clauses.clone().iter().filter(|earlier| earlier.verb() < reach) {
            for proposal in self.proposals(earlier) {
                self.take(proposal);
            }
        }
        let inside = self.mentions.iter().find(|m| m.from < to && from < m.to).cloned();
        let is_read = clause.as_ref().is_some_and(|clause| !self.proposals(clause).is_empty());
        let behind = || self.named_behind(to).filter(|_| !is_read && at.0 < at.1);
        let is_inside = inside.is_some();
        let mention = inside.or_else(behind);
        let mut found = Found { actions: Vec::new() };
        if let Some(clause) = &clause {
            self.of_clause(clause, &mut found);
        }
        if let Some(mention) = &mention {
            let marked = at.0 < at.1;
            let named = if is_inside { Vec::new() } else { self.tokens_of(mention) };
            let says = if marked {
                (from..to).chain(named).collect()
            } else {
                self.said_with(clause.as_ref(), mention)
            };
            self.of_mention(mention, &says, &mut found);
        }
        if let Some(clause) = &clause {
            self.on_others(clause, &mut found);
        }
        found.actions.truncate(MOST);
        for action in &mut found.actions {
            action.meant_by = self.words_of_pick(action);
        }
        let span = match (&clause, &mention) {
            _ if at.0 < at.1 => self.span(from, to),
            (Some(clause), _) => self.span(clause.verb(), clause.to),
            (None, Some(mention)) => self.span(mention.from, mention.to),
            (None, None) => self.span(from, to),
        };
        Readings { span, actions: found.actions }
    }

    /// What is named first behind marked words, up to the next comma or verb: "*knock off* the two lids".
    fn named_behind(&self, to: usize) -> Option<Mention> {
        let mention = self.mentions.iter().find(|mention| mention.from >= to)?;
        let is_joined =
            (to..=mention.from).all(|i| self.tokens.get(i).is_some_and(|token| token.before == Break::None));
        let is_verb = |i: usize| self.clauses.iter().any(|clause| clause.phrase.contains(&i));
        (is_joined && !(to..mention.from).any(is_verb)).then(|| mention.clone())
    }

    /// The tokens that a caret or a marked stretch touches.
    fn touched(&self, at: Span) -> Option<(usize, usize)> {
        let is_caret = at.0 >= at.1;
        let touches = |span: &Span| {
            if is_caret { span.0 <= at.0 && at.0 <= span.1 } else { span.0 < at.1 && at.0 < span.1 }
        };
        let all: Vec<usize> = (0..self.tokens.len()).filter(|i| touches(&self.span(*i, i + 1))).collect();
        // A caret between two words belongs to the one that it stands before.
        let first = if is_caret { all.last() } else { all.first() };
        let own = first.zip(all.last()).map(|(first, last)| (*first, last + 1));
        let before = || (0..self.tokens.len()).rfind(|i| self.span(*i, i + 1).1 <= at.0);
        own.or_else(|| before().map(|before| (before, before + 1)))
    }

    fn clause_at(&self, token: usize) -> Option<Clause> {
        let of_phrase = self.clauses.iter().find(|clause| clause.phrase.contains(&token));
        let around = || self.clauses.iter().rfind(|clause| (clause.from..clause.to).contains(&token));
        of_phrase.or_else(around).cloned()
    }

    /// What the verb of a clause says of what is named beside it.
    fn of_clause(&self, clause: &Clause, found: &mut Found) {
        for proposal in self.proposals(clause) {
            self.put(&proposal, found);
        }
        for verb in self.in_order_of_preference(clause) {
            let Some(proposal) = self.thing_verb(clause, &verb) else { continue };
            let action = self.with_spans(&proposal);
            self.put(&proposal, found);
            let kinds = entry(&verb).map_or(&[][..], |line| line.things.kinds);
            for mention in self.mentions_in(clause).filter(|m| m.from > clause.verb()) {
                for other in of_kinds(&mention.candidates, kinds) {
                    found.add(on_another(&action, &other.id));
                }
            }
        }
        if let Some(proposal) = self.without_things(clause) {
            self.put(&proposal, found);
        }
    }

    /// The verbs that can be done here to what is named.
    fn of_mention(&self, mention: &Mention, says: &[usize], found: &mut Found) {
        for line in GRAMMAR.iter().filter(|line| is_offered(&line.verb)) {
            for candidate in of_kinds(&mention.candidates, line.things.kinds) {
                if self.here.is_possible(&line.verb, &candidate.id) {
                    let mut action = Action::new(line.verb.clone(), vec![candidate.id.clone()]);
                    action.says = self.spans(says);
                    found.add(action);
                }
            }
        }
    }

    /// Other things to which the verb can be done here, those that were touched last before others.
    fn on_others(&self, clause: &Clause, found: &mut Found) {
        let words = self.other_words(clause);
        // Whoever names a valve means none of the screws.
        let mentions = self.mentions_in(clause).filter(|mention| mention.from > clause.verb());
        let named: Vec<ThingKind> =
            mentions.flat_map(|mention| &mention.candidates).map(|candidate| candidate.kind).collect();
        for verb in self.in_order_of_preference(clause) {
            let Some(line) = entry(&verb).filter(|_| is_offered(&verb)) else { continue };
            let fits = |kind: ThingKind| {
                let is_like_named = named.is_empty() || named.contains(&kind);
                kind != ThingKind::Section && is_like_named && line.things.kinds.contains(&kind)
            };
            let things =
                self.map.things().filter(|(kind, id, ..)| fits(*kind) && self.here.is_possible(&verb, id));
            let shares = |name: &str| words.iter().any(|word| name.split(' ').any(|own| own == word));
            let mut things: Vec<(bool, _, &Id)> =
                things.map(|(_, id, name, _)| (shares(name), self.here.nearness(id), id)).collect();
            things.sort_by_key(|thing| std::cmp::Reverse((thing.0, thing.1)));
            for (_, _, id) in things {
                if found.actions.len() >= ENOUGH {
                    return;
                }
                let mut proposal = Proposal {
                    action: Action::new(verb.clone(), vec![id.clone()]),
                    choices: Vec::new(),
                    doubtful: None,
                    possible: true,
                    said_by: clause.phrase.clone(),
                };
                self.details(clause, &mut proposal);
                self.put(&proposal, found);
            }
        }
    }

    /// Adds a proposal, with each of its things where it is in doubt.
    fn put(&self, proposal: &Proposal, found: &mut Found) {
        let action = self.with_spans(proposal);
        if proposal.choices.len() < 2 {
            found.add(action);
        } else {
            proposal.choices.iter().for_each(|id| found.add(on_another(&action, id)));
        }
    }

    fn with_spans(&self, proposal: &Proposal) -> Action {
        let mut action = proposal.action.clone();
        action.says = self.spans(&proposal.said_by);
        action
    }

    /// The tokens of a thing with those of the verb that is said of it, if nothing parts the two.
    fn said_with(&self, clause: Option<&Clause>, mention: &Mention) -> Vec<usize> {
        let parted = |clause: &&Clause| {
            let (one, other) = (clause.verb().min(mention.from), clause.verb().max(mention.from));
            (one + 1..=other).any(|i| self.tokens.get(i).is_none_or(|token| token.before != Break::None))
        };
        let verb = clause.filter(|clause| !parted(clause)).map(|clause| clause.phrase.clone());
        let verb = verb.unwrap_or_default();
        verb.into_iter().chain(self.tokens_of(mention)).collect()
    }

    fn called(&self, action: &Action) -> Option<String> {
        let is_said = |i: usize| {
            let span = self.span(i, i + 1);
            action.says.iter().any(|said| said.0 <= span.0 && span.1 <= said.1)
        };
        let clause = self.clauses.iter().find(|clause| is_said(clause.verb()))?;
        let is_own = |mention: &&Mention| {
            mention.whole && mention.candidates.iter().any(|candidate| action.on.contains(&candidate.id))
        };
        if self.mentions_in(clause).any(|mention| is_own(&mention)) {
            return None;
        }
        let names_another = |phrase: &coin::Phrase| {
            let inside = |m: &&Mention| phrase.from <= m.from && m.to <= phrase.head + 1;
            let other = |m: &Mention| m.candidates.iter().all(|c| !action.on.contains(&c.id));
            self.mentions.iter().filter(inside).any(|m| m.whole && other(m))
        };
        let phrases = coin::phrases(self, clause);
        let phrase = phrases.iter().find(|phrase| !names_another(phrase))?;
        Some(self.span(phrase.from, phrase.head + 1).of(self.words).to_owned())
    }
}

/// Readings, each once.
struct Found {
    actions: Vec<Action>,
}

impl Found {
    fn add(&mut self, action: Action) {
        let is_it = |known: &Action| known.verb == action.verb && known.on == action.on;
        if !self.actions.iter().any(is_it) {
            self.actions.push(action);
        }
    }
}

fn of_kinds<'c>(all: &'c [Candidate], kinds: &'c [ThingKind]) -> impl Iterator<Item = &'c Candidate> {
    all.iter().filter(|candidate| kinds.contains(&candidate.kind))
}

/// The same done to another thing; how many of it was said of the first.
fn on_another(action: &Action, id: &Id) -> Action {
    let mut other = action.clone();
    if other.on.as_slice() != std::slice::from_ref(id) {
        other.count = None;
    }
    other.on = vec![id.clone()];
    other
}

/// Whether a verb says enough with its thing alone.
fn is_offered(verb: &Verb) -> bool {
    !matches!(
        verb,
        Verb::Charge | Verb::Purge | Verb::Test | Verb::Discard | Verb::Read | Verb::Photograph | Verb::Set
    )
}

#[cfg(test)]
mod tests;
