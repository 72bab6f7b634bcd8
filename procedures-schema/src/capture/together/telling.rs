//! A reading in its parts: figures, times, words, and the things that they name, in the state where it stands.

use super::super::leading::limits;
use super::super::mention::{Mention, Names};
use super::super::quantity::{Figures, quantities};
use crate::lexicon::{Break, Lexicon, Token, tokens};
use crate::model::{ApplianceMap, Circuit, CircuitKind, Id, Procedure, ThingKind};
use crate::simulate::{
    ApplianceCell, ConnectionState, KindRow, Place, SectionState, SupplyCell, Trace, kind_row,
};
use crate::units::{Measured, Quantity, Range, Unit, convert};

/// Words that deny what follows.
const DENIALS: &[&str] = &["no", "none", "nothing", "without"];

/// A reading where it stands.
pub(super) struct Telling<'a> {
    pub(super) document: &'a Procedure,
    pub(super) trace: &'a Trace,
    pub(super) at: usize,
    /// The limits that were read from its figures.
    pub(super) limits: Option<&'a Range>,
    /// What is read, cut at commas and where something is denied.
    pub(super) parts: Vec<Part>,
}

/// A part of what is read.
pub(super) struct Part {
    /// As it is written.
    pub(super) text: String,
    /// Its words in lower case.
    pub(super) words: Vec<String>,
    /// Its figures with their units, but times.
    pub(super) figures: Vec<Range>,
    /// How long, in seconds, and as it is written.
    pub(super) time: Option<(f64, String)>,
    /// What it names.
    pub(super) mentions: Vec<Mention>,
}

impl Part {
    pub(super) fn has(&self, words: &[&str]) -> bool {
        self.words.iter().any(|word| words.contains(&word.as_str()))
    }

    /// Whether it denies one of these: "no rise", "nothing from the drain".
    pub(super) fn denies(&self, words: &[&str]) -> bool {
        self.has(DENIALS) && self.has(words)
    }

    /// Whether a time that it gives is at least so long; true if it gives none.
    pub(super) fn lasts(&self, seconds: f64) -> bool {
        self.time.as_ref().is_none_or(|(given, _)| *given >= seconds)
    }
}

impl<'a> Telling<'a> {
    pub(super) fn of(
        document: &'a Procedure,
        trace: &'a Trace,
        at: usize,
        action: &'a crate::model::Action,
    ) -> Option<Self> {
        let reading = action.readings.first()?;
        let mut parts = parts(&reading.what, &document.map)?;
        // Where nothing but a time is said, it was taken for the limits.
        let limits = reading.limits.as_ref();
        let time = limits.filter(|range| range.unit.quantity() == Quantity::Time);
        let time = time.and_then(|range| Some(Measured::new(range.min.clone()?, range.unit.clone())));
        let lasting = parts.iter().position(|part| part.has(DENIALS)).unwrap_or(0);
        if let (Some(time), Some(part)) = (&time, parts.get_mut(lasting)) {
            part.time = seconds(time).map(|seconds| (seconds, time.to_string()));
        }
        Some(Self { document, trace, at, limits: limits.filter(|_| time.is_none()), parts })
    }

    pub(super) fn map(&self) -> &'a ApplianceMap {
        &self.document.map
    }

    pub(super) fn place(&self) -> Place {
        Place::after(self.at)
    }

    /// All figures: the limits, and those that are left in the words.
    pub(super) fn figures(&self) -> impl Iterator<Item = &Range> {
        self.limits.into_iter().chain(self.parts.iter().flat_map(|part| &part.figures))
    }

    /// The figures of one sort.
    pub(super) fn figures_of(&self, quantity: Quantity) -> impl Iterator<Item = &Range> {
        self.figures().filter(move |range| range.unit.quantity() == quantity)
    }

    pub(super) fn says(&self, words: &[&str]) -> bool {
        self.parts.iter().any(|part| part.has(words))
    }

    pub(super) fn is_running(&self) -> bool {
        self.trace.at(&ApplianceCell, self.place()).is_some_and(|state| state.running.is_some())
    }

    pub(super) fn section(&self, id: &Id) -> Option<&SectionState> {
        self.trace.at(&self.trace.plant().section_named(id)?, self.place())
    }

    pub(super) fn is_fed(&self, section: &Id) -> bool {
        let cell = self.trace.plant().section_named(section).map(SupplyCell);
        cell.and_then(|cell| self.trace.at(&cell, self.place())).is_none_or(|state| state.fed)
    }

    pub(super) fn connection(&self, id: &Id) -> Option<&ConnectionState> {
        self.trace.at(&self.trace.plant().connection_named(id)?, self.place())
    }

    /// The circuits that a part names, by themselves, by what belongs to them, or by their medium.
    pub(super) fn circuits_named(&self, part: &Part) -> Vec<&'a Circuit> {
        let mut named: Vec<&Circuit> = Vec::new();
        let mentioned = part.mentions.iter().filter(|mention| mention.candidates.len() == 1);
        for candidate in mentioned.flat_map(|mention| &mention.candidates) {
            named.extend(self.circuit_around(&candidate.id, candidate.kind));
        }
        if named.is_empty() {
            let kind = super::super::coin::named_kind(&part.words, false).or_else(|| {
                let domestic = part.has(&["domestic", "tap", "taps"]);
                domestic.then_some(CircuitKind::DomesticWater)
            });
            named.extend(self.map().circuits.iter().filter(|circuit| Some(&circuit.kind) == kind.as_ref()));
        }
        named.dedup_by_key(|circuit| &circuit.id);
        named
    }

    /// The circuit that a thing is, belongs to or sits on.
    fn circuit_around(&self, id: &Id, kind: ThingKind) -> Option<&'a Circuit> {
        let map = self.map();
        let of_section = |section: &Id| {
            let mut circuits = map.circuits.iter();
            circuits.find(|circuit| circuit.sections.iter().any(|known| known.id == *section))
        };
        let of_joint = |joint: &Id| map.connection(joint)?.section.as_ref().and_then(of_section);
        match kind {
            ThingKind::Circuit => map.circuits.iter().find(|circuit| circuit.id == *id),
            ThingKind::Section => of_section(id),
            ThingKind::Connection => of_joint(id),
            ThingKind::Temporary => {
                let item = map.temporary.iter().find(|item| item.id == *id)?;
                item.on.as_ref().and_then(of_joint)
            }
            _ => None,
        }
    }
}

/// The row of a circuit.
pub(super) fn row(circuit: &Circuit) -> Option<&'static KindRow> {
    kind_row(&circuit.kind)
}

/// Whether limits accept nothing beyond what other limits do, in their unit.
pub(super) fn is_within(range: &Range, asked: &Range) -> bool {
    let value = |figure: &crate::units::Figure| convert(figure.value(), &range.unit, &asked.unit).ok();
    let most = asked.max.as_ref().map(crate::units::Figure::value);
    let highest = range.max.as_ref().and_then(value);
    let lowest = range.min.as_ref().map(value);
    let least = asked.min.as_ref().map(crate::units::Figure::value);
    let below = match (highest, most) {
        (Some(highest), Some(most)) => highest <= most,
        (None, Some(_)) => false,
        (_, None) => true,
    };
    // "Not above 0.2 mbar" has no lower end, and needs none.
    let above = match (lowest, least) {
        (Some(Some(lowest)), Some(least)) => lowest >= least,
        (Some(None), _) => false,
        (None, _) => range.max.is_some(),
        (_, None) => true,
    };
    below && above
}

/// A time in seconds.
fn seconds(time: &Measured) -> Option<f64> {
    convert(time.value.value(), &time.unit, &Unit::Second).ok()
}

/// Cuts what is read into parts.
fn parts(what: &str, map: &ApplianceMap) -> Option<Vec<Part>> {
    let lexicon = Lexicon::for_language("en")?;
    let tokens = tokens(what);
    let found = quantities(what, &tokens, lexicon, &|_| false);
    let mentions = Names::of(map, &tokens).find(&tokens, |_| false);
    let begins = |i: usize, token: &Token<'_>| {
        token.before != Break::None
            || matches!(&*token.text, "no" | "nothing")
            || (i > 0 && matches!(&*token.text, "dry" | "tissue") && is_joining(&tokens, i))
    };
    let mut starts: Vec<usize> =
        tokens.iter().enumerate().filter(|(i, token)| begins(*i, token)).map(|(i, _)| i).collect();
    starts.retain(|i| *i > 0);
    starts.insert(0, 0);
    let ends = starts.iter().skip(1).copied().chain([tokens.len()]);
    let part = |(from, to): (usize, usize)| {
        let within = |at: usize| (from..to).contains(&at);
        let own = tokens.get(from..to).unwrap_or_default();
        let words: Vec<String> = own.iter().map(|token| token.text.to_string()).collect();
        let mut figures = Vec::new();
        let mut time = None;
        for quantity in found.iter().filter(|quantity| within(quantity.from)) {
            let Figures::Range(range) = &quantity.figures else { continue };
            match quantity.measured(Quantity::Time) {
                Some(measured) => time = seconds(&measured).map(|s| (s, measured.to_string())),
                None => figures.push(range.clone()),
            }
        }
        if time.is_none() && words.windows(2).any(|two| two == ["a", "minute"]) {
            time = Some((60.0, "60 s".to_owned()));
        }
        let span = own.first().zip(own.last()).map(|(one, last)| crate::model::Span(one.span.0, last.span.1));
        let text = span.map(|span| span.of(what).to_owned()).unwrap_or_default();
        // A figure that the words make something else of than a range says leaves all as it is.
        if !figures.is_empty() {
            figures = vec![limits(&text)?.range];
        }
        let mentions = mentions.iter().filter(|mention| within(mention.from)).cloned().collect();
        Some(Part { text, words, figures, time, mentions })
    };
    starts.iter().copied().zip(ends).map(part).collect()
}

/// Whether "and" or "with" stands before a token: "and tissue dry", "with dry tissue".
fn is_joining(tokens: &[Token<'_>], i: usize) -> bool {
    let before = i.checked_sub(1).and_then(|i| tokens.get(i));
    before.is_some_and(|before| matches!(&*before.text, "and" | "with"))
}
