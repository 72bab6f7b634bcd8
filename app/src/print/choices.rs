//! What is printed: the whole, a stage, what to bring or what is to be found out, with lanes or without, on which paper.

use super::paper::Paper;
use crate::components::fields::{ChoiceField, FlagField};
use crate::state::EditorStore;
use leptos::prelude::*;
use procedures_schema::model::Stage;

/// What of a procedure.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub enum Part {
    /// Everything: what to bring, the steps, what is to be found out.
    #[default]
    Whole,
    /// The steps of one stage.
    Stage(Stage),
    /// What to bring.
    Kit,
    /// What is still to be found out, with room for the answers.
    Later,
}

/// What is chosen, as long as the screen is shown.
#[derive(Clone, Copy)]
pub struct Choices {
    /// What of the procedure.
    pub part: RwSignal<Part>,
    /// Whether lanes stand beside the steps.
    pub has_lanes: RwSignal<bool>,
    /// The paper.
    pub paper: RwSignal<Paper>,
}

impl Choices {
    /// Everything with lanes, or the sheet that was asked for, on the paper of the country.
    pub fn of(store: EditorStore) -> Self {
        let paper = store.document().with_untracked(|document| Paper::of_country(document.country.as_ref()));
        let part = if store.takes_sheet_wanted() { Part::Later } else { Part::default() };
        Self { part: RwSignal::new(part), has_lanes: RwSignal::new(true), paper: RwSignal::new(paper) }
    }
}

impl Part {
    /// What it is called among the choices.
    fn name(&self) -> String {
        match self {
            Self::Whole => "everything".to_owned(),
            Self::Stage(stage) => format!("only {}", stage.word()),
            Self::Kit => "only what to bring".to_owned(),
            Self::Later => "only what is to be found out".to_owned(),
        }
    }

    /// What can be printed of a procedure with these stages.
    fn all(stages: &[Option<Stage>]) -> Vec<Self> {
        let mut parts = vec![Self::Whole];
        for stage in stages.iter().flatten() {
            let part = Self::Stage(stage.clone());
            if !parts.contains(&part) {
                parts.push(part);
            }
        }
        parts.extend([Self::Kit, Self::Later]);
        parts
    }
}

/// The fields.
#[component]
pub fn ChoiceFields(
    /// The editor's state.
    store: EditorStore,
    /// What they choose.
    choices: Choices,
) -> impl IntoView {
    let Choices { part, has_lanes, paper } = choices;
    let parts = Signal::derive(move || store.stages().with(|stages| Part::all(stages)));
    let names = Signal::derive(move || parts.get().iter().map(|part| (part.name(), part.name())).collect());
    let chosen = Signal::derive(move || part.with(Part::name));
    let choose = Callback::new(move |name: String| {
        let known = parts.get_untracked().into_iter().find(|part| part.name() == name);
        part.set(known.unwrap_or_default());
    });
    let papers =
        Signal::stored(Paper::ALL.map(|paper| (paper.name().to_owned(), paper.name().to_owned())).to_vec());
    let on = Signal::derive(move || paper.get().name().to_owned());
    let choose_paper = Callback::new(move |name: String| {
        paper.set(Paper::ALL.into_iter().find(|paper| paper.name() == name).unwrap_or(Paper::A4));
    });
    let send = Callback::new(move |is_so| has_lanes.set(is_so));
    view! {
        <ChoiceField label="What" value=chosen options=names send=choose />
        <ChoiceField label="Paper" value=on options=papers send=choose_paper />
        <FlagField label="lanes beside the steps" value=has_lanes.into() send />
    }
}
