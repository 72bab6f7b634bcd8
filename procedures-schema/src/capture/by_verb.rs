//! Verbs that name the thing themselves: "unplug the fan", "cap the union", "unscrew the venturi".

use super::clause::Clause;
use super::coin::{is_open_end, phrases};
use super::mention::{Candidate, Mention, head_of, singular};
use super::reader::{Proposal, Reader};
use super::refer::fitting;
use crate::lexicon::Amount;
use crate::model::{Connection, Family, Id, ThingKind, Verb};

impl Reader<'_> {
    /// Verbs that name the thing themselves: "*unplug* the fan" is about its plug, "*cap* the union" about the
    /// cap that is put on it.
    pub(super) fn add_by_verb(&self, clause: &Clause, proposal: &mut Proposal) {
        let stem = self.text(clause.verb());
        let verb = proposal.action.verb.clone();
        let undoes = matches!(verb, Verb::Undo | Verb::Make | Verb::Slacken | Verb::Tighten);
        let family = own_family(stem).filter(|_| undoes);
        let unplugs = family.is_some();
        let fixes = family == Some(Family::Joint) && matches!(verb, Verb::Undo | Verb::Make);
        let heads =
            [("cap", "cap"), ("blank", "blank"), ("bung", "bung"), ("plug", "plug"), ("bond", "bond")];
        let head = heads.into_iter().find(|(begin, _)| stem.starts_with(begin)).map(|(_, head)| head);
        let head = head.filter(|_| verb == Verb::Place);
        if !unplugs && head.is_none() {
            return;
        }
        let kind = if unplugs { ThingKind::Component } else { ThingKind::Connection };
        let direct = |mention: &&Mention| mention.from > clause.verb() && self.preposition(mention).is_none();
        let mention = self.mentions_in(clause).find(direct);
        let Some((meant, said_by)) = self.named_or_last(clause, mention, kind) else { return };
        let own = |mention: Option<&Mention>, meant: &[Candidate]| -> Vec<Id> {
            let twin = mention.and_then(|mention| self.twin_meant(clause, &verb, kind, mention));
            let of = twin.unwrap_or_else(|| of_kind(meant, kind));
            let said = mention.map(|mention| self.said_of(clause, mention)).unwrap_or_default();
            let plugs = self.map.connections.iter().filter(|plug| {
                // "Put the lid back and screw it down" is about the screws of the lid.
                let fixing = fixes && plug.family == Family::Fixing;
                let fits = (family.as_ref() == Some(&plug.family) || fixing) && plug.port.is_none();
                // What is unscrewed as a whole is no terminal of it.
                let is_wired =
                    matches!(head_of(&plug.name), "terminal" | "terminals") && family == Some(Family::Joint);
                fits && !is_wired
                    && !said.is_other_size(plug)
                    && plug.joins.iter().any(|part| of.contains(part))
            });
            let items = self.map.temporary.iter().filter(|item| {
                let on = item.on.as_ref().or(item.bonds.as_ref()).is_some_and(|on| of.contains(on));
                on && head.is_some_and(|head| item.name.ends_with(head))
            });
            let all = plugs.map(|plug| &plug.id).chain(items.map(|item| &item.id)).cloned();
            all.filter(|id| self.here.is_possible(&verb, id)).collect()
        };
        let mut possible = own(mention, &meant);
        let says_both = mention.is_none() && self.pronoun(clause).is_some_and(|at| self.text(at) == "both");
        if says_both {
            possible = self.both_of(&verb, family.as_ref(), possible);
        }
        match (possible.as_slice(), mention) {
            ([], _) => return,
            ([only], _) => proposal.action.on = vec![only.clone()],
            // "Plug *the sensors* in": each of them has one.
            (all, Some(mention)) if all.len() <= meant.len() && self.is_one_of_each(mention, all) => {
                proposal.action.on = possible;
            }
            (_, Some(mention)) => {
                proposal.doubtful = Some((mention.from, mention.to));
                proposal.choices = possible;
            }
            (_, None) if says_both => proposal.action.on = possible,
            (_, None) => return,
        }
        proposal.said_by.extend(said_by);
        let further = mention.filter(|_| proposal.choices.is_empty());
        for other in further.map(|first| self.listed_behind(clause, first)).unwrap_or_default() {
            if let [only] = own(Some(other), &other.candidates).as_slice() {
                proposal.action.on.push(only.clone());
                proposal.said_by.extend(self.tokens_of(other));
            }
        }
    }

    /// What a verb is said of, with the tokens that say it: what is named, what a pronoun stands for, or an open end.
    fn named_or_last(
        &self,
        clause: &Clause,
        mention: Option<&Mention>,
        kind: ThingKind,
    ) -> Option<(Vec<Candidate>, Vec<usize>)> {
        match (mention, self.pronoun(clause)) {
            (Some(mention), _) => Some((mention.candidates.clone(), self.tokens_of(mention))),
            (None, Some(pronoun)) => Some((self.named_last(clause, kind), vec![pronoun])),
            (None, None) => self.open_end(clause).map(|(end, at)| (vec![end], vec![at])),
        }
    }

    /// "Then plug *both* in": two, or where one is at hand the only two that can be.
    fn both_of(&self, verb: &Verb, family: Option<&Family>, possible: Vec<Id>) -> Vec<Id> {
        if possible.len() == 2 || family != Some(&Family::Connector) {
            return possible;
        }
        let of_family = self.map.connections.iter().filter(|known| Some(&known.family) == family);
        let all: Vec<Id> =
            of_family.map(|known| known.id.clone()).filter(|id| self.here.is_possible(verb, id)).collect();
        if all.len() == 2 { all } else { Vec::new() }
    }

    /// Whether words name several, and connections are the plug or the thread of each: all of them, or so many.
    fn is_one_of_each(&self, mention: &Mention, ids: &[Id]) -> bool {
        let is_own = |id: &Id| {
            let known = self.map.connection(id);
            known.is_some_and(|known| known.family == Family::Connector || head_of(&known.name) == "thread")
        };
        let counts = match self.amount(mention) {
            Some((Amount::Exactly(n), _)) => u32::try_from(ids.len()) == Ok(n),
            _ => true,
        };
        mention.plural && counts && ids.iter().all(is_own)
    }

    /// "Unscrew *the nozzle of stage one* and the nozzle of stage two": the things of one mention of a noun that is acted on twice.
    fn twin_meant(
        &self,
        clause: &Clause,
        verb: &Verb,
        kind: ThingKind,
        mention: &Mention,
    ) -> Option<Vec<Id>> {
        let fits = || {
            self.by_what_is_wanted(clause, verb, &[kind], mention, |wanted| {
                fitting(&mention.candidates, wanted)
            })
        };
        self.is_one_of_two_named(clause, mention).then(fits)
    }

    /// Whether the noun of a mention is acted on twice in its clause, each time with what it is of.
    fn is_one_of_two_named(&self, clause: &Clause, mention: &Mention) -> bool {
        let phrases = phrases(self, clause);
        let own = phrases.iter().find(|phrase| phrase.head + 1 == mention.to);
        own.is_some_and(|phrase| self.is_one_of_two(phrase, &phrases))
    }

    /// "Unplug the fan, *the pump* and *the sensor*": what goes on behind a thing in one list, up to the last "and".
    fn listed_behind(&self, clause: &Clause, first: &Mention) -> Vec<&Mention> {
        let end = self.end_of_sentence(clause);
        if self.is_one_of_two_named(clause, first) {
            let behind = self.mentions_in(clause).filter(|other| other.from >= first.to && other.from < end);
            return behind.filter(|other| self.is_one_of_two_named(clause, other)).collect();
        }
        let (mut listed, mut n_joined, mut to) = (Vec::new(), 0, first.to);
        for other in self.mentions_in(clause).filter(|other| other.from >= first.to && other.from < end) {
            let between = || (to..other.from).map(|i| self.text(i));
            if !between().all(|text| matches!(text, "a" | "an" | "and" | "both" | "its" | "the")) {
                break;
            }
            listed.push(other);
            if between().any(|text| text == "and") {
                n_joined = listed.len();
            }
            to = other.to;
        }
        listed.truncate(n_joined);
        listed
    }

    /// "Undo the union and cap *the end*": the connection that the last clause opened, or the only one that is open.
    fn open_end(&self, clause: &Clause) -> Option<(Candidate, usize)> {
        let end = (clause.verb() + 1..clause.to).find(|i| is_open_end(&singular(self.text(*i))))?;
        let last = self.last_of(&[ThingKind::Connection]);
        if let [only] = last.as_slice() {
            return Some((only.clone(), end));
        }
        let is_open = |joint: &&Connection| {
            let open = self.here.connections.get(&joint.id).is_some_and(|here| here.open > 0);
            open && joint.section.is_some() && joint.port.is_none()
        };
        let mut open = self.map.connections.iter().filter(is_open);
        let only = open.next().filter(|_| last.is_empty() && open.next().is_none())?;
        Some((Candidate { id: only.id.clone(), kind: ThingKind::Connection, agrees: true }, end))
    }

    /// The last things of a kind, or where the line has read none yet the only one that it names before a clause.
    fn named_last(&self, clause: &Clause, kind: ThingKind) -> Vec<Candidate> {
        let last = self.last_or_under(kind);
        if !last.is_empty() || !self.last.is_empty() {
            return last;
        }
        let before = self.mentions.iter().filter(|mention| mention.to <= clause.verb());
        let mut named: Vec<Candidate> = Vec::new();
        for candidate in before.flat_map(|mention| &mention.candidates).filter(|c| c.kind == kind) {
            if named.iter().all(|known| known.id != candidate.id) {
                named.push(candidate.clone());
            }
        }
        if named.len() == 1 { named } else { Vec::new() }
    }
}

fn of_kind(meant: &[Candidate], kind: ThingKind) -> Vec<Id> {
    meant.iter().filter(|candidate| candidate.kind == kind).map(|candidate| candidate.id.clone()).collect()
}

/// The sort of connection that a verb is about where it names only the part: the plug that is unplugged, the clip
/// that is unclipped, the thread that is unscrewed.
fn own_family(stem: &str) -> Option<Family> {
    let begins = |all: &[&str]| all.iter().any(|begin| stem.starts_with(begin));
    if begins(&["plug", "unplug"]) {
        Some(Family::Connector)
    } else if begins(&["clip", "unclip"]) {
        Some(Family::Fixing)
    } else if begins(&[
        "screw", "unscrew", "undo", "slacken", "loosen", "tighten", "crack", "nip", "start", "torque",
    ]) {
        Some(Family::Joint)
    } else {
        None
    }
}
