//! Verbs that are understood: "cover on, close the four catches" orders the cover to be put on.
//!
//! Where a stretch of a sentence has no verb, is the name of a thing with "off", "on" or the like behind it, and
//! does not go on with what is looked for ("check the fan is quiet, burner off"), its verb is put before it as a
//! token of no width. All who read the words then read an order as any other.

use super::english_understood::{
    ARTICLES, BEHIND, BETWEEN, LEAD_INS, NO_NAMES, PLACES, SORTS, STATES, Sort, WHERE,
};
use super::phrase::{Few, Said};
use super::text::{Break, Token};
use crate::model::Verb;

/// What is tightened.
const TURNED: &[&str] = &["bolt", "bolts", "nut", "nuts", "screw", "screws", "union", "unions"];

/// What says only when something is turned.
const LEADS_ON: &[&str] =
    &["after", "afterwards", "finally", "last", "lastly", "next", "now", "only", "that", "then"];

/// At most so many words name a thing and where it is.
const LONGEST: usize = 9;

/// A verb that is understood before a token.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Understood {
    before: usize,
    verb: &'static str,
    /// The word of which it is understood: "off".
    of: usize,
}

/// The verbs that are understood in words with these phrases, in their order; in most words none.
pub(super) fn understood(tokens: &[Token<'_>], said: &[Said]) -> Few<Understood> {
    let mut found: Few<Understood> = Few::new();
    for (at, token) in tokens.iter().enumerate().skip(1) {
        if token.before == Break::None && STATES.has(token) {
            let known = found.last().map_or(0, |last| last.before);
            found
                .extend(Stretch { tokens, said, found: &found, at }.verb().filter(|one| one.before >= known));
        } else if token.text == "to" && token.before == Break::None {
            found.extend(torqued(tokens, said, at));
        }
    }
    found.dedup_by_key(|one| one.before);
    found
}

/// "The inlet union to 30 Nm, *the outlet to 23*": what is torqued like what stands before it.
fn torqued(tokens: &[Token<'_>], said: &[Said], at: usize) -> Option<Understood> {
    let joined = |i: usize| tokens.get(i).is_some_and(|token| token.before == Break::None);
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let is_figure = text(at + 1).starts_with(|c: char| c.is_ascii_digit()) && joined(at + 1);
    let start = (0..at).rev().find(|i| !joined(*i) || text(i.saturating_sub(1)) == "and")?;
    // "And *only then the two* bolts to 8 Nm."
    let start = (start..at).find(|i| !LEADS_ON.contains(&text(*i)))?;
    let sentence =
        (0..=start).rev().find(|i| tokens.get(*i).is_none_or(|t| t.before == Break::Sentence)).unwrap_or(0);
    let ends = !joined(at + 2) || matches!(text(at + 2), "and" | "nm" | "n·m" | "n.m");
    let is_name = |i: usize| {
        // "The G 3/4 nut."
        let is_size = text(i).chars().all(|c| c.is_ascii_digit() || matches!(c, '/' | '.'));
        let word = is_size || text(i).chars().all(|c| c.is_alphabetic() || c == '-');
        word && tokens.get(i).is_some_and(|token| !NO_NAMES.has(token))
    };
    let says =
        said.iter().any(|said| !said.means.is_empty() && said.tokens.iter().any(|i| (start..at).contains(i)));
    let torque = |i: usize| text(i).ends_with("nm") || matches!(text(i), "n·m" | "n.m");
    let is_order = is_figure && ends && !says && start > sentence && at - start <= 5;
    // "Gaskets in, *nuts to 30 Nm*": what is turned, and how tight in so many words.
    let in_full = at.checked_sub(1).is_some_and(|i| TURNED.contains(&text(i))) && torque(at + 2);
    (is_order && (start..at).all(is_name) && (in_full || (sentence..start).any(torque)))
        .then_some(Understood { before: start, verb: "torque", of: at })
}

/// The tokens with those that are understood among them.
pub(super) fn with_understood<'w>(tokens: &[Token<'w>], found: &[Understood]) -> Vec<Token<'w>> {
    let mut all = Vec::with_capacity(tokens.len() + found.len());
    for (at, token) in tokens.iter().enumerate() {
        let mut token = token.clone();
        if let Some(understood) = found.iter().find(|one| one.before == at) {
            all.push(Token::without_width(understood.verb, token.span.0, token.before));
            token.before = Break::None;
        }
        all.push(token);
    }
    all
}

/// Where the understood token of the nth stands among all: n places further on than where it is put.
fn places(found: &[Understood]) -> impl Iterator<Item = (usize, usize)> + '_ {
    found.iter().enumerate().map(|(n, one)| (one.before + n, one.of + n + 1))
}

/// Makes every phrase of an understood verb hold the word of which it is understood: "isolator *off*", not "*on* the
/// wall off".
pub(super) fn complete(said: &mut Vec<Said>, n_before: usize, tokens: &[Token<'_>], found: &[Understood]) {
    for (verb, of) in places(found) {
        let is_of = |said: &Said| said.tokens.first() == Some(&verb);
        let holds = |said: &Said| said.tokens.contains(&of);
        let ends_elsewhere = |said: &Said| {
            let last = said.tokens.last().and_then(|last| tokens.get(*last));
            said.tokens.len() > 1 && !holds(said) && last.is_some_and(|last| STATES.has(last))
        };
        let mut at = 0;
        said.retain(|said| {
            at += 1;
            at <= n_before || !is_of(said) || !ends_elsewhere(said)
        });
        for said in said.iter_mut().skip(n_before).filter(|said| is_of(said) && !holds(said)) {
            said.tokens.push(of);
            said.tokens.sort_unstable();
            said.words = said.tokens.iter().filter_map(|i| tokens.get(*i)).map(|token| token.span).collect();
        }
    }
}

/// Tells phrases of tokens with what is understood by the tokens without.
pub(super) fn without_understood(said: &mut [Said], found: &[Understood]) {
    let is_added = |i: usize| places(found).any(|(verb, _)| verb == i);
    let n_before = |i: usize| places(found).filter(|(verb, _)| *verb < i).count();
    for phrase in said {
        let own = |i: &&usize| !is_added(**i);
        let words = phrase.tokens.iter().zip(&phrase.words).filter(|(i, _)| own(i));
        phrase.words = words.map(|(_, span)| *span).collect();
        phrase.tokens = phrase.tokens.iter().filter(own).map(|i| i - n_before(*i)).collect();
    }
}

/// A word for how something comes to be, and what stands around it.
struct Stretch<'t, 'w> {
    tokens: &'t [Token<'w>],
    said: &'t [Said],
    found: &'t [Understood],
    at: usize,
}

impl Stretch<'_, '_> {
    /// The verb that is understood of it, if it stands without one.
    fn verb(&self) -> Option<Understood> {
        let mut end = self.at;
        while end > 0 && self.is(end - 1, &BETWEEN) && self.joined(end) {
            end -= 1;
        }
        // "*Turn* both thermostats up" is an order of its own.
        let start = self.start(end).filter(|start| self.text(*start) != "turn")?;
        let last = (start + 1..end).find(|i| self.is(*i, &WHERE)).unwrap_or(end) - 1;
        // "Plug *X2* off."
        let head = last - usize::from(last > start && is_label(self.text(last)) && self.sort(last).is_none());
        let sort = self.sort(head)?;
        let state = self.state(end)?;
        // "Fan *plug* back on" plugs nothing: behind another word it is a noun.
        let is_of_phrase = |said: &Said| {
            let first = said.tokens.first().copied();
            // "*Blanking cap* off" blanks nothing.
            let of_cap = first.is_some_and(|first| first + 1 == head && self.text(first) == "blanking");
            let is_noun = (head > start && first == Some(head)) || of_cap;
            let is_longer = said.tokens.len() > 1 || said.means.is_empty();
            // "Screw the unions *back* on": either of the two may be of the phrase.
            said.tokens.iter().any(|i| (end..=self.at).contains(i)) && is_longer && !is_noun
        };
        if self.said.iter().any(is_of_phrase) && !self.comes_off_before_going_on() {
            return None;
        }
        // "Lockshield valve in, count the *turns*": it is turned, and neither taken out nor put in.
        let turns = |i: usize| matches!(self.text(i), "turn" | "turns");
        if matches!(state, "in" | "out") && sort.nouns.contains(&"valve") && (self.at..self.at + 6).any(turns)
        {
            return None;
        }
        let is_name = (start..end).all(|i| self.is_of_name(i, start, head));
        // A tray that stays on its hinge is swung away and not put down.
        let mut stretch = (self.at..self.tokens.len()).take_while(|i| *i == self.at || self.joined(*i));
        if stretch.any(|i| matches!(self.text(i), "hinge" | "hinges")) {
            return None;
        }
        // "Pump B *on off*": how a switch stands.
        if state == "off" && end > 0 && self.text(end - 1) == "on" {
            return None;
        }
        if self.is_second_owner(start) {
            return None;
        }
        // "Burner off" switches it off as often as it takes it off.
        if state == "off" && matches!(self.text(head), "burner" | "compressor" | "heater") {
            return None;
        }
        let (_, verb) = sort.states.iter().find(|(states, _)| states.contains(&state))?;
        let is_order = is_name && self.goes_on_well(sort) && !self.is_told() && !self.is_looked_for(start);
        is_order.then_some(Understood { before: start, verb, of: self.at })
    }

    /// "Pull the plugs of the supply air fan *and the exhaust air fan off* the board": whose else they are.
    fn is_second_owner(&self, start: usize) -> bool {
        let Some(and) = start.checked_sub(1).filter(|and| self.text(*and) == "and" && self.joined(*and))
        else {
            return false;
        };
        let mut before = (1..and).rev().take_while(|i| self.joined(*i));
        let Some(lead) = before.find(|i| self.is(*i, &WHERE) || self.text(*i) == "of") else { return false };
        let is_owned = self.text(lead) == "of" && !matches!(self.text(lead - 1), "off" | "out");
        is_owned && self.is(lead + 1, &ARTICLES) && self.joined(self.at + 1)
    }

    fn is(&self, i: usize, words: &super::word_set::WordSet) -> bool {
        self.tokens.get(i).is_some_and(|token| words.has(token))
    }

    fn text(&self, i: usize) -> &str {
        self.tokens.get(i).map_or("", |token| &*token.text)
    }

    fn joined(&self, i: usize) -> bool {
        self.tokens.get(i).is_some_and(|token| token.before == Break::None)
    }

    /// Where the stretch begins: behind a stop or a comma, or behind "and" if an order stands before that.
    fn start(&self, end: usize) -> Option<usize> {
        let mut start = end.checked_sub(1)?;
        while start > 0 && self.joined(start) {
            let is_and = matches!(self.text(start - 1), "and" | "then");
            if is_and && self.follows_order(start - 1) {
                break;
            }
            start -= 1;
        }
        while start + 1 < end && self.is(start, &LEAD_INS) && self.joined(start + 1) {
            start += 1;
        }
        (start < end && end - start <= LONGEST).then_some(start)
    }

    /// Whether "and" at a token has an order before it in its part of the sentence.
    fn follows_order(&self, and: usize) -> bool {
        let part = (0..=and).rev().find(|i| !self.joined(*i)).unwrap_or(0);
        let says = |said: &Said| said.tokens.iter().any(|i| (part..and).contains(i));
        self.said.iter().any(says) || self.found.iter().any(|one| (part..and).contains(&one.before))
    }

    /// The sort of thing that a word names.
    fn sort(&self, head: usize) -> Option<&'static Sort> {
        let word = self.text(head);
        let is_it =
            |noun: &&str| word.strip_prefix(*noun).is_some_and(|rest| matches!(rest, "" | "s" | "es"));
        let is_thread = || {
            let size = word.strip_prefix('m').map(|size| size.strip_suffix('s').unwrap_or(size));
            size.is_some_and(|size| !size.is_empty() && size.bytes().all(|b| b.is_ascii_digit()))
        };
        let named =
            |sort: &&Sort| sort.nouns.iter().any(is_it) || (sort.nouns.contains(&"screw") && is_thread());
        SORTS.iter().find(named)
    }

    /// How it comes to be: what "back" leads to, or "in" where "back" stands alone.
    fn state(&self, end: usize) -> Option<&str> {
        // "Motor up and *off*."
        if matches!(self.text(self.at), "down" | "up")
            && self.text(self.at + 1) == "and"
            && matches!(self.text(self.at + 2), "off" | "out")
        {
            return Some(self.text(self.at + 2));
        }
        if self.text(self.at) != "back" {
            return Some(self.text(self.at));
        }
        let next = self.at + 1;
        // "Spur back on" is looked at once more at "on".
        let alone = end == self.at && !(self.joined(next) && self.is(next, &STATES));
        (alone && !self.is_pushed_back()).then_some("in")
    }

    /// "Hose *clip back* with pliers", "clip back, hose off": a clip that is pushed back along a hose comes loose.
    fn is_pushed_back(&self) -> bool {
        const PLIERS: &[&str] = &["grip", "grips", "mole", "plier", "pliers"];
        const HELD: &[&str] = &["bowl", "hose", "pipe", "trap", "tube"];
        if !matches!(self.text(self.at - 1), "clamp" | "clamps" | "clip" | "clips") {
            return false;
        }
        let part_end =
            |from: usize| (from..self.tokens.len()).find(|i| !self.joined(*i)).unwrap_or(self.tokens.len());
        let end = part_end(self.at + 1);
        let behind = part_end(end + 1);
        let any = |from: usize, to: usize, words: &[&str]| (from..to).any(|i| words.contains(&self.text(i)));
        any(self.at, end, PLIERS) || (any(end, behind, HELD) && any(end, behind, &["down", "off", "out"]))
    }

    /// Whether a token may belong to the name of a thing or to where it is.
    fn is_of_name(&self, i: usize, start: usize, head: usize) -> bool {
        let is_verb = |said: &Said| said.tokens.first() == Some(&i) && said.tokens.last() < Some(&self.at);
        let says_verb =
            (i == start || i != head) && self.said.iter().any(|said| is_verb(said) && !said.means.is_empty());
        let is_inner_article = i > start && i <= head && self.is(i, &ARTICLES);
        // "Tag on" puts a tag on; where it is the verb, "tag … off" is a phrase of its own.
        !self.is(i, &NO_NAMES) && !is_inner_article && (!says_verb || i == head)
    }

    /// Whether what follows is the end, or tells how it is done or where.
    fn goes_on_well(&self, sort: &Sort) -> bool {
        let next = self.at + 1;
        if next >= self.tokens.len() || !self.joined(next) || self.is(next, &BEHIND) {
            return true;
        }
        let takes_off = matches!(self.text(self.at), "off" | "out");
        let is_figure = self.text(next).starts_with(|c: char| c.is_ascii_digit());
        // "Two union nuts on the pump" says where they are; "back in the cover" puts them there.
        let may_lie_there = !sort.is_for_the_job
            && matches!(self.text(self.at), "in" | "on")
            && self.text(self.at - 1) != "back";
        let is_at_place = self.is(next, &PLACES) || (sort.is_for_the_job && self.ends_soon(next));
        is_figure || ((takes_off || (sort.has_place && !may_lie_there)) && is_at_place)
    }

    /// "Hose on *drain tap*": at most three words up to the next comma.
    fn ends_soon(&self, from: usize) -> bool {
        let n = (from..self.tokens.len()).take_while(|i| *i == from || self.joined(*i)).count();
        n <= 3 && (from..from + n).all(|i| self.text(i).chars().all(|c| c.is_alphabetic() || c == '-'))
    }

    /// "*Tag off*, valve open": what else would lock something off takes the lock off where something goes on next.
    fn comes_off_before_going_on(&self) -> bool {
        let Some(noun) = self.at.checked_sub(1) else { return false };
        let alone = !self.joined(self.at + 1) && self.start(self.at) == Some(noun);
        let rest = self.tokens.iter().skip(self.at + 1).take_while(|token| token.before != Break::Sentence);
        let mut on = rest.map(|token| &*token.text);
        matches!(self.text(noun), "lock" | "padlock" | "tag")
            && self.text(self.at) == "off"
            && alone
            && on.any(|word| matches!(word, "back" | "on" | "open" | "up"))
    }

    /// Whether what follows tells what the thing does: "the plug on the fan *comes off*".
    fn is_told(&self) -> bool {
        const LEAVES: &[&str] = &["and", "by", "for", "from", "then", "till", "until", "with"];
        let behind = (self.at + 1..self.tokens.len()).take_while(|i| self.joined(*i));
        let mut near = behind.take_while(|i| !LEAVES.contains(&self.text(*i)));
        let says =
            |i: usize| self.said.iter().any(|said| said.tokens.first() == Some(&i) && !said.means.is_empty());
        near.any(|i| says(i) || self.is(i, &NO_NAMES))
    }

    /// Whether the stretch tells what is looked for: it goes on a check or a reading.
    fn is_looked_for(&self, start: usize) -> bool {
        const LOOKS: &[Verb] =
            &[Verb::Test, Verb::Inspect, Verb::Read, Verb::Prove, Verb::Tell, Verb::Hold, Verb::Ask];
        let sentence = (0..=start)
            .rev()
            .find(|i| self.tokens.get(*i).is_none_or(|token| token.before == Break::Sentence));
        let sentence = sentence.unwrap_or(0);
        if self.found.iter().any(|one| (sentence..start).contains(&one.before)) {
            return false;
        }
        // "Read: fan on": what stands before a colon leads to it.
        let from = sentence.saturating_sub(1);
        let mut before = self
            .said
            .iter()
            .filter(|said| !said.means.is_empty() && said.tokens.iter().any(|i| (from..start).contains(i)));
        before.next_back().is_some_and(|said| said.means.iter().all(|verb| LOOKS.contains(verb)))
    }
}

/// A letter or number by which things of one name are told apart.
fn is_label(text: &str) -> bool {
    let letters = text.trim_end_matches(|c: char| c.is_ascii_digit());
    let n_digits = text.len() - letters.len();
    let is_word = !letters.bytes().all(|b| b.is_ascii_lowercase()) || text == "a";
    !is_word && matches!((letters.len(), n_digits), (0..=2, 1..=2) | (1, 0))
}
