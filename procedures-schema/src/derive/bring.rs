//! The map of another procedure brought into this one, whole or in parts.
//!
//! Whatever is chosen comes with what it needs, under new ids and with its references. A thing of the same name that is
//! here already is taken for the same unless somebody says that it is another one, which then gets a name of its own.
//! The phrases of the other procedure come along; of one whose words are a phrase here, the meaning here stays.
//! What is here stays word for word as it is. Steps, answers of the census, pictures and replaced demands stay where
//! they are: they speak of the other job.

use super::carry::onto::{needed, the_same, with_missing};
use crate::edit::{Difference, Edit, Scope, differences};
use crate::model::{ApplianceMap, Id, IdSource, OwnPhrase, Procedure, ThingKind};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// A thing that comes and meets one of the same name.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Meeting {
    /// The thing that comes, by its id where it comes from.
    pub thing: Id,
    /// The one that is here.
    pub here: Id,
    /// What sort of thing both are.
    pub kind: ThingKind,
    /// What the one here is called.
    pub name: String,
}

/// What becomes of a map that is brought.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Bringing {
    /// What comes and is not here yet: the sort of thing, and the name it gets.
    pub new: Vec<(ThingKind, String)>,
    /// What has the same name here, each to be asked about once.
    pub meetings: Vec<Meeting>,
    /// How many things are taken for one that is here.
    pub n_same: usize,
    /// The phrases of the procedure's own that come along and are not here yet.
    pub phrases: Vec<OwnPhrase>,
    /// What stays where it is, in words.
    pub left_behind: Vec<String>,
    /// The edits, to be applied in order as one entry of the undo; none, if nothing is new.
    pub edits: Vec<Edit>,
}

/// Everything of a map.
pub fn whole(map: &ApplianceMap) -> BTreeSet<Id> {
    map.things().map(|(_, id, ..)| id.clone()).collect()
}

/// The things that come if some are chosen: a circuit with its joints, a component with its connections and settings,
/// and with each what it needs.
pub fn coming(map: &ApplianceMap, chosen: &BTreeSet<Id>) -> BTreeSet<Id> {
    let mut all: Vec<Id> = chosen.iter().cloned().collect();
    let sections = |id: &Id| map.sections().any(|(c, s)| s.id == *id && chosen.contains(&c.id));
    let belongs = map.connections.iter().filter(|connection| {
        connection.section.as_ref().is_some_and(sections)
            || connection.joins.iter().any(|id| chosen.contains(id))
    });
    all.extend(belongs.map(|connection| connection.id.clone()));
    let set = map.settings.iter().filter(|one| one.of.as_ref().is_some_and(|of| chosen.contains(of)));
    all.extend(set.map(|setting| setting.id.clone()));
    needed(map, all)
}

/// Brings what is chosen of the map of one procedure into another. The things in `apart`, by their ids where they come
/// from, come as new ones although one of the same name is here; what hangs on them comes as new too.
pub fn bring(
    from: &Procedure,
    into: &Procedure,
    chosen: &BTreeSet<Id>,
    apart: &BTreeSet<Id>,
    ids: &mut dyn IdSource,
) -> Bringing {
    let coming = coming(&from.map, chosen);
    let same = the_same(&from.map, &into.map, apart);
    let mut bringing =
        Bringing { meetings: meetings(from, into, &coming, apart, &same), ..Bringing::default() };
    let (mut renamed, mut missing) = (same.clone(), BTreeSet::new());
    for (kind, id, ..) in from.map.things().filter(|(_, id, ..)| coming.contains(*id)) {
        if same.contains_key(id) {
            bringing.n_same += 1;
        } else {
            renamed.insert(id.clone(), ids.next_id(kind.hint()));
            missing.insert(id.clone());
        }
    }
    bringing.left_behind = left_behind(from, &missing);
    let is_whole = from.map.things().all(|(_, id, ..)| coming.contains(id));
    if is_whole || !missing.is_empty() {
        bringing.phrases = new_phrases(from, into);
    }
    if missing.is_empty() && bringing.phrases.is_empty() {
        return bringing;
    }
    let mut map = with_missing(&into.map, &from.map, &missing, &renamed);
    map.phrases.extend(bringing.phrases.iter().cloned());
    let is_new = |id: &Id| missing.iter().any(|old| renamed.get(old) == Some(id));
    let new = map.things().filter(|(_, id, ..)| is_new(id));
    bringing.new = new.map(|(kind, _, name, _)| (kind, name.to_owned())).collect();
    bringing.edits = vec![Edit::SetMap(Arc::new(map))];
    if !missing.is_empty() {
        let scope = scope(from, into, &missing, &renamed, is_whole);
        bringing.edits.push(Edit::SetScope(Box::new(scope)));
    }
    bringing
}

/// The phrases of another procedure whose words are none here: they speak of verbs, so whatever comes brings all of them.
fn new_phrases(from: &Procedure, into: &Procedure) -> Vec<OwnPhrase> {
    let is_here = |own: &OwnPhrase| into.map.phrases.iter().any(|known| known.is_called(&own.words));
    from.map.phrases.iter().filter(|own| !is_here(own)).cloned().collect()
}

/// What each thing of another map and the one of its name here say differently; of those that say the same, nothing.
pub fn differing(from: &Procedure, into: &Procedure) -> BTreeMap<Id, Vec<Difference>> {
    let same = the_same(&from.map, &into.map, &BTreeSet::new());
    let rest = whole(&from.map).into_iter().filter(|id| !same.contains_key(id));
    let (mut missing, mut renamed): (BTreeSet<Id>, _) = (rest.collect(), same.clone());
    // Ids of two documents may be equal by chance.
    let beside = |id: &Id| Id::new(&format!("from elsewhere: {id}"));
    renamed.extend(missing.iter().map(|id| (id.clone(), beside(id))));
    let mut found = BTreeMap::new();
    for (id, here) in &same {
        missing.insert(id.clone());
        renamed.insert(id.clone(), beside(id));
        let map = with_missing(&into.map, &from.map, &missing, &renamed);
        let both = Procedure { map: Arc::new(map), ..Procedure::new(into.id.clone(), "") };
        let told = differences(&both, here, &beside(id)).unwrap_or_default();
        if !told.is_empty() {
            found.insert(id.clone(), told);
        }
        missing.remove(id);
        renamed.insert(id.clone(), here.clone());
    }
    found
}

/// What is asked about: a section goes with its circuit, and what hangs on another thing goes with that.
fn meetings(
    from: &Procedure,
    into: &Procedure,
    coming: &BTreeSet<Id>,
    apart: &BTreeSet<Id>,
    same: &BTreeMap<Id, Id>,
) -> Vec<Meeting> {
    let at_first = the_same(&from.map, &into.map, &BTreeSet::new());
    let is_asked = |id: &Id| coming.contains(id) && (same.contains_key(id) || apart.contains(id));
    let things = from.map.things().filter(|(kind, id, ..)| *kind != ThingKind::Section && is_asked(id));
    let meeting = |(kind, id, ..): (ThingKind, &Id, &str, &[String])| {
        let here = at_first.get(id)?;
        let name = into.map.name_of(here).to_owned();
        Some(Meeting { thing: id.clone(), here: here.clone(), kind, name })
    };
    things.filter_map(meeting).collect()
}

/// What stays of the things that come.
fn left_behind(from: &Procedure, missing: &BTreeSet<Id>) -> Vec<String> {
    let map = &from.map;
    let mut n_pictures = 0;
    macro_rules! count {
        ($($list:ident),*) => {$(
            let with_pictures = map.$list.iter().filter(|thing| missing.contains(&thing.id));
            n_pictures += with_pictures.map(|thing| thing.images.len()).sum::<usize>();
        )*};
    }
    count!(circuits, isolators, components, connections, seals, temporary, settings);
    let of_sections = map.sections().filter(|(_, section)| missing.contains(&section.id));
    n_pictures += of_sections.map(|(_, section)| section.images.len()).sum::<usize>();
    let replaced = from.overrides.iter().filter(|one| one.on.iter().any(|id| missing.contains(id)));
    let told = |n: usize, one: &str, many: &str| match n {
        0 => None,
        1 => Some(format!("1 {one}")),
        n => Some(format!("{n} {many}")),
    };
    let both = [
        told(n_pictures, "picture", "pictures"),
        told(replaced.count(), "demand that was replaced for them", "demands that were replaced for them"),
    ];
    both.into_iter().flatten().collect()
}

/// What the document says of itself, with where the map came from and what is still to be found out of what comes.
fn scope(
    from: &Procedure,
    into: &Procedure,
    missing: &BTreeSet<Id>,
    renamed: &BTreeMap<Id, Id>,
    is_whole: bool,
) -> Scope {
    let mut scope = Scope::of(into);
    let what = match (is_whole, missing.len()) {
        (true, _) => "Map brought".to_owned(),
        (false, 1) => "1 thing of the map brought".to_owned(),
        (false, n) => format!("{n} things of the map brought"),
    };
    let origin = format!("{what} from \"{}\" ({}).", from.title, from.id);
    if !scope.note.contains(&origin) {
        let both = [scope.note.trim(), &origin].join(" ");
        both.trim().clone_into(&mut scope.note);
    }
    for later in from.later.iter().filter(|later| later.step.is_none()) {
        let thing = later.thing.as_ref().filter(|thing| missing.contains(*thing));
        if let Some(thing) = thing.and_then(|thing| renamed.get(thing)) {
            let mut later = later.clone();
            later.thing = Some(thing.clone());
            scope.later.push(later);
        }
    }
    scope
}

#[cfg(test)]
mod tests;
