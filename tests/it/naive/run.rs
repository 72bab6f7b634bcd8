//! One way from the first step to the last: the world after each action, copied each time.

use super::world::World;
use super::{hands, media, supplies, testing};
use procedures_schema::model::{Action, ApplianceMap, Id, Mode, Procedure, Verb};
use procedures_schema::simulate::{Lapse, Place};
use procedures_schema::units::{Measured, Unit, convert};
use std::collections::BTreeMap;

/// What happens to a world in one way of one procedure.
pub struct Job<'p> {
    pub procedure: &'p Procedure,
    /// How many minutes a proof of a section holds, if it ages.
    pub lives: &'p BTreeMap<Id, u32>,
    /// The answer given to each question.
    pub way: BTreeMap<Id, String>,
    pub world: World,
    pub now: Place,
    /// Waits that go on while other things are done: before which step they must be over, and in which second.
    running: Vec<(Id, u32)>,
}

impl<'p> Job<'p> {
    pub fn map(&self) -> &'p ApplianceMap {
        &self.procedure.map
    }

    /// The world at each place.
    pub fn run(
        procedure: &'p Procedure,
        lives: &'p BTreeMap<Id, u32>,
        way: BTreeMap<Id, String>,
    ) -> Vec<(Place, World)> {
        let world = World::before(&procedure.map);
        let mut job = Self { procedure, lives, way, world, now: Place::START, running: Vec::new() };
        supplies::look(&mut job);
        let mut seen = vec![(Place::START, job.world.clone())];
        for (i, step) in procedure.steps.iter().enumerate() {
            let done = step.when.iter().all(|asked| {
                !procedure
                    .questions
                    .iter()
                    .any(|q| q.id == asked.question && q.answers.contains(&asked.answer))
                    || job.way.get(&asked.question) == Some(&asked.answer)
            });
            job.now = Place::before(i);
            job.come_to(&step.id);
            for (j, action) in step.actions.iter().enumerate().filter(|_| done) {
                job.now = Place::of_action(i, j);
                job.act(action);
                supplies::look(&mut job);
                seen.push((job.now, job.world.clone()));
            }
            seen.push((Place::after(i), job.world.clone()));
        }
        seen
    }

    fn act(&mut self, action: &Action) {
        match action.verb {
            Verb::ShutDown => self.shut_down(),
            Verb::Start => self.start(action.mode.clone().unwrap_or(Mode::Heat)),
            Verb::Finish => {
                self.world.ended = Some(action.mode.clone().unwrap_or(Mode::InService));
            }
            Verb::Isolate | Verb::Lock | Verb::Restore => supplies::act(self, action),
            Verb::Release | Verb::Prove | Verb::Charge | Verb::Purge => media::act(self, action),
            Verb::Slacken
            | Verb::Undo
            | Verb::Make
            | Verb::Tighten
            | Verb::Remove
            | Verb::MoveAside
            | Verb::Discard
            | Verb::Fit
            | Verb::Clean
            | Verb::Inspect
            | Verb::Photograph
            | Verb::Place
            | Verb::TakeAway
            | Verb::Set
            | Verb::RecordSetting => hands::act(self, action),
            Verb::Test => testing::act(self, action),
            Verb::Wait => self.wait(action),
            Verb::Read => media::take_at(self, action),
            Verb::Tell | Verb::Hold | Verb::Ask | Verb::Other(_) => {}
        }
    }

    fn shut_down(&mut self) {
        if self.world.mode.take().is_some() {
            self.world.mode_since = self.world.second;
        }
    }

    fn start(&mut self, mode: Mode) {
        if self.world.mode.as_ref() != Some(&mode) {
            self.world.mode_since = self.world.second;
        }
        self.world.mode = Some(mode);
        supplies::run_up(self);
    }

    /// Whoever leaves has shown nothing any more; whoever starts a wait and goes on has not waited yet.
    fn wait(&mut self, action: &Action) {
        if action.unattended {
            let all: Vec<Id> = self.world.sections.keys().cloned().collect();
            for section in all {
                self.world.lapse(&section, Lapse::LeftAlone);
            }
        }
        let later = action.until.as_ref().filter(|step| self.is_to_come(step));
        match later {
            Some(step) => {
                self.running.push((step.clone(), self.world.second + seconds(action.duration.as_ref())));
            }
            None => self.pass(action.duration.as_ref()),
        }
    }

    fn is_to_come(&self, id: &Id) -> bool {
        let here = self.now.execution().unwrap_or(0);
        self.procedure.steps.iter().skip(here + 1).any(|step| step.id == *id)
    }

    /// What was started before must be over when the step comes.
    fn come_to(&mut self, step: &Id) {
        let over = self.running.iter().filter(|(until, _)| until == step).map(|(_, over)| *over).max();
        if let Some(over) = over.filter(|over| *over > self.world.second) {
            self.world.second = over;
            media::age(self);
        }
    }

    /// Lets time go by.
    pub fn pass(&mut self, time: Option<&Measured>) {
        self.world.second += seconds(time);
        media::age(self);
    }
}

fn seconds(time: Option<&Measured>) -> u32 {
    let seconds = time.and_then(|time| convert(time.value.value(), &time.unit, &Unit::Second).ok());
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "seconds of a job")]
    let whole = (seconds.unwrap_or(0.0) + 1e-6).floor().max(0.0) as u32;
    whole
}
