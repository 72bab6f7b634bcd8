//! All that is found, in one list, and the way from it to each place and back.

use super::attention::Focus;
use super::editor_store::EditorStore;
use super::judged::{Counts, Judged};
use super::next_finding::{ShownOn, Spot};
use leptos::prelude::*;
use procedures_schema::check::{Finding, Level};
use procedures_schema::model::Id;

/// The list of all that is found: whether it is open, and from which finding somebody went.
#[derive(Clone, Copy)]
pub struct AllFindings {
    is_open: RwSignal<bool>,
    gone_to: RwSignal<Option<Found>>,
}

impl Default for AllFindings {
    fn default() -> Self {
        Self { is_open: RwSignal::new(false), gone_to: RwSignal::new(None) }
    }
}

/// One finding as the list tells it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Found {
    /// How serious it is.
    pub level: Level,
    /// Where it is found: `Step 12`.
    pub place: String,
    /// What is wrong.
    pub title: String,
    /// What to do, in short.
    pub remedy: Option<String>,
    /// Where its link leads.
    leads: Leads,
}

/// Where the link of a finding leads.
#[derive(Clone, Debug, PartialEq, Eq)]
enum Leads {
    Step(Id),
    Map(Spot),
    End,
}

/// Findings of one level, in the order of the steps.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Group {
    /// Their level.
    pub level: Level,
    /// How many there are, as beside the stamp: `3 doubts`.
    pub heading: String,
    /// The findings.
    pub found: Vec<Found>,
}

impl Found {
    fn of(judged: &Judged, finding: &Finding) -> Self {
        let step = finding.step.as_ref().and_then(|step| Some((step, judged.document.position(step)?)));
        let (place, leads) = match (step, Spot::of(finding)) {
            (Some((step, at)), _) => (format!("Step {}", at + 1), Leads::Step(step.clone())),
            (None, Some(spot)) => ("Appliance".to_owned(), Leads::Map(spot)),
            (None, None) => ("At the end".to_owned(), Leads::End),
        };
        let (title, remedy) = (finding.title.clone(), finding.remedy.first().cloned());
        Self { level: finding.level, place, title, remedy, leads }
    }
}

/// All that is found, what rejects first; levels of which nothing is found are left out.
pub fn groups(judged: &Judged) -> Vec<Group> {
    let counts = judged.counts();
    let group = |level: Level| {
        let of_level = judged.report.findings.iter().filter(|finding| finding.level == level);
        let found: Vec<Found> = of_level.map(|finding| Found::of(judged, finding)).collect();
        (!found.is_empty()).then(|| Group { level, heading: heading(counts, level), found })
    };
    [Level::Reject, Level::Warn, Level::Advise].into_iter().filter_map(group).collect()
}

fn heading(counts: Counts, level: Level) -> String {
    match level {
        Level::Reject => format!("{} to mend", counts.n_to_mend),
        Level::Warn => Counts { n_advice: 0, ..counts }.beside_the_stamp(),
        Level::Advise => Counts { n_doubts: 0, ..counts }.beside_the_stamp(),
    }
}

impl EditorStore {
    /// Whether the list is open.
    pub fn lists_findings(self) -> RwSignal<bool> {
        self.parts().all_findings.is_open
    }

    /// All that is found, once typing has paused. Asked for only while the list is open.
    pub fn all_findings(self) -> Memo<Vec<Group>> {
        let settled = self.settled();
        Memo::new(move |_| settled.with(|judged| groups(judged)))
    }

    /// Whether somebody went from a finding to its place last.
    pub fn was_gone_to(self, found: &Found) -> bool {
        self.parts().all_findings.gone_to.with(|gone| gone.as_ref() == Some(found))
    }

    /// Goes to the place of a finding of the list; says on which screen it is.
    pub fn go_to_found(self, found: &Found) -> ShownOn {
        self.parts().all_findings.gone_to.set(Some(found.clone()));
        match &found.leads {
            Leads::Map(spot) => {
                self.spot().set(Some(spot.clone()));
                return ShownOn::Appliance;
            }
            Leads::Step(step) => self.select_found(step),
            Leads::End => self.look_at(Focus::End),
        }
        ShownOn::Write
    }
}
