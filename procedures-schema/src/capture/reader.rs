//! Reads a line clause by clause.

use super::abbreviated::spelt_out;
use super::clause::{Clause, clauses};
use super::coin::{Phrased, is_label_behind_owner};
use super::here::Here;
use super::joined::with_joined;
use super::leading::stays_words;
use super::mention::{Candidate, Mention, Names, is_plural, singular};
use super::one_at_a_place::{with_new_ones, with_nouns_at_places};
use super::other_side::{with_noun_of_step_before, with_nouns_of_sides};
use super::quantity::{Figures, Quantity, quantities};
use super::switched_to::with_marks_of_switches;
use super::then::with_then;
use super::threads::with_screws;
use super::told;
use super::topic::with_topics;
use super::two_owners::with_one_of_each;
use super::two_sides::with_both_sides;
use super::{Choice, Doubt, LineReading, Unknown};
use crate::lexicon::{Amount, Break, Lexicon, Own, Token, tokens};
use crate::model::{Action, ApplianceMap, Id, Span, Stage, ThingKind, Verb};

/// A line with everything that was found in it, and the actions read so far.
pub(super) struct Reader<'a> {
    pub(super) words: &'a str,
    pub(super) map: &'a ApplianceMap,
    pub(super) here: Here,
    pub(super) stage: &'a Stage,
    pub(super) lexicon: &'static Lexicon,
    pub(super) tokens: Vec<Token<'a>>,
    pub(super) mentions: Vec<Mention>,
    /// What the last clauses were about, latest last: "it", "them".
    pub(super) last: Vec<Candidate>,
    pub(super) clauses: Vec<Clause>,
    /// Where the words prove the tester itself.
    pub(super) testers: Vec<usize>,
    /// Stretches that tell or forbid something.
    told: Vec<(usize, usize)>,
    /// The noun phrases of its clauses.
    pub(super) phrased: Phrased,
    /// Whether commas or stops part the words.
    pub(super) has_breaks: bool,
    /// Whether something is waited for anywhere in it.
    has_until: bool,
    /// Whether a noun of the step before stands among its tokens.
    pub(super) takes_up_step_before: bool,
    pub(super) reading: LineReading,
}

/// A reading of a clause, before one of several is taken.
pub(super) struct Proposal {
    /// The action; with one thing in the place where `choices` differ.
    pub(super) action: Action,
    /// The things of which one is meant, if that is in doubt.
    pub(super) choices: Vec<Id>,
    /// The mention in doubt.
    pub(super) doubtful: Option<(usize, usize)>,
    /// Whether it can be done here.
    pub(super) possible: bool,
    /// The tokens that say it.
    pub(super) said_by: Vec<usize>,
}

/// Words that may stand inside a span without being said by it.
const FILLERS: &[&str] = &["a", "an", "the", "its", "all", "of"];

impl<'a> Reader<'a> {
    /// Finds everything in the words.
    pub(super) fn new(
        words: &'a str,
        map: &'a ApplianceMap,
        here: Here,
        stage: &'a Stage,
        lexicon: &'static Lexicon,
    ) -> Self {
        let (reader, mentions) = Self::of_words(words, map, &here, stage, lexicon);
        reader.naming(here, mentions)
    }

    /// The words cut up, as far as that hangs on what the step before did, for a reader to whom nothing is known to be true;
    /// and what they name on the map. [`Reader::naming`] puts both together with what is true.
    pub(super) fn of_words(
        words: &'a str,
        map: &'a ApplianceMap,
        here: &Here,
        stage: &'a Stage,
        lexicon: &'static Lexicon,
    ) -> (Self, Vec<Mention>) {
        let tokens = with_joined(with_screws(with_then(spelt_out(words, tokens(words)))));
        let tokens = with_topics(words, with_nouns_at_places(with_new_ones(tokens)));
        let (tokens, takes_up_step_before) = with_noun_of_step_before(with_nouns_of_sides(tokens), map, here);
        let tokens = with_marks_of_switches(with_one_of_each(with_both_sides(tokens)));
        // "Back: take the tag off" is a reminder, even where no step can hold it.
        let (tokens, said) = if stays_words(words) {
            (tokens, Vec::new())
        } else {
            lexicon.phrases_understood(tokens, &Own::of(&map.phrases))
        };
        let clauses = clauses(words, &tokens, &said);
        let is_verb = |i: usize| clauses.iter().any(|clause| clause.verb() == i);
        let mentions = Names::of(map, &tokens).find(&tokens, is_verb);
        let quantities =
            quantities(words, &tokens, lexicon, &|i| said.iter().any(|said| said.tokens.contains(&i)));
        let reading = LineReading { quantities, ..LineReading::default() };
        let has_breaks = tokens.iter().any(|token| token.before != Break::None);
        let has_until = tokens.iter().any(|token| matches!(&*token.text, "till" | "until"));
        let (last, testers, told) = (Vec::new(), Vec::new(), told::stretches(&tokens));
        let mut reader = Self {
            words,
            map,
            here: Here::unknown(),
            stage,
            lexicon,
            tokens,
            mentions: Vec::new(),
            last,
            clauses,
            testers,
            told,
            phrased: Phrased::default(),
            has_breaks,
            has_until,
            takes_up_step_before,
            reading,
        };
        reader.find_testers();
        (reader, mentions)
    }

    /// With what the words name where this is true.
    pub(super) fn naming(mut self, here: Here, mentions: Vec<Mention>) -> Self {
        self.here = here;
        self.mentions.clear();
        let mentions = self.with_shortened(self.with_parts_of_names(self.map, mentions));
        self.mentions = self.with_called_after_places(mentions);
        self
    }

    /// What has been read so far.
    pub(super) fn reading(&self) -> &LineReading {
        &self.reading
    }

    /// Reads every clause.
    pub(super) fn read(mut self) -> LineReading {
        let clauses = self.clauses.clone();
        let mut filled: Vec<Clause> = Vec::new();
        for clause in &clauses {
            let loose = clause.means.contains(&Verb::Charge) && self.is_loose(clause);
            filled.extend(loose.then(|| clause.clone()));
            let mut proposals = self.proposals(clause);
            proposals.retain(|proposal| !self.only_seems(clause, proposal));
            if self.misses_its_object(clause, &proposals) {
                proposals.clear();
            }
            if proposals.is_empty() && !loose {
                self.unknown(clause);
            }
            // What "after" tells may have been done steps ago.
            for proposal in proposals.into_iter().filter(|proposal| proposal.possible || !clause.is_before) {
                self.take_or_ask(clause, proposal);
            }
        }
        for proposal in self.filled_by_hand(&filled) {
            self.take(proposal);
        }
        self.forget_seals_that_are_made();
        self.reading.left_out = self.left_out();
        self.reading
    }

    /// What a clause may say: the best reading, and those that go with it.
    pub(super) fn proposals(&self, clause: &Clause) -> Vec<Proposal> {
        // "All filters *except* the right one": which those are, no action says.
        if self.leads(clause) || self.has(clause, &["except", "excepting", "excluding"]) {
            return Vec::new();
        }
        if let Some(let_out) = self.let_out_by_hose(clause) {
            return vec![let_out];
        }
        if let Some(read) = self.renewed_seal(clause).or_else(|| self.sections(clause)) {
            return read;
        }
        // "Check the unions for leaks" is a test, although unions can be looked at too.
        if self.is_test(clause) {
            let started = self.started_by_drawing(clause);
            return started.into_iter().chain(self.without_things(clause)).collect();
        }
        if let Some(only) = self.started_by_drawing(clause).or_else(|| self.checked_value(clause)) {
            return vec![only];
        }
        let mut best: Option<Proposal> = None;
        for verb in self.in_order_of_preference(clause) {
            let Some(proposal) = self.thing_verb(clause, &verb) else { continue };
            let better = |best: &Proposal| self.rank(clause, &proposal) > self.rank(clause, best);
            if best.as_ref().is_none_or(better) {
                best = Some(proposal);
            }
        }
        let best = best.map(|best| self.of_both_sorts(clause, best));
        let found = best.is_some();
        let locked = self.lock_beside(clause, best.as_ref());
        let read = self.read_beside(clause, best.as_ref());
        let mut proposals: Vec<Proposal> = self.shut_down_first(clause, best.as_ref()).into_iter().collect();
        proposals.extend(locked);
        proposals.extend(self.isolated_first(clause, best.as_ref()));
        if let Some(best) = best {
            let fasteners = self.fasteners(clause, &best);
            let (first, last) =
                if best.action.verb == Verb::Fit { (Vec::new(), fasteners) } else { (fasteners, Vec::new()) };
            proposals.extend(first);
            proposals.push(best);
            proposals.extend(last);
        }
        proposals.extend(self.done_to_others(clause, &proposals));
        proposals.extend(read);
        if !found {
            proposals.extend(self.without_things(clause));
        }
        proposals
    }

    /// Takes a proposal: an action, or a doubt; where one of its things is in doubt, the others all the same.
    pub(super) fn take(&mut self, mut proposal: Proposal) {
        let named = &proposal.action.on;
        proposal.choices.retain(|id| !named.contains(id));
        if let [only] = proposal.choices.as_slice() {
            // "The valve at the inlet and the valve at the outlet": the one that is left.
            proposal.action.on.insert(0, only.clone());
            proposal.choices.clear();
        }
        if proposal.choices.len() > 1 && !proposal.action.on.is_empty() {
            let is_doubtful = |i: &usize| proposal.doubtful.is_some_and(|(from, to)| (from..to).contains(i));
            let said_by = proposal.said_by.iter().copied().filter(|i| !is_doubtful(i)).collect();
            let (action, possible) = (proposal.action.clone(), proposal.possible);
            self.take(Proposal { action, choices: Vec::new(), doubtful: None, possible, said_by });
            proposal.action.on.clear();
        }
        let mut action = proposal.action;
        let mut seen: Vec<Id> = Vec::new();
        // "Switch off the spur, take the fuse": both may be names of one thing.
        action.on.retain(|id| {
            let is_new = !seen.contains(id);
            seen.extend(is_new.then(|| id.clone()));
            is_new
        });
        action.says = self.spans(&proposal.said_by);
        if proposal.choices.len() < 2
            && (self.joins_last_proof(&action)
                || self.joins_making(&action)
                || self.is_said_already(&action, proposal.possible))
        {
            return;
        }
        if proposal.choices.len() < 2 {
            self.here.apply(&action);
            // "Drain it through the cock and close it": the cock is meant.
            let about: Vec<Candidate> = action
                .on
                .iter()
                .chain(&action.through)
                .filter_map(|id| {
                    Some(Candidate { id: id.clone(), kind: self.map.thing_kind(id)?, agrees: true })
                })
                .collect();
            if !about.is_empty() {
                self.last = about;
            }
            let renewed = self.fit_of_new(&action, &proposal.said_by);
            self.reading.actions.push(action);
            if let Some(fit) = renewed {
                self.here.apply(&fit);
                self.reading.actions.push(fit);
            }
            return;
        }
        let choice = |id: &Id| {
            let mut action = action.clone();
            action.verb = self.verb_for(&action.verb, id);
            action.on = vec![id.clone()];
            let also = self.fit_of_new(&action, &proposal.said_by).into_iter().collect();
            Choice { thing: id.clone(), name: self.map.name_of(id).to_owned(), action, also }
        };
        let choices: Vec<Choice> = proposal.choices.iter().map(choice).collect();
        let span = proposal.doubtful.map_or(Span(0, 0), |(from, to)| self.span(from, to));
        let question = format!("Which one is \"{}\"?", span.of(self.words));
        self.reading.doubts.push(Doubt { span, question, choices });
    }

    /// Notes a verb that needs a thing and has none; verbs of a looser meaning are left as text.
    fn unknown(&mut self, clause: &Clause) {
        if self.leads(clause) {
            return;
        }
        let is_bare_test = clause.means == [Verb::Test];
        let telling = |verb: &&Verb| {
            verb.changes_the_appliance() || matches!(verb, Verb::Lock | Verb::Prove) || is_bare_test
        };
        if let Some(verb) = clause.means.iter().find(telling) {
            let verb = verb.clone();
            let last = clause.phrase.last().copied().unwrap_or(clause.verb());
            self.reading.unknown.push(Unknown { span: self.span(clause.verb(), last + 1), verb });
        }
    }

    /// The text of a token.
    pub(super) fn text(&self, i: usize) -> &str {
        self.tokens.get(i).map_or("", |token| token.text.as_ref())
    }

    /// The text of a token as it is written.
    pub(super) fn written(&self, i: usize) -> &str {
        self.tokens.get(i).map_or("", |token| token.raw)
    }

    /// Whether one of these words stands in a clause.
    pub(super) fn has(&self, clause: &Clause, words: &[&str]) -> bool {
        (clause.from..clause.to).any(|i| words.contains(&self.text(i)))
    }

    /// The span of the tokens from one to before another.
    pub(super) fn span(&self, from: usize, to: usize) -> Span {
        let at = |i: usize| self.tokens.get(i).map_or(Span(0, 0), |token| token.span);
        Span(at(from).0, at(to.saturating_sub(1)).1)
    }

    /// Spans over these tokens; neighbours, and those with only articles between, share one.
    pub(super) fn spans(&self, said_by: &[usize]) -> Vec<Span> {
        let mut sorted = said_by.to_vec();
        sorted.sort_unstable();
        sorted.dedup();
        let mut runs: Vec<(usize, usize)> = Vec::new();
        for i in sorted {
            let joins = |last: usize| {
                let unbroken =
                    (last + 1..=i).all(|j| self.tokens.get(j).is_some_and(|t| t.before == Break::None));
                unbroken && (last + 1..i).all(|j| FILLERS.contains(&self.text(j)))
            };
            match runs.last_mut() {
                Some(run) if joins(run.1) => run.1 = i,
                _ => runs.push((i, i)),
            }
        }
        let spans = runs.into_iter().map(|(from, to)| self.span(from, to + 1));
        // What is understood has no width.
        spans.filter(|span| span.0 < span.1).collect()
    }

    /// The quantities of a clause.
    pub(super) fn quantities(&self, clause: &Clause) -> impl Iterator<Item = &Quantity> {
        let (from, to) = (clause.from, clause.to);
        let within = move |quantity: &&Quantity| quantity.from >= from && quantity.from < to;
        let own = self.reading.quantities.iter().filter(within);
        own.filter(|quantity| !self.is_in_condition(quantity.from))
    }

    /// The bracket that opens or closes before a token.
    pub(super) fn bracket(&self, i: usize) -> Option<char> {
        let before = i.checked_sub(1).and_then(|i| self.tokens.get(i))?;
        let between = Span(before.span.1, self.tokens.get(i)?.span.0).of(self.words);
        between.chars().find(|c| matches!(c, '(' | ')'))
    }

    /// Whether a sign for "and" stands before a token.
    pub(super) fn is_added(&self, i: usize) -> bool {
        let before = i.checked_sub(1).and_then(|before| self.tokens.get(before)).zip(self.tokens.get(i));
        before.is_some_and(|(before, token)| {
            matches!(Span(before.span.1, token.span.0).of(self.words).trim(), "+" | "&")
        })
    }

    /// Whether a token stands in brackets.
    pub(super) fn is_in_brackets(&self, i: usize) -> bool {
        let last = (1..=i).rev().find_map(|at| self.bracket(at));
        last == Some('(')
    }

    /// The size that a clause names: a thread, or else a width across flats.
    pub(super) fn size(&self, clause: &Clause) -> Option<String> {
        let said = self.quantities(clause).map(|quantity| match &quantity.figures {
            Figures::Size(thread) => Some(thread.clone()),
            Figures::Range(_) => quantity.width().map(ToString::to_string),
            Figures::Dimensions(_) => None,
        });
        said.flatten().next()
    }

    /// Where the sentence of a clause's verb ends: the token after its last.
    pub(super) fn end_of_sentence(&self, clause: &Clause) -> usize {
        let ended = |i: &usize| self.tokens.get(*i).is_some_and(|token| token.before == Break::Sentence);
        (clause.verb() + 1..clause.to).find(ended).unwrap_or(clause.to)
    }

    /// The mentions of a clause.
    pub(super) fn mentions_in(&self, clause: &Clause) -> impl Iterator<Item = &Mention> {
        let (from, to) = (clause.from, clause.to);
        // "Ease it open *until the glass is full*" does nothing to the glass.
        let is_until = |i: &usize| matches!(self.text(*i), "till" | "until");
        let until = self.has_until.then(|| (clause.verb()..to).find(is_until)).flatten();
        let ends = |until: usize| {
            let breaks = |i: &usize| self.tokens.get(*i).is_some_and(|token| token.before != Break::None);
            until..(until + 1..to).find(breaks).unwrap_or(to)
        };
        let waits = until.map(ends).unwrap_or_default();
        let within = move |mention: &&Mention| {
            mention.from >= from && mention.from < to && !waits.contains(&mention.from)
        };
        self.mentions.iter().filter(within)
    }

    /// Whether a token behind the verb of a clause belongs to a stretch that tells or forbids something.
    pub(super) fn is_told(&self, clause: &Clause, at: usize) -> bool {
        self.told.iter().any(|(from, to)| *from > clause.verb() && (*from..*to).contains(&at))
    }

    /// The amount before a mention, and the tokens from there: "the *two* slide bolts", "*2* of the 4 bolts".
    pub(super) fn amount(&self, mention: &Mention) -> Option<(Amount, usize)> {
        let mut found = None;
        for i in (mention.from.saturating_sub(5)..mention.from).rev() {
            let broken = self.tokens.get(i + 1).is_none_or(|token| token.before != Break::None);
            let in_quantity = self.reading.quantities.iter().any(|q| (q.from..q.to).contains(&i));
            let is_verb = self.clauses.iter().any(|clause| clause.phrase.contains(&i));
            if broken || is_verb {
                break;
            }
            // "Tighten pump *1's* screws."
            let is_of_name = || is_label_behind_owner(&self.tokens, i);
            // "*Both* the fan lead and the pump lead": each of them is one.
            let is_pair = self.text(i) == "both" && !is_plural(self.text(mention.to - 1));
            if let Some(amount) =
                self.lexicon.amount(self.text(i)).filter(|_| !in_quantity && !is_pair && !is_of_name())
            {
                found = Some((amount, i));
            } else if matches!(self.text(i), "at" | "on" | "from" | "in" | "and" | "to" | "with") {
                break;
            }
        }
        found
    }

    /// The words of a clause outside a mention, in singular, for telling things of one name apart.
    pub(super) fn other_words(&self, clause: &Clause) -> Vec<String> {
        (clause.from..clause.to).map(|i| singular(self.text(i))).filter(|word| word.len() > 1).collect()
    }

    /// The tokens of a mention with its amount and the articles between.
    pub(super) fn tokens_of(&self, mention: &Mention) -> Vec<usize> {
        let from = self.amount(mention).map_or(mention.from, |(_, from)| from);
        (from..mention.to).collect()
    }

    /// The token behind the last words that say an action.
    pub(super) fn end_of_said(&self) -> usize {
        let said = self.reading.actions.iter().flat_map(|action| &action.says).map(|span| span.1).max();
        said.map_or(0, |said| self.tokens.iter().take_while(|token| token.span.0 < said).count())
    }

    /// The last things of these kinds.
    pub(super) fn last_of(&self, kinds: &[ThingKind]) -> Vec<Candidate> {
        self.last.iter().filter(|candidate| kinds.contains(&candidate.kind)).cloned().collect()
    }

    /// A reading that is possible is better than another; then one about what is named first; then a
    /// certain one.
    fn rank(&self, clause: &Clause, proposal: &Proposal) -> (bool, bool, bool) {
        let first = self.mentions_in(clause).find(|mention| mention.from > clause.verb());
        let about_first = first.is_some_and(|first| proposal.said_by.contains(&first.from));
        (proposal.possible, about_first, proposal.choices.len() < 2)
    }
}
