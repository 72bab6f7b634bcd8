//! Verbs that need no thing: start, shut down, finish, wait, read, test, photograph, tell, hold.

use super::clause::Clause;
use super::coin::{self, Lead};
use super::mention::Mention;
use super::reader::{Proposal, Reader};
use super::section::reading;
use crate::lexicon::Break;
use crate::model::{Action, Family, Id, Mode, Role, TestKind, ThingKind, Verb};
use crate::simulate::{Loading, test_row};
use crate::units::Quantity as Kind;

/// What a test in words can be about.
const TESTED: &[ThingKind] = &[ThingKind::Connection, ThingKind::Component, ThingKind::Section];

impl Reader<'_> {
    /// Reads a clause as the first of its verbs that needs no thing and finds what it does need.
    pub(super) fn without_things(&self, clause: &Clause) -> Option<Proposal> {
        const ORDER: &[Verb] = &[
            Verb::Test,
            Verb::ShutDown,
            Verb::Start,
            Verb::Finish,
            Verb::Wait,
            Verb::Read,
            Verb::Photograph,
            Verb::Tell,
            Verb::Hold,
        ];
        ORDER.iter().filter(|verb| clause.means.contains(verb)).find_map(|verb| self.read_as(clause, verb))
    }

    /// "Note the pressure and the throttle setting": what is read, beside the setting that is recorded.
    pub(super) fn read_beside(&self, clause: &Clause, best: Option<&Proposal>) -> Option<Proposal> {
        let records = best.filter(|best| best.action.verb == Verb::RecordSetting)?;
        let read = self.read_as(clause, &Verb::Read).filter(|_| clause.means.contains(&Verb::Read))?;
        let value = ["pressure", "temperature", "voltage", "current", "level", "flow", "charge"];
        let apart = (clause.verb()..clause.to).any(|i| {
            value.contains(&self.text(i)) && !records.said_by.contains(&i) && self.text(i + 1) != "setting"
        });
        let names_it = |i: usize| {
            self.text(i) == "setting" || self.text(i + 1) == "setting" || self.text(i + 2) == "setting"
        };
        let first = (clause.verb()..clause.to).find(|i| value.contains(&self.text(*i)));
        (apart && first.is_some_and(|i| !names_it(i))).then_some(read)
    }

    /// "Check *the water temperature* at the tap (55 to 60 °C)": a value, and no look at the tap.
    pub(super) fn checked_value(&self, clause: &Clause) -> Option<Proposal> {
        let read = self.read_as(clause, &Verb::Read).filter(|_| clause.means.contains(&Verb::Read))?;
        let looks = clause.means.contains(&Verb::Inspect) && clause.phrase.len() == 1;
        let all = coin::phrases(self, clause);
        let object = all.iter().find(|phrase| phrase.from > clause.verb())?;
        let is_value = matches!(
            &*object.head_word(),
            "current" | "flow" | "level" | "pressure" | "temperature" | "voltage"
        );
        let has_limits = read.action.readings.iter().any(|reading| reading.limits.is_some());
        (looks && is_value && object.lead == Lead::Direct && has_limits).then_some(read)
    }

    /// "Start *the other one*", "stop *the second one*".
    fn names_another_one(&self, clause: &Clause) -> bool {
        let behind = clause.phrase.iter().max().map_or(clause.verb(), |last| last + 1);
        let at = [clause.verb() + 1, behind].into_iter().find(|at| self.text(*at) == "the");
        at.is_some_and(|at| self.text(at + 2) == "one")
    }

    fn read_as(&self, clause: &Clause, verb: &Verb) -> Option<Proposal> {
        let mut action = Action::new(verb.clone(), Vec::new());
        let mut said_by = clause.phrase.clone();
        match verb {
            Verb::ShutDown if !self.here.running => return None,
            // "Hold the pipe with a second spanner" waits for nobody.
            Verb::Hold if clause.phrase.len() < 2 && !self.holds_for_somebody(clause) => return None,
            Verb::ShutDown | Verb::Start if !self.is_of_appliance(clause) || self.is_of_supply(clause) => {
                return None;
            }
            // "Start *the other one*": which, nobody can say.
            Verb::ShutDown | Verb::Start if self.names_another_one(clause) => return None,
            // "Bring *them* up finger tight": nuts are no appliance.
            Verb::Start if self.object_pronoun(clause).is_some_and(|it| !self.is_pronoun(it)) => {
                return None;
            }
            // "Open the drain cock and run *it* till it stops."
            Verb::Start if self.object_pronoun(clause).is_some() && self.last_is_worked() => return None,
            Verb::ShutDown => {}
            Verb::Start => action.mode = self.mode(clause),
            Verb::Finish => {
                let safe = self.has(clause, &["safe"]);
                action.mode = Some(if safe { Mode::LeftSafe } else { Mode::InService });
            }
            Verb::Wait => {
                let time = self.quantities(clause).find(|quantity| quantity.range(Kind::Time).is_some());
                action.unattended = self.has(clause, &["overnight", "unattended"]);
                action.duration = time.and_then(|quantity| quantity.measured(Kind::Time));
                said_by.extend(time.into_iter().flat_map(|quantity| quantity.from..quantity.to));
                if action.duration.is_none() && !action.unattended {
                    return None;
                }
            }
            Verb::Test => self.test(clause, &mut action, &mut said_by)?,
            Verb::Read => self.read_value(clause, &mut action, &mut said_by)?,
            Verb::Photograph => action.text = self.photographed(clause),
            _ => action.text = Some(self.object_text(clause)?),
        }
        Some(Proposal { action, choices: Vec::new(), doubtful: None, possible: true, said_by })
    }

    /// "Hold for the inspector", not "hold the pipe" nor "holding against the body with a second spanner".
    fn holds_for_somebody(&self, clause: &Clause) -> bool {
        let leads = matches!(self.text(clause.verb() + 1), "for" | "here" | "till" | "until");
        leads && self.text(clause.verb()) == "hold" && !self.acts_on_a_thing(clause)
    }

    /// Whether what the line was about last is opened, shut or put somewhere, and does not run.
    fn last_is_worked(&self) -> bool {
        const WORKED: &[ThingKind] = &[
            ThingKind::Circuit,
            ThingKind::Connection,
            ThingKind::Isolator,
            ThingKind::Section,
            ThingKind::Temporary,
        ];
        !self.last.is_empty() && self.last.iter().all(|last| WORKED.contains(&last.kind))
    }

    /// "Draw hot water at 10 l/min": whoever draws it starts the appliance.
    pub(super) fn started_by_drawing(&self, clause: &Clause) -> Option<Proposal> {
        let mode = Some(Mode::HotWater).filter(|_| self.draws_hot_water(clause))?;
        let action = Action { mode: Some(mode), ..Action::new(Verb::Start, Vec::new()) };
        let said_by = clause.phrase.clone();
        Some(Proposal { action, choices: Vec::new(), doubtful: None, possible: true, said_by })
    }

    /// The mode in which the appliance is started.
    fn mode(&self, clause: &Clause) -> Option<Mode> {
        let is_unit =
            |i: usize| self.quantities(clause).any(|quantity| (quantity.from..quantity.to).contains(&i));
        let modes = [
            (&["maximum", "max", "full"][..], Mode::Max),
            (&["minimum", "min", "lowest"], Mode::Min),
            (&["cooling"], Mode::Cool),
            (&["heating"], Mode::Heat),
            (&["load"], Mode::Load),
        ];
        if (clause.from..clause.to).any(|i| self.text(i) == "hot" && self.text(i + 1) == "water") {
            return Some(Mode::HotWater);
        }
        // "Lower *than* at full load" only compares.
        let to = (clause.from..clause.to).find(|i| self.text(*i) == "than").unwrap_or(clause.to);
        // "Three minutes *off load*."
        let is_off =
            |i: usize| i.checked_sub(1).is_some_and(|before| matches!(self.text(before), "no" | "off"));
        // "Flame signal *min 70 uA*."
        let is_bound = |i: usize| self.text(i + 1).starts_with(|c: char| c.is_ascii_digit());
        let said = |words: &[&str]| {
            (clause.from..to)
                .find(|i| words.contains(&self.text(*i)) && !is_unit(*i) && !is_off(*i) && !is_bound(*i))
        };
        let [most, least, rest @ ..] = modes.map(|(words, mode)| said(words).map(|at| (at, mode)));
        // Which is said first is meant: "go to minimum, then to full load".
        let rate = most.into_iter().chain(least).min_by_key(|(at, _)| *at);
        rate.or_else(|| rest.into_iter().flatten().next()).map(|(_, mode)| mode)
    }

    fn test(&self, clause: &Clause, action: &mut Action, said_by: &mut Vec<usize>) -> Option<()> {
        action.test = Some(self.test_kind(clause)?);
        let end = self.end_of_sentence(clause);
        // "Close the test point and spray *it* and the nipple."
        if self.object_pronoun(clause).is_some_and(|it| it < end) {
            action.on = self.antecedents(clause, &Verb::Test, &[ThingKind::Connection]);
        }
        let phrases = coin::phrases(self, clause);
        // "The pilot tube *joints*" are those of the tube; "every joint" is none of them alone.
        let is_joint = |i: usize| matches!(self.text(i), "connection" | "connections" | "joint" | "joints");
        let of_all = (clause.from..end)
            .any(|i| is_joint(i) && i > 0 && matches!(self.text(i - 1), "all" | "any" | "each" | "every"));
        let is_tested = |mention: &&Mention| {
            mention.from < end
                && !of_all
                && self.is_listed(clause, mention)
                && !self.is_told(clause, mention.from)
                && (is_joint(mention.to) || !self.is_of_a_name(clause, &phrases, mention))
        };
        for mention in self.mentions_in(clause).filter(is_tested) {
            let Some(meant) = self.meant_by(clause, &Verb::Test, TESTED, mention) else { continue };
            match (self.preposition(mention), meant.ids.as_slice()) {
                (Some("at" | "with"), [only]) => action.at = Some(only.clone()),
                (_, [only]) => action.on.push(only.clone()),
                (_, _) if mention.plural => action.on.extend(meant.ids),
                // "Check *the union* for leaks" where two can leak: which, the words do not say.
                (None, [_, _, ..]) if self.amount(mention).is_none() => return None,
                _ => continue,
            }
            said_by.extend(self.tokens_of(mention));
        }
        // Whoever lifts the only relief device loads all that is behind it, not the device alone.
        let of_relief = |id: &Id| {
            self.map.components.iter().any(|part| part.id == *id && part.role == Some(Role::Relief))
        };
        let reliefs = self.map.components.iter().filter(|part| part.role == Some(Role::Relief)).count();
        let lifts = action.test == Some(TestKind::ReliefLever) && reliefs < 2;
        action.on.retain(|id| !lifts || !of_relief(id));
        // Nothing leaks at a screw or a plug.
        let carries = |id: &Id| self.map.connection(id).is_none_or(|known| known.family == Family::Joint);
        let for_leaks = matches!(
            action.test,
            Some(TestKind::LeakCold | TestKind::LeakFluid | TestKind::LeakHot | TestKind::Tightness)
        );
        action.on.retain(|id| !for_leaks || carries(id));
        let mut seen: Vec<Id> = Vec::new();
        action.on.retain(|id| {
            let new = !seen.contains(id);
            seen.push(id.clone());
            new
        });
        // "While the heating is hot": the state of a leak check is no rate.
        let by_rate =
            action.test.as_ref().and_then(test_row).is_some_and(|row| row.loading == Loading::Running);
        action.mode = self.mode(clause).filter(|_| by_rate);
        if matches!(action.test, Some(TestKind::FillPressure | TestKind::WorkingPressure)) {
            action.readings.extend(self.pressure(clause).map(|limits| reading("pressure", Some(limits))));
        }
        if self.draws_hot_water(clause) {
            let limits =
                self.quantities(clause).find_map(|quantity| quantity.range(Kind::Temperature).cloned());
            action.mode = None;
            action.on.clear();
            action.readings = vec![reading("hot water", limits)];
        }
        Some(())
    }

    /// What is photographed: what the words say, or what is acted on afterwards, "a picture before you unplug *the fan*",
    /// or what the line was about last.
    fn photographed(&self, clause: &Clause) -> Option<String> {
        if let Some(said) = self.object_text(clause) {
            return Some(said);
        }
        let behind = clause.phrase.last().map_or(clause.verb(), |last| last + 1);
        let ends = |i: &usize| self.tokens.get(*i).is_none_or(|token| token.before != Break::None);
        let end = (behind + 1..self.tokens.len()).find(ends).unwrap_or(self.tokens.len());
        let is_article = |i: &usize| matches!(self.text(*i), "a" | "an" | "both" | "its" | "the" | "your");
        let named = (behind..end).find(is_article).and_then(|article| self.text_from(article + 1, end));
        named.or_else(|| self.last.last().map(|last| self.map.name_of(&last.id).to_owned()))
    }

    /// Whether a figure belongs to a name: "the new 3 bar safety valve", "the 3 A fuse".
    pub(super) fn describes(&self, quantity: &super::quantity::Quantity) -> bool {
        let before = quantity.from.checked_sub(1).map_or("", |i| self.text(i));
        let next = self.tokens.get(quantity.to);
        let goes_on = next.is_some_and(|next| {
            next.before == Break::None
                && self.bracket(quantity.to).is_none()
                && next.text.chars().all(char::is_alphabetic)
        });
        goes_on && matches!(before, "a" | "an" | "new" | "old" | "the")
    }

    /// The words that follow the verb.
    pub(super) fn object_text(&self, clause: &Clause) -> Option<String> {
        let last = clause.phrase.last().copied().unwrap_or(clause.verb());
        // "The customer is told": who, stands before.
        if clause.means == [Verb::Tell] && self.text(clause.verb()) == "told" {
            return None;
        }
        // "Ask *customer* for the history": who is told stands in the phrase.
        if clause.means == [Verb::Tell] && last > clause.verb() && self.text(last) != "of" {
            // "Show the *user* how it runs", "let the *customer* know".
            let know = clause.phrase.iter().find(|i| self.text(**i) == "know");
            let whom = know.map_or(last, |know| know.saturating_sub(1));
            let leads_on = matches!(self.text(last), "word");
            if !leads_on {
                return Some(self.text(whom).to_owned());
            }
        }
        let is_filler = |i: &usize| matches!(self.text(*i), "of" | "the" | "a" | "an" | "with" | "to");
        // "Snap a picture *before*" says when.
        let says_when = |i: &usize| matches!(self.text(*i), "before" | "beforehand" | "first" | "now");
        let from = (last + 1..clause.to).find(|i| !is_filler(i)).filter(|i| !says_when(i))?;
        let tells = |i: &usize| {
            matches!(self.text(*i), "about" | "how" | "that" | "what" | "when" | "where" | "whether")
        };
        // "Tell the lady *she'll* have no heating", "tell the manager *the* unit's going to be out".
        let begins = |i: &usize| {
            let text = self.text(*i);
            let is_subject = matches!(text, "he" | "it" | "she" | "the" | "there" | "they" | "we" | "you");
            let is_contracted = ["'d", "'ll", "'re", "'ve"].iter().any(|end| text.ends_with(end))
                || matches!(text, "it's" | "she's" | "that's" | "there's");
            clause.means == [Verb::Tell] && (is_subject || is_contracted)
        };
        let is_when = |i: &usize| clause.means == [Verb::Photograph] && says_when(i);
        let end = (from + 1..clause.to).find(|i| tells(i) || begins(i) || is_when(i)).unwrap_or(clause.to);
        self.text_from(from, end)
    }
}

pub(super) fn only_id(mention: &Mention) -> Option<Id> {
    match mention.candidates.as_slice() {
        [only] => Some(only.id.clone()),
        _ => None,
    }
}
