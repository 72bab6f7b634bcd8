//! Where the words name things of the map.
//!
//! A thing is named by its name or an alias, or by the end of one ("the unions" for "pump unions"), in
//! singular or plural. The longest match at a place wins.

mod beginnings;
mod further_names;
mod number;

use super::abbreviated::spelt_out;
use super::coin::{Noun, is_label, noun};
use super::twins::is_side;
use crate::lexicon::{Break, Token, tokens};
use crate::model::{ApplianceMap, Id, ThingKind};

use beginnings::Beginnings;
use further_names::{by_other_sides, closing_names, says_flow_and_return, side_name};
pub(super) use number::{is_plural, plural, singular};

/// The colours by which wires are told apart.
pub(super) const COLOURS: &[&str] = &[
    "black",
    "blue",
    "brown",
    "green",
    "green/yellow",
    "grey",
    "orange",
    "red",
    "violet",
    "white",
    "yellow",
];

/// A thing that may be meant.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Candidate {
    pub(super) id: Id,
    pub(super) kind: ThingKind,
    /// Whether words and name agree in number.
    pub(super) agrees: bool,
}

/// A place where the words name something.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Mention {
    /// The first token.
    pub(super) from: usize,
    /// The token after the last.
    pub(super) to: usize,
    /// Whether the words are a whole name.
    pub(super) whole: bool,
    /// Whether the words are in the plural while each name is in the singular.
    pub(super) plural: bool,
    /// What may be meant.
    pub(super) candidates: Vec<Candidate>,
}

/// A name: the words up to its first preposition, and those after it.
struct Name {
    candidate: Candidate,
    core: Vec<String>,
    plural: bool,
    /// So many of its last words name it at least.
    least: usize,
}

/// Words that end the core of a name: "valve of the pump".
const PREPOSITIONS: &[&str] = &[
    "above", "after", "at", "before", "behind", "below", "beside", "for", "from", "in", "of", "on", "to",
    "under", "with",
];

/// The names of a map that some words may hold.
pub(super) struct Names {
    names: Vec<Name>,
}

impl Names {
    /// The names and aliases of which the word that says what they are begins as one of these does. Reading a name
    /// takes a while, and most share no such word with a line.
    pub(super) fn of(map: &ApplianceMap, tokens: &[Token<'_>]) -> Self {
        let begun = Beginnings::of(tokens);
        let mut names = Vec::new();
        for (kind, id, name, aliases) in map.things() {
            for name in std::iter::once(name).chain(aliases.iter().map(String::as_str)) {
                if begun.may_hold_head_of(name) {
                    let candidate = Candidate { id: id.clone(), kind, agrees: true };
                    names.extend(read_name(name, &candidate));
                }
            }
        }
        if tokens.iter().any(|token| matches!(&*singular(&token.text), "screw" | "cap")) {
            map.connections.iter().for_each(|port| names.extend(closing_names(port)));
        }
        names.extend(by_other_sides(&names, tokens));
        if says_flow_and_return(tokens) {
            map.isolators.iter().for_each(|isolator| names.extend(side_name(isolator)));
        }
        Self { names }
    }

    /// The mentions in some words, outside the tokens that are taken as verbs.
    pub(super) fn find(&self, tokens: &[Token<'_>], is_verb: impl Fn(usize) -> bool) -> Vec<Mention> {
        let words: Vec<String> =
            tokens.iter().map(|token| singular(token.text.trim_end_matches("'s"))).collect();
        let mut found = Vec::new();
        let mut i = 0;
        while i < tokens.len() {
            let stands_free = || {
                let before =
                    i.checked_sub(1).filter(|_| tokens.get(i).is_some_and(|t| t.before == Break::None));
                // Where more than a blank stands between, it is a bracket.
                let parted = |j: usize| {
                    let ends = tokens.get(j).zip(tokens.get(i));
                    ends.is_some_and(|(one, next)| next.span.0 > one.span.1 + 1)
                };
                let is_open = |j: usize| {
                    is_one_of_colours(tokens, j)
                        || is_unit(tokens, j)
                        || tokens.get(j).is_some_and(leaves_open)
                };
                before.is_none_or(|j| is_verb(j) || parted(j) || is_open(j))
            };
            // A name ends where the sentence breaks off or another verb begins.
            let goes_on = |j: &usize| tokens.get(*j).is_some_and(|t| t.before == Break::None) && !is_verb(*j);
            let n_together = 1 + (i + 1..tokens.len()).take_while(goes_on).count();
            let here = words.get(..i + n_together).unwrap_or(&words);
            let mention = self.longest(tokens, here, i).filter(|_| !is_verb(i));
            let mention = mention.or_else(|| self.by_side(tokens, here, i).filter(|_| !is_verb(i)));
            let is_it =
                |mention: &Mention| stands_free() || (mention.whole && !is_other_noun(&words, i, mention.to));
            match mention.filter(is_it) {
                Some(mention) => {
                    i = mention.to;
                    if let Some(shared) = self.sharing_head(tokens, &words, &mention) {
                        // "The *fan* and pump covers" name no fan.
                        found.retain(|before: &Mention| before.to <= shared.from);
                        found.push(shared);
                    }
                    let further = self.sharing_label(tokens, &words, &mention);
                    found.push(mention);
                    found.extend(further);
                }
                None => i += 1,
            }
        }
        found
    }

    /// "The *flow* and return valves" names a flow valve too: what stands before "and" with the head of a mention
    /// in the plural behind it, if that is a whole name.
    fn sharing_head(&self, tokens: &[Token<'_>], words: &[String], mention: &Mention) -> Option<Mention> {
        let unbroken = |i: usize| tokens.get(i).is_some_and(|token| token.before == Break::None);
        // "The left and *the* right screw".
        let is_side = words.get(mention.from).is_some_and(|word| is_side(word));
        let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
        let from = mention.from - usize::from(is_side && mention.from > 0 && text(mention.from - 1) == "the");
        let and = from.checked_sub(1).filter(|and| {
            (mention.plural || is_side) && unbroken(mention.from) && unbroken(from) && unbroken(*and)
        })?;
        and.checked_sub(1).filter(|_| tokens.get(and).is_some_and(|token| token.text == "and"))?;
        let tail = words.get(mention.from + 1..mention.to).filter(|tail| !tail.is_empty())?;
        // "The *heating flow* and return valves": of two words, or of one.
        (1..=2).rev().find_map(|n| {
            let first = and.checked_sub(n)?;
            let joined = (first + 1..and).all(unbroken);
            let named: Vec<&String> = words.get(first..and)?.iter().chain(tail).collect();
            let ends_so = |core: &[String]| {
                let end = core.len().checked_sub(named.len()).and_then(|from| core.get(from..));
                end.is_some_and(|end| end.iter().eq(named.iter().copied()))
            };
            let is_it = |name: &&Name| joined && !name.plural && ends_so(&name.core);
            let mut candidates: Vec<Candidate> = Vec::new();
            for name in self.names.iter().filter(is_it) {
                if candidates.iter().all(|known| known.id != name.candidate.id) {
                    candidates.push(name.candidate.clone());
                }
            }
            let only = Mention { from: first, to: and, whole: true, plural: false, candidates };
            Some(only).filter(|mention| !mention.candidates.is_empty())
        })
    }

    /// "Valves A *and B*" name a valve B too.
    fn sharing_label(&self, tokens: &[Token<'_>], words: &[String], mention: &Mention) -> Vec<Mention> {
        let is_listed = |i: usize| tokens.get(i).is_some_and(|token| token.before != Break::Sentence);
        let core = words.get(mention.from..mention.to - 1).filter(|core| !core.is_empty());
        let Some(core) = core else { return Vec::new() };
        if !tokens.get(mention.to.wrapping_sub(2)).is_some_and(|head| is_plural(&head.text)) {
            return Vec::new();
        }
        let (mut found, mut at) = (Vec::new(), mention.to);
        loop {
            at += usize::from(tokens.get(at).is_some_and(|token| token.text == "and"));
            let Some(label) = words.get(at).filter(|_| is_listed(at)) else { return found };
            let is_it = |name: &&Name| {
                name.core.split_last().is_some_and(|(last, before)| last == label && before.ends_with(core))
            };
            let named = self.names.iter().filter(is_it).map(|name| name.candidate.clone());
            let candidates: Vec<Candidate> = named.collect();
            if candidates.is_empty() {
                return found;
            }
            found.push(Mention { from: at, to: at + 1, whole: true, plural: false, candidates });
            at += 1;
        }
    }

    /// "*The left cover*" where there are a left fan cover and a left pump cover: the side and the noun of a longer name.
    fn by_side(&self, tokens: &[Token<'_>], words: &[String], from: usize) -> Option<Mention> {
        let [side, head, ..] = words.get(from..)? else { return None };
        if !is_side(side) {
            return None;
        }
        let is_so_called = |name: &&Name| {
            let is_thing =
                !matches!(name.candidate.kind, ThingKind::Circuit | ThingKind::Section | ThingKind::Seal);
            let before = name.core.split_last().filter(|(last, _)| *last == head).map(|(_, before)| before);
            is_thing && before.is_some_and(|before| before.len() > 1 && before.contains(side))
        };
        let mut candidates: Vec<Candidate> = Vec::new();
        let to = from + 2;
        let plural = tokens.get(to - 1).is_some_and(|head| is_plural(&head.text));
        for name in self.names.iter().filter(is_so_called) {
            if candidates.iter().all(|known| known.id != name.candidate.id) {
                candidates.push(Candidate { agrees: name.plural == plural, ..name.candidate.clone() });
            }
        }
        (!candidates.is_empty()).then_some(Mention { from, to, whole: false, plural, candidates })
    }

    /// The longest match that begins at a token; whole names before ends of names.
    fn longest(&self, tokens: &[Token<'_>], words: &[String], from: usize) -> Option<Mention> {
        let mut best: (usize, bool) = (0, false);
        let mut named: Vec<&Name> = Vec::new();
        for name in &self.names {
            let fits = |n: &usize| {
                let end = name.core.get(name.core.len() - n..);
                words.get(from..from + n).is_some_and(|words| Some(words) == end)
            };
            let Some(n) = (name.least..=name.core.len()).rev().find(fits) else { continue };
            let this = (n, n == name.core.len());
            if this > best {
                best = this;
                named.clear();
            }
            if this == best {
                named.push(name);
            }
        }
        let to = from + best.0;
        let last = tokens.get(to.checked_sub(1)?).filter(|_| !named.is_empty())?;
        let plural = is_plural(&last.text);
        let mut candidates: Vec<Candidate> = Vec::new();
        for name in &named {
            let agrees = name.plural == plural;
            match candidates.iter_mut().find(|known| known.id == name.candidate.id) {
                Some(known) => known.agrees |= agrees,
                None => candidates.push(Candidate { agrees, ..name.candidate.clone() }),
            }
        }
        let plural = plural && named.iter().all(|name| !name.plural);
        Some(Mention { from, to, whole: best.1, plural, candidates })
    }
}

/// Whether the last word of a name may only say which one it is.
fn is_number_or_letter(word: &str) -> bool {
    word.len() <= 2 || word.bytes().all(|byte| byte.is_ascii_digit())
}

/// A name as it is looked for; once more without a letter or number at its end: "valve A".
fn read_name(name: &str, candidate: &Candidate) -> Vec<Name> {
    let all: Vec<String> =
        spelt_out(name, tokens(name)).into_iter().map(|token| token.text.into_owned()).collect();
    let leading = all.iter().skip_while(|word| matches!(word.as_str(), "a" | "an" | "the"));
    let core: Vec<String> =
        leading.take_while(|word| !PREPOSITIONS.contains(&word.as_str())).cloned().collect();
    let mut cores = Vec::new();
    if let Some((last, before)) = core.split_last()
        && !before.is_empty()
        && is_number_or_letter(last)
    {
        cores.push(before.to_vec());
    }
    // "The pressure switch" may be the high-pressure switch.
    if core.iter().any(|word| word.contains('-')) {
        let parts = |word: &String| word.split('-').map(str::to_owned).collect::<Vec<_>>();
        cores.push(core.iter().flat_map(parts).filter(|part| !part.is_empty()).collect());
    }
    cores.push(core);
    cores.retain(|core| !core.is_empty());
    let read = |core: Vec<String>| Name {
        candidate: candidate.clone(),
        plural: core.last().is_some_and(|last| is_plural(last)),
        least: 1,
        core: core.iter().map(|word| singular(word)).collect(),
    };
    cores.into_iter().map(read).collect()
}

/// "The brown and *blue* wires" count what they are said of.
fn is_one_of_colours(tokens: &[Token<'_>], at: usize) -> bool {
    let is_colour = |i: usize| tokens.get(i).is_some_and(|token| COLOURS.contains(&token.text.as_ref()));
    let is_and = |i: &usize| tokens.get(*i).is_some_and(|token| token.text == "and");
    let before = at.checked_sub(1).map(|i| if is_and(&i) { i.saturating_sub(1) } else { i });
    is_colour(at) && before.is_some_and(is_colour)
}

/// "The 30 *mm* nut": a size tells nothing of the name.
fn is_unit(tokens: &[Token<'_>], at: usize) -> bool {
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let figure = at.checked_sub(1).is_some_and(|i| text(i).starts_with(|c: char| c.is_ascii_digit()));
    figure && matches!(text(at), "bar" | "inch" | "kg" | "kw" | "l" | "litre" | "mm" | "v" | "w")
}

/// Whether a word before a name makes it another sort of thing: a *drain* valve is no valve that shuts off.
fn is_other_noun(words: &[String], from: usize, to: usize) -> bool {
    let (Some(own), Some(longer)) = (words.get(from..to), words.get(from.saturating_sub(1)..to)) else {
        return false;
    };
    let sort = |words: &[String]| std::mem::discriminant(&noun(words));
    from > 0 && !matches!(noun(own), Noun::Unknown | Noun::Nothing) && sort(own) != sort(longer)
}

/// Whether a word before the end of a name leaves open which one it is. "The nuts" may be the union nuts;
/// "the wing nuts" are others.
fn leaves_open(token: &Token<'_>) -> bool {
    const OPEN: &[&str] = &[
        "a",
        "all",
        "an",
        "and",
        "at",
        "both",
        "clear",
        "dirty",
        "each",
        "every",
        "for",
        "from",
        "in",
        "into",
        "its",
        "last",
        "new",
        "of",
        "off",
        "old",
        "on",
        "onto",
        "open",
        "or",
        "other",
        "out",
        "remaining",
        "same",
        "single",
        "that",
        "the",
        "their",
        "these",
        "this",
        "those",
        "through",
        "to",
        "under",
        "up",
        "with",
        "without",
        "worn",
        "one",
        "two",
        "three",
        "four",
        "five",
        "six",
        "seven",
        "eight",
        "nine",
        "ten",
        "eleven",
        "twelve",
        "back",
        "down",
    ];
    OPEN.contains(&token.text.as_ref()) || token.text.contains(|c: char| c.is_ascii_digit())
}

/// The words of a name in lower case and in the singular.
pub(super) fn words_of(name: &str) -> Vec<String> {
    spelt_out(name, tokens(name)).into_iter().map(|token| singular(&token.text)).collect()
}

/// The last word of a name, which says what it is; a letter or number behind it says which, and so does where it sits: "the
/// *valve* before the pump".
pub(super) fn head_of(name: &str) -> &str {
    let is_sited = |at: &str| name.contains(at);
    let sited = [" above the ", " after the ", " before the ", " below the "];
    let sited = sited.into_iter().find(|at| is_sited(at));
    let name = sited.and_then(|at| name.split(at).next()).unwrap_or(name);
    let named = name.rsplit_once(' ').filter(|(_, last)| is_label(last)).map_or(name, |(named, _)| named);
    named.rsplit(' ').next().unwrap_or(named)
}

#[cfg(test)]
mod tests {
    use super::Names;
    use crate::lexicon::tokens;
    use crate::model::{ApplianceMap, Component, Connection, Family, Port};

    #[test]
    fn names_left_out_because_no_word_begins_like_them_are_not_missed() {
        let names = [
            "Flow valve",
            "return valve",
            "shut-off cocks",
            "O-ring carrier",
            "\u{d6}l pump",
            "valve A",
            "Screws of the LH cover",
            "cover LH",
            "gland of valve 2",
            "relay K1",
            "unions (pump)",
            "bolts at the in-line filter",
            "the in-line filter",
            "lock-shield 12",
            "Isolator - 1",
            "Isolator \u{2013} 2",
            "Heater Rh",
        ];
        let mut map = ApplianceMap::default();
        map.components.extend(names.map(|name| Component::new(name.into(), name)));
        let mut port = Connection::new("port".into(), "sampling point", Family::Joint);
        port.port = Some(Port::Sample);
        map.connections.push(port);
        let lines = [
            "close the flow and return valves",
            "the cock, the o-ring carriers and an \u{f6}l pump",
            "undo the sampling cap of valve a",
            "refit the caps",
            "tighten the screw of the sampling point",
            "take off the left cover",
            "undo the gland and the bolts",
            "pull the relays, the unions and the lock shield",
            "swap the in-line filter and lock-shield 12",
            "switch the isolator off",
            "nothing of them",
        ];
        let all_words = names.join(" ") + " sampling point screw cap";
        for line in lines {
            let line = tokens(line);
            let asked = line.iter().cloned().chain(tokens(&all_words)).collect::<Vec<_>>();
            let found = Names::of(&map, &line).find(&line, |_| false);
            assert_eq!(found, Names::of(&map, &asked).find(&line, |_| false), "{line:?}");
        }
        let n_found = |line: &str| Names::of(&map, &tokens(line)).find(&tokens(line), |_| false).len();
        assert_eq!(lines.map(n_found), [2, 3, 2, 1, 2, 1, 2, 1, 2, 1, 0]);
    }
}
