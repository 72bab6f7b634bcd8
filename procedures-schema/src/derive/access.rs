//! What stands before a component or a connection: what has to be off, or open, before it can be reached.
//!
//! It follows the same fields as the simulator's question whether something can be reached. It knows no state:
//! what is off already at some step still stands here.

use crate::model::{ApplianceMap, Component, Id};

/// What stands before a component or a connection, the outermost first; nothing for other things. For a
/// component its joints and fixings come last, those that are opened only to drain or test left out.
pub fn stands_before(map: &ApplianceMap, thing: &Id) -> Vec<Id> {
    let mut way = Vec::new();
    if let Some(component) = component(map, thing) {
        guards(map, component, &mut vec![thing.clone()], &mut way);
        if let Some(carrier) = &component.carried_by {
            push(&mut way, carrier);
        }
        for connection in map.connections.iter().filter(|k| k.port.is_none() && k.joins.contains(thing)) {
            if component.held_in.as_ref() != Some(&connection.id) {
                push(&mut way, &connection.id);
            }
        }
        if let Some(held_in) = &component.held_in {
            push(&mut way, held_in);
        }
    } else if let Some(connection) = map.connection(thing) {
        if let Some(said) = &connection.reached_after {
            for id in said {
                push(&mut way, id);
            }
        } else {
            for part in connection.joins.iter().filter_map(|id| component(map, id)) {
                guards(map, part, &mut vec![part.id.clone()], &mut way);
            }
            // What the connection itself holds cannot stand in its way.
            way.retain(|id| !connection.joins.contains(id));
        }
    }
    way.retain(|id| id != thing);
    way
}

/// What a component is behind, and what that is behind, the outermost first.
fn guards(map: &ApplianceMap, inner: &Component, seen: &mut Vec<Id>, way: &mut Vec<Id>) {
    for id in &inner.behind {
        // A circle of covers has no outermost one; each is told once.
        if seen.contains(id) {
            continue;
        }
        seen.push(id.clone());
        if let Some(guard) = component(map, id) {
            guards(map, guard, seen, way);
            push(way, id);
        }
    }
}

fn component<'m>(map: &'m ApplianceMap, id: &Id) -> Option<&'m Component> {
    map.components.iter().find(|known| known.id == *id)
}

fn push(way: &mut Vec<Id>, id: &Id) {
    if !way.contains(id) {
        way.push(id.clone());
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::{Connection, Family, Port};

    fn map() -> ApplianceMap {
        let part = |id: &str, behind: &[&str]| {
            let mut part = Component::new(id.into(), id);
            part.behind = behind.iter().map(|id| Id::new(id)).collect();
            part
        };
        let joint = |id: &str, joins: &[&str]| {
            let mut joint = Connection::new(id.into(), id, Family::Joint);
            joint.joins = joins.iter().map(|id| Id::new(id)).collect();
            joint
        };
        let mut disc = part("disc", &[]);
        disc.held_in = Some("union".into());
        let mut tap = joint("tap", &["valve"]);
        tap.port = Some(Port::Drain);
        let mut plug = joint("plug", &["valve"]);
        plug.reached_after = Some(vec!["shell".into()]);
        ApplianceMap {
            components: vec![
                part("valve", &["guard", "shell"]),
                part("guard", &["shell"]),
                part("shell", &[]),
                part("one", &["other"]),
                part("other", &["one"]),
                disc,
            ],
            connections: vec![joint("union", &["valve", "guard"]), joint("nut", &["valve"]), tap, plug],
            ..ApplianceMap::default()
        }
    }

    fn before(thing: &str) -> Vec<String> {
        stands_before(&map(), &thing.into()).iter().map(ToString::to_string).collect()
    }

    #[test]
    fn the_outermost_comes_first_and_each_once() {
        assert_eq!(before("valve"), ["shell", "guard", "union", "nut", "plug"]);
        assert_eq!(before("nut"), ["shell", "guard"]);
        assert_eq!(before("shell"), Vec::<String>::new());
    }

    #[test]
    fn what_a_connection_holds_is_not_before_it_and_what_is_said_holds() {
        assert_eq!(before("union"), ["shell"]);
        assert_eq!(before("plug"), ["shell"]);
        assert_eq!(before("disc"), ["union"]);
    }

    #[test]
    fn circles_and_unknown_things_end() {
        assert_eq!(before("one"), ["other"]);
        assert_eq!(before("nobody"), Vec::<String>::new());
    }
}
