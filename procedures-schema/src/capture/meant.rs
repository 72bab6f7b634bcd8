//! What a mention means for a verb: its candidates, narrowed by what the words around it say and by what is possible here.

use super::clause::Clause;
use super::coin::phrases;
use super::mention::{Mention, singular};
use super::reader::Reader;
use super::refer::{Meant, Wanted, meant};
use super::twins::WHERE;
use crate::lexicon::Break;
use crate::model::{Family, Handle, Id, ThingKind, Verb};

impl Reader<'_> {
    /// What a mention means; "*unplug* the gas valve" shuts no valve, so that of isolators only plugs are meant then.
    pub(super) fn meant_here(
        &self,
        clause: &Clause,
        verb: &Verb,
        kinds: &[ThingKind],
        mention: &Mention,
    ) -> Option<Meant> {
        let is_plug = |id: &Id| {
            self.map.isolators.iter().any(|isolator| isolator.id == *id && isolator.handle == Handle::Plug)
        };
        let mut meant = self.meant_by(clause, verb, kinds, mention)?;
        let stem = self.text(clause.verb());
        let plugs = match verb {
            Verb::Isolate => stem.starts_with("unplug"),
            // "Plug the valve in" opens none.
            Verb::Restore => stem.starts_with("plug"),
            _ => false,
        };
        if plugs {
            meant.ids.retain(is_plug);
        }
        meant.ids.retain(|id| self.may_be_unlocked(clause, verb, id));
        meant.ids.retain(|id| !self.is_of_another_than_said(mention, id));
        self.keep_placed(clause, mention, &mut meant.ids);
        if self.is_setting_of_another(clause, mention, &meant.ids) {
            return None;
        }
        // "Unscrew *the plug*" of a test point: that of the fan is pulled.
        let turns = ["screw", "tighten", "torque", "unscrew"].iter().any(|begin| stem.starts_with(begin));
        if turns && matches!(self.text(mention.to - 1), "plug" | "plugs") {
            let is_pulled =
                |id: &Id| self.map.connection(id).is_some_and(|known| known.family == Family::Connector);
            meant.ids.retain(|id| !is_pulled(id));
        }
        Some(meant).filter(|meant| !meant.ids.is_empty())
    }

    /// "*Unlock* it": only what is locked.
    pub(super) fn may_be_unlocked(&self, clause: &Clause, verb: &Verb, id: &Id) -> bool {
        let unlocks = *verb == Verb::Restore && self.text(clause.verb()).starts_with("unlock");
        !unlocks || self.here.isolators.get(id).is_none_or(|here| here.locked)
    }

    /// "The setting *on the scale of the nozzle assembly*" is none of the thermostat.
    fn is_setting_of_another(&self, clause: &Clause, mention: &Mention, ids: &[Id]) -> bool {
        let leads = matches!(self.text(mention.to), "at" | "for" | "of" | "on");
        let is_setting = |id: &Id| self.map.settings.iter().any(|setting| setting.id == *id);
        if !leads || mention.whole || mention.to - mention.from > 1 || !ids.iter().all(is_setting) {
            return false;
        }
        let behind: Vec<String> = (mention.to..self.end_of_sentence(clause))
            .map(|i| super::mention::singular(self.text(i)))
            .collect();
        let says = |own: &str| own != "setting" && behind.iter().any(|word| word == own);
        !ids.iter().any(|id| self.map.name_of(id).split(' ').any(says))
    }

    /// What a mention means for this verb, with the words of its clause.
    pub(super) fn meant_by(
        &self,
        clause: &Clause,
        verb: &Verb,
        kinds: &[ThingKind],
        mention: &Mention,
    ) -> Option<Meant> {
        self.by_what_is_wanted(clause, verb, kinds, mention, |wanted| meant(&mention.candidates, wanted))
    }

    /// Whether what cannot be done to the things that a mention may mean is said of another one.
    pub(super) fn may_be_another(&self, clause: &Clause, verb: &Verb, mention: &Mention) -> bool {
        // "Withdraw *the clip*" where the only clip that is known is off already.
        let apart = matches!(verb, Verb::Undo | Verb::Slacken | Verb::Remove);
        // "Start *the thread* by hand": of what is screwed in, and not of what was before.
        let is_thread = self.text(mention.to - 1) == "thread";
        // "Close *the valve before the pump*" where the only one that is known is shut already.
        let has_place = || {
            let phrases = phrases(self, clause);
            let next = phrases.iter().find(|other| other.from >= mention.to);
            next.is_some_and(|next| next.is_after(WHERE) && next.start <= mention.to + 3)
        };
        !mention.whole && (apart || is_thread || has_place())
    }

    /// "Clean *the other* filter", "put *the remaining* cover back."
    fn says_before(&self, mention: &Mention, words: &[&str]) -> bool {
        let joined = |i: &usize| self.tokens.get(i + 1).is_none_or(|next| next.before == Break::None);
        let mut before = (mention.from.saturating_sub(3)..mention.from).rev().take_while(joined);
        before.any(|i| words.contains(&self.text(i)))
    }

    /// Asks something of what narrows a mention in a clause.
    pub(super) fn by_what_is_wanted<T>(
        &self,
        clause: &Clause,
        verb: &Verb,
        kinds: &[ThingKind],
        mention: &Mention,
        ask: impl FnOnce(&Wanted<'_>) -> T,
    ) -> T {
        let said = self.said_of(clause, mention);
        let words = said.own_words().unwrap_or_else(|| self.other_words(clause));
        let is_own = |other: &&Mention| {
            said.own_words()
                .is_none_or(|own| (other.from..other.to).all(|i| own.contains(&singular(self.text(i)))))
        };
        let beside: Vec<Id> = self
            .mentions_in(clause)
            .filter(|other| other.from != mention.from && self.preposition(other).is_some())
            .filter(is_own)
            .filter_map(|other| match other.candidates.as_slice() {
                [only] => Some(only.id.clone()),
                _ => None,
            })
            .collect();
        let size = self.size(clause);
        ask(&Wanted {
            map: self.map,
            here: &self.here,
            verb,
            kinds,
            words: &words,
            beside: &beside,
            size: size.as_deref(),
            said: &said,
            other: self.says_before(mention, &["other", "remaining"]),
            remaining: self.says_before(mention, &["remaining"]),
        })
    }
}
