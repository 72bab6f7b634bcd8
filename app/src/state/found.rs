//! What was found out on jobs, of this device and from files: offered beside what is open, and taken when somebody says
//! so.

use super::clock;
use super::editor_store::EditorStore;
use crate::storage::found;
use leptos::prelude::*;
use leptos::task::spawn_local;
use procedures_schema::capture::several_found_out;
use procedures_schema::format;
use procedures_schema::model::{Found, FoundOnJob, Id, OpenValue, open_values};

/// What has been brought since the page was opened.
#[derive(Clone, Copy, Default)]
pub(super) struct Brought {
    jobs: RwSignal<Vec<FoundOnJob>>,
    files: RwSignal<Vec<FoundFile>>,
    has_come: RwSignal<bool>,
    is_sheet_wanted: StoredValue<bool>,
}

/// A file of answers.
#[derive(Clone, Debug, PartialEq)]
pub struct FoundFile {
    /// Its name.
    pub name: String,
    /// What it holds.
    pub found: FoundOnJob,
    /// The answers that had no place when it came, and why.
    pub without_place: Vec<(Found, String)>,
}

/// An answer that is offered.
#[derive(Clone, Debug, PartialEq)]
pub struct Offer {
    /// The answer.
    pub found: Found,
    /// Whether it came in a file, and not from a job of this device.
    pub is_from_file: bool,
}

impl Offer {
    /// Where it was found, for people: `Found on a job, today 11:20`.
    pub fn head(&self) -> String {
        let when = clock::day_and_minute(clock::ms_of(&self.found.time), clock::now_ms());
        let by = if self.found.by.is_empty() { String::new() } else { format!(", by {}", self.found.by) };
        let file = if self.is_from_file { ", from a file" } else { "" };
        format!("Found on a job, {when}{by}{file}")
    }
}

impl EditorStore {
    /// Looks for what was found on jobs of this device.
    pub fn look_for_found(self, procedure: Id) {
        spawn_local(async move {
            let texts = found::all(procedure.as_str()).await.map_err(|error| error.to_string());
            let read = texts.and_then(|texts| {
                let read = texts.iter().map(|text| format::read_found(text.as_bytes()));
                read.collect::<Result<Vec<_>, _>>().map_err(|error| error.to_string())
            });
            match read {
                Ok(jobs) => self.parts().brought.jobs.set(jobs),
                Err(reason) => {
                    let words = format!("What was found on jobs of this device cannot be read: {reason}");
                    self.notice().set(Some(words));
                }
            }
        });
    }

    /// Takes in a file of answers; if it is none, or for another procedure, says so and changes nothing.
    pub fn bring_found(self, name: &str, bytes: &[u8]) {
        let document = self.document_now();
        let found = match format::read_found(bytes) {
            Ok(found) => found,
            Err(error) => return self.notice().set(Some(format!("{name} was not taken: {error}"))),
        };
        if found.procedure != document.id {
            let (theirs, mine) = (&found.title, &document.title);
            let words = format!(
                "{name} was not taken: it holds answers found on a job for \"{theirs}\", and \"{mine}\" is \
                 open. Open that procedure first. Nothing was changed."
            );
            return self.notice().set(Some(words));
        }
        self.notice().set(None);
        let lost = |found: &Found| Some((found.clone(), found.place(&document).err()?.to_string()));
        let without_place = found.answers.iter().filter_map(lost).collect();
        let file = FoundFile { name: name.to_owned(), found, without_place };
        self.parts().brought.files.update(|files| {
            files.retain(|known| known.found != file.found);
            files.push(file);
        });
        self.parts().brought.has_come.set(true);
    }

    /// Whether answers have just come, wherever that was.
    pub fn has_brought(self) -> RwSignal<bool> {
        self.parts().brought.has_come
    }

    /// The files of answers to the open procedure.
    pub fn found_files(self) -> Memo<Vec<FoundFile>> {
        let (document, files) = (self.document(), self.parts().brought.files);
        Memo::new(move |_| {
            let id = document.with(|document| document.id.clone());
            files.with(|files| files.iter().filter(|file| file.found.procedure == id).cloned().collect())
        })
    }

    /// What is open and was found on a job, the latest answer to each first.
    pub fn offers(self) -> Memo<Vec<(OpenValue, Vec<Offer>)>> {
        let (document, jobs, files) = (self.document(), self.parts().brought.jobs, self.found_files());
        Memo::new(move |_| {
            let of_jobs = jobs.get().into_iter().map(|job| (job, false));
            let of_files = files.get().into_iter().map(|file| (file.found, true));
            document.with(|document| {
                let all = of_jobs.chain(of_files).filter(|(job, _)| job.procedure == document.id);
                let all = all.flat_map(|(job, is_from_file)| {
                    job.answers.into_iter().map(move |found| Offer { found, is_from_file })
                });
                let mut placed: Vec<_> =
                    all.filter_map(|offer| Some((offer.found.place(document).ok()?, offer))).collect();
                // Stable, so that an answer of this device stands before the same one from a file.
                placed.sort_by_key(|(_, offer)| std::cmp::Reverse(offer.found.time));
                let with_offers = open_values(document).into_iter().map(|open| {
                    let fitting = placed.iter().filter(|(place, _)| *place == open.place);
                    let mut offers: Vec<Offer> = fitting.map(|(_, offer)| offer.clone()).collect();
                    offers.dedup_by(|later, known| {
                        later.found.answer == known.found.answer && later.found.time == known.found.time
                    });
                    (open, offers)
                });
                with_offers.filter(|(_, offers)| !offers.is_empty()).collect()
            })
        })
    }

    /// Puts answers found on a job where they were missing, all as one undo; gives those that are not taken, and why.
    pub fn take_found(self, found: &[Found]) -> Vec<(Found, String)> {
        let several = several_found_out(&self.document_now(), found);
        let label = match (found, several.edits.len()) {
            ([one], _) => format!("find out: {}", one.what),
            (_, 1) => "take one answer found on a job".to_owned(),
            (_, n) => format!("take {n} answers found on a job"),
        };
        let mut refused: Vec<_> =
            several.refused.into_iter().map(|(found, reason)| (found, reason.0)).collect();
        if !several.edits.is_empty() && !self.edit(&several.edits, &label, None) {
            // Why nothing can be written here at all is shown as a notice.
            refused = found.iter().map(|found| (found.clone(), "nothing was changed".to_owned())).collect();
        }
        refused
    }

    /// Notes that the sheet of what is to be found out is to be printed next.
    pub fn want_sheet(self) {
        self.parts().brought.is_sheet_wanted.set_value(true);
    }

    /// Whether it is; asks once.
    pub fn takes_sheet_wanted(self) -> bool {
        let is_wanted = self.parts().brought.is_sheet_wanted;
        let was = is_wanted.get_value();
        is_wanted.set_value(false);
        was
    }
}
