//! Renewing: "renew the fan", "change the washer", "replace the fan" once the old one is off.

use super::clause::Clause;
use super::coin::{self, Noun, noun};
use super::mention::{Candidate, is_plural};
use super::reader::{Proposal, Reader};
use super::refer::nearest;
use crate::model::{Action, Connection, Id, Renewal, ThingKind, Verb};

/// How verbs begin that put a new thing in the place of an old one.
const RENEWING: &[&str] = &["renew", "replac", "chang", "exchang", "swap"];

/// Words for what is sealed with, where the map has not named the seal.
const SEALS: &[&str] = &["gasket", "o-ring", "olive", "packing", "rope", "seal", "washer"];

impl Reader<'_> {
    /// Whether a clause says that something new takes the place of something old.
    pub(super) fn renews(&self, clause: &Clause) -> bool {
        is_renewing(self.text(clause.verb()))
    }

    /// The words before a clause of which no joint has been made yet: "put in a new washer and tighten the union".
    pub(super) fn words_since_making(&self, clause: &Clause) -> &str {
        let made = self.reading().actions.iter().filter(|action| action.verb == Verb::Make);
        let since = made.flat_map(|action| &action.says).map(|span| span.1).max().unwrap_or(0);
        let end = self.span(clause.verb(), clause.verb() + 1).0;
        crate::model::Span(since.min(end), end).of(self.words)
    }

    /// Whether a verb of a renewing clause can be said of what it acts on: fasteners and joints are not undone by
    /// being renewed; only "replace the screws" can mean to put them in again.
    pub(super) fn may_renew_by(&self, clause: &Clause, verb: &Verb) -> bool {
        match verb {
            Verb::Undo => !self.renews(clause),
            Verb::Make => !self.renews(clause) || self.text(clause.verb()).starts_with("replac"),
            _ => true,
        }
    }

    /// Whether parts that a renewing clause fits are new: "replace the fan", but a cover that is replaced is the
    /// one that was taken off.
    pub(super) fn fits_new(&self, clause: &Clause, parts: &[Id]) -> bool {
        let is_cover = |id: &Id| {
            let name = self.map.name_of(id).to_lowercase();
            name.split(' ').next_back().is_some_and(super::coin::opens)
        };
        let puts_back = self.text(clause.verb()).starts_with("replac") && parts.iter().all(is_cover);
        self.renews(clause) && !puts_back
    }

    /// Whether the words call a part new: "the new pump", not "the pump with a new gasket".
    pub(super) fn is_called_new(&self, clause: &Clause, parts: &[Id]) -> bool {
        let is_it = |mention: &&super::mention::Mention| {
            mention.candidates.iter().any(|candidate| parts.contains(&candidate.id))
        };
        let before = |mention: &super::mention::Mention| {
            let near = mention.from.saturating_sub(3)..mention.from;
            near.rev()
                .take_while(|i| !self.is_seal_word(*i) && self.text(*i) != "the")
                .any(|i| self.text(i) == "new")
        };
        self.mentions_in(clause).filter(is_it).any(before)
    }

    /// Whether a token is a word for a seal.
    pub(super) fn is_seal_word(&self, i: usize) -> bool {
        SEALS.contains(&super::mention::singular(self.text(i)).as_str())
    }

    /// "*Fit new washers* and tighten the nut": what is made with a new seal holds it, so the verb before is no unread one.
    pub(super) fn forget_seals_that_are_made(&mut self) {
        if !self.reading.actions.iter().any(|action| action.seal == Some(Renewal::New)) {
            return;
        }
        let mut unknown = std::mem::take(&mut self.reading.unknown);
        unknown.retain(|unread| {
            let clause = self.clauses.iter().find(|clause| self.meets(clause.verb(), &[unread.span]));
            let phrases = clause.map(|clause| coin::phrases(self, clause)).unwrap_or_default();
            let object = phrases.first().map(|first| noun(&first.stem()));
            unread.verb != Verb::Fit || object != Some(Noun::Seal)
        });
        self.reading.unknown = unknown;
    }

    /// The fitting of the new part that "renew the fan" says beside the removing of the old one.
    pub(super) fn fit_of_new(&self, action: &Action, said_by: &[usize]) -> Option<Action> {
        let renews = |i: &usize| is_renewing(self.text(*i));
        let is_part = |id: &Id| self.map.components.iter().any(|part| part.id == *id);
        if action.verb != Verb::Remove || !said_by.iter().any(renews) || !action.on.iter().all(is_part) {
            return None;
        }
        let mut fit = Action::new(Verb::Fit, action.on.clone());
        fit.part = Some(Renewal::New);
        fit.says.clone_from(&action.says);
        Some(fit)
    }

    /// "Change the washer of the union": the joint is made with a new one, and undone before if it still is made.
    /// Which joint is said, or it is the only one with such a seal, or the one that was touched last.
    pub(super) fn renewed_seal(&self, clause: &Clause) -> Option<Vec<Proposal>> {
        if !self.renews(clause) {
            return None;
        }
        let (seals, said_by) = self.seals_renewed(clause)?;
        let is_so_called = |seal: &Id| {
            let name = self.map.name_of(seal).to_lowercase();
            let other = |word: &&&str| {
                **word != "seal" && name.split(' ').any(|own| own.trim_end_matches('s') == **word)
            };
            let said = said_by
                .iter()
                .find(|i| self.is_seal_word(**i))
                .map(|i| super::mention::singular(self.text(*i)));
            SEALS.iter().find(other).zip(said).is_none_or(|(own, said)| *own == said || said == "seal")
        };
        let has_seal = |joint: &&Connection| {
            let mut own = joint.seals.iter().map(|one| &one.seal);
            own.any(|own| seals.as_ref().map_or_else(|| is_so_called(own), |seals| seals.contains(own)))
        };
        let with_seal: Vec<Id> =
            self.map.connections.iter().filter(has_seal).map(|joint| joint.id.clone()).collect();
        let named: Vec<Id> = self
            .mentions_in(clause)
            .flat_map(|mention| &mention.candidates)
            .filter(|candidate| with_seal.contains(&candidate.id))
            .map(|candidate| candidate.id.clone())
            .collect();
        let of_part = |id: &Id| {
            let joins = self.map.connection(id).map(|joint| joint.joins.as_slice()).unwrap_or_default();
            let mut named = self.mentions_in(clause).flat_map(|mention| &mention.candidates);
            named.any(|candidate| joins.contains(&candidate.id))
        };
        let is_open = |id: &Id| self.here.connections.get(id).is_some_and(|here| here.made == 0);
        let mut joints = if named.is_empty() { with_seal } else { named };
        for passes in [&of_part as &dyn Fn(&Id) -> bool, &is_open] {
            if joints.iter().any(passes) {
                joints.retain(passes);
            }
        }
        let is_single = |id: &Id| self.map.connection(id).is_some_and(|joint| joint.count == 1);
        let is_plural = said_by.iter().any(|i| self.is_seal_word(*i) && is_plural(self.text(*i)));
        let joints = match joints.as_slice() {
            [] => return Some(Vec::new()),
            [_] => joints,
            // "Renew *the washers*" of joints that have one each.
            several if is_plural && several.iter().all(|id| is_open(id) && is_single(id)) => joints,
            several => match nearest(&self.here, several) {
                Some(nearest) => vec![nearest],
                None => return Some(asked_for(clause, &joints, &said_by)),
            },
        };
        let act = |verb: Verb, seal: Option<Renewal>| Proposal {
            action: Action { seal, ..Action::new(verb, joints.clone()) },
            choices: Vec::new(),
            doubtful: None,
            possible: true,
            said_by: said_by.clone(),
        };
        let undo = (!joints.iter().all(is_open)).then(|| act(Verb::Undo, None));
        Some(undo.into_iter().chain([act(Verb::Make, Some(Renewal::New))]).collect())
    }

    /// The seals that a clause renews, none if the map does not tell which, and the tokens that say it. Only what
    /// the verb acts on counts: "replace the cover with a new gasket" renews no gasket by itself.
    fn seals_renewed(&self, clause: &Clause) -> Option<(Option<Vec<Id>>, Vec<usize>)> {
        let is_seal = |candidate: &&Candidate| candidate.kind == ThingKind::Seal;
        let direct = |from: usize| (clause.verb() + 1..from).all(|i| self.is_between_verb_and_object(i));
        let mention = self.mentions_in(clause).find(|mention| {
            mention.from > clause.verb()
                && direct(mention.from)
                && mention.candidates.iter().any(|candidate| is_seal(&candidate))
        });
        if let Some(mention) = mention {
            let seals = mention.candidates.iter().filter(is_seal).map(|seal| seal.id.clone()).collect();
            let said_by = clause.phrase.iter().copied().chain(self.tokens_of(mention)).collect();
            return Some((Some(seals), said_by));
        }
        let is_word = |i: &usize| self.is_seal_word(*i);
        let word = (clause.verb() + 1..clause.to).find(is_word).filter(|word| direct(*word))?;
        Some((None, clause.phrase.iter().copied().chain([word]).collect()))
    }

    /// Whether a word may stand between a verb and the seal that it acts on.
    fn is_between_verb_and_object(&self, i: usize) -> bool {
        const WORDS: &[&str] = &[
            "the", "its", "a", "an", "all", "both", "old", "worn", "fibre", "flat", "copper", "rubber",
            "sealing", "union", "door", "case", "and",
        ];
        let text = self.text(i);
        WORDS.contains(&text) || self.lexicon.amount(text).is_some()
    }
}

/// Several joints come into question.
fn asked_for(clause: &Clause, joints: &[Id], said_by: &[usize]) -> Vec<Proposal> {
    let action = Action { seal: Some(Renewal::New), ..Action::new(Verb::Make, Vec::new()) };
    let last = said_by.last().copied().unwrap_or(clause.verb());
    vec![Proposal {
        action,
        choices: joints.to_vec(),
        doubtful: Some((last, last + 1)),
        possible: true,
        said_by: said_by.to_vec(),
    }]
}

/// Whether a word is a verb that renews; a heat exchanger renews nothing.
fn is_renewing(word: &str) -> bool {
    RENEWING.iter().any(|begin| word.starts_with(begin)) && !word.starts_with("exchanger")
}
