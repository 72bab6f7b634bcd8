//! Words of no known verb that somebody has picked a meaning for: what says it, and the phrase that could say it from
//! then on.

use super::clause::Clause;
use super::here::Here;
use super::reader::Reader;
use crate::lexicon::{Amount, Lexicon, Own, tokens};
use crate::model::{Action, ApplianceMap, OwnPhrase, Span, Stage};

/// Words that belong to no phrase.
const NO_PART: &[&str] =
    &["a", "an", "and", "it", "its", "the", "their", "them", "then", "these", "this", "those", "your"];

/// Words behind which it is told where, from where or with what.
const LEADING: &[&str] = &[
    "against", "at", "behind", "by", "for", "from", "into", "of", "onto", "over", "through", "to", "under",
    "with",
];

/// The phrase by which the words of an action that was picked could say its verb in the whole procedure; none, where it
/// would not be found again.
pub fn own_phrase(words: &str, action: &Action, map: &ApplianceMap, stage: &Stage) -> Option<OwnPhrase> {
    action.meant_by.as_ref()?;
    let lexicon = Lexicon::for_language("en")?;
    let phrase = Reader::new(words, map, Here::unknown(), stage, lexicon).phrase_of(action);
    let own = OwnPhrase::new(&phrase, action.verb.clone());
    let said = lexicon.phrases_with(&tokens(words), &Own::of(std::slice::from_ref(&own)));
    Lexicon::is_said_by(&said, &action.says, action).then_some(own)
}

impl Reader<'_> {
    /// The words by which an action is meant if somebody picks it, where nothing is read from them by itself: those
    /// beside its things, or else all.
    pub(super) fn words_of_pick(&self, action: &Action) -> Option<String> {
        let within = |span: &Span| action.says.iter().any(|wide| wide.0 <= span.0 && span.1 <= wide.1);
        let is_here = |clause: &&Clause| clause.phrase.iter().all(|i| within(&self.span(*i, i + 1)));
        if self.clauses.iter().filter(is_here).any(|clause| !self.proposals(clause).is_empty()) {
            return None;
        }
        let phrase = self.phrase_of(action);
        let all = action.says.iter().map(|span| span.of(self.words)).collect::<Vec<_>>().join(" … ");
        [phrase, all].into_iter().find(|words| !words.is_empty())
    }

    /// The words of an action beside its things and their amounts; `…` where others stand between.
    fn phrase_of(&self, action: &Action) -> String {
        let is_named = |i: usize| {
            let around = self.mentions.iter().filter(|mention| (mention.from..mention.to).contains(&i));
            around.flat_map(|mention| &mention.candidates).any(|known| action.on.contains(&known.id))
        };
        let is_part = |i: &usize| {
            let (span, text) = (self.span(*i, i + 1), self.text(*i));
            let is_said = action.says.iter().any(|wide| wide.0 <= span.0 && span.1 <= wide.1);
            let is_amount = matches!(self.lexicon.amount(text), Some(Amount::Exactly(_) | Amount::All));
            is_said && !is_named(*i) && !is_amount && !NO_PART.contains(&text)
        };
        let mut phrase = String::new();
        let mut last = None;
        // "Swivel the lid *over the box*": where to is no part of it.
        let first = (0..self.tokens.len()).find(is_part).unwrap_or(0);
        let leads = |i: &usize| LEADING.contains(&self.text(*i));
        let end = (first + 1..self.tokens.len()).find(leads).unwrap_or(self.tokens.len());
        for i in (0..end).filter(is_part) {
            match last {
                None => {}
                Some(last) if last + 1 == i => phrase.push(' '),
                Some(_) => phrase.push_str(" … "),
            }
            phrase.push_str(self.text(i));
            last = Some(i);
        }
        phrase
    }
}
