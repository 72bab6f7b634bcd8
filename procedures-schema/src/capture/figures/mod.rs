//! Figures that the words of a step state of the connections its actions name: how many there are, which thread, which
//! width across flats, how tight, which seal.
//!
//! A figure that is mended in a sentence belongs to what the sentence once made. [`follow_words`] takes it over to the
//! map where the map says what the words said before, which nobody has then set otherwise, and no other step says
//! otherwise. Where it does not follow both stand: [`SaidOtherwise`] is the map as the words have it, so that the action
//! goes on being read, and [`differing`] tells what is to be decided.

mod as_said;
mod differ;
mod follow;
mod value;

pub use as_said::{SaidOtherwise, as_was, line_as_said};
pub use differ::{Differing, differing, take_words, write_value};
pub use follow::follow_words;
pub use value::Value;

use super::agreement::{Said, quantities_with};
use super::clause::Clause;
use super::coin::{Noun, Phrase, count, counted_thread, is_joint_each, noun, phrases, seal_said};
use super::here::Here;
use super::quantity::Figures;
use super::reader::Reader;
use crate::lexicon::{Amount, Lexicon};
use crate::model::{Action, ApplianceMap, Connection, Id, Span, Stage, ThingKind};
use crate::units::{Quantity as Kind, Unit};
use value::SealNamed;

/// What words state of a connection.
#[derive(Clone, Debug)]
struct Stated {
    thing: Id,
    value: Value,
    /// Where they say it; none for what is only understood, such as two where no number stands before "screws".
    span: Option<Span>,
    /// Whether the number may be a part of what there is.
    in_part: bool,
    /// Whether several of it are several joints.
    is_each: bool,
    /// Whether it is said of its seal, of which it then has the size.
    of_seal: bool,
}

/// The connections that actions name, each once.
fn named<'a>(actions: impl Iterator<Item = &'a Action>, map: &ApplianceMap) -> Vec<&'a Id> {
    let mut all: Vec<&Id> = Vec::new();
    for id in actions.flat_map(|action| &action.on) {
        if !all.contains(&id) && map.connection(id).is_some() {
            all.push(id);
        }
    }
    all
}

/// What words state of some connections. Of one of which they state two things that differ they state nothing.
fn stated(words: &str, named: &[&Id], map: &ApplianceMap, stage: &Stage) -> Vec<Stated> {
    let Some(lexicon) = Lexicon::for_language("en").filter(|_| !named.is_empty()) else { return Vec::new() };
    stated_in(&Reader::new(words, map, Here::unknown(), stage, lexicon), named, map)
}

/// As [`stated`], of words that were looked at.
fn stated_in(line: &Reader<'_>, named: &[&Id], map: &ApplianceMap) -> Vec<Stated> {
    let mut found: Vec<Stated> = Vec::new();
    let mut unclear: Vec<Id> = Vec::new();
    for clause in &line.clauses {
        let phrases = phrases(line, clause);
        for phrase in &*phrases {
            let said = Said::of_phrase(line, clause, phrase, &phrases, &line.mentions);
            let Some(connection) = only_named(line, phrase, &said, named, map) else { continue };
            for new in of_phrase(line, clause, phrase, &phrases, &said, connection) {
                note(&mut found, &mut unclear, new);
            }
        }
        for new in only_counted(line, clause, named, map) {
            note(&mut found, &mut unclear, new);
        }
    }
    found.retain(|stated| !unclear.contains(&stated.thing));
    found
}

/// Takes in what words state; of what is stated twice and differs it is noted that it is not clear.
fn note(found: &mut Vec<Stated>, unclear: &mut Vec<Id>, new: Stated) {
    let is_same = |old: &&mut Stated| old.thing == new.thing && old.value.is_sort_of(&new.value);
    match found.iter_mut().find(is_same) {
        None => found.push(new),
        Some(old) if old.span.is_none() => *old = new,
        Some(old) if new.span.is_some() && !old.value.agrees(&new.value) => unclear.push(new.thing),
        Some(_) => {}
    }
}

/// "Unscrew the bracket (3 x M4)": what is only counted and sized are the screws of the part that is named.
fn only_counted(line: &Reader<'_>, clause: &Clause, named: &[&Id], map: &ApplianceMap) -> Vec<Stated> {
    let Some(counted) = counted_thread(line, clause) else { return Vec::new() };
    let parts: Vec<&Id> =
        line.mentions_in(clause).flat_map(|mention| &mention.candidates).map(|one| &one.id).collect();
    let holds = |known: &&Connection| {
        let holds = known.joins.iter().any(|part| parts.contains(&part));
        named.contains(&&known.id) && !parts.contains(&&known.id) && holds
    };
    let mut screws = map.connections.iter().filter(holds);
    let (Some(screws), None) = (screws.next(), screws.next()) else { return Vec::new() };
    let one = |value: Value, span: Span| Stated {
        thing: screws.id.clone(),
        value,
        span: Some(span),
        in_part: false,
        is_each: false,
        of_seal: false,
    };
    let number = line.span(counted.at, counted.at + 1);
    vec![one(Value::Count(counted.n), number), one(Value::Thread(counted.thread), counted.span)]
}

/// The connection among some that a phrase names, if it can name only one of them.
fn only_named<'m>(
    line: &Reader<'_>,
    phrase: &Phrase,
    said: &Said,
    named: &[&Id],
    map: &'m ApplianceMap,
) -> Option<&'m Connection> {
    let within = line.mentions.iter().filter(|m| m.to == phrase.head + 1 && m.from <= phrase.from);
    let candidates = within.flat_map(|mention| &mention.candidates);
    let mut found: Vec<&Connection> = Vec::new();
    for one in candidates.filter(|one| one.kind == ThingKind::Connection && named.contains(&&one.id)) {
        let known = map.connection(&one.id).filter(|known| !said.is_of_another(map, known));
        if let Some(known) = known.filter(|known| found.iter().all(|other| other.id != known.id)) {
            found.push(known);
        }
    }
    match found.as_slice() {
        [only] => Some(only),
        _ => None,
    }
}

/// What a phrase and the figures beside it state of the connection that it names.
fn of_phrase(
    line: &Reader<'_>,
    clause: &Clause,
    phrase: &Phrase,
    phrases: &[Phrase],
    said: &Said,
    connection: &Connection,
) -> Vec<Stated> {
    let (in_part, is_each) = (said.may_be_in_part(connection), is_joint_each(phrase));
    let one = |value: Value, span: Option<Span>| Stated {
        thing: connection.id.clone(),
        value,
        span,
        in_part,
        is_each,
        of_seal: false,
    };
    let is_amount = |i: &usize| matches!(line.lexicon.amount(line.text(*i)), Some(Amount::Exactly(_)));
    let amount = (phrase.start..phrase.from).rev().find(is_amount).filter(|_| said.total().is_some());
    let understood = count(phrase.amount, phrase.part, phrase.plural());
    let total = said.total().unwrap_or(understood);
    let mut found = vec![one(Value::Count(total), amount.map(|i| line.span(i, i + 1)))];
    for quantity in quantities_with(line, clause, phrase, phrases) {
        let value = match &quantity.figures {
            Figures::Size(thread) => Some(Value::Thread(thread.clone())),
            Figures::Range(range) if range.unit == Unit::Millimetre => {
                quantity.measured(Kind::Length).map(Value::Flats)
            }
            Figures::Range(range) if range.unit.quantity() == Kind::Torque => {
                Some(Value::Torque(range.clone()))
            }
            Figures::Range(_) | Figures::Dimensions(_) => None,
        };
        let is_new = |value: &Value| found.iter().all(|known| !known.value.is_sort_of(value));
        if let Some(value) = value.filter(is_new) {
            found.push(one(value, Some(quantity.span)));
        }
    }
    if found.iter().all(|known| !matches!(known.value, Value::Thread(_))) {
        found.extend(
            size_of_seal(line, clause, phrases)
                .map(|(size, span)| Stated { of_seal: true, ..one(Value::Thread(size), Some(span)) }),
        );
    }
    if let Some(seal) = seal_said(line, clause, phrase, phrases).filter(|_| connection.seals.len() == 1) {
        found.push(one(Value::Seal(SealNamed { name: seal.name, measured: seal.measured }), None));
    }
    found
}

/// "Undo the union, washer 1 in": the size that is said of a seal is taken for the joint too.
fn size_of_seal(line: &Reader<'_>, clause: &Clause, phrases: &[Phrase]) -> Option<(String, Span)> {
    let seal = phrases.iter().find(|phrase| noun(&phrase.stem()) == Noun::Seal)?;
    quantities_with(line, clause, seal, phrases).find_map(|quantity| match &quantity.figures {
        Figures::Size(size) => Some((size.clone(), quantity.span)),
        Figures::Range(_) | Figures::Dimensions(_) => None,
    })
}
