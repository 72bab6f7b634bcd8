//! Noun phrases of a clause: what the words name, how many of it, and which word leads to it.

use super::super::clause::Clause;
use super::super::mention::singular;
use super::super::reader::Reader;
use super::colours::colours;
use crate::lexicon::{Amount, Break};

/// How a noun phrase stands in its clause.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(in crate::capture) enum Lead {
    /// The verb acts on it.
    Direct,
    /// Behind a preposition.
    After(String),
    /// Set beside the sentence: behind a colon or a comma.
    Beside,
}

/// A noun phrase.
#[derive(Clone, Debug)]
pub(in crate::capture) struct Phrase {
    /// The first token of the name.
    pub(in crate::capture) from: usize,
    /// The token of the head.
    pub(in crate::capture) head: usize,
    /// The words of the name in lower case, the head as it is written.
    pub(in crate::capture) words: Vec<String>,
    /// How it stands.
    pub(in crate::capture) lead: Lead,
    /// The amount before it: "the *four* screws".
    pub(in crate::capture) amount: Option<Amount>,
    /// Of how many only so many: "*two* of the four screws".
    pub(in crate::capture) part: Option<Amount>,
    /// The first token with its articles and amounts.
    pub(in crate::capture) start: usize,
}

impl Phrase {
    /// The words with the head in the singular.
    pub(in crate::capture) fn stem(&self) -> Vec<String> {
        let mut stem = self.words.clone();
        if let Some(head) = stem.last_mut() {
            *head = singular(head);
        }
        stem
    }

    /// The head in the singular.
    pub(in crate::capture) fn head_word(&self) -> String {
        self.words.last().map(|head| singular(head)).unwrap_or_default()
    }

    /// Whether the head is in the plural.
    pub(in crate::capture) fn plural(&self) -> bool {
        self.words.last().is_some_and(|head| singular(head) != *head)
    }

    /// Whether it stands behind one of these prepositions.
    pub(in crate::capture) fn is_after(&self, leads: &[&str]) -> bool {
        matches!(&self.lead, Lead::After(lead) if leads.contains(&lead.as_str()))
    }
}

const ARTICLES: &[&str] = &["a", "an", "any", "its", "the", "their", "this", "these", "those", "your"];
/// Adjectives that belong to no name.
const ADJECTIVES: &[&str] = &[
    "clean",
    "complete",
    "dirty",
    "entire",
    "fresh",
    "last",
    "loose",
    "new",
    "old",
    "open",
    "other",
    "remaining",
    "same",
    "single",
    "spare",
    "whole",
    "worn",
];
const PREPOSITIONS: &[&str] = &[
    "above", "across", "against", "along", "at", "behind", "below", "beneath", "beside", "between", "by",
    "for", "from", "in", "inside", "into", "near", "of", "off", "on", "onto", "out", "over", "through", "to",
    "towards", "under", "using", "via", "with", "without",
];
/// What begins a condition or another thought; nothing is named up to the next comma.
const CONDITIONS: &[&str] = &[
    "after", "as", "because", "before", "if", "once", "so", "that", "till", "unless", "until", "when",
    "where", "whether", "which", "while",
];
/// Words that end a name.
const ENDS: &[&str] = &[
    "about",
    "afterwards",
    "again",
    "all",
    "also",
    "apart",
    "approximately",
    "are",
    "around",
    "aside",
    "away",
    "back",
    "be",
    "been",
    "beforehand",
    "both",
    "closed",
    "completely",
    "do",
    "down",
    "downstream",
    "each",
    "either",
    "every",
    "first",
    "forward",
    "forwards",
    "fully",
    "half",
    "hand",
    "has",
    "have",
    "held",
    "here",
    "him",
    "home",
    "is",
    "it",
    "live",
    "may",
    "must",
    "need",
    "no",
    "not",
    "off",
    "only",
    "open",
    "or",
    "out",
    "quarter",
    "secured",
    "shall",
    "shut",
    "sideways",
    "straight",
    "them",
    "then",
    "there",
    "tight",
    "too",
    "turn",
    "two",
    "underneath",
    "up",
    "upstream",
    "upwards",
    "was",
    "were",
    "will",
];

/// What something is let do: the end of a verb, and no name.
const LET: &[&str] = &["cool", "drain", "escape", "know", "run", "settle", "stop"];

/// The noun phrases behind the verb of a clause, and those before it behind "with" ("with the vent open, drain
/// it"); all before it where it ends its sentence, as in "the valve must be closed".
pub(in crate::capture) fn phrases(line: &Reader<'_>, clause: &Clause) -> Vec<Phrase> {
    let behind = Chunker::new(line, clause).run(clause.verb() + 1, clause.to);
    let before_verb = clause.verb().checked_sub(1).map(|i| line.text(i));
    let ends_with_verb = behind.is_empty()
        && matches!(before_verb, Some("be" | "been" | "is" | "are" | "to"))
        || line.text(clause.verb()) == "comes";
    let mut all = Chunker::new(line, clause).run(clause.from, clause.verb());
    if !ends_with_verb {
        let starts_with = line.text(clause.from) == "with";
        all.retain(|phrase| starts_with && matches!(phrase.lead, Lead::After(_)));
    }
    all.extend(behind);
    all
}

struct Chunker<'l, 'w> {
    line: &'l Reader<'w>,
    clause: &'l Clause,
    found: Vec<Phrase>,
    lead: Lead,
    amount: Option<Amount>,
    part: Option<Amount>,
    start: Option<usize>,
    /// Whether "and" or a comma stands before without an article.
    bare: bool,
    words: Vec<usize>,
    /// Whether nothing is named up to the next comma.
    skips: bool,
}

impl<'l, 'w> Chunker<'l, 'w> {
    fn new(line: &'l Reader<'w>, clause: &'l Clause) -> Self {
        let (found, words) = (Vec::new(), Vec::new());
        Self {
            line,
            clause,
            found,
            lead: Lead::Direct,
            amount: None,
            part: None,
            start: None,
            bare: false,
            words,
            skips: false,
        }
    }

    fn run(mut self, from: usize, to: usize) -> Vec<Phrase> {
        let (mut before_bracket, mut behind_colours) = (None, from);
        for i in from..to {
            if i < behind_colours {
                continue;
            }
            if let Some((behind, n)) = colours(self.line, i, to) {
                self.start.get_or_insert(i);
                (self.amount, behind_colours) = (Some(Amount::Exactly(n)), behind);
                continue;
            }
            let before = self.line.tokens.get(i).map_or(Break::Sentence, |token| token.before);
            match self.line.bracket(i).filter(|_| i > from) {
                Some('(') => {
                    self.close(true);
                    before_bracket = Some(std::mem::replace(&mut self.lead, Lead::Beside));
                }
                Some(_) => {
                    self.close(true);
                    self.lead = before_bracket.take().unwrap_or_else(|| self.lead.clone());
                }
                None => {}
            }
            if before != Break::None && i > from {
                self.close(true);
                self.skips = false;
                let goes_on = before == Break::Comma && matches!(self.line.text(i), "and" | "the");
                if !goes_on {
                    self.lead = Lead::Beside;
                }
            }
            let is_also = self.line.text(i) == "as" && self.line.text(i + 1) == "well";
            if CONDITIONS.contains(&self.line.text(i)) && !is_also {
                self.close(true);
                self.skips = true;
            }
            if !self.skips {
                self.token(i);
            }
        }
        self.close(true);
        join_shared_heads(self.found)
    }

    /// Takes a token in.
    fn token(&mut self, i: usize) {
        let text = self.line.text(i).to_owned();
        let of_verb = i != self.clause.verb() && self.clause.phrase.contains(&i) && is_particle(&text);
        if self.is_drain_off(i) {
            return;
        }
        // "Let the boiler *drain*."
        let lets = matches!(self.line.text(self.clause.verb()), "allow" | "leave" | "let" | "letting");
        let ends_verb = lets && self.clause.phrase.contains(&i) && LET.contains(&text.as_str());
        let measured =
            self.line.quantities(self.clause).any(|quantity| (quantity.from..quantity.to).contains(&i));
        let amount = self.line.lexicon.amount(&text).filter(|_| !measured);
        // "Have a *look* at the seal": of the verb, and no thing.
        let names_nothing = || {
            let word = [singular(&text)];
            matches!(super::nouns::noun(&word), super::nouns::Noun::Nothing | super::nouns::Noun::Unknown)
        };
        let begins_here = self.words.is_empty();
        let of_idiom =
            begins_here && i != self.clause.verb() && self.clause.phrase.contains(&i) && names_nothing();
        if of_verb || of_idiom {
            self.close(true);
            // "Lift *it* off its hooks": the object stands before.
            let has_object =
                !self.found.is_empty() || self.line.object_pronoun(self.clause).is_some_and(|it| it < i);
            // "Put a tray *beneath and* rags over it": what is joined is placed too.
            let leads_on = self.line.text(i + 1) != "and";
            if has_object && leads_on && PREPOSITIONS.contains(&text.as_str()) {
                self.lead = Lead::After(text);
            }
        } else if matches!(text.as_str(), "one" | "ones") && self.is_adjective_alone() {
            // "The big one is the supply": what is told of it is no name either, up to the next comma.
            self.words.clear();
            (self.amount, self.part, self.start) = (None, None, None);
            self.skips = true;
        } else if text == "x" && self.amount.is_some() && self.words.is_empty() {
            // "3 x M4 screws".
            self.start.get_or_insert(i);
        } else if measured || ends_verb {
            self.close(true);
        } else if text == "and" {
            self.close(true);
            self.bare = true;
        } else if text == "of" && self.words.is_empty() && self.amount.is_some() {
            self.part = self.amount.take();
        } else if text == "of" && self.is_several() {
            // "The *pair of* electrodes."
            self.words.clear();
        } else if self.holds_another(i) {
            // "The screws *holding the* plate" are those of the plate.
            self.close(true);
            self.lead = Lead::After("of".to_owned());
        } else if PREPOSITIONS.contains(&text.as_str()) || (text == "round" && self.start.is_none()) {
            // "Wipe *round* the pocket", not "the round cover".
            self.close(true);
            let joins = text == "with"
                && i.checked_sub(1).is_some_and(|i| matches!(self.line.text(i), "along" | "together"));
            self.lead = if joins { Lead::Direct } else { Lead::After(text) };
            self.bare = false;
        } else if ARTICLES.contains(&text.as_str()) || amount.is_some() {
            self.close(true);
            self.bare = false;
            self.start.get_or_insert(i);
            self.amount = amount.or(self.amount);
        } else if is_drive(&text) || (self.words.is_empty() && ADJECTIVES.contains(&text.as_str())) {
            self.start.get_or_insert(i);
        } else {
            self.word(i, &text);
        }
    }

    /// Takes in a word that belongs to the open phrase, begins one, or ends it.
    fn word(&mut self, i: usize, text: &str) {
        if ENDS.contains(&text)
            || is_adverb(text)
            || text.contains('\'')
            || (text == "right" && is_particle(self.line.text(i + 1)))
        {
            self.close(!matches!(text, "it" | "them" | "him") && !is_adverb(text));
        } else if super::super::proof::is_pair(text) {
            self.close(true);
        } else if text.starts_with(|c: char| c.is_alphabetic()) {
            self.start.get_or_insert(i);
            self.words.push(i);
        } else {
            self.close(true);
        }
    }

    /// Whether the open phrase is only a word for several.
    fn is_several(&self) -> bool {
        let [only] = self.words.as_slice() else { return false };
        matches!(self.line.text(*only), "couple" | "pair" | "set")
    }

    /// Whether a word behind a name says what that holds, up to the article of it.
    fn holds_another(&self, i: usize) -> bool {
        let holds = matches!(self.line.text(i), "holding" | "retaining" | "securing");
        holds && !self.words.is_empty() && ARTICLES.contains(&self.line.text(i + 1))
    }

    /// Whether the open phrase is one word behind an article that names nothing known.
    fn is_adjective_alone(&self) -> bool {
        let [only] = self.words.as_slice() else { return false };
        let word = super::super::mention::singular(self.line.text(*only));
        self.start.is_some_and(|start| start < *only)
            && super::nouns::noun(&[word]) == super::nouns::Noun::Unknown
    }

    /// "The drain *off* cock" is a drain cock.
    fn is_drain_off(&self, i: usize) -> bool {
        let drains = self.words.last().is_some_and(|last| last + 1 == i && self.line.text(*last) == "drain");
        drains
            && self.line.text(i) == "off"
            && matches!(self.line.text(i + 1), "cock" | "point" | "tap" | "valve")
    }

    /// Ends the phrase that is open, if there is one. A bare word behind "and" that is followed by "it"
    /// is a verb that is not known.
    fn close(&mut self, naturally: bool) {
        let words = std::mem::take(&mut self.words);
        let kept = (naturally || !self.bare).then_some(words);
        if let Some((Some(&from), Some(&head))) = kept.as_ref().map(|words| (words.first(), words.last())) {
            let words = kept.iter().flatten().map(|i| self.line.text(*i).to_owned()).collect();
            let start = self.start.unwrap_or(from);
            let (lead, amount, part) = (self.lead.clone(), self.amount, self.part);
            self.found.push(Phrase { from, head, words, lead, amount, part, start });
            (self.amount, self.part, self.start) = (None, None, None);
            self.bare = false;
        } else if kept.is_none() {
            (self.amount, self.part, self.start) = (None, None, None);
        }
    }
}

/// "The flow and return valves" are a flow valve and a return valve.
fn join_shared_heads(mut found: Vec<Phrase>) -> Vec<Phrase> {
    for i in 1..found.len() {
        let Some(shared) = found.get(i).filter(|phrase| phrase.plural() && phrase.words.len() > 1).cloned()
        else {
            continue;
        };
        let Some(first) = i.checked_sub(1).and_then(|i| found.get_mut(i)) else { continue };
        let joined = first.head + 2 == shared.start && first.lead == shared.lead;
        // "The *heating* flow and return valves": of which circuit both are.
        let says_circuit =
            |word: &String| matches!(word.as_str(), "central" | "domestic" | "heating" | "radiator");
        let tells = |word: &String| super::nouns::tells_apart(word) || says_circuit(word);
        if joined
            && first.words.last().is_some_and(|last| !says_circuit(last))
            && first.words.iter().all(tells)
        {
            let tail: Vec<String> = shared.stem().into_iter().skip(1).collect();
            first.words.extend(tail);
            if let Some(second) = found.get_mut(i) {
                second.words = shared.stem();
                second.amount = None;
            }
        }
    }
    found
}

/// Whether a word only says what a screw is turned with: "two Torx T20 screws".
fn is_drive(text: &str) -> bool {
    let is_size =
        text.strip_prefix('t').is_some_and(|n| !n.is_empty() && n.bytes().all(|b| b.is_ascii_digit()));
    is_size || matches!(text, "cross-head" | "crosshead" | "hexagon" | "slotted" | "torx")
}

fn is_particle(text: &str) -> bool {
    const PARTICLES: &[&str] = &[
        "apart",
        "aside",
        "away",
        "back",
        "beneath",
        "clear",
        "down",
        "dead",
        "home",
        "in",
        "into",
        "off",
        "on",
        "open",
        "out",
        "over",
        "shut",
        "through",
        "to",
        "under",
        "underneath",
        "up",
        "zero",
        "closed",
        "from",
        "across",
        "free",
        "loose",
        "slack",
        "0",
    ];
    PARTICLES.contains(&text)
}

fn is_adverb(text: &str) -> bool {
    const ADVERBS: &[&str] =
        &["anticlockwise", "clockwise", "crosswise", "crossways", "diagonally", "overnight", "together"];
    ADVERBS.contains(&text) || (text.ends_with("ly") && !matches!(text, "assembly" | "supply"))
}
