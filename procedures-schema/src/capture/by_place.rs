//! A thing that is called after its place, named by the place: "open *the oil cock at the tank*" of a tank oil cock, and not
//! what is called an oil cock alone.

use super::clause::Clause;
use super::coin::{self, Lead, Phrase};
use super::mention::{Candidate, Mention, is_plural, words_of};
use super::reader::Reader;
use super::twins::WHERE;
use crate::model::{Id, ThingKind};

/// What leads to the place that a thing is called after.
const LEADS: &[&str] = &["at", "from", "in", "of", "off", "on"];

impl Reader<'_> {
    /// The mentions, where those with a place behind them stand for what is called after that place.
    pub(super) fn with_called_after_places(&self, mut mentions: Vec<Mention>) -> Vec<Mention> {
        for clause in &self.clauses {
            for (named, name) in self.names_by_place(clause) {
                let Some((kind, id)) = self.thing_called(&name) else { continue };
                let mention = mentions.iter_mut().find(|mention| mention.to == named.head + 1);
                // Two of one noun in one clause are told apart later, unless one was missed for what has the bare name.
                let is_twin = self.is_one_of_two(&named, &coin::phrases(self, clause));
                let is_missed = |mention: &&mut Mention| {
                    mention.from >= named.from
                        && (!is_twin || mention.candidates.iter().all(|known| known.id != id))
                };
                if let Some(mention) = mention.filter(is_missed) {
                    mention.candidates = vec![Candidate { id, kind, agrees: true }];
                }
            }
        }
        mentions
    }

    /// The phrases of a clause with a place right behind them, and what each would be called after it.
    fn names_by_place(&self, clause: &Clause) -> Vec<(Phrase, ByPlace)> {
        let phrases = coin::phrases(self, clause);
        let mut names = Vec::new();
        for (named, place) in phrases.iter().zip(phrases.iter().skip(1)) {
            let Lead::After(lead) = &place.lead else { continue };
            // "The flow and return *valves* of boiler 1 and boiler 2" are several.
            let is_one = !named.plural() && !is_plural(self.text(named.head));
            if named.lead != Lead::Direct || !is_one || place.start > named.head + 3 {
                continue;
            }
            let (own, place) = (words_of(&named.name()), place.name());
            if WHERE.contains(&lead.as_str()) {
                let end = words_of(&format!("{lead} the {place}"));
                names.push((named.clone(), ByPlace { begin: Vec::new(), own, end }));
            } else if LEADS.contains(&lead.as_str()) {
                names.push((named.clone(), ByPlace { begin: words_of(&place), own, end: Vec::new() }));
            }
        }
        names
    }

    /// The only thing that is called so, perhaps by more words: "the cock at the tank" of a tank oil cock.
    fn thing_called(&self, name: &ByPlace) -> Option<(ThingKind, Id)> {
        let is_it = |known: &str| name.may_be_of(known) && name.is_of(&words_of(known));
        let mut all = self.map.things().filter(|(_, _, known, _)| is_it(known));
        let (kind, id, ..) = all.next().filter(|_| all.next().is_none())?;
        Some((kind, id.clone()))
    }
}

/// What a thing is called that is called after its place.
struct ByPlace {
    /// The place, if it stands first: "*tank* oil cock".
    begin: Vec<String>,
    own: Vec<String>,
    /// The place, if it stands last: "oil cock *before the burner*".
    end: Vec<String>,
}

impl ByPlace {
    /// Whether a name ends with a word that begins as its last does: most do not, and need not be cut into words.
    fn may_be_of(&self, name: &str) -> bool {
        let last = self.end.last().or(self.own.last()).map_or("", String::as_str);
        let own = name.rsplit(' ').next().unwrap_or_default();
        own.get(..last.len()).is_none_or(|begin| begin.eq_ignore_ascii_case(last))
    }

    fn is_of(&self, words: &[String]) -> bool {
        let Some(own) =
            words.strip_prefix(self.begin.as_slice()).and_then(|rest| rest.strip_suffix(self.end.as_slice()))
        else {
            return false;
        };
        own.last() == self.own.last() && self.own.iter().all(|word| own.contains(word))
    }
}
