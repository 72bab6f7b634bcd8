//! One line about a thing, for the list.

use procedures_schema::model::{ApplianceMap, Id, Known, SUPPLY, ThingKind};

/// What is known of a thing beside its name.
pub fn describe(map: &ApplianceMap, kind: ThingKind, id: &Id) -> String {
    let parts = match kind {
        ThingKind::Circuit => {
            let circuit = map.circuits.iter().find(|circuit| circuit.id == *id);
            circuit.map(|circuit| vec![circuit.kind.word().to_owned()])
        }
        ThingKind::Section => {
            map.sections().find(|(_, section)| section.id == *id).map(|(circuit, section)| {
                let volume = section.volume.as_ref().map(ToString::to_string);
                let empty = section.normally_empty.then(|| "empty in service".to_owned());
                [Some(format!("of {}", circuit.name)), volume, empty].into_iter().flatten().collect()
            })
        }
        ThingKind::Isolator => map.isolators.iter().find(|i| i.id == *id).map(|isolator| {
            let side = |id: &Id| {
                if id.as_str() == SUPPLY { "supply".to_owned() } else { map.name_of(id).to_owned() }
            };
            let between = format!("between {} and {}", side(&isolator.between.0), side(&isolator.between.1));
            vec![isolator.handle.word().to_owned(), between, isolator.location.clone()]
        }),
        ThingKind::Component => map.components.iter().find(|c| c.id == *id).map(|component| {
            let behind =
                (!component.behind.is_empty()).then(|| format!("behind {}", names(map, &component.behind)));
            let mass = component.mass.as_ref().map(ToString::to_string);
            let role = component.role.as_ref().map(|role| role.word().to_owned());
            [role, behind, mass, Some(component.location.clone())].into_iter().flatten().collect()
        }),
        ThingKind::Connection => Some(connection(map, id)),
        ThingKind::Seal => map.seals.iter().find(|seal| seal.id == *id).map(|seal| {
            let known = |value: &Option<Known<String>>| match value {
                Some(Known::Value(text)) => text.clone(),
                Some(Known::Later { later, .. }) => format!("later: {later}"),
                None => String::new(),
            };
            vec![seal.policy.word().to_owned(), known(&seal.size), seal.material.clone(), known(&seal.number)]
        }),
        ThingKind::Temporary => map.temporary.iter().find(|item| item.id == *id).map(|item| {
            let on = item.on.as_ref().map(|on| format!("on {}", map.name_of(on)));
            let bonds = item.bonds.as_ref().map(|on| format!("bonds {}", map.name_of(on)));
            let closes = item.closes.then(|| "closes".to_owned());
            [on, closes, bonds].into_iter().flatten().collect()
        }),
        ThingKind::Setting => map
            .settings
            .iter()
            .find(|setting| setting.id == *id)
            .map(|setting| setting.of.iter().map(|part| format!("of {}", map.name_of(part))).collect()),
    };
    let said = parts.unwrap_or_default().into_iter().filter(|part| !part.trim().is_empty());
    said.collect::<Vec<_>>().join(" · ")
}

fn connection(map: &ApplianceMap, id: &Id) -> Vec<String> {
    let Some(k) = map.connection(id) else { return Vec::new() };
    let size = k.size.as_ref().and_then(Known::value).map(ToString::to_string);
    let count = (k.count > 1).then(|| format!("{} of them", k.count));
    let port = k.port.as_ref().map(|port| format!("{} port", port.word()));
    let section = k.section.as_ref().map(|section| format!("carries {}", map.name_of(section)));
    let joins = (!k.joins.is_empty()).then(|| format!("joins {}", names(map, &k.joins)));
    let family = Some(k.family.word().to_owned());
    [port.or(family), count, size, section, joins].into_iter().flatten().collect()
}

fn names(map: &ApplianceMap, ids: &[Id]) -> String {
    ids.iter().map(|id| map.name_of(id)).collect::<Vec<_>>().join(", ")
}
