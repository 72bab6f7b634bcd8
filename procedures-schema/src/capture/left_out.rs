//! What a line names beside what is read and nothing read holds: "take out the fuse *and the fan*" of which only the fuse
//! was taken. Whatever cannot be placed is told, so nothing that stands where a verb acts goes without a word.

use super::Here;
use super::clause::Clause;
use super::coin::{self, Lead, Noun, Phrase, named_kind, noun};
use super::mention::{Mention, head_of, is_plural, singular, words_of};
use super::reader::Reader;
use super::section::is_liquid;
use super::supply::is_machine;
use super::twins::is_side;
use crate::lexicon::{Break, Lexicon, Token, amount, tokens};
use crate::model::{Action, ApplianceMap, CircuitKind, Id, Span, Stage, ThingKind, Verb};

/// What words name as if it were acted on too, beside the things of the actions that were read of them: none where the
/// actions hold all that they should. The words are read as English.
pub fn left_out(words: &str, map: &ApplianceMap, actions: &[Action]) -> Vec<Span> {
    let line = line_of(words, map, actions);
    line.map(|line| line.left_out()).unwrap_or_default()
}

/// Whether [`left_out`] has to be asked of some words and their actions, whatever is on the map: most sentences name nothing
/// beside what is read. Reading one takes a while, and a map changes more often than a sentence.
pub fn may_leave_out(words: &str, actions: &[Action]) -> bool {
    let map = ApplianceMap::default();
    line_of(words, &map, actions).is_some_and(|line| line.may_leave_out())
}

/// Words with the actions that were read of them; none where they list nothing.
fn line_of<'a>(words: &'a str, map: &'a ApplianceMap, actions: &[Action]) -> Option<Reader<'a>> {
    let lists = |c: char| matches!(c, ',' | '+' | '&');
    let names_seal = || SEALS.iter().any(|seal| words.contains(seal));
    let names_several = || {
        [" both ", " each ", " every ", " two ", " three ", " four ", "together with "]
            .iter()
            .any(|several| words.contains(several))
    };
    let may_list = words.contains(" and ") || words.contains(lists) || names_seal() || names_several();
    if actions.is_empty() || !may_list {
        return None;
    }
    let lexicon = Lexicon::for_language("en")?;
    let mut line = Reader::new(words, map, Here::unknown(), &Stage::Prepare, lexicon);
    line.reading.actions = actions.to_vec();
    Some(line)
}

/// Whether words begin with the name of something that an appliance has, or of what it is supplied with: what stands behind
/// a verb. The words are read as English.
pub fn begins_with_a_thing(words: &str) -> bool {
    named_first(words).is_some_and(|named| {
        !matches!(named, Noun::Nothing | Noun::Seal | Noun::Setting | Noun::Side | Noun::Unknown)
    })
}

/// Whether words begin with the name of a seal. The words are read as English.
pub fn begins_with_a_seal(words: &str) -> bool {
    named_first(words) == Some(Noun::Seal)
}

/// What words begin with the name of; what is shut off, let out or filled in, is a part.
fn named_first(words: &str) -> Option<Noun> {
    const ENDS: &[&str] = &["and", "back", "down", "in", "off", "on", "out", "then", "up"];
    let all = tokens(words);
    let is_led = |token: &&Token<'_>| {
        ARTICLES.contains(&&*token.text)
            || matches!(&*token.text, "all" | "both" | "new" | "old")
            || amount(&token.text).is_some()
    };
    let behind = all.iter().skip_while(is_led).enumerate();
    let named = behind.take_while(|(n, token)| {
        // "The fuses *F1*, F2 and F3."
        let is_mark = *n > 0 && (coin::is_label(token.raw) || coin::is_code(&token.text));
        let ends = is_mark || ENDS.contains(&&*token.text) || coin::PREPOSITIONS.contains(&&*token.text);
        !ends && (*n == 0 || token.before == Break::None)
    });
    let mut stem: Vec<String> = named.map(|(_, token)| token.text.to_string()).collect();
    // "Pull *F1* and F2."
    if matches!(stem.as_slice(), [only] if coin::is_code(only)) {
        return Some(Noun::Part);
    }
    let head = stem.last_mut()?;
    *head = singular(head);
    let is_medium = MEDIA.contains(&head.as_str());
    Some(if is_medium { Noun::Part } else { noun(&stem) })
}

/// How what seals is called, as it stands within words.
const SEALS: &[&str] = &["asket", "-ring", "live", "acking", "rope", "seal", "washer"];

/// What is done to a medium: a part that is named says where it is let out or in.
const OF_MEDIA: &[Verb] = &[Verb::Charge, Verb::Prove, Verb::Purge, Verb::Release];

/// What is done to a supply or to the appliance as a whole, which words name beside the valve or the switch.
const OF_SUPPLIES: &[Verb] = &[Verb::Isolate, Verb::Lock, Verb::Restore, Verb::ShutDown, Verb::Start];

/// What begins the name of a thing.
const ARTICLES: &[&str] = &["a", "an", "its", "the", "their", "this", "these", "your"];

/// What is shut off, let out or filled in, by its name.
const MEDIA: &[&str] = &["gas", "heating", "mains", "oil", "refrigerant", "steam", "water"];

impl Reader<'_> {
    /// What stands in the clauses of what was read as if it were acted on too, and is neither said by an action nor asked
    /// about.
    pub(super) fn left_out(&self) -> Vec<Span> {
        let mut left: Vec<Span> = Vec::new();
        for clause in &self.clauses {
            let verbs = self.verbs_said_by(clause);
            if !verbs.is_empty() && !self.is_asked(clause) {
                left.extend(self.left_out_of(clause, &verbs));
            }
            if !self.is_asked(clause) {
                left.extend(self.passed_over(clause));
            }
        }
        left.extend(self.figures_left_out());
        left.retain(|span| span.0 < span.1);
        left
    }

    /// "Remove the circulator *and clean the flanges*": what a clause cleans or looks at of which nothing was read, beside others
    /// of which something was. A verb that changes the appliance is told by a rule of its own.
    fn passed_over(&self, clause: &Clause) -> Vec<Span> {
        let looks = |verb: &Verb| matches!(verb, Verb::Clean | Verb::Inspect | Verb::Read | Verb::Test);
        let only_looks = !clause.means.is_empty() && clause.means.iter().all(looks);
        let is_read = clause.phrase.iter().any(|i| self.is_said(*i));
        if !only_looks || is_read || self.reading.actions.is_empty() {
            return Vec::new();
        }
        let is_thing = |phrase: &Phrase| noun(&phrase.stem()).is_worked_on();
        let is_said = |phrase: &Phrase| (phrase.from..=phrase.head).any(|i| self.is_said(i));
        let phrases = coin::phrases(self, clause);
        let direct =
            phrases.iter().filter(|phrase| phrase.from > clause.verb() && phrase.lead == Lead::Direct);
        let passed = direct.filter(|phrase| is_thing(phrase) && !is_said(phrase));
        passed.map(|phrase| self.span(phrase.from, phrase.head + 1)).collect()
    }

    /// Whether a clause of which something was read names more than its actions say, or one noun twice, as far as that can be
    /// told without the map.
    fn may_leave_out(&self) -> bool {
        let passes_over = |clause: &Clause| !self.passed_over(clause).is_empty();
        if self.clauses.iter().any(passes_over) || !self.figures_left_out().is_empty() {
            return true;
        }
        let acting = self.clauses.iter().filter(|clause| !self.verbs_said_by(clause).is_empty());
        acting.into_iter().any(|clause| {
            let (phrases, verbs) = (coin::phrases(self, clause), self.verbs_said_by(clause));
            let is_left = |phrase: &Phrase| {
                let is_alike = |other: &Phrase| other.head < phrase.from && other.name() == phrase.name();
                let is_twin = phrases.iter().any(is_alike);
                let is_said = (phrase.from..=phrase.head).any(|i| self.is_said(i));
                let is_none = matches!(noun(&phrase.stem()), Noun::Nothing | Noun::Seal);
                let is_loose = || self.is_loose_seal(clause, &verbs, phrase);
                is_loose() || (!is_none && (is_twin || (!is_said && self.may_be_acted_on(phrase))))
            };
            phrases.iter().filter(|phrase| phrase.from > clause.verb()).any(is_left)
                || self.one_of_a_side(clause).is_some()
                || self.first_of_two(clause).is_some()
                || self.one_at_a_side(clause).is_some()
                || self.of_each(clause).is_some()
                || self.of_both(clause).is_some()
                || self.several_things(clause).is_some()
        })
    }

    /// Whether a phrase stands where a verb acts, or behind "and".
    fn may_be_acted_on(&self, phrase: &Phrase) -> bool {
        let is_and = |back: usize| phrase.start.checked_sub(back).is_some_and(|i| self.text(i) == "and");
        phrase.lead == Lead::Direct || is_and(1) || is_and(2)
    }

    /// What the words of a clause's verb do, if that is anything to the appliance.
    fn verbs_said_by(&self, clause: &Clause) -> Vec<&Verb> {
        let acts = |action: &Action| {
            action.verb.changes_the_appliance()
                || matches!(
                    action.verb,
                    Verb::Clean
                        | Verb::Discard
                        | Verb::Inspect
                        | Verb::Lock
                        | Verb::MoveAside
                        | Verb::Place
                        | Verb::Prove
                        | Verb::TakeAway
                )
                || (action.verb == Verb::Test && !action.on.is_empty())
        };
        let of_clause = |action: &&Action| clause.phrase.iter().any(|i| self.meets(*i, &action.says));
        let said: Vec<&Action> = self.reading.actions.iter().filter(of_clause).collect();
        if said.iter().any(|action| acts(action)) {
            said.into_iter().map(|action| &action.verb).collect()
        } else {
            Vec::new()
        }
    }

    pub(super) fn meets(&self, i: usize, spans: &[Span]) -> bool {
        let token = self.tokens.get(i).map_or(Span(0, 0), |token| token.span);
        spans.iter().any(|span| span.0 < token.1 && token.0 < span.1)
    }

    /// Whether the verb of a clause stands in a question.
    fn is_asked(&self, clause: &Clause) -> bool {
        self.reading.doubts.iter().any(|doubt| clause.phrase.iter().any(|i| self.meets(*i, &[doubt.span])))
    }

    /// Whether a token is among the words of an action or of a question.
    fn is_said(&self, i: usize) -> bool {
        self.reading.actions.iter().any(|action| self.meets(i, &action.says))
            || self.reading.doubts.iter().any(|doubt| self.meets(i, &[doubt.span]))
    }

    fn left_out_of(&self, clause: &Clause, verbs: &[&Verb]) -> Vec<Span> {
        let phrases = coin::phrases(self, clause);
        let is_left = |n: &usize| {
            let phrase = phrases.get(*n).filter(|phrase| phrase.from > clause.verb());
            phrase.is_some_and(|phrase| {
                let is_twin = self.is_more_than_is_held(&phrases, phrase);
                let is_said = (phrase.from..=phrase.head).any(|i| self.is_said(i));
                (is_twin || !is_said)
                    && self.is_acted_on(&phrases, *n)
                    && !self.is_only_named(clause, verbs, &phrases, phrase)
                    && !is_of_verb(verbs, phrase)
                    && (is_twin || !self.is_held(&phrases, *n))
            })
        };
        let left = (0..phrases.len()).filter(is_left).filter_map(|n| phrases.get(n));
        let left = left.map(|phrase| self.span(phrase.from, phrase.head + 1));
        let left = left.chain(self.one_of_a_side(clause)).chain(self.first_of_two(clause));
        let is_loose = |phrase: &&Phrase| self.is_loose_seal(clause, verbs, phrase);
        let seals = phrases.iter().filter(is_loose).map(|phrase| self.span(phrase.from, phrase.head + 1));
        let left = left.chain(self.one_at_a_side(clause)).chain(self.of_each(clause));
        let left = left.chain(self.of_both(clause));
        left.chain(self.fewer_than_said(clause)).chain(seals).collect()
    }

    /// "*The first* and the second filter", of which the second is taken.
    fn first_of_two(&self, clause: &Clause) -> Option<Span> {
        let is_it = |i: &usize| {
            let and = i + 1;
            let second = and + 1 + usize::from(self.text(and + 1) == "the");
            self.text(*i) == "first"
                && self.text(and) == "and"
                && self.text(second) == "second"
                && !self.is_said(*i)
        };
        let first = (clause.verb() + 1..self.end_of_sentence(clause)).find(is_it)?;
        Some(self.span(first, first + 1))
    }

    /// "The left fan cover and *the right one*."
    fn one_of_a_side(&self, clause: &Clause) -> Option<Span> {
        // Not "the lower one first", "slacken the top one turn".
        let goes_on = |i: usize| {
            matches!(
                self.text(i + 1),
                "are" | "first" | "flat" | "has" | "is" | "last" | "quarter" | "turn" | "was"
            )
        };
        let is_next = |i: usize| {
            matches!(self.text(i), "and" | "from" | "of" | "off" | "that" | "then")
                || self.tokens.get(i + 1).is_some_and(|t| t.before == Break::Comma)
        };
        // "The manual vent and *the automatic one*."
        let is_another = |i: usize| {
            self.text(i).chars().all(char::is_alphabetic)
                && !matches!(self.text(i), "last" | "new" | "next" | "only" | "same")
                && i > 1
                && self.text(i - 2) == "and"
        };
        // "Refit the left motor first, then *the other one*."
        let is_it = |i: &usize| {
            self.text(*i) == "one"
                && (is_side(self.text(i - 1)) || self.text(i - 1) == "other" || is_another(i - 1))
                && self.text(i - 2) == "the"
                && is_next(i - 3)
                && !goes_on(*i)
                && !self.is_said(*i)
        };
        // "The union above the pump, then *the one below*."
        let is_below = |i: &usize| {
            self.text(*i) == "one"
                && matches!(
                    self.text(i + 1),
                    "above" | "behind" | "below" | "beside" | "opposite" | "underneath"
                )
                && self.text(i - 1) == "the"
                && is_next(i - 2)
                && !self.is_said(*i)
        };
        let one = (clause.verb() + 3..self.end_of_sentence(clause)).find(|i| is_it(i) || is_below(i))?;
        Some(self.span(one - 1, one + 1))
    }

    /// "Refit the burner *with a new gasket*", where no joint is made and the map has no gasket: it would be lost.
    fn is_loose_seal(&self, clause: &Clause, verbs: &[&Verb], phrase: &Phrase) -> bool {
        let puts_in = |verb: &&&Verb| matches!(verb, Verb::Fit | Verb::Make | Verb::Tighten);
        let is_known = || {
            let named = self.mentions.iter().filter(|mention| mention.to == phrase.head + 1);
            named.flat_map(|mention| &mention.candidates).any(|known| known.kind == ThingKind::Seal)
        };
        let has_seal = |id: &Id| self.map.connection(id).is_some_and(|known| !known.seals.is_empty());
        let is_renewed = || self.reading.actions.iter().any(|action| action.seal.is_some());
        // "Take out the sensor with *its* seal": that stays with it.
        let is_own = matches!(self.text(phrase.start), "its" | "their") && phrase.from == phrase.start + 1;
        noun(&phrase.stem()) == Noun::Seal
            && phrase.from > clause.verb()
            && verbs.iter().any(|verb| puts_in(&verb))
            && !(phrase.from..=phrase.head).any(|i| self.is_said(i))
            && !is_own
            && !is_known()
            && !is_renewed()
            && !self.held().iter().any(has_seal)
    }

    /// "Open the drain cock on the left and *the one on the right*", not "the two screws, one on the left and one on the
    /// right".
    fn one_at_a_side(&self, clause: &Clause) -> Option<Span> {
        let is_it = |i: &usize| {
            self.text(*i) == "one"
                && matches!(self.text(i + 1), "at" | "in" | "on")
                && self.text(i + 2) == "the"
                && is_side(self.text(i + 3))
                && matches!(self.text(i - 1), "and" | "the")
                && !self.is_said(*i)
        };
        let is_several = |id: &Id| {
            let n = self.map.connection(id).map(|known| known.count);
            n.is_some_and(|n| n > 1) || is_plural(head_of(self.map.name_of(id)))
        };
        let one = (clause.verb() + 3..self.end_of_sentence(clause)).find(is_it)?;
        (!self.held().iter().any(is_several)).then(|| self.span(one, one + 4))
    }

    /// Whether a verb acts on a phrase: by itself, or by what the phrase is listed with.
    fn is_acted_on(&self, phrases: &[Phrase], n: usize) -> bool {
        let Some(phrase) = phrases.get(n) else { return false };
        let before = |back: usize| phrase.start.checked_sub(back).map_or("", |i| self.text(i));
        match &phrase.lead {
            Lead::Direct => true,
            // "Brush the soot off *the plate*."
            Lead::After(lead)
                if matches!(lead.as_str(), "from" | "off") && self.takes_dirt_from(phrases, n) =>
            {
                true
            }
            // "From the fan *and from the pump*."
            Lead::After(lead) if before(2) == "and" && before(1) == lead => true,
            // "From the fan *and the pump*."
            Lead::After(_) => {
                let listed = n.checked_sub(1).and_then(|n| phrases.get(n)).filter(|_| before(1) == "and");
                let held = self.held();
                listed.is_some_and(|listed| {
                    listed.lead == phrase.lead
                        && (self.is_said(listed.head) || owns_one_of(self, &held, listed))
                })
            }
            // "The fan plug, CN4, *and the pump plug*", not "the two breakers (heat pump *and immersion*)".
            Lead::Beside => before(1) == "and" && !self.is_in_brackets(phrase.from),
        }
    }

    /// Whether what stands right before a place is dirt that is cleaned off it.
    fn takes_dirt_from(&self, phrases: &[Phrase], n: usize) -> bool {
        let before = n.checked_sub(1).and_then(|n| phrases.get(n));
        let clause = phrases.get(n).and_then(|place| {
            self.clauses.iter().find(|clause| (clause.from..clause.to).contains(&place.from))
        });
        let cleans = clause.is_some_and(|clause| clause.means == [Verb::Clean]);
        cleans && before.is_some_and(|dirt| dirt.lead == Lead::Direct && noun(&dirt.stem()) == Noun::Nothing)
    }

    /// Whether a phrase names no thing that could be acted on, or what is left as it is.
    fn is_only_named(&self, clause: &Clause, verbs: &[&Verb], phrases: &[Phrase], phrase: &Phrase) -> bool {
        let is_known = self.mentions.iter().any(|mention| mention.to == phrase.head + 1);
        let is_medium = MEDIA.contains(&phrase.head_word().as_str())
            && verbs.iter().all(|verb| OF_MEDIA.contains(verb) || OF_SUPPLIES.contains(verb));
        let is_noun = !matches!(noun(&phrase.stem()), Noun::Nothing | Noun::Seal | Noun::Unknown);
        // "The bolts of the left hinge *and the right hinge*": like what the first is held by.
        let is_alike = |other: &Phrase| other.head < phrase.from && other.head_word() == phrase.head_word();
        let is_second = self.is_second_owner(phrases, phrase);
        let is_thing = is_known || is_noun || is_medium || is_second || phrases.iter().any(is_alike);
        // "*The same way*", "on either *side*".
        let is_manner = matches!(phrase.words.as_slice(), [only] if matches!(only.as_str(), "side" | "way"));
        // "The nuts and washers": they come with what is turned.
        let is_washer = phrase.head_word() == "washer";
        let leaves = |i: usize| matches!(self.text(i), "but" | "leave" | "leaving");
        !is_thing || is_manner || is_washer || (clause.verb() + 1..phrase.start).any(leaves)
    }

    /// What the actions hold.
    pub(super) fn held(&self) -> Vec<Id> {
        let places = |action: &Action| [&action.through, &action.vent, &action.at].map(Clone::clone);
        let of =
            |action: &Action| action.on.iter().cloned().chain(places(action).into_iter().flatten()).collect();
        self.reading.actions.iter().flat_map(|action| -> Vec<Id> { of(action) }).collect()
    }

    /// Whether the actions hold what a phrase names, though other words say it.
    fn is_held(&self, phrases: &[Phrase], n: usize) -> bool {
        let Some(phrase) = phrases.get(n) else { return false };
        let held = self.held();
        let mention = self.mentions.iter().find(|mention| mention.to == phrase.head + 1);
        let is_meant =
            mention.is_some_and(|mention| mention.candidates.iter().all(|named| held.contains(&named.id)));
        if is_meant {
            return true;
        }
        // "The screw *in the test nipple*": what it is of is acted on.
        let of = phrases.get(n + 1).filter(|of| of.is_after(&["in", "of"]) && of.start <= phrase.head + 3);
        let joined = |i: usize| self.tokens.get(i).is_some_and(|token| token.before == Break::None);
        // "The pump *at breaker F2*": what that feeds.
        let at = phrases.get(n + 1).filter(|at| at.is_after(&["at"]) && at.start <= phrase.head + 3);
        let feeds = at.filter(|at| matches!(noun(&at.stem()), Noun::Isolator(_)));
        if of.or(feeds).is_some_and(|of| self.is_said(of.head) && joined(of.start)) {
            return true;
        }
        owns_one_of(self, &held, phrase) || self.supplies_one_of(&held, phrase, mention)
    }

    /// "The screw on the left and *the screw* on the right", "screw (1) and screw (2)", of which only one is held.
    fn is_more_than_is_held(&self, phrases: &[Phrase], phrase: &Phrase) -> bool {
        let is_alike = |other: &&Phrase| {
            other.head < phrase.from
                && other.lead == Lead::Direct
                && other.name() == phrase.name()
                && other.plural() == phrase.plural()
        };
        let n_before = phrases.iter().filter(is_alike).count();
        if n_before == 0 || phrase.lead != Lead::Direct {
            return false;
        }
        let held = self.held();
        let noun = phrase.head_word();
        // "Unscrew the nozzle of the pilot": by its thread.
        let parts =
            held.iter().filter_map(|id| self.map.connection(id)).flat_map(|known| known.joins.clone());
        let mut all: Vec<Id> = held.iter().cloned().chain(parts).collect();
        all.sort();
        all.dedup();
        let is_so_called = |id: &&Id| singular(head_of(self.map.name_of(id))) == noun;
        all.iter().filter(is_so_called).count() <= n_before
    }

    /// "Isolate *the gas* at the meter cock."
    fn supplies_one_of(&self, held: &[Id], phrase: &Phrase, mention: Option<&Mention>) -> bool {
        let is_medium = mention.is_none_or(|mention| {
            mention.candidates.iter().any(|c| matches!(c.kind, ThingKind::Circuit | ThingKind::Section))
        });
        let Some(named) = named_kind(&phrase.stem(), true).filter(|_| is_medium) else { return false };
        // "Let *the water* run out": of which circuit, is said by nothing else.
        let is_listed = phrase.start.checked_sub(1).is_some_and(|and| self.text(and) == "and");
        let is_any_water = phrase.words == ["water"] && !is_listed;
        let is_it = |kind: &CircuitKind| *kind == named || (is_any_water && is_liquid(kind));
        let isolators = self.map.isolators.iter().filter(|isolator| held.contains(&isolator.id));
        let sides = isolators.flat_map(|isolator| [&isolator.between.0, &isolator.between.1]);
        held.iter().chain(sides).any(|id| self.kind_of(id).is_some_and(is_it))
    }
}

/// "The screws of the fan *and of the pump*", of which both have been undone.
pub(super) fn owns_one_of(line: &Reader<'_>, held: &[Id], phrase: &Phrase) -> bool {
    let stem = words_of(&phrase.name());
    let is_owned = |id: &Id| {
        let name = words_of(line.map.name_of(id));
        name.len() > stem.len() && name.starts_with(&stem)
    };
    matches!(phrase.lead, Lead::After(_)) && held.iter().any(is_owned)
}

/// Whether what the verbs do needs no action on what a phrase names.
fn is_of_verb(verbs: &[&Verb], phrase: &Phrase) -> bool {
    let stem = phrase.stem();
    let all = |of: &[Verb]| verbs.iter().all(|verb| of.contains(verb));
    let is_medium = || named_kind(&stem, true).is_some() && noun(&stem) != Noun::Part;
    let head = phrase.head_word();
    let is_switched = || coin::is_appliance(&stem) || is_machine(&head);
    // "Cap *the pipe* with the blanking cap."
    let is_covered = phrase.lead == Lead::Direct && noun(&stem) != Noun::Temporary;
    // "Prove dead at the terminals of the fan *and the pump*": of which one place is held.
    let is_owner = verbs.contains(&&Verb::Prove) && phrase.is_after(&["of"]);
    (all(OF_MEDIA) && !phrase.is_after(&["at"]) && !is_owner && !is_medium())
        || (all(OF_SUPPLIES) && is_switched())
        || (all(&[Verb::Place]) && is_covered)
        // "Clean the valve and *its seat*."
        || (all(&[Verb::Clean, Verb::Inspect]) && noun(&stem) == Noun::Side)
        // "Check *all the joints* for leaks."
        || (verbs.contains(&&Verb::Test) && matches!(&*head, "connection" | "joint"))
        // Whoever locks an isolator hangs a tag on it.
        || (verbs.contains(&&Verb::Lock) && matches!(&*head, "lock" | "notice" | "padlock" | "tag"))
}
