//! Proofs in words: what shows that a section is at zero.

use super::clause::Clause;
use super::reader::{Proposal, Reader};
use super::section::reading;
use crate::model::{Reading, Verb};
use crate::simulate::{KindRow, kind_row};
use crate::units::{Quantity as Kind, Range};

impl Reader<'_> {
    /// A proof with the readings that the words give; with some of the demanded ones it is only read.
    pub(super) fn prove(&self, clause: &Clause, mut proposal: Proposal) -> Vec<Proposal> {
        let at = self.mentions_in(clause).find(|mention| self.preposition(mention) == Some("at"));
        let at = at.and_then(|mention| self.connection(mention)).map(|connection| connection.id.clone());
        let row = proposal.action.on.first().and_then(|id| self.kind_of(id)).and_then(kind_row);
        let readings = self.proof_readings(clause, row);
        let shown_elsewhere = matches!(self.text(clause.verb()), "reads" | "read" | "reading" | "shows");
        let n_demanded = row.map_or(0, |row| row.proof.len());
        if shown_elsewhere && readings.len() < n_demanded {
            proposal.action.verb = Verb::Read;
        }
        proposal.action.at = at;
        proposal.action.readings = readings;
        vec![proposal]
    }

    /// The readings of a proof in words: the pairs of a supply and the known source, or what the gauge shows.
    fn proof_readings(&self, clause: &Clause, row: Option<&KindRow>) -> Vec<Reading> {
        let limits = |kind: Kind| self.quantities(clause).find_map(|quantity| quantity.range(kind).cloned());
        let volts = limits(Kind::Voltage);
        let of_pairs = row.map(|row| self.readings_of_pairs(clause, row, volts.as_ref())).unwrap_or_default();
        if !of_pairs.is_empty() {
            return of_pairs;
        }
        if let Some(volts) = volts {
            return vec![reading("voltage", Some(volts))];
        }
        let mut readings: Vec<Reading> =
            limits(Kind::Pressure).into_iter().map(|bar| reading("pressure", Some(bar))).collect();
        if self.has(clause, &["flow"]) && self.has(clause, &["no"]) {
            readings.push(Reading { seen: "no flow".to_owned(), ..reading("drain", None) });
        }
        readings.extend(limits(Kind::Temperature).map(|hot| reading("temperature", Some(hot))));
        readings
    }

    /// Those readings of a kind's proof that the words name: pairs of conductors, and the tester on a known
    /// source before them and again behind them. None, if the words name no pair and no source.
    fn readings_of_pairs(&self, clause: &Clause, row: &KindRow, volts: Option<&Range>) -> Vec<Reading> {
        let all = self.has(clause, &["pairs"]);
        let source = self.has(clause, &["known", "proving"]);
        let again = source && self.has(clause, &["afterwards", "after", "again", "twice"]);
        let mut readings = Vec::new();
        for asked in row.proof {
            let is_said = match asked.limits {
                None if asked.what.ends_with("again") => again,
                None => source && asked.what.contains("known source"),
                Some(_) => {
                    asked.what.split_once(" to ").is_some_and(|pair| all || self.says_pair(clause, pair))
                }
            };
            if !is_said {
                continue;
            }
            let own = asked.range();
            let limits = own.as_ref().and(volts).or(own.as_ref()).cloned();
            // Where figures are typed, their source is the writer's to say.
            let source = if own.is_some() && volts.is_none() { asked.source } else { "" };
            readings.push(Reading {
                seen: asked.seen.to_owned(),
                source: source.to_owned(),
                ..reading(asked.what, limits)
            });
        }
        readings
    }

    /// Whether the words name a pair of conductors: "L to N", "live to neutral", "L-N".
    fn says_pair(&self, clause: &Clause, (one, other): (&str, &str)) -> bool {
        (clause.from..clause.to).any(|i| {
            let joined = self.text(i).split_once(['-', '/']);
            let apart = || {
                let between = matches!(self.text(i + 1), "to" | "and" | "against");
                between.then(|| (self.text(i), self.text(i + 2)))
            };
            joined.or_else(apart).is_some_and(|(a, b)| {
                (is_conductor(a, one) && is_conductor(b, other))
                    || (is_conductor(a, other) && is_conductor(b, one))
            })
        })
    }
}

/// Whether a word names a conductor that the tables call by its letter.
fn is_conductor(word: &str, letter: &str) -> bool {
    let names: &[&str] = match letter {
        "L" => &["l", "live", "line", "phase"],
        "N" => &["n", "neutral"],
        "E" => &["e", "earth", "ground", "pe"],
        _ => &[],
    };
    names.contains(&word)
}
