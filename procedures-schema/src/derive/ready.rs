//! Ready steps about one thing that was forgotten: a part put back, a setting put back, an item placed, a
//! photograph taken.

use super::sentence::Sentence;
use crate::model::{Action, Id, IdSource, Procedure, Renewal, Stage, Step, Verb};

/// The step that fits a part; none if the map does not know it.
pub fn fitting(procedure: &Procedure, part: &Id, new: bool, ids: &mut dyn IdSource) -> Option<Step> {
    let known = procedure.map.components.iter().find(|known| known.id == *part)?;
    let mut action = Action::new(Verb::Fit, vec![part.clone()]);
    action.part = new.then_some(Renewal::New);
    let name = if new { format!("new {}", known.name) } else { known.name.clone() };
    Some(about(&format!("Fit the {name}"), action, Stage::Refit, ids))
}

/// The step that sets something as it was found; none if the map does not know it.
pub fn setting_back(procedure: &Procedure, setting: &Id, ids: &mut dyn IdSource) -> Option<Step> {
    let known = procedure.map.settings.iter().find(|known| known.id == *setting)?;
    let mut action = Action::new(Verb::Set, vec![setting.clone()]);
    action.to = Some("as found".to_owned());
    Some(about(&format!("Set the {} as found", known.name), action, Stage::Recommission, ids))
}

/// The step that puts a temporary item in its place; none if the map does not know it.
pub fn placing(procedure: &Procedure, item: &Id, ids: &mut dyn IdSource) -> Option<Step> {
    let known = procedure.map.temporary.iter().find(|known| known.id == *item)?;
    let action = Action::new(Verb::Place, vec![item.clone()]);
    Some(about(&format!("Place the {}", known.name), action, Stage::Strip, ids))
}

/// The step that photographs things.
pub fn photographing(procedure: &Procedure, things: &[Id], ids: &mut dyn IdSource) -> Step {
    let names: Vec<String> = things.iter().map(|id| format!("the {}", procedure.map.name_of(id))).collect();
    let action = Action::new(Verb::Photograph, things.to_vec());
    about(&format!("Photograph {}", names.join(" and ")), action, Stage::Strip, ids)
}

fn about(words: &str, action: Action, stage: Stage, ids: &mut dyn IdSource) -> Step {
    Sentence::new().say(words, action).add(".").step(ids.next_id("step"), stage)
}
