//! The preposition that leads to what is named: "the screws *of* the fan and the pump", "take the bag *off* the box".

use super::clause::Clause;
use super::mention::Mention;
use super::reader::Reader;
use crate::lexicon::Break;
use crate::model::ThingKind;

impl Reader<'_> {
    /// The preposition that leads to a mention, over articles, amounts and adjectives.
    pub(super) fn preposition(&self, mention: &Mention) -> Option<&str> {
        const LEADING: &[&str] = &[
            "above", "against", "at", "behind", "below", "beneath", "beside", "between", "from", "in",
            "inside", "into", "near", "of", "on", "onto", "through", "to", "towards", "under", "via", "with",
            "without",
        ];
        for i in (mention.from.saturating_sub(4)..mention.from).rev() {
            if self.text(i) == "and" && self.follows_isolator(mention, i) {
                return None;
            }
            let broken = self.tokens.get(i + 1).is_none_or(|token| token.before != Break::None);
            let of_verb = self.clauses.iter().find(|clause| clause.phrase.contains(&i));
            let is_thing = self.mentions.iter().any(|other| (other.from..other.to).contains(&i));
            if is_thing && let Some(before) = self.part_joined_to(mention) {
                return self.preposition(before);
            }
            if broken || of_verb.is_some() || is_thing {
                // "Take the bag *off* the box": the object stands before.
                let parts = |clause: &Clause| {
                    let between = clause.verb() + 1..i;
                    // "Put it *on* the trap", "put the motor back *on* the pump head", of which no motor is known.
                    let leads = LEADING.contains(&self.text(i));
                    let stands_for =
                        |i: usize| matches!(self.text(i), "it" | "them") || (leads && self.text(i) == "the");
                    !broken
                        && i > clause.verb()
                        && (self.mentions.iter().any(|m| between.contains(&m.from))
                            || between.clone().any(stands_for))
                };
                // "Pull the fan *plug* and the pump plug": a thing leads to none.
                return of_verb.filter(|clause| !is_thing && parts(clause)).map(|_| self.text(i));
            }
            // "The screw *that holds the* cover" is its screw.
            let holds =
                matches!(self.text(i), "hold" | "holds" | "retain" | "retains" | "secure" | "secures");
            if holds && i.checked_sub(1).is_some_and(|i| matches!(self.text(i), "that" | "which")) {
                return Some("of");
            }
            // "The isolator *for pump 1*", but not "look for scoring and the impeller".
            let is_for = self.text(i) == "for"
                && (i + 1..mention.from).all(|i| matches!(self.text(i), "a" | "an" | "both" | "the"));
            if LEADING.contains(&self.text(i)) || self.leads_round(i) || is_for {
                // "Lift out the fan together *with* the mixer": both are lifted out.
                let joins = i.checked_sub(1).is_some_and(|i| matches!(self.text(i), "along" | "together"));
                return Some(self.text(i)).filter(|lead| *lead != "with" || !joins);
            }
        }
        None
    }

    /// "The valve above the softener *and the valve* below it": each is acted on.
    fn follows_isolator(&self, mention: &Mention, and: usize) -> bool {
        let is_isolator =
            |mention: &Mention| mention.candidates.iter().all(|known| known.kind == ThingKind::Isolator);
        let mut before = self.mentions.iter().filter(|other| other.to <= and);
        let is_next = mention.from <= and + 2 + usize::from(self.text(and + 1) == "also");
        is_next && is_isolator(mention) && before.any(is_isolator)
    }

    /// "The nuts *round* the flange", but not "wipe *round* the flange".
    fn leads_round(&self, i: usize) -> bool {
        let is_verb = |i: usize| self.clauses.iter().any(|clause| clause.phrase.contains(&i));
        matches!(self.text(i), "around" | "round")
            && matches!(self.text(i + 1), "a" | "an" | "both" | "its" | "the")
            && i.checked_sub(1).is_some_and(|before| !is_verb(before))
    }

    /// "Pull the plugs off *the fan* and the pump": the part to which another is joined, so that what leads to the one
    /// leads to the other.
    fn part_joined_to(&self, mention: &Mention) -> Option<&Mention> {
        let is_part = |mention: &Mention| mention.candidates.iter().all(|c| c.kind == ThingKind::Component);
        let before =
            self.mentions.iter().filter(|other| other.to <= mention.from).max_by_key(|other| other.to)?;
        let mut between = (before.to..mention.from).map(|i| self.text(i));
        let joins = between.clone().any(|text| text == "and")
            && between.all(|text| matches!(text, "a" | "an" | "and" | "its" | "the" | "their" | "your"));
        // "Take the screws out of the case and *the lid off*."
        let comes_off = matches!(self.text(mention.to), "away" | "back" | "in" | "off" | "on" | "out" | "up");
        // "Pull the plugs *of the fan and the pump* off the board."
        let leads_on = matches!(self.text(mention.to + 1), "a" | "its" | "of" | "the" | "their" | "your");
        let of = (before.from.saturating_sub(3)..before.from).rfind(|i| self.text(*i) == "of");
        let is_owned = of.is_some_and(|of| of > 0 && !matches!(self.text(of - 1), "off" | "out"));
        let is_joined = joins && (!comes_off || (is_owned && leads_on));
        (is_part(before)
            && is_part(mention)
            && (is_joined || (is_owned && self.goes_on_a_list(before, mention))))
        .then_some(before)
    }

    /// "The plugs of the fan, *the pump* and the valve": a comma stands between two parts, and the list is closed behind them.
    fn goes_on_a_list(&self, before: &Mention, mention: &Mention) -> bool {
        let is_article = |i: usize| matches!(self.text(i), "a" | "an" | "the");
        let is_apart = |i: usize| self.tokens.get(i).is_some_and(|token| token.before == Break::Comma);
        let goes_on = |from: usize, to: usize| is_apart(from) && (from..to).all(is_article);
        let mut last = mention.to;
        let behind = self.mentions.iter().filter(|other| other.from >= mention.to);
        let joined = behind.map(|next| {
            let from = std::mem::replace(&mut last, next.to);
            let closes = self.text(from) == "and" && (from + 1..next.from).all(is_article);
            (closes, closes || goes_on(from, next.from))
        });
        let is_closed = joined.take_while(|(_, joins)| *joins).any(|(closes, _)| closes);
        goes_on(before.to, mention.from) && is_closed
    }
}
