//! Which test words speak of.

use super::clause::{Clause, SEEKING, WASHING};
use super::coin::{self, Lead, Noun, noun};
use super::mention::Mention;
use super::reader::Reader;
use super::section::{is_electrical, is_wet};
use crate::lexicon::Break;
use crate::model::{CircuitKind, Family, Id, Stage, TestKind, ThingKind, Verb};
use crate::units::Quantity as Kind;

/// Words that name a test by themselves, the telling ones first.
const NAMED: &[(&[&str], TestKind)] = &[
    (&["tightness", "soundness"], TestKind::Tightness),
    (&["insulation", "megohm", "megohmmeter"], TestKind::Insulation),
    (&["polarity"], TestKind::Polarity),
    (&["continuity", "ohmmeter"], TestKind::EarthContinuity),
    (&["analyse", "analysis", "co", "co2", "combustion"], TestKind::Combustion),
    (&["detector", "fluid", "soap", "soapy"], TestKind::LeakFluid),
    (&["rate"], TestKind::GasRate),
    (&["vacuum"], TestKind::VacuumHold),
    (&["nitrogen", "strength"], TestKind::PressureHold),
];

/// Words that ask for tightness.
pub(super) const LEAKS: &[&str] = &[
    "drip", "dripping", "drips", "leak", "leakage", "leaking", "leaks", "tight", "tissue", "weep", "weeping",
    "weeps",
];

/// Words that ask whether something works.
const WORKS: &[&str] = &[
    "closes",
    "fires",
    "function",
    "functions",
    "opens",
    "operates",
    "operation",
    "runs",
    "starts",
    "stops",
    "working",
    "works",
];

/// With what a joint is sprayed that is not tested.
const SPRAYED: &[&str] =
    &["brake", "foam", "grease", "lubricant", "oil", "penetrating", "release", "rinse", "silicone", "wash"];

impl Reader<'_> {
    /// The test that a clause names.
    pub(super) fn test_kind(&self, clause: &Clause) -> Option<TestKind> {
        let pair = |one: &[&str], other: &[&str]| self.has(clause, one) && self.has(clause, other);
        if pair(&["flue"], &["integrity"]) || pair(&["o2", "oxygen"], &["air", "duct", "inlet"]) {
            return Some(TestKind::FlueIntegrity);
        }
        if pair(&["resistance", "earth", "ground"], &["earth", "ground"])
            && self.measures(clause, Kind::Resistance)
        {
            return Some(TestKind::EarthContinuity);
        }
        if pair(&["siphon", "trap"], &["filled", "full", "water"]) {
            return Some(TestKind::TrapFilled);
        }
        if self.has(clause, &["relief", "safety"]) && self.works_by_hand(clause) {
            return Some(TestKind::ReliefLever);
        }
        if pair(&["working", "dynamic", "inlet"], &["pressure"]) {
            return Some(TestKind::WorkingPressure);
        }
        if self.turns_knob(clause) {
            return None;
        }
        if self.draws_hot_water(clause) {
            return self.measures(clause, Kind::Temperature).then_some(TestKind::Function);
        }
        // Fluid finds leaks; what is timed is held by a gauge.
        if self.has(clause, &["fluid", "soap", "soapy"]) && !self.measures(clause, Kind::Time) {
            return Some(TestKind::LeakFluid);
        }
        if self.sprays_for_leaks(clause) {
            return Some(TestKind::LeakFluid);
        }
        if let Some((_, kind)) = NAMED.iter().find(|(words, _)| self.has(clause, words)) {
            let is_of_part = *kind == TestKind::EarthContinuity && self.tests_a_part_itself(clause);
            return Some(kind.clone()).filter(|_| !is_of_part);
        }
        if self.is_gas_by_gauge(clause) {
            return Some(TestKind::Tightness);
        }
        let asks =
            |i: usize| (LEAKS.contains(&self.text(i)) || self.is_to_be_dry(i)) && !self.is_in_condition(i);
        if ((clause.from..clause.to).any(asks) && !self.tells_of_fast(clause))
            || self.holds_pressure(clause)
            || self.seeks_water(clause)
        {
            return Some(self.leak_test(clause));
        }
        if self.watches_joints(clause) {
            return Some(self.leak_test(clause));
        }
        if self.has(clause, WORKS) {
            return Some(TestKind::Function);
        }
        if self.looks_at_hot_joints(clause) {
            return Some(TestKind::LeakHot);
        }
        pair(&["cold", "fill", "filling", "system"], &["pressure"]).then_some(TestKind::FillPressure)
    }

    /// "Test *the thermostat* for continuity": whether it switches, and nothing of the earth.
    fn tests_a_part_itself(&self, clause: &Clause) -> bool {
        const CARRYING: &[&str] = &[
            "coil",
            "cut-out",
            "element",
            "fuse",
            "heater",
            "igniter",
            "immersion",
            "limiter",
            "motor",
            "probe",
            "sensor",
            "solenoid",
            "stat",
            "switch",
            "thermistor",
            "thermocouple",
            "thermostat",
            "transformer",
            "winding",
        ];
        const EARTHED: &[&str] = &[
            "bond",
            "bonding",
            "casing",
            "chassis",
            "cpc",
            "earth",
            "earthed",
            "earthing",
            "frame",
            "ground",
            "pe",
            "protective",
        ];
        let is_part = |phrase: &coin::Phrase| {
            let may_be = phrase.lead == Lead::Direct || phrase.is_after(&["across", "of", "through"]);
            may_be && CARRYING.contains(&phrase.head_word().as_str())
        };
        !self.has(clause, EARTHED)
            && coin::phrases(self, clause).iter().any(|phrase| phrase.from > clause.verb() && is_part(phrase))
    }

    /// Whether what was acted on last, in the line or in the step before, joins or seals something.
    fn last_was_a_joint(&self) -> bool {
        !self.last_of(&[ThingKind::Connection]).is_empty()
            || (self.last.is_empty()
                && self.here.changed_before().any(|id| self.map.connection(id).is_some()))
    }

    /// "Spray the joints", "with leak spray": and not with oil, nor to wash them.
    fn sprays_for_leaks(&self, clause: &Clause) -> bool {
        let is_joint = |phrase: &coin::Phrase| {
            matches!(noun(&phrase.stem()), Noun::Joint | Noun::Port(_) | Noun::Seal)
                || phrase.head_word() == "nut"
        };
        let names_joint = || {
            coin::phrases(self, clause).iter().any(is_joint)
                || self.mentions_in(clause).any(|mention| self.connection(mention).is_some())
                // "Close the test nipple and *spray it*."
                || (self.object_pronoun(clause).is_some() && self.last_was_a_joint())
        };
        let begins = |i: &usize| self.tokens.get(*i).is_none_or(|token| token.before == Break::Sentence);
        let end = (clause.verb() + 1..self.tokens.len()).find(begins).unwrap_or(self.tokens.len());
        let says = |words: &[&str]| (clause.from..end).any(|i| words.contains(&self.text(i)));
        (clause.from..clause.to).any(|i| self.text(i).starts_with("spray"))
            && (says(LEAKS) || says(SEEKING) || (names_joint() && !says(SPRAYED) && !says(WASHING)))
    }

    /// Whether the appliance is being put back.
    pub(super) fn is_coming_back(&self) -> bool {
        matches!(self.stage, Stage::Refit | Stage::Recommission | Stage::HandOver)
    }

    fn measures(&self, clause: &Clause, kind: Kind) -> bool {
        self.has(clause, &["resistance"])
            || self.quantities(clause).any(|quantity| quantity.range(kind).is_some())
    }

    /// "Check both unions again while hot": what is looked for at a joint in the heat is water.
    fn looks_at_hot_joints(&self, clause: &Clause) -> bool {
        let looks = ["check", "feel", "go"].iter().any(|begin| self.text(clause.verb()).starts_with(begin));
        // "The *hot tap* gives 55 °C": which tap.
        let is_state = |i: usize| {
            matches!(self.text(i), "hot" | "warm")
                && !matches!(self.text(i + 1), "outlet" | "pipe" | "side" | "tap" | "taps" | "water")
        };
        (clause.from..clause.to).any(is_state) && looks && self.names_wet_joint(clause)
    }

    /// "It must stay *dry*", and not "with a *dry* cloth".
    fn is_to_be_dry(&self, i: usize) -> bool {
        self.text(i) == "dry" && !matches!(self.text(i + 1), "brush" | "cloth" | "rag" | "towel")
    }

    fn names_wet_joint(&self, clause: &Clause) -> bool {
        let is_wet_joint = |mention: &Mention| {
            let section = self.connection(mention).and_then(|joint| joint.section.as_ref());
            section.and_then(|section| self.kind_of(section)).is_some_and(is_wet)
        };
        self.mentions_in(clause).any(is_wet_joint)
    }

    /// "Check the tightness of the cover screws": whether they hold, and not whether something is tight.
    fn tells_of_fixings(&self, clause: &Clause) -> bool {
        let is_fixing = |mention: &Mention| {
            let fixing = |candidate: &super::mention::Candidate| {
                self.map.connection(&candidate.id).is_some_and(|known| known.family == Family::Fixing)
            };
            !mention.candidates.is_empty() && mention.candidates.iter().all(fixing)
        };
        let mut named = self.mentions_in(clause).peekable();
        named.peek().is_some() && self.has(clause, &["tight", "tightness"]) && named.all(is_fixing)
    }

    /// "Check that the earth connection is *tight*": of what carries no medium it says that it is fast, not that nothing
    /// leaks. Where nothing is named it speaks of the joints.
    fn tells_of_fast(&self, clause: &Clause) -> bool {
        const GENERAL: &[&str] =
            &["connection", "coupling", "everything", "fitting", "joint", "pipework", "union"];
        let leaks = LEAKS.iter().filter(|word| **word != "tight");
        if !self.has(clause, &["tight"]) || leaks.chain(&["dry"]).any(|word| self.has(clause, &[word])) {
            return false;
        }
        let carries = |mention: &Mention| {
            let section = self.connection(mention).and_then(|joint| joint.section.as_ref());
            section.and_then(|section| self.kind_of(section)).is_some_and(|kind| !is_electrical(kind))
        };
        if self.mentions_in(clause).any(carries) {
            return false;
        }
        // What stands before "tight" is what it is said of, in a condition too: "check that the cables are tight".
        let electrical = self.has(
            clause,
            &[
                "cable",
                "cables",
                "earth",
                "electrical",
                "lead",
                "leads",
                "terminal",
                "terminals",
                "wire",
                "wires",
            ],
        );
        let (Some(first), Some(tight)) = (
            (clause.verb() + 1..clause.to)
                .find(|i| matches!(self.text(*i), "the" | "all" | "each" | "every")),
            (clause.verb() + 1..clause.to).find(|i| self.text(*i) == "tight"),
        ) else {
            return electrical;
        };
        let named: Vec<String> = (first + 1..tight).map(|i| super::mention::singular(self.text(i))).collect();
        electrical || !(named.is_empty() || named.iter().any(|word| GENERAL.contains(&word.as_str())))
    }

    /// "Look for water at the unions": at a joint of a circuit that is a leak.
    fn seeks_water(&self, clause: &Clause) -> bool {
        self.text(clause.verb()).starts_with("look")
            && self.has(clause, &["damp", "drops", "moisture", "water"])
            && self.names_wet_joint(clause)
    }

    /// "Watch the joints for 5 minutes": what comes there is a leak.
    fn watches_joints(&self, clause: &Clause) -> bool {
        const JOINTS: &[&str] = &["connections", "joint", "joints", "union", "unions"];
        self.text(clause.verb()).starts_with("watch") && self.has(clause, JOINTS)
    }

    /// Whether a relief valve is worked by hand: its lever lifted, its knob turned, itself tested.
    fn works_by_hand(&self, clause: &Clause) -> bool {
        let works = ["lift", "operat", "press", "test", "work"];
        let stem = self.text(clause.verb());
        let by_verb = works.iter().any(|begin| stem.starts_with(begin))
            && self.has(clause, &["lever", "levers", "valve"]);
        let by_hand = self.has(clause, &["knob", "lever", "levers", "lifts", "opens"]);
        if self.turns_knob(clause) { self.is_coming_back() } else { by_verb || by_hand }
    }

    /// "Draw hot water": the appliance has to make it.
    pub(super) fn draws_hot_water(&self, clause: &Clause) -> bool {
        let draws = matches!(self.text(clause.verb()), "draw" | "draws" | "drawing" | "run");
        draws && clause.means.contains(&Verb::Start) && self.has(clause, &["hot"])
    }

    fn turns_knob(&self, clause: &Clause) -> bool {
        self.text(clause.verb()).starts_with("turn")
    }

    /// "No drop in 2 minutes": a gauge is watched.
    fn holds_pressure(&self, clause: &Clause) -> bool {
        self.has(clause, &["no"]) && self.has(clause, &["drop", "fall"])
    }

    /// Gas that is held by a gauge: "test the gas pipes, 20 mbar for 2 minutes", "test for 2 minutes: no drop".
    fn is_gas_by_gauge(&self, clause: &Clause) -> bool {
        let tests = self.text(clause.verb()).starts_with("test");
        let timed = self.quantities(clause).any(|quantity| quantity.range(Kind::Time).is_some());
        let by_gauge = self.holds_pressure(clause) || (timed && self.pressure(clause).is_some());
        tests
            && by_gauge
            && (self.has(clause, &["gas"]) || self.kind_meant(clause) == Some(&CircuitKind::FuelGas))
    }

    /// The kind of the circuit of what is named, or of what the line was about, or of the only wet circuit.
    fn kind_meant(&self, clause: &Clause) -> Option<&CircuitKind> {
        let of = |id: &Id| {
            let joint = self.map.connection(id).and_then(|joint| joint.section.clone());
            let mut isolators = self.map.isolators.iter();
            let isolator =
                || isolators.find(|isolator| isolator.id == *id).map(|known| known.between.1.clone());
            self.kind_of(id).or_else(|| joint.or_else(isolator).and_then(|section| self.kind_of(&section)))
        };
        let named = self.mentions_in(clause).filter_map(|mention| match mention.candidates.as_slice() {
            [only] if only.kind != ThingKind::Component => of(&only.id),
            _ => None,
        });
        let mut wet = self.map.circuits.iter().map(|circuit| &circuit.kind).filter(|kind| is_wet(kind));
        let only = || wet.next().filter(|_| wet.next().is_none());
        let last = || self.last.iter().find_map(|candidate| of(&candidate.id));
        named.into_iter().next().or_else(last).or_else(only)
    }

    /// The test for leaks that fits the circuit of what is named, or the only wet circuit.
    fn leak_test(&self, clause: &Clause) -> TestKind {
        let named = self.mentions_in(clause).find_map(|mention| self.connection(mention)?.section.clone());
        let kind = named.and_then(|id| self.kind_of(&id)).or_else(|| self.kind_meant(clause));
        match kind {
            Some(CircuitKind::FuelGas | CircuitKind::CompressedAir | CircuitKind::Refrigerant) => {
                TestKind::LeakFluid
            }
            _ if self.has(clause, &["hot", "warm"]) => TestKind::LeakHot,
            _ => TestKind::LeakCold,
        }
    }

    /// Whether a clause that tests or looks names a kind of test.
    pub(super) fn is_test(&self, clause: &Clause) -> bool {
        // "See that the trap is dry outside" looks at it; what a joint shows is a test.
        let looks = clause.means.contains(&Verb::Inspect) && !clause.means.contains(&Verb::Read);
        let at_joint = || self.mentions_in(clause).any(|mention| self.connection(mention).is_some());
        let hot = self.has(clause, &["hot", "warm"]);
        let dry_part =
            looks && self.has(clause, &["dry"]) && !self.has(clause, &["tissue"]) && !hot && !at_joint();
        clause.means.contains(&Verb::Test)
            && !dry_part
            && !self.tells_of_fixings(clause)
            && self.test_kind(clause).is_some()
    }
}
