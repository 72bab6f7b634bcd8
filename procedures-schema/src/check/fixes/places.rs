//! Where what was taken off goes back: behind the last step that works with it or behind it, so in the reverse
//! order of taking off, and before the tests.

use super::steps::positions;
use crate::check::context::Context;
use crate::derive::access::stands_before;
use crate::model::{Action, Connection, Id, Port, Verb};
use crate::simulate::{Place, Thing};

/// The positions at which a thing can be put back, the likely ones first: from behind the last work on, then
/// back towards the place since when it is off.
pub(super) fn on_the_way_back(context: &Context<'_>, thing: &Id, since: Place) -> Vec<usize> {
    let all = positions(context, since);
    let last = last_work(context, thing, since);
    let from = all.partition_point(|at| last.is_some_and(|last| *at <= last));
    let (before, behind) = all.split_at(from);
    behind.iter().chain(before.iter().rev()).copied().collect()
}

/// The last step that has to come before a thing goes back.
///
/// What the map says of it decides. As it seldom says all, whatever is taken off later goes back earlier too,
/// as long as no supply is back: behind that, things are opened and closed for tests.
fn last_work(context: &Context<'_>, thing: &Id, since: Place) -> Option<usize> {
    let concerned = Concerned::of(context, thing);
    let is_port = |id: &Id| context.connection(id).is_some_and(|known| known.port.is_some());
    let only_ports = |action: &Action| action.on.iter().all(is_port);
    let mut taken_off: Vec<&Id> = Vec::new();
    let mut is_supplied = false;
    let mut last = None;
    for (at, step) in context.procedure.steps.iter().enumerate() {
        for (k, action) in step.actions.iter().enumerate() {
            if Place::of_action(at, k) <= since {
                continue;
            }
            is_supplied |= matches!(action.verb, Verb::Restore | Verb::Start | Verb::Charge);
            let goes_back_first =
                puts_back(&action.verb) && action.on.iter().any(|id| taken_off.contains(&id));
            let is_apart = takes_off(&action.verb) || looks_at(&action.verb) || goes_back_first;
            let is_before = is_apart && !is_supplied && !only_ports(action) && !action.on.contains(thing);
            let is_read_at = || action.verb == Verb::Test && reads_at(context, thing, at);
            if is_before || concerned.is_work(action) || is_read_at() {
                last = Some(at);
            }
            if takes_off(&action.verb) {
                taken_off.extend(&action.on);
            }
        }
    }
    last
}

/// Whether a test of a step loads the section that a point for measuring opens.
fn reads_at(context: &Context<'_>, point: &Id, execution: usize) -> bool {
    let known = context.connection(point).filter(|k| matches!(k.port, Some(Port::Test | Port::Sample)));
    let section = known.and_then(|known| context.trace.plant().thing(known.section.as_ref()?));
    let mut loaded = context.trace.loaded_in(execution).map(Thing::Section);
    section.is_some_and(|section| loaded.any(|loaded| loaded == section))
}

fn takes_off(verb: &Verb) -> bool {
    matches!(verb, Verb::Slacken | Verb::Undo | Verb::Remove | Verb::MoveAside | Verb::Discard)
}

fn looks_at(verb: &Verb) -> bool {
    matches!(verb, Verb::Clean | Verb::Inspect)
}

fn puts_back(verb: &Verb) -> bool {
    matches!(verb, Verb::Fit | Verb::Make | Verb::Tighten)
}

/// What a thing that goes back has to do with.
struct Concerned<'c> {
    thing: &'c Id,
    /// What cannot be reached any more once it is back.
    behind: Vec<&'c Id>,
    /// The parts that a connection joins, or the part that a setting belongs to: in place first.
    parts: Vec<&'c Id>,
    /// The connections of a part and the seals: opened, cleaned and looked at before it is back.
    connections: Vec<&'c Id>,
    /// What sits on a connection for a while: taken away first.
    items: Vec<&'c Id>,
    /// The section that a port opens, and its other connections: made, and shown to be at zero, first.
    section: Vec<&'c Id>,
}

impl<'c> Concerned<'c> {
    fn of(context: &Context<'c>, thing: &'c Id) -> Self {
        let map = &context.procedure.map;
        let is_part = map.components.iter().any(|part| part.id == *thing);
        let all = map.components.iter().map(|part| &part.id);
        let all = all.chain(map.connections.iter().map(|connection| &connection.id));
        let behind = all.filter(|id| is_part && stands_before(map, id).contains(thing)).collect();
        let known = context.connection(thing);
        let setting = map.settings.iter().find(|setting| setting.id == *thing);
        let joined = known.into_iter().flat_map(|known| &known.joins);
        let parts: Vec<&Id> = joined.chain(setting.and_then(|setting| setting.of.as_ref())).collect();
        let joining = map.connections.iter().filter(|connection| connection.joins.contains(thing));
        let joining: Vec<&Connection> = joining.collect();
        let seals = joining.iter().copied().chain(known).flat_map(|k| &k.seals).map(|used| &used.seal);
        let section = known.filter(|known| known.port.is_some()).and_then(|known| known.section.as_ref());
        let beside =
            map.connections.iter().filter(|other| section.is_some() && other.section.as_ref() == section);
        let beside = beside.filter(|other| other.port.is_none()).map(|other| &other.id);
        let items = map.temporary.iter().filter(|item| item.on.as_ref() == Some(thing));
        Self {
            thing,
            behind,
            parts,
            connections: joining.iter().map(|connection| &connection.id).chain(seals).collect(),
            items: items.map(|item| &item.id).collect(),
            section: beside.chain(section).collect(),
        }
    }

    /// Whether an action has to come before the thing goes back. Most tests do not: where they load or show
    /// the thing only if it is back, or only if it is not, trying tells.
    fn is_work(&self, action: &Action) -> bool {
        let names = |some: &[&Id]| {
            let places = [&action.through, &action.vent, &action.at].into_iter().flatten();
            action.on.iter().chain(places).any(|named| some.contains(&named))
        };
        let verb = &action.verb;
        let opens = takes_off(verb) || looks_at(verb);
        let lets_out = matches!(verb, Verb::Release | Verb::Prove);
        match () {
            () if names(&[self.thing]) => opens || lets_out || matches!(verb, Verb::Purge | Verb::Charge),
            () if names(&self.behind) => opens || lets_out || puts_back(verb) || *verb == Verb::Set,
            () if names(&self.parts) => opens || *verb == Verb::Fit,
            () if names(&self.connections) => opens,
            () if names(&self.items) => matches!(verb, Verb::Place | Verb::TakeAway),
            () if names(&self.section) => opens || lets_out || puts_back(verb),
            () => false,
        }
    }
}
