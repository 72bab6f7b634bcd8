//! Lines kept one after the other as the page keeps them.

use procedures_schema::capture::{
    Answer, Applied, Beside, Given, Leading, Making, Meaning, Question, apply_leading, leading, line_making,
    stage_between, told_together,
};
use procedures_schema::check::{Report, check};
use procedures_schema::model::{
    Action, CensusAnswer, CensusEntry, CircuitKind, Date, Id, IdSource, Procedure, Stage, Step,
};
use procedures_schema::notation::print;
use procedures_schema::simulate::{Place, Run, simulate};
use procedures_schema::units::Rest;
use std::collections::BTreeMap;
use std::sync::Arc;

/// What became of one line.
pub(super) struct Kept {
    /// The actions that the line added.
    pub(super) actions: Vec<Action>,
    /// Whether it became a safety message.
    pub(super) is_message: bool,
    /// What it said and made, for people.
    pub(super) told: String,
}

/// Identities that are the names themselves; those of steps are numbered.
#[derive(Default)]
struct Names {
    n_steps: u32,
}

impl IdSource for Names {
    fn next_id(&mut self, hint: &str) -> Id {
        if matches!(hint, "step" | "question" | "kit") {
            self.n_steps += 1;
            return Id::new(&format!("{hint}-{}", self.n_steps));
        }
        Id::new(hint)
    }
}

pub(super) struct Typist {
    document: Procedure,
    ids: Names,
}

impl Typist {
    pub(super) fn new() -> Self {
        Self { document: Procedure::new(Id::new("p"), "Invented"), ids: Names::default() }
    }

    /// Says that the job touches circuits of these kinds, as the first questions of the page do.
    pub(super) fn touches(&mut self, kinds: &[CircuitKind]) {
        let touched = |kind: &CircuitKind| CensusEntry {
            kind: kind.clone(),
            answer: CensusAnswer::Touched,
            rest: Rest::default(),
        };
        self.document.census = kinds.iter().map(touched).collect();
    }

    /// All that the steps do, in their order.
    pub(super) fn actions(&self) -> impl Iterator<Item = &Action> {
        self.document.steps.iter().flat_map(|step| &step.actions)
    }

    /// The steps.
    pub(super) fn steps(&self) -> impl Iterator<Item = &Step> {
        self.document.steps.iter().map(|step| &**step)
    }

    /// The words of the steps.
    pub(super) fn words(&self) -> impl Iterator<Item = &str> {
        self.document.steps.iter().map(|step| step.words.as_str())
    }

    /// Keeps a line behind the last.
    pub(super) fn keep(&mut self, line: &str) -> Kept {
        let before = self.document.clone();
        let refused = match leading(line) {
            Some(leading) => match self.keep_leading(&leading) {
                Some(kept) => return kept,
                None => "not held; ",
            },
            None => "",
        };
        let at = self.document.steps.len();
        let waiting = self.document.steps.last().filter(|step| is_waiting(step)).cloned();
        let told = if let Some(step) = waiting {
            let step = Step { words: line.to_owned(), ..(*step).clone() };
            self.document.steps.pop();
            self.read(at - 1, step, false)
        } else {
            let step = Step::new(self.ids.next_id("step"), self.stage(), line);
            self.read(at, step, true)
        };
        self.kept(&before, false, format!("{refused}{told}"))
    }

    /// What the checker says of the whole.
    pub(super) fn report(&self) -> Report {
        check(&self.document, Date::parse("2026-11-28").expect("a date"))
    }

    /// How many findings of which code the whole has.
    pub(super) fn standing(&self) -> String {
        let report = self.report();
        let mut by_code: BTreeMap<String, usize> = BTreeMap::new();
        for finding in &report.findings {
            *by_code.entry(format!("{:?} {}", finding.level, finding.code)).or_default() += 1;
        }
        let counted = by_code.iter().map(|(code, n)| format!("   {n} {code}"));
        let titles = report.findings.iter().filter(|_| std::env::var("PUTBACK_HEARD").is_ok());
        let each = titles.map(|finding| format!("   {:?} {} {}", finding.level, finding.code, finding.title));
        let head = format!("{} findings, {} reject", report.findings.len(), report.n_rejecting());
        [head].into_iter().chain(counted).chain(each).collect::<Vec<_>>().join("\n")
    }

    fn stage(&self) -> Stage {
        self.document.steps.last().map_or(Stage::Prepare, |step| step.stage.clone())
    }

    /// What a line added, and what it added to: the actions that did not stand like that before.
    fn kept(&self, before: &Procedure, is_message: bool, told: String) -> Kept {
        let of = |step: &Step| before.steps.iter().find(|old| old.id == step.id);
        let is_old = |step: &Step, action: &Action| of(step).is_some_and(|old| old.actions.contains(action));
        let steps = self.document.steps.iter();
        let new = steps.flat_map(|step| step.actions.iter().filter(|action| !is_old(step, action)));
        Kept { actions: new.cloned().collect(), is_message, told }
    }

    /// Reads the words of a step that stands last, makes what they name and answers what is asked. The stage of a
    /// new one follows from what it does.
    fn read(&mut self, at: usize, step: Step, is_new: bool) -> String {
        let (mut stage, mut made) = (step.stage.clone(), Vec::new());
        let mut making = self.making(at, &stage, &step.words, &[]);
        let before = self.document.steps.last().map(|step| step.stage.clone());
        let own = stage_between(&making.reading.actions, before.as_ref(), None);
        if is_new && own != stage {
            stage = own;
            making = self.making(at, &stage, &step.words, &[]);
        }
        let mut asked = Vec::new();
        // Eight questions are more than anybody answers.
        // Whether an unheard-of word is a part, nobody is there to say.
        let is_new = |asked: &Question| matches!(asked.choices.as_slice(), [Meaning::New { .. }]);
        for _ in 0..8 {
            made.extend(making.made.iter().map(|made| made.name.clone()));
            let open = making.asked.iter().find(|asked| !asked.choices.is_empty() && !is_new(asked)).cloned();
            self.document.map = making.map.clone();
            let Some(question) = open else { break };
            let answer = Answer { span: question.span, means: question.choices[0].clone() };
            asked.push(question.question);
            making = self.making(at, &stage, &step.words, &[answer]);
        }
        let mut actions = making.reading.actions.clone();
        for doubt in &making.reading.doubts {
            asked.push(format!("{} ({})", doubt.question, doubt.choices.len()));
            for action in doubt.choices[0].actions().cloned() {
                let from = |action: &Action| action.says.iter().map(|span| span.0).min();
                let place = actions.iter().position(|other| from(other) > from(&action));
                actions.insert(place.unwrap_or(actions.len()), action);
            }
        }
        let is_told = |asked: &&Question| {
            let is_left_out = making.reading.left_out.contains(&asked.span);
            let is_open = asked.choices.is_empty() || is_new(asked);
            is_open && asked.thing.is_none() && !is_left_out
        };
        asked.extend(making.asked.iter().filter(is_told).map(|asked| asked.question.clone()));
        let unread = making.reading.unknown.iter().map(|unknown| unknown.span.of(&step.words));
        asked.extend(unread.map(|verb| format!("nothing is read of \"{verb}\"")));
        let left = making.reading.left_out.iter();
        asked.extend(left.map(|left| format!("nothing is read of \"{}\"", left.of(&step.words))));
        let told = format!("{stage:?}: {} [{}] {}", print(&actions), made.join(", "), asked.join(" "));
        self.document.steps.push(Arc::new(Step { stage, actions, ..step }));
        self.tell_together();
        told
    }

    /// What the last step and its neighbours tell together.
    fn tell_together(&mut self) {
        for step in told_together(&self.document, self.document.steps.len() - 1) {
            let at = self.document.position(&step.id).expect("a step of the document");
            self.document.steps[at] = Arc::new(step);
        }
    }

    fn making(&mut self, at: usize, stage: &Stage, words: &str, answers: &[Answer]) -> Making {
        let trace = simulate(&self.document, &Run::of(&self.document));
        let place = at.checked_sub(1).map_or(Place::START, Place::after);
        let before = self.document.steps.get(..at).unwrap_or_default();
        let given = Given { answers, census: &self.document.census, before };
        line_making(words, &self.document.map, &trace, place, stage, given, &mut self.ids)
    }

    /// A leading word adds to the step before; a message begins the next one.
    fn keep_leading(&mut self, leading: &Leading) -> Option<Kept> {
        let before = self.document.clone();
        let last = self.document.steps.last().cloned();
        let begins = matches!(leading, Leading::Message(_) | Leading::Wait { .. } | Leading::Ask { .. });
        let step = match last {
            Some(step) if !begins || is_waiting(&step) => {
                self.document.steps.pop();
                (*step).clone()
            }
            _ => Step::new(self.ids.next_id("step"), self.stage(), ""),
        };
        let applied = apply_leading(&step, leading, &mut self.ids);
        let Ok(Applied { step: kept, further, beside }) = applied else {
            if !begins {
                self.document.steps.push(Arc::new(step));
            }
            return None;
        };
        for one in beside {
            if let Beside::Question(question) = one {
                self.document.questions.push(question);
            }
        }
        self.document.steps.push(Arc::new(kept));
        self.tell_together();
        let mut told = format!("{leading:?}");
        for step in further {
            let at = self.document.steps.len();
            told = [told, self.read(at, step, false)].join("; ");
        }
        Some(self.kept(&before, matches!(leading, Leading::Message(_)), told))
    }
}

fn is_waiting(step: &Step) -> bool {
    step.words.is_empty() && step.actions.is_empty() && !step.messages.is_empty()
}
