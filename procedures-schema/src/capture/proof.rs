//! Proofs in words: what shows that a section is at zero.

use super::clause::Clause;
use super::reader::{Proposal, Reader};
use super::section::reading;
use crate::lexicon::{Break, Token};
use crate::model::{Reading, Verb};
use crate::simulate::{KindRow, kind_row};
use crate::units::{Quantity as Kind, Range, Unit};

impl Reader<'_> {
    /// A proof with the readings that the words give; with some of the demanded ones it is only read.
    pub(super) fn prove(&self, clause: &Clause, mut proposal: Proposal) -> Vec<Proposal> {
        let at = self.mentions_in(clause).find(|mention| self.preposition(mention) == Some("at"));
        let at = at.and_then(|mention| self.connection(mention)).map(|connection| connection.id.clone());
        let row = proposal.action.on.first().and_then(|id| self.kind_of(id)).and_then(kind_row);
        let readings = self.proof_readings(clause, row);
        let shown_elsewhere = matches!(self.text(clause.verb()), "reads" | "read" | "reading" | "shows");
        let n_demanded = row.map_or(0, |row| row.proof.len());
        let by_gauge = row.and_then(|row| self.shown_by_gauge(&proposal, row, &readings));
        if by_gauge.is_none() && shown_elsewhere && readings.len() < n_demanded {
            proposal.action.verb = Verb::Read;
        }
        proposal.action.at = at;
        proposal.action.readings = by_gauge.unwrap_or(readings);
        vec![proposal]
    }

    /// "Open the drain until the gauge reads 0 to 0.1 bar": what the gauge shows of what the line has just let out, where
    /// the gauge is all that is measured of the kind. What it has to show beside that is found missing.
    fn shown_by_gauge(
        &self,
        proposal: &Proposal,
        row: &KindRow,
        readings: &[Reading],
    ) -> Option<Vec<Reading>> {
        const NOTHING: f64 = 0.2;
        let mut measured = row.proof.iter().filter(|asked| asked.limits.is_some());
        let gauge = measured.next().filter(|_| measured.next().is_none())?;
        let asks_bar = gauge.range().is_some_and(|range| range.unit == Unit::Bar);
        let last = self.reading().actions.last()?;
        let let_out = last.verb == Verb::Release && last.on == proposal.action.on;
        let [only] = readings else { return None };
        let limits = only.limits.as_ref().filter(|limits| limits.unit == Unit::Bar)?;
        let is_zero = limits.max.as_ref().is_some_and(|most| most.value() <= NOTHING);
        (asks_bar && let_out && is_zero).then(|| vec![reading(gauge.what, Some(limits.clone()))])
    }

    /// The readings of a proof in words: the pairs of a supply and the known source, or what the gauge shows.
    fn proof_readings(&self, clause: &Clause, row: Option<&KindRow>) -> Vec<Reading> {
        let limits = |kind: Kind| self.quantities(clause).find_map(|quantity| quantity.range(kind).cloned());
        let volts = limits(Kind::Voltage);
        let of_pairs = row.map(|row| self.readings_of_pairs(clause, row)).unwrap_or_default();
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
    /// source before them and again behind them. None, if the words name no pair, or give pairs different limits.
    /// What is not plainly said is left out: too little said is found and told, too much would be believed.
    fn readings_of_pairs(&self, clause: &Clause, row: &KindRow) -> Vec<Reading> {
        let pairs = (clause.from..clause.to).find(|i| self.text(*i) == "pairs" || self.pair_at(*i).is_some());
        let Some(first_pair) = pairs else { return Vec::new() };
        let given = self.volts_of_pairs(clause);
        if given.windows(2).any(|two| two.first() != two.last()) {
            return Vec::new();
        }
        let volts = given.first().copied();
        let all = self.has(clause, &["pairs"]);
        let is_source = |i: &usize| matches!(self.text(*i), "known" | "proving");
        let words = |says: &[&str]| {
            (clause.from..clause.to).any(|i| says.contains(&self.text(i)) && self.is_of_source(clause, i))
        };
        let both = (clause.from..clause.to).any(|i| {
            self.text(i) == "before"
                && self.text(i + 1) == "and"
                && self.text(i + 2) == "after"
                && self.is_of_source(clause, i)
        });
        // "Prove dead at the terminals, tester proved before and after."
        let both = both || self.tester_proved_both_times(clause);
        let before =
            both || words(&["first", "beforehand"]) || (clause.from..first_pair).any(|i| is_source(&i));
        let before = before || self.testers.iter().any(|tester| *tester < first_pair);
        let again = both
            || self.testers.iter().any(|tester| *tester > first_pair)
            || words(&["again", "afterwards", "twice"])
            || (first_pair..clause.to).any(|i| is_source(&i));
        let mut readings = Vec::new();
        for asked in row.proof {
            let is_said = match asked.limits {
                None if asked.what.ends_with("again") => again,
                None => before && asked.what.contains("known source"),
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

    /// Whether the words say of a tester that it is proved "before and after".
    fn tester_proved_both_times(&self, clause: &Clause) -> bool {
        const TESTERS: &[&str] = &["indicator", "multimeter", "source", "tester", "unit", "voltmeter"];
        let both = (clause.from..clause.to)
            .find(|i| [0, 1, 2].map(|n| self.text(i + n)) == ["before", "and", "after"]);
        both.is_some_and(|both| {
            let near = both.saturating_sub(4).max(clause.from)..both;
            near.into_iter().any(|i| TESTERS.contains(&self.text(i)))
        })
    }

    /// The limits that the words give the pairs; those of the known source are not among them.
    fn volts_of_pairs(&self, clause: &Clause) -> Vec<&Range> {
        // "Under 25 V *DC*" is none of live, neutral and earth.
        let is_direct = |to: usize| matches!(self.text(to), "d.c" | "dc");
        let of_pairs = self
            .quantities(clause)
            .filter(|quantity| !self.is_of_source(clause, quantity.from) && !is_direct(quantity.to));
        of_pairs.filter_map(|quantity| quantity.range(Kind::Voltage)).collect()
    }

    /// Whether a word speaks of the known source: it is named last before the word, and no pair since.
    fn is_of_source(&self, clause: &Clause, at: usize) -> bool {
        for i in (clause.from..at).rev() {
            if matches!(self.text(i), "known" | "proving" | "source") {
                return true;
            }
            if self.text(i) == "pairs" || self.pair_at(i).is_some() {
                return false;
            }
        }
        false
    }

    /// The pair of conductors whose name begins at a token: "L to N", "live to neutral", "L-N". Not "L and N",
    /// which can be the beginning of "L and N to E".
    fn pair_at(&self, i: usize) -> Option<(&str, &str)> {
        let joined = self.text(i).split_once(['-', '/']);
        let parted = matches!(self.text(i + 1), "to" | "against")
            || (matches!(self.text(i + 1), "and") && self.is_first_between(i));
        let apart = parted.then(|| (self.text(i), self.text(i + 2)));
        joined.or(apart).filter(|(one, other)| is_known(one) && is_known(other))
    }

    /// Whether a conductor is the first of a pair behind "between": "between live and neutral, live and earth".
    fn is_first_between(&self, i: usize) -> bool {
        let Some(between) = (0..i).rev().find(|j| self.text(*j) == "between") else { return false };
        let run = between + 1..i;
        let named = |j: &usize| is_known(self.text(*j));
        run.clone().all(|j| named(&j) || matches!(self.text(j), "and" | "the" | "then"))
            && run.filter(named).count() % 2 == 0
    }

    /// Whether a clause that tests names pairs of conductors that are not fed here: that proves them dead.
    pub(super) fn tests_dead(&self, clause: &Clause) -> bool {
        if self.has(clause, &["continuity", "insulation", "megohm", "resistance"]) {
            return false;
        }
        let names_pair = (clause.from..clause.to).any(|i| self.pair_at(i).is_some());
        let is_dead = |id: &crate::model::Id| self.here.fed.get(id) == Some(&false);
        let electrical =
            self.map.circuits.iter().filter(|circuit| super::section::is_electrical(&circuit.kind));
        let dead = electrical.flat_map(|circuit| &circuit.sections).any(|section| is_dead(&section.id));
        names_pair && dead && !self.volts_of_pairs(clause).iter().any(|range| is_live(range))
    }

    /// Where the words say that the tester itself is proved: "check the tester on the proving unit". No clause
    /// begins there, for it is no test of the appliance.
    pub(super) fn find_testers(&mut self) {
        self.testers = testers(&self.tokens);
    }

    /// Whether the words name a pair of conductors, in either order.
    fn says_pair(&self, clause: &Clause, (one, other): (&str, &str)) -> bool {
        (clause.from..clause.to).filter_map(|i| self.pair_at(i)).any(|(a, b)| {
            (is_conductor(a, one) && is_conductor(b, other))
                || (is_conductor(a, other) && is_conductor(b, one))
        })
    }
}

/// Where words say that the tester itself is proved.
pub(super) fn testers(tokens: &[Token<'_>]) -> Vec<usize> {
    const PROVING: &[&str] = &["check", "prov", "re-prov", "reprov", "test", "tried", "tries", "try"];
    const TESTERS: &[&str] = &["indicator", "multimeter", "tester", "voltmeter"];
    const BETWEEN: &[&str] = &["the", "two-pole", "voltage", "your"];
    let text = |i: usize| tokens.get(i).map_or("", |token| &*token.text);
    let is_tester = |i: &usize| {
        let Some(end) = (i + 1..tokens.len()).find(|j| !BETWEEN.contains(&text(*j))) else {
            return false;
        };
        let begins = PROVING.iter().any(|stem| text(*i).starts_with(stem));
        // "Prove tester": a tester that is only named proves nothing, an order needs no article.
        let is_order = end > i + 1 || tokens.get(*i).is_none_or(|token| token.before != Break::None);
        begins && is_order && TESTERS.contains(&text(end))
    };
    (0..tokens.len()).filter(is_tester).collect()
}

/// Whether a word names a conductor, or a pair of them: "live", "L-N".
pub(super) fn is_conductor_word(word: &str) -> bool {
    is_known(word) || is_pair(word)
}

/// Whether a word names a pair of conductors: "L-N".
pub(super) fn is_pair(word: &str) -> bool {
    word.split_once(['-', '/']).is_some_and(|(one, other)| is_known(one) && is_known(other))
}

/// Whether a word names a conductor.
fn is_known(word: &str) -> bool {
    ["L", "N", "E"].iter().any(|letter| is_conductor(word, letter))
}

/// Whether limits accept what is no touch voltage.
fn is_live(range: &Range) -> bool {
    const MOST_DEAD: f64 = 50.0;
    let most = range.max.as_ref().or(range.min.as_ref());
    most.is_some_and(|figure| figure.value() > MOST_DEAD)
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
