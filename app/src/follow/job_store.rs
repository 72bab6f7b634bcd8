//! The signals of Follow: the job that runs, and whether its last tick is kept.
//!
//! Every change of a job is one strict transaction; the signal changes only after it has completed, so what
//! the screen shows as done is done also for the device.

use super::found_here::Typed;
use super::job::{Acknowledged, Answered, Job, Progress, Taken, Waiting};
use super::moment::Moment;
use super::standing::Standing;
use super::task::{Task, next_task};
use crate::state::clock;
use crate::state::ids::RandomIds;
use crate::storage::database::{self, Durability, Entry, Store, StoreError};
use crate::storage::found;
use leptos::leptos_dom::helpers::set_timeout_with_handle;
use leptos::prelude::*;
use leptos::task::spawn_local;
use procedures_schema::format;
use procedures_schema::model::{FoundOnJob, Id, IdSource, Procedure};
use std::sync::Arc;
use std::time::Duration;

/// After which a write counts as slow and is said not to be kept.
const SLOW: Duration = Duration::from_millis(300);
/// Away for longer than this, a person is told where they were, and what was proved has to be proved again.
const LONG_AWAY_MS: u64 = 5 * 60 * 1000;
/// The key in the store of facts that names the running job.
const RUNNING: &str = "running-job";

/// Whether the last change is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Storing {
    /// Everything is kept.
    Kept,
    /// A write is under way.
    Under,
    /// It takes long.
    Slow,
    /// It failed, for this reason.
    Failed(String),
}

/// A job with the procedure as it was when the job began, and what has been found out on it.
#[derive(Clone)]
pub(super) struct Running {
    pub(super) job: Job,
    pub(super) procedure: Arc<Procedure>,
    pub(super) found: FoundOnJob,
}

/// The state of Follow.
#[derive(Clone, Copy)]
pub struct JobStore {
    document: Memo<Arc<Procedure>>,
    standing: Memo<Standing>,
    pub(super) running: RwSignal<Option<Arc<Running>>>,
    pub(super) typed: Typed,
    moment: Memo<Arc<Moment>>,
    is_loaded: RwSignal<bool>,
    is_resuming: RwSignal<bool>,
    all_the_same: RwSignal<Option<String>>,
    storing: RwSignal<Storing>,
    now: RwSignal<u64>,
}

impl JobStore {
    /// The state of Follow on the document of the editor; looks for a job that was running.
    pub fn new(document: Memo<Arc<Procedure>>, standing: Memo<Standing>) -> Self {
        let running: RwSignal<Option<Arc<Running>>> = RwSignal::new(None);
        let moment = Memo::new_with_compare(
            move |_| {
                let running = running.get();
                let procedure =
                    running.as_ref().map_or_else(|| document.get(), |running| running.procedure.clone());
                Arc::new(Moment::of(procedure, running.as_ref().map(|running| &running.job)))
            },
            |before: Option<&Arc<Moment>>, now| {
                !before.zip(now).is_some_and(|(before, now)| Arc::ptr_eq(before, now))
            },
        );
        let store = Self {
            document,
            standing,
            running,
            typed: Typed::default(),
            moment,
            is_loaded: RwSignal::new(false),
            is_resuming: RwSignal::new(false),
            all_the_same: RwSignal::new(None),
            storing: RwSignal::new(Storing::Kept),
            now: RwSignal::new(clock::now_ms()),
        };
        spawn_local(store.load());
        store.watch_absence();
        store
    }

    // What views read.

    /// What is so now.
    pub fn moment(self) -> Memo<Arc<Moment>> {
        self.moment
    }

    /// The verdict on the document of the editor.
    pub fn standing(self) -> Memo<Standing> {
        self.standing
    }

    /// Whether the device has been asked for a running job.
    pub fn is_loaded(self) -> ReadSignal<bool> {
        self.is_loaded.read_only()
    }

    /// Whether a person has to be told where they were.
    pub fn is_resuming(self) -> ReadSignal<bool> {
        self.is_resuming.read_only()
    }

    /// Whether the last change is kept.
    pub fn storing(self) -> ReadSignal<Storing> {
        self.storing.read_only()
    }

    /// The clock, by the second while the screen is shown.
    pub fn now(self) -> RwSignal<u64> {
        self.now
    }

    /// Whether a job is running.
    pub fn is_running(self) -> bool {
        self.running.with(Option::is_some)
    }

    /// Who goes on with a rejected procedure, and why; asked before such a job.
    pub fn all_the_same(self) -> RwSignal<Option<String>> {
        self.all_the_same
    }

    /// Whether the job follows another procedure than the editor shows.
    pub fn follows_a_copy(self) -> bool {
        let document = self.document.get();
        self.running.with(|running| running.as_ref().is_some_and(|running| *running.procedure != *document))
    }

    // Intents.

    /// Ticks what is to be done now: the step, or the proof that is taken again.
    pub fn done(self) {
        let moment = self.moment.get_untracked();
        if let Some(due) = moment.proof() {
            let (step, action) = (due.step.id.clone(), due.action);
            self.change(move |job| job.proved_again(step, action, clock::now_ms()));
        } else if let Some(step) = moment.next_step() {
            let step = step.id.clone();
            self.change(move |job| job.ticked(step, clock::now_ms()));
        }
    }

    /// Answers a question; that also ticks a step which asks for nothing else.
    pub fn answer(self, question: Id, answer: String) {
        let moment = self.moment.get_untracked();
        let at_ms = clock::now_ms();
        let given = Answered { question, answer, at_ms };
        let mut progress = moment.progress.clone();
        progress.answers.push(given.clone());
        // A question that says whether the step is done at all leaves the step to be done.
        let step = moment.next_step().filter(|_| moment.question_before().is_none());
        let is_ready = |step: &&Arc<_>| next_task(&moment.procedure, step, &progress, at_ms) == Task::Ready;
        let ticked = step.filter(is_ready).map(|step| step.id.clone());
        self.change(move |mut job| {
            job.progress.answers.push(given);
            match ticked {
                Some(step) => job.ticked(step, at_ms),
                None => job,
            }
        });
    }

    /// Takes the last tick back, or the last answer.
    pub fn untick(self) {
        self.change(Job::unticked);
    }

    /// Acknowledges a message or a hold.
    pub fn acknowledge(self, what: Acknowledged) {
        self.progress(move |progress| progress.acknowledged.push(what));
    }

    /// Writes a reading down.
    pub fn take(self, taken: Taken) {
        self.progress(move |progress| progress.taken.push(taken));
    }

    /// Asks for a reading once more; the value that was out stays in the record.
    pub fn read_again(self, action: usize, reading: usize) {
        self.progress(move |progress| {
            for taken in &mut progress.taken {
                if taken.action == action && taken.reading == reading {
                    taken.is_read_again = true;
                }
            }
        });
    }

    /// Begins a wait.
    pub fn wait(self, action: usize) {
        self.progress(move |progress| progress.waits.push(Waiting { action, from_ms: clock::now_ms() }));
    }

    /// Goes on after having been told where one was.
    pub fn go_on(self) {
        self.is_resuming.set(false);
    }

    /// Keeps what is typed of what was found out.
    pub fn keep_found(self) {
        self.change(|job| job);
    }

    /// Puts the job away; its record stays on the device.
    pub fn put_away(self) {
        let last = self.running.get_untracked().map(|running| self.with_typed(&running));
        self.store(last.map(Arc::new), true, move || {
            self.typed.forget();
            self.running.set(None);
            self.is_resuming.set(false);
            self.all_the_same.set(None);
        });
    }

    fn progress(self, change: impl FnOnce(&mut Progress) + 'static) {
        let is_proof = self.moment.with_untracked(|moment| moment.proof().is_some());
        self.change(move |mut job| {
            change(if is_proof { &mut job.proving } else { &mut job.progress });
            job
        });
    }

    /// Notes that nobody watched until now. It is kept with the next change: until then the times say it again.
    fn note_break(self, running: &Running) {
        let job = running.job.clone().after_break(clock::now_ms());
        self.running.set(Some(Arc::new(Running { job, ..running.clone() })));
    }

    /// Changes the job, or begins one; shows it only when it is kept. One change at a time.
    fn change(self, change: impl FnOnce(Job) -> Job) {
        if matches!(self.storing.get_untracked(), Storing::Under | Storing::Slow) {
            return;
        }
        let running = self.running.get_untracked();
        let begin = || {
            let reason = self.all_the_same.get_untracked();
            Job::new(RandomIds.next_id("job"), clock::now_ms(), reason)
        };
        let running = running.map_or_else(
            || {
                let procedure = self.document.get_untracked();
                Running { job: begin(), found: FoundOnJob::of(&procedure), procedure }
            },
            |running| Running::clone(&running),
        );
        let typed = self.typed.now();
        let next = self.with_typed(&running);
        let next = Arc::new(Running { job: change(next.job), ..next });
        self.store(Some(next.clone()), false, move || {
            self.running.set(Some(next));
            self.typed.kept(&typed);
            self.now.set(clock::now_ms());
        });
    }

    /// Keeps a job, as the running one or as one that is over; then does what has to wait for that.
    fn store(self, job: Option<Arc<Running>>, is_over: bool, then: impl FnOnce() + 'static) {
        self.storing.set(Storing::Under);
        spawn_local(async move {
            let slow = set_timeout_with_handle(move || self.is_slow(), SLOW).ok();
            let outcome = keep(job.as_deref(), is_over).await;
            if let Some(slow) = slow {
                slow.clear();
            }
            match outcome {
                Ok(()) => {
                    then();
                    self.storing.set(Storing::Kept);
                }
                Err(error) => self.storing.set(Storing::Failed(error.to_string())),
            }
        });
    }

    /// Says so, unless the write has been completed meanwhile.
    fn is_slow(self) {
        if self.storing.with_untracked(|storing| *storing == Storing::Under) {
            self.storing.set(Storing::Slow);
        }
    }

    async fn load(self) {
        match running().await {
            Ok(Some(running)) => {
                self.is_resuming.set(true);
                if clock::now_ms().saturating_sub(running.job.last_ms()) > LONG_AWAY_MS {
                    self.note_break(&running);
                } else {
                    self.running.set(Some(Arc::new(running)));
                }
            }
            Ok(None) => {}
            Err(reason) => self.storing.set(Storing::Failed(reason)),
        }
        self.is_loaded.set(true);
    }

    /// Tells a person where they were when the page has been out of sight for long.
    fn watch_absence(self) {
        let hidden_since = StoredValue::new(None::<u64>);
        window_event_listener_untyped("visibilitychange", move |_| {
            let now = clock::now_ms();
            if document().visibility_state() == web_sys::VisibilityState::Hidden {
                hidden_since.set_value(Some(now));
                if !self.typed.now().is_empty() {
                    self.keep_found();
                }
            } else if let Some(since) = hidden_since.try_update_value(Option::take).flatten()
                && now.saturating_sub(since) > LONG_AWAY_MS
                && let Some(running) = self.running.get_untracked()
            {
                self.note_break(&running);
                self.now.set(now);
                self.is_resuming.set(true);
            }
        });
    }
}

/// The key under which the procedure of a job is kept.
fn procedure_key(job: &str) -> String {
    format!("{job} procedure")
}

async fn keep(running: Option<&Running>, is_over: bool) -> Result<(), StoreError> {
    let over = Entry { store: Store::Meta, key: RUNNING, text: None };
    let Some(Running { job, procedure, found }) = running else {
        return database::keep(&[over], Durability::Strict).await;
    };
    // A job is strings, numbers and lists; it always serialises.
    let text = format::write_part(job);
    let id = job.id.as_str();
    let mut entries = vec![Entry { store: Store::Jobs, key: id, text: Some(&text) }];
    let found_key = found::key(procedure.id.as_str(), id);
    let found = (!found.answers.is_empty()).then(|| format::write_found(found));
    entries.push(Entry { store: Store::Jobs, key: &found_key, text: found.as_deref() });
    let key = procedure_key(id);
    // A job begins with its first change, which ticks one step at most; the copy does not change later.
    let copy = (job.ticks.len() <= 1).then(|| format::write(procedure));
    if let Some(copy) = &copy {
        entries.push(Entry { store: Store::Jobs, key: &key, text: Some(copy) });
    }
    if is_over {
        entries.push(over);
    } else if copy.is_some() {
        entries.push(Entry { store: Store::Meta, key: RUNNING, text: Some(id) });
    }
    database::keep(&entries, Durability::Strict).await
}

async fn running() -> Result<Option<Running>, String> {
    let in_words = |error: StoreError| format!("the job on this device cannot be read: {error}");
    let Some(id) = database::kept(Store::Meta, RUNNING).await.map_err(in_words)? else { return Ok(None) };
    let job = database::kept(Store::Jobs, &id).await.map_err(in_words)?;
    let copy = database::kept(Store::Jobs, &procedure_key(&id)).await.map_err(in_words)?;
    let (Some(job), Some(copy)) = (job, copy) else { return Ok(None) };
    let job: Job =
        format::read_part(&job).map_err(|error| format!("the job on this device is damaged: {error}"))?;
    let procedure = format::read(copy.as_bytes())
        .map_err(|error| format!("the job on this device is damaged: {error}"))?;
    let found_key = found::key(procedure.id.as_str(), &id);
    let found = database::kept(Store::Jobs, &found_key).await.map_err(in_words)?;
    let found = found.map_or_else(
        || Ok(FoundOnJob::of(&procedure)),
        |text| {
            format::read_found(text.as_bytes())
                .map_err(|error| format!("what was found out on this job is damaged: {error}"))
        },
    );
    Ok(Some(Running { job, procedure: Arc::new(procedure), found: found? }))
}
