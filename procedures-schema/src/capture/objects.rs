//! What the verb of a clause acts on, by how its things stand: direct, behind a preposition, before the verb.

use super::clause::Clause;
use super::coin::{self, Lead, Noun, noun};
use super::mention::{Candidate, Mention};
use super::reader::Reader;
use crate::lexicon::Break;
use crate::model::{Id, ThingKind, Verb};
use crate::units::{Quantity as Kind, Range};

impl Reader<'_> {
    /// The mentions that a verb of these kinds acts on: direct ones, else those after "at", "on", "from".
    pub(super) fn objects(&self, clause: &Clause, kinds: &[ThingKind]) -> Vec<Mention> {
        let is_direct = |mention: &&Mention| self.preposition(mention).is_none();
        let after_verb = |mention: &&Mention| mention.from > clause.verb();
        let of_kind = self.ordered(clause, kinds);
        let pick = |test: &dyn Fn(&&Mention) -> bool| -> Vec<Mention> {
            of_kind.iter().copied().filter(|mention| test(mention)).cloned().collect()
        };
        if let Some(port) = self.port_of_screw(clause) {
            return vec![port];
        }
        let direct = self.direct_objects(clause, pick(&|mention| is_direct(mention) && after_verb(mention)));
        if let Some(last) = direct.last() {
            let further = self.locked_too(clause, last, &of_kind);
            return direct.into_iter().chain(further).collect();
        }
        let covers = self.text(clause.verb()).starts_with("cover");
        let placed = |mention: &&Mention| match self.preposition(mention) {
            Some("around" | "at" | "on" | "from" | "of" | "round") => true,
            // "Cover it with a bag": the bag is placed, as is the rag of "plug the stub with a rag".
            Some("with") => {
                let is_item = || mention.candidates.iter().all(|c| c.kind == ThingKind::Temporary);
                covers || (names_item(self.text(clause.verb())) && is_item())
            }
            // "Slacken the screw in the test nipple."
            Some("in") => self.connection(mention).is_some_and(|joint| joint.port.is_some()),
            _ => false,
        };
        let mut indirect = pick(&|mention| placed(mention) && after_verb(mention));
        indirect.retain(|mention| !self.is_place_of_what_stands_before(clause, mention));
        // "Put the motor back on the pump head", of which no motor is known.
        let is_part = |mention: &Mention| mention.candidates.iter().all(|c| c.kind == ThingKind::Component);
        if indirect.iter().any(is_part) && self.has_unknown_object(clause) {
            indirect.retain(|mention| !is_part(mention));
        }
        // "Open the cap of the vent" opens no vent.
        let of_cap = |first: &&Mention| {
            (clause.verb() + 1..first.from).any(|i| matches!(self.text(i), "cap" | "caps"))
        };
        if indirect.first().as_ref().is_some_and(of_cap) {
            return Vec::new();
        }
        let is_source =
            |candidate: &Candidate| matches!(candidate.kind, ThingKind::Section | ThingKind::Circuit);
        let is_named = self.mentions_in(clause).any(|mention| {
            is_direct(&mention) && after_verb(&mention) && !mention.candidates.iter().all(is_source)
        });
        // "Shut the boiler down and isolate *it* at the spur."
        let isolates = self.text(clause.verb()).starts_with("isolat")
            && indirect.first().is_some_and(|mention| self.preposition(mention) == Some("at"));
        if !indirect.is_empty() && (covers || isolates || self.pronoun(clause).is_none()) && !is_named {
            // "Switch off the heater at its switch *and* the controls *at the spur*".
            let is_at = |mention: &Mention| self.preposition(mention) == Some("at");
            let is_isolator =
                |mention: &Mention| mention.candidates.iter().all(|c| c.kind == ThingKind::Isolator);
            let n = indirect.iter().take_while(|mention| is_at(mention) && is_isolator(mention)).count();
            return indirect.into_iter().take(n.max(1)).collect();
        }
        self.before_verb(clause, &of_kind)
    }

    /// "*The valve* must be closed": what stands near before a verb that has nothing behind it.
    fn before_verb(&self, clause: &Clause, of_kind: &[&Mention]) -> Vec<Mention> {
        // "6 bar on the cap, always *look*": at what, the words do not say.
        let looks = matches!(self.text(clause.verb()), "feel" | "listen" | "look" | "see" | "watch");
        if looks || self.pronoun(clause).is_some() {
            return Vec::new();
        }
        // "Pressure off through the port plug, 1 turn only, *nip up* again": what, the words do not say.
        let joined = |i: usize| self.tokens.get(i).is_some_and(|token| token.before != Break::Comma);
        let near = |mention: &Mention| (mention.to..=clause.verb()).all(joined);
        // "The base *under the transformer* scraped" is not the transformer.
        let says_where = |mention: &Mention| {
            let lead = self.preposition(mention);
            matches!(lead, Some("above" | "behind" | "below" | "beneath" | "beside" | "under"))
        };
        let is_it =
            |mention: &&&Mention| mention.from <= clause.verb() && near(mention) && !says_where(mention);
        of_kind.iter().filter(is_it).map(|mention| (*mention).clone()).collect()
    }

    /// "Put a lock on isolator 1 *and on isolator 2*, *and a lock on isolator 3*."
    fn locked_too(&self, clause: &Clause, last: &Mention, of_kind: &[&Mention]) -> Vec<Mention> {
        let is_isolator =
            |mention: &Mention| mention.candidates.iter().all(|c| c.kind == ThingKind::Isolator);
        let is_listed = |mention: &&&Mention| {
            mention.from > last.to
                && is_isolator(mention)
                && self.preposition(mention) == Some("on")
                && (last.to..mention.from).any(|i| self.text(i) == "and")
        };
        if !clause.means.contains(&Verb::Lock) || !is_isolator(last) {
            return Vec::new();
        }
        of_kind.iter().filter(is_listed).map(|mention| (*mention).clone()).collect()
    }

    /// The mentions of a clause that may be acted on: of one of these kinds, neither told nor beyond a comma, and the head
    /// of what they stand in.
    fn ordered(&self, clause: &Clause, kinds: &[ThingKind]) -> Vec<&Mention> {
        let phrases = coin::phrases(self, clause);
        let may_be = |mention: &&Mention| {
            mention.candidates.iter().any(|c| kinds.contains(&c.kind))
                && !self.is_told(clause, mention.from)
                && self.is_listed(clause, mention)
                && !self.is_of_a_name(clause, &phrases, mention)
        };
        self.mentions_in(clause).filter(may_be).collect()
    }

    /// Those of the direct mentions behind a verb that it acts on.
    fn direct_objects(&self, clause: &Clause, mut direct: Vec<Mention>) -> Vec<Mention> {
        // "Refit the lid and make *sure* no wire is caught": what is only looked after is not refitted.
        let is_beyond = |mention: &Mention| {
            (clause.verb() + 1..mention.from)
                .any(|i| matches!(self.text(i), "ensure" | "ensuring" | "minding" | "sure"))
        };
        direct.retain(|mention| !is_beyond(mention));
        // "Tube taken off *the fan*": what is taken stands before.
        direct.retain(|mention| !self.is_place_of_what_stands_before(clause, mention));
        // "DC1 *shut*, hose and rag away": of what is named behind the comma nothing is said.
        let last = clause.phrase.last().map_or(clause.verb(), |last| *last);
        if self.says_of_what_is_before(clause, last) {
            return Vec::new();
        }
        // "Pull *it* up to 30 Nm, the outlet nut to 23": the verb acts on what "it" stands for.
        if let Some(it) = self.object_pronoun(clause) {
            direct.retain(|mention| mention.from < it);
        }
        // "Take off the panel; the chamber has a cover of its own": another sentence names no object, unless the
        // first has none.
        let end = self.end_of_sentence(clause);
        if direct.iter().any(|mention| mention.from < end) {
            direct.retain(|mention| mention.from < end);
        }
        direct
    }

    /// "The tube taken *off the fan*", "tube put *back on the fan*": whether a participle with what is done by it before it
    /// leads to a place.
    fn is_place_of_what_stands_before(&self, clause: &Clause, mention: &Mention) -> bool {
        const DONE: &[&str] = &["fitted", "lifted", "pulled", "pushed", "put", "slid", "taken", "unplugged"];
        let verb = clause.verb();
        let is_joined = |i: usize| self.tokens.get(i).is_some_and(|token| token.before == Break::None);
        let last = clause.phrase.last().copied().unwrap_or(verb);
        let leads = |i: usize| {
            matches!(
                self.text(i),
                "a" | "an" | "from" | "into" | "its" | "of" | "off" | "on" | "onto" | "the" | "to"
            )
        };
        let is_next = (last + 1..mention.from).all(leads) && (verb..=last).eq(clause.phrase.iter().copied());
        if !DONE.contains(&self.text(verb)) || last == verb || !is_next || verb == 0 || !is_joined(verb) {
            return false;
        }
        let before = coin::phrases_between(self, clause.from.min(verb), verb);
        before.last().is_some_and(|subject| {
            subject.head + 1 == verb && !matches!(noun(&subject.stem()), Noun::Nothing | Noun::Unknown)
        })
    }

    /// Whether a verb ends its part of the sentence and something that nobody knows stands before it there.
    fn says_of_what_is_before(&self, clause: &Clause, last: usize) -> bool {
        const LEADING: &[&str] = &["also", "and", "but", "first", "next", "now", "or", "so", "then", "to"];
        let is_how = |i: &usize| self.text(*i).ends_with("ly");
        let behind = (last + 1..self.tokens.len()).find(|i| !is_how(i)).unwrap_or(last + 1);
        let ends = self.tokens.get(behind).is_some_and(|next| next.before == Break::Comma);
        let verb = clause.verb();
        let joined = self.tokens.get(verb).is_some_and(|token| token.before == Break::None);
        let before = verb.checked_sub(1).filter(|_| joined && ends && verb == last);
        before.is_some_and(|before| {
            let word = self.text(before);
            !LEADING.contains(&word) && !word.ends_with("ly")
        })
    }

    /// "Slacken the screw in the test nipple": the nipple, whatever else has screws.
    fn port_of_screw(&self, clause: &Clause) -> Option<Mention> {
        let screw = (clause.verb() + 1..clause.to).find(|i| matches!(self.text(*i), "screw" | "screws"))?;
        let near = |mention: &&Mention| mention.from > screw && mention.from < screw + 4;
        let mention = self.mentions_in(clause).find(near)?;
        let leads = matches!(self.preposition(mention), Some("in" | "of")) && self.text(screw + 1) != "and";
        let is_port = self.connection(mention).is_some_and(|joint| joint.port.is_some());
        (leads && is_port).then(|| mention.clone())
    }

    /// "Spades on, *that 7 mm nut* 2 Nm": what is turned stands right before a torque and behind a comma.
    fn turns_another(&self, from: Option<usize>, torque: usize) -> bool {
        const TURNED: &[&str] = &["bolt", "gland", "nut", "screw", "union"];
        let Some(last) = torque.checked_sub(1) else { return false };
        let turned = (last.saturating_sub(1)..=last)
            .rev()
            .find(|i| TURNED.contains(&super::mention::singular(self.text(*i)).as_str()));
        turned.zip(from).is_some_and(|(turned, from)| {
            turned >= from
                && (from..=turned).any(|i| self.tokens.get(i).is_some_and(|t| t.before != Break::None))
        })
    }

    /// How tight a clause says that things are made: not what it says behind something else that is turned, as in "pin
    /// in, three wires on, 0.5 Nm".
    pub(super) fn torque_of(&self, clause: &Clause, on: &[Id]) -> Option<Range> {
        let mut torques = self.quantities(clause).filter(|quantity| quantity.range(Kind::Torque).is_some());
        let first = torques.next()?;
        let further: Vec<_> = torques.collect();
        if on.len() > 1 && !further.is_empty() {
            // Which is for which is not said.
            return None;
        }
        // "To 3 Nm and *then to 6 Nm*": the last turn is how tight it is.
        let ends = |quantity: &&super::Quantity| {
            let before = (quantity.from.saturating_sub(2)..quantity.from).map(|i| self.text(i));
            before.into_iter().any(|text| matches!(text, "finally" | "lastly" | "then"))
        };
        let said = further.iter().rfind(|quantity| ends(quantity)).copied().unwrap_or(first);
        let own = self.mentions_in(clause).filter(|m| m.candidates.iter().any(|c| on.contains(&c.id)));
        let from = own.map(|mention| mention.to).filter(|to| *to <= said.from).max();
        let is_turned = |phrase: &coin::Phrase| {
            let between = from.is_some_and(|from| phrase.from > from && phrase.head < said.from);
            let is_other = matches!(noun(&phrase.stem()), Noun::Connector(_) | Noun::Fixing);
            between && is_other && phrase.lead != Lead::Direct && !matches!(phrase.lead, Lead::After(_))
        };
        let of_another =
            coin::phrases(self, clause).iter().any(is_turned) || self.turns_another(from, said.from);
        said.range(Kind::Torque).filter(|_| !of_another).cloned()
    }
}

/// Whether a verb names what is placed: "cap it" places a cap and not what is capped.
pub(super) fn names_item(stem: &str) -> bool {
    ["blank", "bond", "bridg", "bung", "cap", "plug"].iter().any(|begin| stem.starts_with(begin))
}
