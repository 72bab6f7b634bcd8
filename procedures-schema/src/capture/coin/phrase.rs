//! Noun phrases of a clause: what the words name, how many of it, and which word leads to it.

use super::super::clause::Clause;
use super::super::mention::{COLOURS, is_plural, singular};
use super::super::quantity::{Figures, Quantity};
use super::super::reader::Reader;
use super::colours::colours;
use super::label::{Labels, is_code, is_label, is_pins, labels_at};
use super::nouns::{Noun, noun};
use super::one_more::{is_bare_item, names_one_more};
use super::particles::{is_adverb, is_drive, is_particle};
use super::phrase_words::{ADJECTIVES, ARTICLES, CONDITIONS, ENDS, LET, PREPOSITIONS};
use super::shared::{join_shared_heads, with_media};
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
    /// The token of the head, or of the label behind it.
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
    /// The letter or number behind the name, as it is written: "valve *A*".
    pub(in crate::capture) label: Option<String>,
}

impl Phrase {
    /// The name of what it says, in the singular.
    pub(in crate::capture) fn name(&self) -> String {
        self.labelled(self.stem().join(" "))
    }

    /// A name with the label of this phrase.
    pub(in crate::capture) fn labelled(&self, name: String) -> String {
        self.label.iter().fold(name, |name, label| format!("{name} {label}"))
    }

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
        self.words.last().is_some_and(|head| is_plural(head))
    }

    /// Whether it stands behind one of these prepositions.
    pub(in crate::capture) fn is_after(&self, leads: &[&str]) -> bool {
        matches!(&self.lead, Lead::After(lead) if leads.contains(&lead.as_str()))
    }
}

/// The noun phrases behind the verb of a clause, and those before it behind "with" ("with the vent open, drain
/// it"); all before it where it ends its sentence, as in "the valve must be closed".
pub(super) fn cut(line: &Reader<'_>, clause: &Clause) -> Vec<Phrase> {
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

/// The noun phrases of a stretch in which no verb is read.
pub(in crate::capture) fn phrases_between(line: &Reader<'_>, from: usize, to: usize) -> Vec<Phrase> {
    let clause = Clause { means: Vec::new(), phrase: Vec::new(), from, to, is_before: false };
    Chunker::new(line, &clause).run(from, to)
}

/// Cuts the words of a clause into noun phrases.
pub(super) struct Chunker<'l, 'w> {
    pub(super) line: &'l Reader<'w>,
    clause: &'l Clause,
    pub(super) found: Vec<Phrase>,
    pub(super) lead: Lead,
    amount: Option<Amount>,
    part: Option<Amount>,
    pub(super) start: Option<usize>,
    /// Whether "and" or a comma stands before without an article.
    bare: bool,
    pub(super) words: Vec<usize>,
    /// Whether nothing is named up to the next comma.
    skips: bool,
    /// The token behind a verb that has been taken in with the word before it.
    taken: usize,
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
            taken: 0,
        }
    }

    fn run(mut self, from: usize, to: usize) -> Vec<Phrase> {
        let (mut before_bracket, mut behind_colours) = (None, from);
        for i in from..to {
            if i < behind_colours.max(self.taken) {
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
            if i > from && self.line.is_added(i) {
                // "Leads + plug back on."
                self.close(true);
                self.bare = true;
            }
            if before != Break::None && i > from {
                self.close(true);
                self.skips = false;
                let goes_on = before == Break::Comma
                    && (matches!(self.line.text(i), "and" | "the" | "then")
                        || self.is_labelled(i)
                        || self.is_next_code(i)
                        || (self.is_listed_bare() && is_bare_item(self.line, i, to)));
                if !goes_on {
                    self.lead = Lead::Beside;
                } else if self.begins_anew(i) {
                    self.lead = Lead::Direct;
                }
            }
            if self.line.is_told(self.clause, i) {
                self.close(true);
            }
            if let Some((lead, n)) = self.leads_from_name(i) {
                self.close(true);
                self.lead = lead.unwrap_or_else(|| self.lead.clone());
                self.taken = i + n;
                continue;
            }
            if CONDITIONS.contains(&self.line.text(i)) {
                self.close(true);
                self.skips = true;
            }
            if !self.skips && !self.line.is_told(self.clause, i) {
                self.token(i);
            }
        }
        self.close(true);
        join_shared_heads(with_media(self.found))
    }

    /// "The lid, *fan* and board", "the plugs of the fan, *pump* and board".
    fn is_listed_bare(&self) -> bool {
        self.lead == Lead::Direct || self.lead == Lead::After("of".to_owned())
    }

    /// Takes labels in that stand behind the words of the open phrase: a phrase for each.
    fn label(&mut self, Labels { each, behind, within }: Labels) {
        if within {
            self.words.extend(each.iter().map(|(at, _)| *at));
            self.taken = behind;
            return;
        }
        self.close(true);
        let Some(mut named) = self.found.pop() else { return };
        if let Some(head) = named.words.last_mut() {
            *head = singular(head);
        }
        if each.len() > 1 {
            named.amount = None;
        }
        for (n, (at, label)) in each.into_iter().enumerate() {
            let from = if n == 0 { named.from } else { at };
            let start = if n == 0 { named.start } else { at };
            self.found.push(Phrase { from, head: at, start, label: Some(label), ..named.clone() });
        }
        self.taken = behind;
    }

    /// Takes a token in.
    fn token(&mut self, i: usize) {
        if let Some(labels) = labels_at(self.line, self.clause, &self.words, i) {
            return self.label(labels);
        }
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
        let of_idiom = i != self.clause.verb() && self.is_of_idiom(i, &text);
        if of_verb || of_idiom {
            self.close_at_particle(i, text);
        } else if matches!(text.as_str(), "one" | "ones") && self.is_adjective_alone() {
            // "The big one is the supply": what is told of it is no name either, up to the next comma.
            self.words.clear();
            (self.amount, self.part, self.start) = (None, None, None);
            self.skips = true;
        } else if matches!(text.as_str(), "µm" | "μm" | "micron" | "microns") && self.words.is_empty() {
            // "A new 40 µm filter."
            self.amount = None;
        } else if text == "ones" && self.words.is_empty() {
            // "Put on four new *ones*": of what, is said elsewhere.
            (self.amount, self.part, self.start) = (None, None, None);
        } else if text == "x" && self.amount.is_some() && self.words.is_empty() {
            // "3 x M4 screws".
            self.start.get_or_insert(i);
        } else if measured || ends_verb {
            self.close(true);
        } else if text == "and" {
            self.close(true);
            self.bare = true;
            if self.acts_on_one_more(i) {
                self.lead = Lead::Direct;
            }
        } else if text == "of" && self.words.is_empty() && self.amount.is_some() {
            self.part = self.amount.take();
        } else if text == "of" && self.is_several() {
            // "The *pair of* electrodes."
            self.words.clear();
        } else if self.holds_another(i) {
            // "The screws *holding the* plate" are those of the plate.
            self.close(true);
            self.lead = Lead::After("of".to_owned());
        } else if PREPOSITIONS.contains(&text.as_str()) || self.leads_round(i) {
            self.close(true);
            let joins = text == "with"
                && i.checked_sub(1).is_some_and(|i| matches!(self.line.text(i), "along" | "together"));
            self.lead = if joins { Lead::Direct } else { Lead::After(text) };
            self.bare = false;
        } else if ARTICLES.contains(&text.as_str())
            || amount.is_some()
            || (text == "her" && !self.line.is_pronoun(i))
        {
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

    /// "Have a *look* at the seal": of the verb, and no thing.
    fn is_of_idiom(&self, i: usize, text: &str) -> bool {
        let names_nothing = || {
            let word = [singular(text)];
            matches!(noun(&word), Noun::Nothing | Noun::Unknown)
        };
        // "The *locking* cap" is what locks.
        let locks = matches!(text, "locking" | "lockout")
            && matches!(self.line.text(i + 1), "cap" | "clamp" | "clip" | "cover" | "device" | "kit");
        // "Open the *bleed* screw."
        let bleeds = text == "bleed"
            && matches!(self.line.text(i + 1), "cock" | "nipple" | "plug" | "point" | "screw" | "valve");
        // "Disconnect the plug of the *supply fan*" cuts off no supply.
        let names_more = text == "supply"
            && self.line.tokens.get(i + 1).is_some_and(|next| next.before == Break::None)
            && !matches!(noun(&[singular(self.line.text(i + 1))]), Noun::Nothing | Noun::Unknown);
        self.words.is_empty()
            && self.clause.phrase.contains(&i)
            && names_nothing()
            && !(locks || bleeds || names_more)
    }

    /// Ends the open phrase at a word of the verb, which may lead to a place.
    fn close_at_particle(&mut self, i: usize, text: String) {
        self.close(true);
        // "Lift *it* off its hooks", "lift *the other one* off its hooks": the object stands before.
        let is_one = |at: usize| matches!(self.line.text(at), "one" | "ones");
        let has_object = !self.found.is_empty()
            || self.line.object_pronoun(self.clause).is_some_and(|it| it < i)
            || (self.clause.verb() + 1..i).any(is_one);
        // "Put a tray *beneath and* rags over it": what is joined is placed too.
        let leads_on = self.line.text(i + 1) != "and";
        if has_object && leads_on && PREPOSITIONS.contains(&text.as_str()) {
            self.lead = Lead::After(text);
        }
    }

    /// Whether what stands behind "and" is acted on as well, whatever leads to what stands before it.
    fn acts_on_one_more(&self, and: usize) -> bool {
        self.counts_on(and)
            || names_one_more(self.line, &self.lead, &self.found, and)
            || self.names_owner_again(and)
            || self.shuts_one_more(self.clause, and)
    }

    /// "The nut at the valve *and the G 1/2 nut* at the cock": a size behind "and" begins another object.
    fn counts_on(&self, and: usize) -> bool {
        let sized =
            |quantity: &Quantity| quantity.from == and + 2 && matches!(quantity.figures, Figures::Size(_));
        ARTICLES.contains(&self.line.text(and + 1)) && self.line.quantities(self.clause).any(sized)
    }

    /// Takes in a word that belongs to the open phrase, begins one, or ends it.
    fn word(&mut self, i: usize, text: &str) {
        // "Wipe the seats *clean*", "lift *her* out".
        let joined = self.line.tokens.get(i + 1).is_some_and(|next| next.before == Break::None);
        let is_noun = noun(&[singular(self.line.text(i + 1))]);
        // "The water *level* sensor."
        let goes_on = joined && !matches!(is_noun, Noun::Nothing | Noun::Unknown);
        let tells_how =
            !self.words.is_empty() && matches!(text, "clean" | "dry" | "level" | "square") && !goes_on;
        // "The gauge *can now be* taken off", not "the oil can".
        let is_modal =
            text == "can" && matches!(self.line.text(i + 1), "also" | "be" | "not" | "now" | "only" | "then");
        // "The *upstream* valve", not "the cap *upstream of* the sensor".
        let names = self.words.is_empty()
            && (matches!(text, "downstream" | "upstream")
                || (text == "live"
                    && matches!(
                        self.line.text(i + 1),
                        "cable" | "conductor" | "core" | "lead" | "terminal" | "wire"
                    )));
        if (ENDS.contains(&text) && !names)
            || is_modal
            || tells_how
            || self.line.is_pronoun(i)
            || is_adverb(text)
            || (text.contains('\'') && !self.is_possessive(i))
            || (text == "right" && is_particle(self.line.text(i + 1)))
        {
            self.close(!matches!(text, "it" | "them" | "her" | "him") && !is_adverb(text));
        } else if super::super::proof::is_pair(text) {
            self.close(true);
        } else if text.starts_with(|c: char| c.is_alphabetic()) {
            self.start.get_or_insert(i);
            self.words.push(i);
        } else if !(is_pins(text) && self.is_colour_alone()) {
            self.close(true);
        }
    }

    /// "The *fan's* belt", not "the pump's running".
    fn is_possessive(&self, i: usize) -> bool {
        const NO_OWNERS: &[&str] =
            &["he's", "here's", "it's", "let's", "she's", "that's", "there's", "what's"];
        let text = self.line.text(i);
        let joined = |i: &usize| self.line.tokens.get(*i).is_some_and(|token| token.before == Break::None);
        let is_noun = |i: usize| {
            let word = self.line.text(i);
            !matches!(noun(&[singular(word)]), Noun::Nothing | Noun::Unknown) || super::nouns::is_place(word)
        };
        // "The boiler's *heat exchanger*."
        let is_owner = || (i + 1..=i + 2).take_while(joined).any(is_noun);
        text.ends_with("'s") && !NO_OWNERS.contains(&text) && is_owner()
    }

    /// "CN4, *CN7* and CN11".
    fn is_next_code(&self, i: usize) -> bool {
        let is_marked = |phrase: &Phrase| matches!(phrase.words.as_slice(), [only] if is_code(only));
        is_code(self.line.text(i)) && self.found.last().is_some_and(is_marked)
    }

    /// "Valve A, *valve B* and valve C".
    fn is_labelled(&self, i: usize) -> bool {
        let measured =
            self.line.quantities(self.clause).any(|quantity| (quantity.from..quantity.to).contains(&(i + 1)));
        let is_noun = !matches!(noun(&[singular(self.line.text(i))]), Noun::Nothing | Noun::Unknown);
        is_noun && !measured && is_label(self.line.written(i + 1))
    }

    /// "The *black* 2-pin plug": a colour says of which kind, and names nothing.
    fn is_colour_alone(&self) -> bool {
        let [only] = self.words.as_slice() else { return false };
        COLOURS.contains(&self.line.text(*only))
    }

    /// Whether the open phrase is only a word for several, or for so much of something.
    fn is_several(&self) -> bool {
        let [only] = self.words.as_slice() else { return false };
        matches!(self.line.text(*only), "couple" | "length" | "pair" | "piece" | "set")
    }

    /// Whether the open phrase is one word behind an article that names nothing known.
    fn is_adjective_alone(&self) -> bool {
        let [only] = self.words.as_slice() else { return false };
        let word = super::super::mention::singular(self.line.text(*only));
        self.start.is_some_and(|start| start < *only) && noun(&[word]) == Noun::Unknown
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
            let word = |i: &usize| self.line.text(*i).trim_end_matches("'s").to_owned();
            let words = kept.iter().flatten().map(word).collect();
            let start = self.start.unwrap_or(from);
            // "*Both* the flow valve and the return valve": each of them is one.
            let is_pair = self.line.text(start) == "both" && !is_plural(self.line.text(head));
            let amount = self.amount.filter(|_| !is_pair);
            let (lead, part) = (self.lead.clone(), self.part);
            self.found.push(Phrase { from, head, words, lead, amount, part, start, label: None });
            (self.amount, self.part, self.start) = (None, None, None);
            self.bare = false;
        } else if kept.is_none() {
            (self.amount, self.part, self.start) = (None, None, None);
        }
    }
}
