//! A clause: each of its phrases is known, makes a thing, or means nothing.

use super::super::agreement::Said;
use super::super::clause::Clause;
use super::super::mention::{Candidate, Mention, head_of};
use super::super::quantity::Figures;
use super::super::twins::WHERE;
use super::bench::Bench;
use super::circuits::About;
use super::isolators::owns_isolators;
use super::nouns::{Noun, noun, tells_apart};
use super::owners::topic;
use super::phrase::{Lead, Phrase};
use super::phrased::phrases;
use super::wanted::{Asked, Wanted};
use crate::lexicon::Break;
use crate::model::{Family, Handle, Id, ThingKind, Verb};

impl Bench<'_> {
    /// Makes what a clause names for the first time; `next` is the clause behind it.
    pub(super) fn make_for(&mut self, clause: &Clause, next: Option<&Clause>) {
        self.phrases = phrases(&self.line, clause).to_vec();
        let before = self.line.marked_before(clause);
        self.phrases.splice(0..0, before);
        self.lengthen(clause);
        if self.may_have_another_name(clause) || self.line.stows(clause) {
            return;
        }
        // "Reconnect the hose and take off the lid": what is put back holds nothing that comes off next.
        let apart = |verb: &Verb| matches!(verb, Verb::Undo | Verb::Slacken | Verb::Remove);
        let holds = clause.means.iter().any(apart);
        let puts_back =
            !holds && clause.means.iter().any(|verb| matches!(verb, Verb::Make | Verb::Fit | Verb::Tighten));
        self.next_off = next.filter(|_| holds).and_then(|next| self.taken_off(next));
        self.next_phrases = next.map(|next| phrases(&self.line, next).to_vec()).unwrap_or_default();
        self.ask_what_is_measured(clause);
        self.notice_rivals(clause);
        if self.may_be_one_of_owners(clause) || self.may_be_one_or_each(clause) {
            return;
        }
        self.next_name = self.next_off.clone().and_then(|phrase| self.owned_name(&phrase));
        let stem = self.line.text(clause.verb()).to_owned();
        let keeps =
            |next: &Clause| self.line.text(next.verb()).starts_with("ke") && next.means == [Verb::Lock];
        let asked = Asked::new(clause, &stem, next.is_some_and(keeps));
        let mut isolators: Vec<(Phrase, Handle)> = Vec::new();
        let wants = self.things_wanted(clause, &asked);
        // "Unplug the leads from the gas valve": the valve only says where.
        let is_other = |(phrase, wanted): &(Phrase, Wanted)| {
            phrase.lead == Lead::Direct && !matches!(wanted, Wanted::Isolator(_))
        };
        let only_says_where = wants.iter().any(is_other);
        for (phrase, wanted) in wants {
            let is_where = only_says_where && phrase.lead != Lead::Direct;
            if is_where && matches!(wanted, Wanted::Isolator(_)) {
                continue;
            }
            let Some(each) = self.of_each_owner(&phrase, &wanted) else {
                self.make_wanted(clause, phrase, wanted, puts_back, &mut isolators);
                continue;
            };
            let all = std::mem::take(&mut self.phrases);
            for (own, phrases) in each {
                self.phrases = phrases;
                let mut of_it = Vec::new();
                self.make_wanted(clause, own, wanted.clone(), puts_back, &mut of_it);
                self.make_isolators(clause, &of_it);
                self.look_again();
            }
            self.phrases = all;
            self.asked.dedup_by(|one, before| one.span == before.span && one.question == before.question);
        }
        if !isolators.is_empty() {
            self.make_isolators(clause, &isolators);
            self.look_again();
        }
        if asked.takes_off_or_fits() {
            self.make_fixings_beside(clause);
        }
        if asked.screws() {
            self.make_counted_screws(clause);
        }
        if asked.isolates() {
            self.make_valve_of_supply(clause);
        }
        if asked.closes_by_its_verb() {
            self.close_with_the_verb(clause);
        }
    }

    /// The name of what the next clause takes off, if its owner is said there.
    fn owned_name(&mut self, phrase: &Phrase) -> Option<String> {
        let stem: Vec<String> = phrase.stem().into_iter().chain(phrase.label.clone()).collect();
        let n_own = stem.len();
        let own = std::mem::replace(&mut self.phrases, self.next_phrases.clone());
        let named = self.with_owner(phrase, stem);
        self.phrases = own;
        (named.len() > n_own).then(|| named.join(" "))
    }

    /// "Unscrew the cap of the drain cock and open *the cock*": what the line has named in full, and nothing else has made,
    /// is meant by its last word.
    fn lengthen(&mut self, clause: &Clause) {
        let is_short = |phrase: &Phrase| {
            phrase.words.len() == 1 && phrase.label.is_none() && self.line.text(phrase.start) == "the"
        };
        let earlier = self.line.clauses.iter().filter(|other| other.verb() < clause.verb());
        let all: Vec<Phrase> = earlier.flat_map(|other| phrases(&self.line, other).to_vec()).collect();
        let kinds = [ThingKind::Connection, ThingKind::Isolator];
        let long = |short: &Phrase| {
            let is_it = |long: &&Phrase| {
                long.words.len() > 1
                    && long.words.last() == short.words.last()
                    && matches!(noun(&long.stem()), Noun::Isolator(_) | Noun::Port(_))
            };
            all.iter().rev().find(is_it).map(|long| long.words.clone())
        };
        // A valve that is shut may be called a cock, but not beside one.
        let is_so_called = |phrase: &Phrase, id: &Id| head_of(self.map.name_of(id)) == phrase.head_word();
        let is_known = |phrase: &Phrase| self.known(phrase, &kinds).iter().any(|id| is_so_called(phrase, id));
        let longer = |phrase: &Phrase| long(phrase).filter(|_| is_short(phrase) && !is_known(phrase));
        let names: Vec<Option<Vec<String>>> = self.phrases.iter().map(longer).collect();
        for (phrase, name) in self.phrases.iter_mut().zip(names) {
            phrase.words = name.unwrap_or_else(|| std::mem::take(&mut phrase.words));
        }
    }

    /// Makes what a phrase names, unless the map has it; isolators are made together at the end.
    fn make_wanted(
        &mut self,
        clause: &Clause,
        phrase: Phrase,
        wanted: Wanted,
        puts_back: bool,
        isolators: &mut Vec<(Phrase, Handle)>,
    ) {
        let is_one_more = self.is_another(&phrase) || self.is_one_more_item(clause, &phrase, &wanted);
        if !is_one_more && self.is_known(clause, &phrase, &wanted) {
            if wanted == Wanted::Component {
                self.add_to_component(clause, &phrase);
            }
            return;
        }
        if (puts_back && self.is_one_of_a_group(&phrase)) || self.is_one_of_several(&phrase) {
            return;
        }
        if self.is_of_one_of_several(&phrase) {
            return;
        }
        let is_of_part = matches!(wanted, Wanted::PlugOf | Wanted::ClipOf | Wanted::ThreadOf);
        if !is_of_part && !is_one_more && self.may_be_the_one_so_called(&phrase) {
            return;
        }
        match wanted {
            Wanted::Isolator(handle) if self.has_its_plug(&phrase, &handle, &self.phrases) => {}
            Wanted::Isolator(handle) => isolators.push((phrase, handle)),
            Wanted::Component if !self.is_a_thing(&phrase) => {}
            wanted => self.make(clause, &phrase, &wanted),
        }
        self.look_again();
    }

    /// What the phrases of a clause would be if they were new, without those that are no thing of the appliance.
    fn things_wanted(&self, clause: &Clause, asked: &Asked<'_>) -> Vec<(Phrase, Wanted)> {
        let wants: Vec<(Phrase, Wanted)> =
            self.phrases.iter().filter_map(|phrase| Some((phrase.clone(), asked.wanted(phrase)?))).collect();
        let mut wants = self.without_locks(wants);
        for (phrase, wanted) in &mut wants {
            if *wanted == Wanted::Fixing && self.is_nut_of_a_pipe(clause, phrase) {
                *wanted = Wanted::Joint;
            }
        }
        wants.retain(|(phrase, wanted)| {
            !self.is_own_cap(phrase)
                && !self.is_plug_of_a_part(wanted)
                && !self.is_plug_of_a_pipe(clause, phrase, wanted)
                && !self.is_hose_of_a_drain(phrase, wanted)
                && !self.has_a_seal(clause, phrase, wanted)
                && !self.is_of_somebody(phrase)
                && !self.may_be_a_blank(phrase, wanted)
        });
        // "Put a hose on the drain cock": what it is put on comes first.
        wants.sort_by_key(|(_, wanted)| *wanted == Wanted::Temporary);
        wants
    }

    /// "The nut *of the gas pipe*": it holds in what runs there.
    fn is_nut_of_a_pipe(&self, clause: &Clause, phrase: &Phrase) -> bool {
        const OTHERS: &[&str] = &["capillary", "exhaust", "flue", "sensing"];
        let is_pipe = |of: Phrase| {
            matches!(&*of.head_word(), "hose" | "pipe" | "tail" | "tube")
                && noun(&of.stem()) == Noun::Joint
                && !of.words.iter().any(|word| OTHERS.contains(&word.as_str()))
        };
        // A metric thread holds something.
        let mut sizes = self.line.quantities(clause);
        if sizes.any(|size| matches!(&size.figures, Figures::Size(thread) if thread.starts_with('M'))) {
            return false;
        }
        phrase.head_word() == "nut" && self.behind(phrase, &["of"]).is_some_and(is_pipe)
    }

    /// "Take off the clamp": while an isolator is locked, that is what locks it and nothing of the appliance.
    fn without_locks(&self, mut wants: Vec<(Phrase, Wanted)>) -> Vec<(Phrase, Wanted)> {
        if self.line.here.isolators.values().any(|isolator| isolator.locked) {
            wants.retain(|(phrase, _)| !matches!(phrase.stem().as_slice(), [only] if only == "clamp" || only == "hasp"));
        }
        wants
    }

    /// "Disconnect the loop and put *its caps* on", "open the cap of the vent": a cap that belongs to what is named
    /// beside it. That of an automatic vent shuts nothing off; it is open in service.
    fn is_own_cap(&self, phrase: &Phrase) -> bool {
        let is_owned = matches!(self.line.text(phrase.start), "its" | "their");
        let of = self.behind(phrase, &["of", "on"]);
        let mut words = phrase.words.iter().chain(of.iter().flat_map(|of| &of.words));
        phrase.head_word() == "cap" && (is_owned || words.any(|word| word == "vent" || word == "vents"))
    }

    /// "Transformer: mains plug out": where something else cuts off the mains, whose plug it is, is not said.
    fn is_plug_of_a_part(&self, wanted: &Wanted) -> bool {
        let electric = |handle: &Handle| matches!(handle, Handle::Switch | Handle::Fuse);
        *wanted == Wanted::Isolator(Handle::Plug)
            && self.map.isolators.iter().any(|isolator| electric(&isolator.handle))
    }

    /// "Take the plug *out of the supply pipe*", "unscrew the plug": it closes a pipe and carries no current.
    fn is_plug_of_a_pipe(&self, clause: &Clause, phrase: &Phrase, wanted: &Wanted) -> bool {
        const PIPES: &[&str] = &[
            "boss",
            "connection",
            "elbow",
            "end",
            "fitting",
            "inlet",
            "outlet",
            "pipe",
            "stub",
            "tail",
            "tapping",
            "tee",
            "union",
        ];
        let is_in_pipe = |of: Phrase| PIPES.contains(&of.head_word().as_str());
        let turns = ["screw", "tighten", "unscrew"]
            .iter()
            .any(|begin| self.line.text(clause.verb()).starts_with(begin));
        matches!(wanted, Wanted::Connector(_))
            && phrase.head_word() == "plug"
            && (turns
                || self
                    .behind(phrase, &["from", "in", "into", "of", "off", "on", "onto", "out"])
                    .is_some_and(is_in_pipe))
    }

    /// "Close the drain cock, pull off *the hose*": that was put on it by words that made no thing of it.
    fn is_hose_of_a_drain(&self, phrase: &Phrase, wanted: &Wanted) -> bool {
        let is_port = |i: usize| matches!(self.line.text(i), "cock" | "point" | "tap" | "valve");
        let drains = |i: usize| match self.line.text(i) {
            "bucket" => true,
            text => matches!(text, "bleed" | "drain") && is_port(i + 1),
        };
        *wanted == Wanted::Joint && phrase.words == ["hose"] && (0..self.line.tokens.len()).any(drains)
    }

    /// "*My* sheet back in the van": nothing of the appliance.
    fn is_of_somebody(&self, phrase: &Phrase) -> bool {
        matches!(self.line.text(phrase.start), "my" | "our")
    }

    /// "Cap on *with a new washer*": what has a seal is the appliance's own.
    fn has_a_seal(&self, clause: &Clause, phrase: &Phrase, wanted: &Wanted) -> bool {
        let closes = matches!(&*phrase.head_word(), "blank" | "bung" | "cap" | "plug");
        let end = self.line.end_of_sentence(clause);
        *wanted == Wanted::Temporary && closes && (phrase.head + 1..end).any(|i| self.line.is_seal_word(i))
    }

    /// "Caps off" while something stands open: they may be those that somebody put on for the job; and "cap on" may
    /// be the appliance's own.
    fn may_be_a_blank(&self, phrase: &Phrase, wanted: &Wanted) -> bool {
        let closes = matches!(&*phrase.head_word(), "blank" | "bung" | "cap");
        let is_bare = phrase.words.len() == 1 && phrase.start == phrase.from;
        let stands_open = || self.line.here.connections.values().any(|here| here.open > 0);
        let placed_nowhere = || self.behind(phrase, &["in", "into", "on", "onto", "over"]).is_none();
        closes
            && is_bare
            && match wanted {
                Wanted::Joint => stands_open(),
                Wanted::Temporary => placed_nowhere(),
                _ => false,
            }
    }

    /// What a clause takes off, if it is one thing.
    fn taken_off(&self, clause: &Clause) -> Option<Phrase> {
        let takes = clause.means.iter().any(|verb| matches!(verb, Verb::Remove | Verb::MoveAside));
        let all = phrases(&self.line, clause);
        let direct = all.iter().find(|phrase| phrase.lead == Lead::Direct).cloned();
        direct.filter(|phrase| takes && matches!(noun(&phrase.stem()), Noun::Part | Noun::Unknown))
    }

    /// Whether the map has what a phrase names.
    fn is_known(&mut self, clause: &Clause, phrase: &Phrase, wanted: &Wanted) -> bool {
        let mut known = self.known(phrase, &wanted.known_as(clause));
        if let Some(place) = self.behind(phrase, WHERE) {
            // "Close *the valve before the pump*" where the only one that is known is shut already.
            let can_be = |id: &Id| clause.means.iter().any(|verb| self.line.here.is_possible(verb, id));
            let Lead::After(side) = &place.lead else { return false };
            let end = format!(" {side} the {}", place.name());
            let is_placed = |id: &Id| self.map.name_of(id).ends_with(&end);
            known.retain(|id| can_be(id) || is_placed(id));
        }
        let of_part = self.known_of_part(phrase, wanted);
        known.extend(of_part.iter().cloned());
        let said = Said::of_phrase(&self.line, clause, phrase, &self.phrases, &self.mentions);
        known = said.agreeing(&self.map, known);
        // "Unplug the fan and take out the pump": whose plug it is, is said.
        known.retain(|id| of_part.contains(id) || self.may_be(id, phrase));
        if known.is_empty() {
            known = self.to_be_put_back(clause, phrase, wanted);
        }
        if let [only] = known.as_slice()
            && self.map.connection(only).is_some()
        {
            self.last_connection = Some(only.clone());
        }
        !known.is_empty()
    }

    /// "Close the meter test point": of what is new nothing can be closed, so a test point that is open is meant.
    fn to_be_put_back(&self, clause: &Clause, phrase: &Phrase, wanted: &Wanted) -> Vec<Id> {
        let verbs = [
            (Verb::Make, ThingKind::Connection),
            (Verb::Restore, ThingKind::Isolator),
            (Verb::Fit, ThingKind::Component),
            (Verb::TakeAway, ThingKind::Temporary),
        ];
        let back: Vec<&(Verb, ThingKind)> =
            verbs.iter().filter(|(verb, _)| clause.means.contains(verb)).collect();
        let is_another =
            |word: &String| tells_apart(word) || matches!(word.as_str(), "other" | "second" | "third");
        // "Fit the vessel hose": whoever fits puts nothing on what is there.
        let stem = self.line.text(clause.verb());
        let fits = ["fit", "reattach", "reconnect", "refit"].iter().any(|begin| stem.starts_with(begin));
        let opens = clause.means.iter().any(|verb| match verb {
            Verb::Undo | Verb::Remove => true,
            Verb::Place => !fits,
            _ => false,
        });
        if back.is_empty() || opens || phrase.words.iter().any(is_another) {
            return Vec::new();
        }
        let kinds = wanted.known_as(clause);
        let within = |m: &&Mention| m.to == phrase.head + 1 && m.from > phrase.from;
        let named = self.mentions.iter().filter(within).flat_map(|mention| &mention.candidates);
        let is_off = |candidate: &Candidate| {
            back.iter().any(|(verb, kind)| {
                *kind == candidate.kind && self.line.here.is_possible(verb, &candidate.id)
            })
        };
        let mut found: Vec<Id> = Vec::new();
        for candidate in named.filter(|candidate| kinds.contains(&candidate.kind) && is_off(candidate)) {
            if !found.contains(&candidate.id) {
                found.push(candidate.id.clone());
            }
        }
        if found.len() == 1 { found } else { Vec::new() }
    }

    /// The plugs, clips or threads of the part that a phrase names, where the verb is about them.
    fn known_of_part(&self, phrase: &Phrase, wanted: &Wanted) -> Vec<Id> {
        let family = match wanted {
            Wanted::PlugOf => Family::Connector,
            Wanted::ClipOf => Family::Fixing,
            Wanted::ThreadOf => Family::Joint,
            _ => return Vec::new(),
        };
        let parts = self.known(phrase, &[ThingKind::Component]);
        let of_part = self.map.connections.iter().filter(|connection| {
            connection.family == family && connection.joins.iter().any(|part| parts.contains(part))
        });
        of_part.map(|connection| connection.id.clone()).collect()
    }

    /// Whether a known thing agrees with what the words add: the part that it is of, its side.
    fn may_be(&self, id: &Id, phrase: &Phrase) -> bool {
        if let Some(connection) = self.map.connection(id) {
            return self.agrees_in_part(connection, phrase);
        }
        let is_owner = |of: &Phrase| phrase.words.len() == 1 || (of.is_after(&["of"]) && owns_isolators(of));
        let of = self.behind(phrase, &["of", "on", "in"]).filter(is_owner);
        let of = of.or_else(|| {
            let is_its = matches!(self.line.text(phrase.start), "its" | "their");
            is_its.then(|| topic(&self.line, phrase.start)).flatten()
        });
        let Some(of) = of.or_else(|| self.behind(phrase, &["for"])) else { return true };
        let Some(isolator) = self.map.isolators.iter().find(|isolator| isolator.id == *id) else {
            return true;
        };
        let names = [&isolator.id, &isolator.between.0, &isolator.between.1].map(|id| self.map.name_of(id));
        of.stem().iter().all(|word| names.iter().any(|name| name.split(' ').any(|own| own == word)))
    }

    /// Adds what the words say to a component that this line made before.
    fn add_to_component(&mut self, clause: &Clause, phrase: &Phrase) {
        if let [only] = self.known(phrase, &[ThingKind::Component]).as_slice()
            && self.made.iter().any(|made| made.thing == *only)
        {
            self.place_component(clause, phrase, only);
        }
    }

    /// Makes the thing that a phrase names.
    fn make(&mut self, clause: &Clause, phrase: &Phrase, wanted: &Wanted) {
        match wanted {
            Wanted::Port(port) => self.make_port(clause, phrase, port),
            Wanted::Joint => self.make_joint(clause, phrase),
            Wanted::Fixing => self.make_fixing(clause, phrase),
            Wanted::Connector(mains) => self.make_connector(clause, phrase, *mains),
            Wanted::PlugOf => self.make_plug_of(clause, phrase),
            Wanted::ClipOf => self.make_clip_of(phrase),
            Wanted::ThreadOf => self.make_thread_of(clause, phrase),
            Wanted::Component => {
                let id = self.make_component(phrase);
                self.place_component(clause, phrase, &id);
            }
            Wanted::Temporary => self.make_temporary(clause, phrase),
            Wanted::Setting => self.make_setting(phrase),
            Wanted::Isolator(_) => {}
        }
    }

    /// What is known of where a new thing belongs.
    pub(super) fn about(&self, clause: &Clause, phrase: &Phrase) -> About {
        let mut near: Vec<String> = phrase.stem();
        let leads = ["of", "on", "in", "at", "to", "from", "under", "below", "above"];
        let after = self.phrases.iter().skip_while(|other| other.from <= phrase.from);
        // "The gas at the cock *and the water* at the stop valve": another supply.
        let own = after.take_while(|other| other.is_after(&leads) && !self.is_next_supply(other));
        near.extend(own.flat_map(Phrase::stem));
        // "*The gas* at the meter cock."
        let before = self.phrases.iter().rev().find(|other| other.from < phrase.from);
        let supply = before.filter(|before| phrase.is_after(&["at", "by", "with"]) && is_supply(before));
        near.extend(supply.into_iter().flat_map(Phrase::stem));
        // "The *cold water* stopcock" is that of the water, whatever it is of.
        let says_water = |word: &String| matches!(&**word, "cold" | "domestic" | "drinking" | "potable");
        if phrase.words.iter().any(says_water) {
            near = phrase.stem();
        }
        About {
            near,
            far: self.words_of(clause, phrase),
            answer: self.circuit_given(phrase),
            ..About::default()
        }
    }
    /// Whether a phrase names a further supply behind "and" or a comma.
    pub(super) fn is_next_supply(&self, phrase: &Phrase) -> bool {
        let parted = self.line.tokens.get(phrase.start).is_some_and(|token| token.before != Break::None);
        let and = phrase.start.checked_sub(1).is_some_and(|and| self.line.text(and) == "and");
        is_supply(phrase) && (parted || and)
    }
}

/// Whether a phrase names what comes in from outside, and no thing.
fn is_supply(phrase: &Phrase) -> bool {
    const SUPPLIES: &[&str] = &["gas", "heating", "mains", "oil", "steam", "water"];
    let is_of_it = |word: &String| {
        SUPPLIES.contains(&word.as_str()) || matches!(word.as_str(), "cold" | "domestic" | "fuel" | "hot")
    };
    phrase.label.is_none()
        && SUPPLIES.contains(&phrase.head_word().as_str())
        && phrase.words.iter().all(is_of_it)
}
