//! How a thing stands at a place of a run, in a few words: for whoever has to say which of several is meant.

use crate::model::{ApplianceMap, Handle, Id};
use crate::simulate::{ConnectionState, Place, Trace, Whereabouts};

/// How a thing stands there: `open here`, `2 of 4 undone here`, `off here`. None for what has no position, such as a
/// circuit, and for what is not on the map.
pub fn how_it_stands(trace: &Trace, place: Place, id: &Id) -> Option<String> {
    let plant = trace.plant();
    if let Some(cell) = plant.isolator_named(id) {
        let state = trace.at(&cell, place)?;
        let position = position(&plant.isolator(cell)?.handle, state.open);
        let locked = if state.locked { " and locked" } else { "" };
        return Some(format!("{position}{locked} here"));
    }
    if let Some(cell) = plant.connection_named(id) {
        return trace.at(&cell, place).map(connection);
    }
    if let Some(cell) = plant.component_named(id) {
        let words = match trace.at(&cell, place)?.whereabouts {
            Whereabouts::Fitted => "in its place here",
            Whereabouts::Aside => "moved aside here",
            Whereabouts::Off => "off here",
            Whereabouts::Discarded => "gone for good here",
        };
        return Some(words.to_owned());
    }
    let cell = plant.temporary_named(id)?;
    let is_there = trace.at(&cell, place)?.in_place;
    Some(if is_there { "in place here" } else { "not in place here" }.to_owned())
}

/// The same for whoever has to say which is meant: an item that is also called after where it was put says so first, or
/// "cloth" and "cloth 2" would tell nobody which lies over the pump.
pub fn how_it_stands_apart(map: &ApplianceMap, trace: &Trace, place: Place, id: &Id) -> Option<String> {
    let stands = how_it_stands(trace, place, id)?;
    let item = map.temporary.iter().find(|item| item.id == *id);
    let also = item.and_then(|item| item.aliases.first());
    Some(also.map_or_else(|| stands.clone(), |also| format!("{also}, {stands}")))
}

/// How an isolator stands, as people say it of its handle: to whoever thinks of a switch, "closed" means on.
pub fn position(handle: &Handle, is_open: bool) -> &'static str {
    match (handle, is_open) {
        (Handle::Switch, true) => "on",
        (Handle::Switch, false) => "off",
        (Handle::Plug | Handle::Fuse, true) => "in",
        (Handle::Plug | Handle::Fuse, false) => "out",
        (_, true) => "open",
        (_, false) => "closed",
    }
}

fn connection(state: &ConnectionState) -> String {
    let (count, open, slack) = (state.count(), state.open, state.slack);
    match (open, slack) {
        (0, 0) => "made here".to_owned(),
        (open, _) if open == count => "undone here".to_owned(),
        (0, slack) if slack == count => "slack here".to_owned(),
        (0, slack) => format!("{slack} of {count} slack here"),
        (open, _) => format!("{open} of {count} undone here"),
    }
}

#[cfg(test)]
mod tests {
    use super::{how_it_stands, how_it_stands_apart, position};
    use crate::model::{Handle, Id, Procedure, Verb};
    use crate::simulate::{Place, Run, simulate};

    fn demo() -> Procedure {
        let text = include_bytes!("../../../public/demo/circulation-pump.putback.json");
        crate::format::read(text).expect("the demo reads")
    }

    #[test]
    fn things_stand_otherwise_before_and_behind_the_step_that_touches_them() {
        let procedure = demo();
        let trace = simulate(&procedure, &Run::of(&procedure));
        let behind = |verb: &Verb| {
            let does = |step: &crate::model::Step| {
                step.actions
                    .iter()
                    .find(|action| action.verb == *verb)
                    .and_then(|action| action.on.first().cloned())
            };
            let (at, id) = procedure
                .steps
                .iter()
                .enumerate()
                .find_map(|(at, step)| Some((at, does(step)?)))
                .expect("one");
            let stands = |place| how_it_stands(&trace, place, &id).expect("it stands somehow");
            (stands(Place::START), stands(Place::after(at)))
        };
        let pair = |before: &str, after: &str| (before.to_owned(), after.to_owned());
        assert_eq!(behind(&Verb::Undo), pair("made here", "undone here"));
        assert_eq!(behind(&Verb::Remove), pair("in its place here", "off here"));
        assert_eq!(behind(&Verb::Place), pair("not in place here", "in place here"));
        assert_eq!(behind(&Verb::Isolate), pair("on here", "off and locked here"));
    }

    #[test]
    fn a_switch_is_off_and_a_valve_closed() {
        let pair = |handle| (position(&handle, true), position(&handle, false));
        assert_eq!(pair(Handle::Switch), ("on", "off"));
        assert_eq!(pair(Handle::Plug), ("in", "out"));
        assert_eq!(pair(Handle::Fuse), ("in", "out"));
        assert_eq!(pair(Handle::Valve), ("open", "closed"));
    }

    #[test]
    fn what_has_no_position_stands_nowhere() {
        let procedure = demo();
        let trace = simulate(&procedure, &Run::of(&procedure));
        let circuit = procedure.map.circuits[0].id.clone();
        assert_eq!(how_it_stands(&trace, Place::START, &circuit), None);
        assert_eq!(how_it_stands(&trace, Place::START, &Id::new("nothing")), None);
    }

    #[test]
    fn items_of_one_name_are_told_apart_by_where_they_are() {
        let mut procedure = demo();
        let trace = simulate(&procedure, &Run::of(&procedure));
        let id = procedure.map.temporary.first().expect("an item").id.clone();
        let told = |procedure: &Procedure| {
            how_it_stands_apart(&procedure.map, &trace, Place::START, &id).expect("it stands somehow")
        };
        let item = |procedure: &mut Procedure, aliases: &[&str]| {
            let map = std::sync::Arc::make_mut(&mut procedure.map);
            let item = map.temporary.first_mut().expect("an item");
            item.aliases = aliases.iter().map(|alias| (*alias).to_owned()).collect();
        };
        item(&mut procedure, &[]);
        assert_eq!(told(&procedure), "not in place here");
        item(&mut procedure, &["pump cloth"]);
        assert_eq!(told(&procedure), "pump cloth, not in place here");
    }
}
