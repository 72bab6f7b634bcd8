//! What a clause seems to say and does not: "lock off the breaker, power up" locks nothing, "hose off, drain to a tray"
//! drains no gas. Better nothing than something false.

use super::clause::Clause;
use super::coin::{self, Lead, Noun, noun};
use super::mention::{head_of, singular};
use super::reader::{Proposal, Reader};
use super::section::is_liquid;
use crate::lexicon::Break;
use crate::model::{Id, Means, Verb};
use crate::simulate::Whereabouts;

/// What brings the current back when it goes on or up.
const SWITCHED: &[&str] =
    &["breaker", "electric", "fuse", "isolator", "mains", "mcb", "power", "rcd", "spur", "supply", "switch"];

/// How verbs begin that turn a part in by its thread.
const SPINNING: &[&str] = &["run", "screw", "spin", "spun", "thread", "wind", "wound"];

impl Reader<'_> {
    /// Whether a reading of a clause is none of it.
    pub(super) fn only_seems(&self, clause: &Clause, proposal: &Proposal) -> bool {
        match proposal.action.verb {
            Verb::Lock => self.lock_comes_off(clause, proposal),
            Verb::Release => self.drains_what_is_no_liquid(clause, proposal),
            Verb::Charge => self.pumps_up_a_vessel(clause),
            Verb::Fit => {
                (self.swings(clause) && !proposal.possible)
                    || self.smears(clause)
                    || self.pushes_clip_back(clause)
                    || self.stows(clause)
                    || self.slides_back_some_way(clause)
                    || self.stays_where_it_is(clause, proposal)
                    || self.shuts_what_does_not_open(clause, proposal)
            }
            Verb::MoveAside => {
                (self.swings(clause) && self.says_back(clause))
                    || self.pushes_into_place(clause)
                    || self.opens_a_valve(clause, proposal)
            }
            Verb::Make | Verb::Tighten => {
                self.spins_a_port(clause, proposal)
                    || self.smears(clause)
                    || self.pushes_clip_back(clause)
                    || self.stows(clause)
            }
            // "Draw them down to 6 Nm."
            Verb::Remove => self
                .quantities(clause)
                .any(|quantity| quantity.range(crate::units::Quantity::Torque).is_some()),
            Verb::Place => self.pockets(clause),
            // A fuse that is in is renewed, which only who wrote it knows.
            Verb::Restore => !proposal.possible && self.text(clause.verb()).starts_with("replac"),
            Verb::Start => self.runs_dry(clause) || self.burns_already(clause),
            Verb::Inspect => self.feels_what_comes(clause, proposal),
            Verb::Read => self.reads_only_when(clause, proposal),
            Verb::Prove => self.tells_a_state(clause),
            _ => false,
        }
    }

    /// "*Lock off* the breaker, power up": the lock comes off where the current comes back, or where it is on already.
    fn lock_comes_off(&self, clause: &Clause, proposal: &Proposal) -> bool {
        let off = clause.phrase.iter().any(|i| self.text(*i) == "off");
        if !off || self.text(clause.verb()) != "lock" {
            return false;
        }
        let is_locked = |id: &Id| self.here.isolators.get(id).is_some_and(|here| here.locked);
        let on = &proposal.action.on;
        (!on.is_empty() && on.iter().all(is_locked)) || self.current_comes_back(clause)
    }

    /// "…, *spur back on*": behind a clause, in its sentence.
    fn current_comes_back(&self, clause: &Clause) -> bool {
        let end = self.end_of_sentence(clause);
        (clause.verb() + 2..end).any(|i| {
            let back = usize::from(self.text(i - 1) == "back");
            let ends = self.tokens.get(i + 1).is_none_or(|next| next.before != Break::None)
                || matches!(self.text(i + 1), "again" | "and" | "as" | "at" | "then" | "too");
            let joined = self.tokens.get(i).is_some_and(|token| token.before == Break::None);
            let switched = i.checked_sub(1 + back).is_some_and(|i| SWITCHED.contains(&self.text(i)));
            matches!(self.text(i), "on" | "up") && joined && ends && switched
        })
    }

    /// "Hose off, *drain* to a tray": whatever runs out is neither gas nor air, unless the words say so.
    fn drains_what_is_no_liquid(&self, clause: &Clause, proposal: &Proposal) -> bool {
        let is_apart = |id: &Id| self.kind_of(id).is_some_and(|kind| !is_liquid(kind));
        let runs_out = self.has(clause, &["water"]);
        let drains = (proposal.action.by == Some(Means::Drain)
            && clause.phrase.iter().any(|i| self.text(*i).starts_with("drain")))
            || runs_out;
        let on = &proposal.action.on;
        let is_unsaid = proposal.action.through.is_none();
        drains
            && is_unsaid
            && !on.is_empty()
            && on.iter().all(is_apart)
            && !self.has(clause, &["gas", "air", "refrigerant"])
    }

    /// "*Draw off* the connectors", "draw it off the studs": a thing, and nothing that runs.
    pub(super) fn draws_off_a_thing(&self, clause: &Clause) -> bool {
        let draws = ["draw", "drew"].iter().any(|begin| self.text(clause.verb()).starts_with(begin));
        let is_thing = |phrase: &coin::Phrase| {
            !matches!(noun(&phrase.stem()), Noun::Nothing | Noun::Unknown) && phrase.lead == Lead::Direct
        };
        let behind = |phrase: &&coin::Phrase| phrase.from > clause.verb();
        draws
            && (self.object_pronoun(clause).is_some()
                || coin::phrases(self, clause).iter().find(behind).is_some_and(is_thing))
    }

    fn swings(&self, clause: &Clause) -> bool {
        let stem = self.text(clause.verb());
        (stem.starts_with("swing") || stem == "swung")
            && clause.phrase.iter().any(|i| matches!(self.text(*i), "back" | "up"))
    }

    /// "*Open* both valves": a valve opens and swings nowhere, whatever else it is on the map.
    fn opens_a_valve(&self, clause: &Clause, proposal: &Proposal) -> bool {
        let is_valve = |id: &Id| {
            let head = singular(head_of(self.map.name_of(id))).to_lowercase();
            matches!(head.as_str(), "cock" | "stopcock" | "tap" | "valve")
        };
        self.text(clause.verb()).starts_with("open") && proposal.action.on.iter().any(is_valve)
    }

    /// "Push the strainers *back in*."
    fn pushes_into_place(&self, clause: &Clause) -> bool {
        let is_in = |i: usize| {
            self.text(i) == "back"
                && matches!(
                    self.text(i + 1),
                    "home" | "in" | "into" | "on" | "onto" | "together" | "up" | "upright"
                )
        };
        self.text(clause.verb()).starts_with("push") && (clause.verb()..clause.to).any(is_in)
    }

    /// "Swing it *back up*."
    fn says_back(&self, clause: &Clause) -> bool {
        (clause.verb()..clause.to).any(|i| self.text(i) == "back")
    }

    /// "*Spin the valve in*": a part, and not the drain cock that stands open.
    fn spins_a_port(&self, clause: &Clause, proposal: &Proposal) -> bool {
        let stem = self.text(clause.verb());
        let spins = SPINNING.iter().any(|begin| stem.starts_with(begin));
        let is_port = |id: &Id| self.map.connection(id).is_some_and(|known| known.port.is_some());
        let on = &proposal.action.on;
        let by_name = |id: &Id| {
            let head = head_of(self.map.name_of(id));
            (clause.verb()..clause.to).any(|i| singular(self.text(i)) == head)
        };
        spins && !on.is_empty() && on.iter().all(|id| is_port(id) && !by_name(id))
    }

    /// "Put *a dab of paint* on the screw" makes no screw.
    fn smears(&self, clause: &Clause) -> bool {
        let phrases = coin::phrases(self, clause);
        let direct = phrases.iter().find(|phrase| phrase.from > clause.verb() && phrase.lead == Lead::Direct);
        let is_smeared = |phrase: &coin::Phrase| noun(&phrase.stem()) == Noun::Nothing;
        self.text(clause.verb()).starts_with("put") && direct.is_some_and(is_smeared)
    }

    /// "*Slide the clip back* along the hose", "push the clip back, pull the hose off": it comes loose.
    fn pushes_clip_back(&self, clause: &Clause) -> bool {
        const PUSHING: &[&str] = &["draw", "ease", "push", "slid", "slip"];
        let stem = self.text(clause.verb());
        let clips = (clause.verb()..clause.to).any(|i| matches!(self.text(i), "clamp" | "clip" | "clips"));
        let next = self.clauses.iter().find(|other| other.verb() > clause.verb());
        let comes_off = next.is_some_and(|next| {
            next.means.iter().any(|verb| matches!(verb, Verb::Remove | Verb::Undo))
                && self.has(next, &["hose", "pipe", "tube"])
        });
        PUSHING.iter().any(|begin| stem.starts_with(begin))
            && clips
            && self.says_back(clause)
            && (comes_off || self.has(clause, &["along", "grips", "pliers"]))
    }

    /// "Put the screws *in the magnetic tray*" fits nothing: that is where they are kept.
    pub(super) fn stows(&self, clause: &Clause) -> bool {
        const LAID_ON: &[&str] = &[
            "bench", "block", "cloth", "floor", "ground", "mat", "pallet", "sheet", "table", "towel",
            "trestle", "trolley", "worktop",
        ];
        const KEPT_IN: &[&str] = &[
            "bag", "box", "bucket", "cup", "envelope", "jar", "pocket", "pot", "tin", "toolbox", "tray",
            "tub",
        ];
        let stem = self.text(clause.verb());
        let puts = [
            "drop", "keep", "kept", "laid", "lay", "lift", "lower", "place", "placing", "pop", "put", "rest",
            "set", "stand", "stick", "stood", "stuck",
        ];
        if !puts.iter().any(|begin| stem.starts_with(begin)) {
            return false;
        }
        let is_known = |phrase: &coin::Phrase| {
            self.mentions.iter().any(|mention| mention.from <= phrase.from && mention.to == phrase.head + 1)
        };
        let parts = |i: &usize| self.tokens.get(*i).is_some_and(|token| token.before != Break::None);
        let end = (clause.verb() + 1..clause.to).find(parts).unwrap_or(clause.to);
        let phrases = coin::phrases(self, clause);
        // "In *the lid of your toolbox*."
        let leads_in = |phrase: &coin::Phrase| phrase.is_after(&["in", "inside", "into"]);
        let is_in = |at: usize, phrase: &coin::Phrase| {
            let of = at.checked_sub(1).and_then(|before| phrases.get(before));
            leads_in(phrase) || (phrase.is_after(&["of"]) && of.is_some_and(leads_in))
        };
        let kept = |(at, phrase): (usize, &coin::Phrase)| {
            phrase.from > clause.verb()
                && phrase.head < end
                && ((is_in(at, phrase) && KEPT_IN.contains(&phrase.head_word().as_str()))
                    || (phrase.is_after(&["on", "onto"]) && LAID_ON.contains(&phrase.head_word().as_str())))
                && !is_known(phrase)
        };
        phrases.iter().enumerate().any(kept)
    }

    /// "Open both doors, take out the shelf. *Shut it*": no shelf.
    fn shuts_what_does_not_open(&self, clause: &Clause, proposal: &Proposal) -> bool {
        let stem = self.text(clause.verb());
        let shuts = stem.starts_with("clos") || stem.starts_with("shut");
        let stays = |id: &Id| !coin::opens(&singular(head_of(self.map.name_of(id))));
        let on = &proposal.action.on;
        shuts && self.pronoun(clause).is_some() && !on.is_empty() && on.iter().all(stays)
    }

    /// "*Pump* the new vessel *up* to 0.8 bar": the gas in a vessel, and not the water beside it.
    fn pumps_up_a_vessel(&self, clause: &Clause) -> bool {
        let is_vessel = |phrase: &coin::Phrase| phrase.lead == Lead::Direct && phrase.head_word() == "vessel";
        coin::phrases(self, clause).iter().find(|phrase| phrase.from > clause.verb()).is_some_and(is_vessel)
    }

    /// "*Lift* the safety valve *on* the vessel by its cap", "*latch* the lever open": what was never off is not put back.
    fn stays_where_it_is(&self, clause: &Clause, proposal: &Proposal) -> bool {
        let stem = self.text(clause.verb());
        let lifts_at_place = stem.starts_with("lift")
            && clause.phrase.iter().any(|i| {
                matches!(self.text(*i), "in" | "on") && matches!(self.text(i + 1), "a" | "an" | "its" | "the")
            });
        let is_out =
            |id: &Id| matches!(self.here.components.get(id), Some(Whereabouts::Off | Whereabouts::Aside));
        let is_new = proposal.action.part.is_some();
        // "Slacken the nuts and *slide* the gland *back*": along, and not into place.
        let slides_back = ["push", "slid"].iter().any(|begin| stem.starts_with(begin)) && {
            let ends = |i: usize| self.tokens.get(i).is_none_or(|token| token.before != Break::None);
            (clause.verb() + 1..clause.to).any(|i| self.text(i) == "back" && ends(i + 1))
        };
        let is_put_along =
            slides_back || ((lifts_at_place || stem.starts_with("latch")) && !self.says_back(clause));
        is_put_along && !is_new && !proposal.action.on.iter().any(is_out)
    }

    /// "Slide the bypass straight *back by 40 mm*": away from where it was, and not into its place.
    fn slides_back_some_way(&self, clause: &Clause) -> bool {
        (clause.verb() + 1..clause.to).any(|i| {
            let far = matches!(self.text(i + 1), "about" | "by")
                || self.reading().quantities.iter().any(|q| q.from == i + 1);
            self.text(i) == "back" && far
        })
    }

    /// "Put the cap *in your pocket*" closes nothing.
    fn pockets(&self, clause: &Clause) -> bool {
        let joined = |i: &usize| self.tokens.get(*i).is_some_and(|token| token.before == Break::None);
        (clause.verb() + 1..clause.to).take_while(joined).any(|i| self.text(i) == "pocket")
    }

    /// "Run the hot tap *till it goes to a dribble*": what runs dry starts no appliance.
    fn runs_dry(&self, clause: &Clause) -> bool {
        const DRY: &[&str] =
            &["dies", "dribble", "dribbles", "dry", "empty", "nothing", "stops", "trickle", "trickles"];
        let runs = matches!(self.text(clause.verb()), "draw" | "drawing" | "run" | "running");
        let end = self.end_of_sentence(clause);
        // "Run the hot tap *to take the pressure off*."
        let next = self.clauses.iter().find(|next| next.verb() > clause.verb());
        let lets_out = next
            .is_some_and(|next| self.text(next.verb() - 1) == "to" && next.means.contains(&Verb::Release));
        if runs && lets_out {
            return true;
        }
        let awaited = (clause.verb() + 1..end).find(|i| matches!(self.text(*i), "till" | "until"));
        runs && self.has(clause, &["tap", "taps", "water"])
            && awaited.is_some_and(|from| {
                let part = (from + 1..end)
                    .take_while(|i| self.tokens.get(*i).is_some_and(|t| t.before == Break::None));
                part.into_iter().any(|i| DRY.contains(&self.text(i)))
            })
    }

    /// "Measure it *with no flow*", "leave it open *so that no pressure* can build up": how things stand, and nothing shown.
    fn tells_a_state(&self, clause: &Clause) -> bool {
        let before = |back: usize| clause.verb().checked_sub(back).map_or("", |i| self.text(i));
        let leads = matches!(before(1), "at" | "that" | "with" | "so");
        self.text(clause.verb()) == "no" && leads
    }

    /// "*Once it reads zero*, the plug is unscrewed": when something is done, and no reading without a figure.
    fn reads_only_when(&self, clause: &Clause, proposal: &Proposal) -> bool {
        let joined = |i: &usize| self.tokens.get(i + 1).is_some_and(|next| next.before == Break::None);
        let mut before = (0..clause.verb()).rev().take_while(joined);
        // "All three want to *read nothing*."
        let says_nothing = clause.phrase.iter().any(|i| self.text(*i) == "nothing");
        proposal.action.readings.is_empty()
            && (says_nothing
                || before
                    .any(|i| matches!(self.text(i), "after" | "if" | "once" | "till" | "until" | "when")))
    }

    /// "Switch on, *neon lit*", "sensor out with the *burner firing*": what it does, and nothing to do.
    fn burns_already(&self, clause: &Clause) -> bool {
        let verb = clause.verb();
        let joined = verb > 0 && self.tokens.get(verb).is_some_and(|token| token.before == Break::None);
        let before = verb.checked_sub(1).map_or("", |before| self.text(before));
        joined
            && matches!(self.text(verb), "alight" | "firing" | "lit" | "running")
            && !matches!(before, "and" | "by" | "get" | "have" | "then")
    }

    /// "Hose on the drain cock, and *feel it* first": what comes out, and not the cock.
    fn feels_what_comes(&self, clause: &Clause, proposal: &Proposal) -> bool {
        let is_port = |id: &Id| self.map.connection(id).is_some_and(|known| known.port.is_some());
        self.text(clause.verb()).starts_with("feel")
            && self.pronoun(clause).is_some()
            && !proposal.action.on.is_empty()
            && proposal.action.on.iter().all(is_port)
    }
}
