//! A thing that is called after its place, named by the place: "open *the oil cock at the tank*" of a tank oil cock, and not
//! what is called an oil cock alone.

use super::clause::Clause;
use super::coin::{self, Lead, Phrase};
use super::mention::{Candidate, Mention, is_plural};
use super::reader::Reader;
use super::twins::WHERE;

/// What leads to the place that a thing is called after.
const LEADS: &[&str] = &["at", "from", "in", "of", "off", "on"];

impl Reader<'_> {
    /// The mentions, where those with a place behind them stand for what is called after that place.
    pub(super) fn with_called_after_places(&self, mut mentions: Vec<Mention>) -> Vec<Mention> {
        for clause in &self.clauses {
            for (named, name) in self.names_by_place(clause) {
                let Some((kind, id)) = self.thing_called(&name) else { continue };
                let mention = mentions.iter_mut().find(|mention| mention.to == named.head + 1);
                // What may be meant is told apart later; here it was missed for something that has the bare name.
                let is_missed = |mention: &&mut Mention| {
                    mention.from >= named.from && mention.candidates.iter().all(|known| known.id != id)
                };
                if let Some(mention) = mention.filter(is_missed) {
                    mention.candidates = vec![Candidate { id, kind, agrees: true }];
                }
            }
        }
        mentions
    }

    /// The phrases of a clause with a place right behind them, and what each would be called after it.
    fn names_by_place(&self, clause: &Clause) -> Vec<(Phrase, String)> {
        let phrases = coin::phrases(self, clause);
        let mut names = Vec::new();
        for (named, place) in phrases.iter().zip(phrases.iter().skip(1)) {
            let Lead::After(lead) = &place.lead else { continue };
            // "The flow and return *valves* of boiler 1 and boiler 2" are several.
            let is_one = !named.plural() && !is_plural(self.text(named.head));
            if named.lead != Lead::Direct || !is_one || place.start > named.head + 3 {
                continue;
            }
            let (own, place) = (named.name(), place.name());
            if WHERE.contains(&lead.as_str()) {
                names.push((named.clone(), format!("{own} {lead} the {place}")));
            } else if LEADS.contains(&lead.as_str()) {
                names.push((named.clone(), format!("{place} {own}")));
            }
        }
        names
    }

    fn thing_called(&self, name: &str) -> Option<(crate::model::ThingKind, crate::model::Id)> {
        let mut all = self.map.things();
        let known = all.find(|(_, _, known, _)| known.eq_ignore_ascii_case(name));
        known.map(|(kind, id, ..)| (kind, id.clone()))
    }
}
