//! What hands do: connections, parts, items, settings, and looking.

use super::run::Job;
use super::world::{row_of, sections_named};
use procedures_schema::model::{Action, Family, Id, Renewal, Verb};
use procedures_schema::simulate::{Hazard, Whereabouts};

pub fn act(job: &mut Job<'_>, action: &Action) {
    for id in &action.on {
        if job.world.connections.contains_key(id) {
            connection(job, action, id);
        } else if job.world.components.contains_key(id) {
            component(job, action, id);
        } else if job.world.settings.contains_key(id) {
            setting(job, action, id);
        } else if job.world.seals.contains_key(id) {
            seal(job, action, id);
        } else if job.map().temporary.iter().any(|t| t.id == *id) {
            item(job, &action.verb, id);
        }
    }
    if matches!(action.verb, Verb::Clean) {
        job.pass(action.duration.as_ref());
    }
}

fn connection(job: &mut Job<'_>, action: &Action, id: &Id) {
    match action.verb {
        Verb::Slacken => slacken(job, action, id),
        Verb::Undo => undo(job, action, id),
        Verb::Make => make(job, action, id),
        Verb::Tighten => tighten(job, action, id),
        Verb::Photograph => {
            if let Some(held) = job.world.connections.get_mut(id) {
                held.marked = true;
            }
        }
        _ => {}
    }
}

fn slacken(job: &mut Job<'_>, action: &Action, id: &Id) {
    let now = job.now;
    let Some(held) = job.world.connections.get_mut(id) else { return };
    let n = action.count.unwrap_or(held.made).min(held.made);
    held.made -= n;
    held.slack += n;
    held.disturbed = true;
    held.touched = Some(now);
    held.opened = Some(now);
}

fn undo(job: &mut Job<'_>, action: &Action, id: &Id) {
    let now = job.now;
    let Some(held) = job.world.connections.get_mut(id) else { return };
    let most = held.made + held.slack;
    let n = action.count.unwrap_or(most).min(most);
    let from_slack = n.min(held.slack);
    held.slack -= from_slack;
    held.made -= n - from_slack;
    held.open += n;
    held.most_open = held.most_open.max(held.open);
    held.disturbed = true;
    held.touched = Some(now);
    held.opened = Some(now);
    let Some(connection) = job.map().connections.iter().find(|c| c.id == *id) else { return };
    if connection.family == Family::Joint
        && connection.port.is_none()
        && let Some(section) = &connection.section
        && let Some(row) = row_of(job.map(), section).filter(|row| row.hazard != Hazard::Isolation)
        && let Some(inside) = job.world.sections.get_mut(section)
    {
        inside.contents = row.opened_holds;
    }
    for loose in job.map().components.iter().filter(|c| c.held_in.as_ref() == Some(id)) {
        if let Some(part) = job.world.components.get_mut(&loose.id) {
            part.place = Whereabouts::Off;
            part.touched = Some(now);
        }
    }
}

fn make(job: &mut Job<'_>, action: &Action, id: &Id) {
    let now = job.now;
    let Some(held) = job.world.connections.get_mut(id) else { return };
    let most = held.open + held.slack;
    let n = action.count.unwrap_or(most).min(most);
    if action.to.as_deref() == Some("slack") {
        let n = n.min(held.open);
        held.open -= n;
        held.slack += n;
    } else {
        let from_open = n.min(held.open);
        held.open -= from_open;
        held.slack -= n - from_open;
        held.made += n;
    }
    held.touched = Some(now);
    held.again = false;
    if held.is_made() {
        held.disturbed = false;
        held.most_open = 0;
    }
    let Some(connection) = job.map().connections.iter().find(|c| c.id == *id) else { return };
    if action.seal == Some(Renewal::New) {
        for used in &connection.seals {
            if let Some(seal) = job.world.seals.get_mut(&used.seal) {
                seal.renewed = Some(now);
            }
        }
    }
}

fn tighten(job: &mut Job<'_>, action: &Action, id: &Id) {
    let now = job.now;
    let Some(held) = job.world.connections.get_mut(id) else { return };
    let n = action.count.unwrap_or(held.slack).min(held.slack);
    // What is tightened for the first time is made by it and not tightened again.
    held.again = held.is_made();
    held.slack -= n;
    held.made += n;
    held.touched = Some(now);
}

/// A component and everything that goes where it goes.
fn assembly(job: &Job<'_>, id: &Id) -> Vec<Id> {
    let mut all = vec![id.clone()];
    let mut next = 0;
    while let Some(carrier) = all.get(next).cloned() {
        let on_it = job.map().components.iter().filter(|c| {
            c.carried_by.as_ref() == Some(&carrier)
                && !all.contains(&c.id)
                && job.world.components.get(&c.id).is_some_and(|part| part.carried)
        });
        let on_it: Vec<Id> = on_it.map(|c| c.id.clone()).collect();
        all.extend(on_it);
        next += 1;
    }
    all
}

fn component(job: &mut Job<'_>, action: &Action, id: &Id) {
    let now = job.now;
    match action.verb {
        Verb::Remove => moved(job, id, Whereabouts::Off),
        Verb::MoveAside => moved(job, id, Whereabouts::Aside),
        Verb::Discard => moved(job, id, Whereabouts::Discarded),
        Verb::Fit => fit(job, action, id),
        Verb::Clean => {
            if let Some(part) = job.world.components.get_mut(id) {
                part.cleaned = Some(now);
            }
        }
        Verb::Inspect => {
            if let Some(part) = job.world.components.get_mut(id) {
                part.inspected = Some(now);
            }
        }
        _ => {}
    }
}

fn moved(job: &mut Job<'_>, id: &Id, to: Whereabouts) {
    let now = job.now;
    let alone = on_the_bench(job, id);
    let all = if alone { Vec::new() } else { assembly(job, id) };
    for one in all {
        if let Some(part) = job.world.components.get_mut(&one)
            && (one == *id || matches!(part.place, Whereabouts::Fitted | Whereabouts::Aside))
        {
            part.place = to;
            part.touched = Some(now);
        }
    }
    let is_carried = job.map().components.iter().any(|c| c.id == *id && c.carried_by.is_some());
    let Some(part) = job.world.components.get_mut(id) else { return };
    part.carried &= !is_carried || (to == Whereabouts::Aside && !alone);
    if alone && to == Whereabouts::Discarded {
        part.place = to;
        part.touched = Some(now);
    }
}

/// A part whose carrier is off goes on it on the bench; else it goes on the appliance with what is on it.
fn fit(job: &mut Job<'_>, action: &Action, id: &Id) {
    let now = job.now;
    let new = action.part == Some(Renewal::New);
    let carrier = job.map().components.iter().find(|c| c.id == *id).and_then(|c| c.carried_by.clone());
    let carrier = carrier.and_then(|carrier| job.world.components.get(&carrier));
    if carrier.is_some_and(|carrier| carrier.place != Whereabouts::Fitted) {
        if let Some(part) = job.world.components.get_mut(id) {
            part.put_over = !part.carried;
            part.carried = true;
            part.new |= new;
        }
        return;
    }
    let with_new: Vec<Id> =
        action.with_new.iter().filter(|with| is_carried_by(job, with, id)).cloned().collect();
    for on_it in with_new.iter().chain([id]) {
        if let Some(part) = job.world.components.get_mut(on_it) {
            part.carried = true;
        }
    }
    for one in assembly(job, id) {
        if let Some(part) = job.world.components.get_mut(&one) {
            part.place = Whereabouts::Fitted;
            part.touched = Some(now);
            part.new |= new && (one == *id || action.with_new.contains(&one));
        }
    }
    if new {
        fit_new(job, id);
    }
}

fn is_carried_by(job: &Job<'_>, part: &Id, carrier: &Id) -> bool {
    job.map().components.iter().any(|c| c.id == *part && c.carried_by.as_ref() == Some(carrier))
}

/// Whether a carried part is on a carrier that is off.
fn on_the_bench(job: &Job<'_>, id: &Id) -> bool {
    let carrier = job.map().components.iter().find(|c| c.id == *id).and_then(|c| c.carried_by.as_ref());
    let carrier = carrier.and_then(|carrier| job.world.components.get(carrier));
    carrier.is_some_and(|carrier| carrier.place != Whereabouts::Fitted)
        && job.world.components.get(id).is_some_and(|part| part.carried)
}

fn fit_new(job: &mut Job<'_>, id: &Id) {
    for item in job.map().temporary.iter().filter(|t| t.arrives_with.as_ref() == Some(id)) {
        job.world.placed.insert(item.id.clone());
    }
    for setting in job.map().settings.iter().filter(|s| s.of.as_ref() == Some(id)) {
        if let Some(dial) = job.world.settings.get_mut(&setting.id) {
            dial.lost = true;
        }
    }
}

fn seal(job: &mut Job<'_>, action: &Action, id: &Id) {
    if action.verb == Verb::Inspect
        && let Some(seal) = job.world.seals.get_mut(id)
    {
        seal.inspected = Some(job.now);
        seal.question.clone_from(&action.ask);
    }
}

fn item(job: &mut Job<'_>, verb: &Verb, id: &Id) {
    match verb {
        Verb::Place => {
            job.world.placed.insert(id.clone());
            let restrained =
                job.map().temporary.iter().find(|t| t.id == *id).and_then(|t| t.restrains.clone());
            let map = job.map();
            for section in restrained.iter().flat_map(|circuit| sections_named(map, circuit)) {
                if let Some(inside) = job.world.sections.get_mut(&section) {
                    inside.stored.motion = false;
                }
            }
        }
        Verb::TakeAway => {
            job.world.placed.remove(id);
        }
        _ => {}
    }
}

fn setting(job: &mut Job<'_>, action: &Action, id: &Id) {
    let now = job.now;
    let Some(dial) = job.world.settings.get_mut(id) else { return };
    match action.verb {
        Verb::RecordSetting => dial.recorded = Some(now),
        Verb::Set => {
            dial.set = Some(now);
            dial.lost = false;
            dial.changed = action.to.as_deref().is_none_or(|to| to.replace('-', " ") != "as found");
        }
        _ => {}
    }
}
