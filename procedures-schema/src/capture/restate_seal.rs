//! The words of a step when the seal of a joint is set otherwise: new, used again, or as the map says.

use crate::edit::{insert, take_out};
use crate::lexicon::{Lexicon, tokens};
use crate::model::{Action, ApplianceMap, Id, Renewal, Span, Step, Verb, a_new, is_plural, listed};

/// Words that say that the old seal goes in again.
const SAME: &[&str] = &["reuse", "reused", "same"];

/// Says in the words of a step what is now set of the seals of its action at `at`, where they do not say it yet, and
/// takes out what was put in for what was set before. What somebody has said in words of their own stays.
pub fn restate_seal(step: &mut Step, at: usize, was: Option<&Renewal>, map: &ApplianceMap) {
    let Some(action) = step.actions.get(at).filter(|action| action.verb == Verb::Make) else { return };
    let Some(lexicon) = Lexicon::for_language("en") else { return };
    let now = action.seal.clone();
    let names = seal_names(action, map);
    if was == now.as_ref() {
        return;
    }
    if let Some(was) = was {
        unsay(step, at, &said_as(was, &names));
    }
    let Some((around, end)) = stretch(step, at) else { return };
    let around = around.of(&step.words).to_owned();
    let is_said = match &now {
        Some(Renewal::New) => {
            let known: Vec<&str> = names.iter().map(String::as_str).collect();
            lexicon.says_new_of(&around, &known)
        }
        Some(Renewal::Same) => tokens(&around).iter().any(|token| SAME.contains(&&*token.text)),
        _ => true,
    };
    if let Some(now) = now.filter(|_| !is_said) {
        say(step, at, end, &said_as(&now, &names));
    }
}

/// Puts words where those of an action end, and lets them say it too.
fn say(step: &mut Step, at: usize, end: u32, text: &str) {
    if insert(step, end, text).is_some()
        && let Some(action) = step.actions.get_mut(at)
    {
        // Without the blank before them.
        action.says.push(Span(end + 1, end + length(text)));
        action.says.sort_unstable();
    }
}

/// " with a new washer", " with the same washer".
fn said_as(seal: &Renewal, names: &[String]) -> String {
    let one = |name: &String| match seal {
        Renewal::New => a_new(name),
        _ => format!("the same {name}"),
    };
    format!(" with {}", listed(&names.iter().map(one).collect::<Vec<_>>()))
}

/// What the seals of an action are called, each once; of joints of which none is known, what seals are called. Where
/// several joints are made the name is that of several.
fn seal_names(action: &Action, map: &ApplianceMap) -> Vec<String> {
    let joints: Vec<_> = action.on.iter().filter_map(|id| map.connection(id)).collect();
    let n_made = action.count.unwrap_or_else(|| joints.iter().map(|joint| joint.count).sum());
    let name_of = |id: &Id| map.seals.iter().find(|seal| seal.id == *id).map(|seal| seal.name.clone());
    let mut names: Vec<String> = Vec::new();
    for name in joints.iter().flat_map(|joint| &joint.seals).filter_map(|used| name_of(&used.seal)) {
        if !names.contains(&name) {
            names.push(name);
        }
    }
    if names.is_empty() {
        names.push("seal".to_owned());
    }
    let several = |name: String| if n_made > 1 && !is_plural(&name) { in_plural(&name) } else { name };
    names.into_iter().map(several).collect()
}

/// "flat washers"; a name that ends in a size or in letters that take no "s" stays as it is.
fn in_plural(name: &str) -> String {
    let ends_plainly = name.chars().next_back().is_some_and(|last| last.is_alphabetic() && last != 's');
    if ends_plainly && name.split(' ').next_back().is_some_and(|last| last.len() > 3) {
        format!("{name}s")
    } else {
        name.to_owned()
    }
}

/// The words between the actions before and behind an action, which can say something of it; and where in them what is
/// said of it ends: at a mark, before the next action, or before "and" and "then". None, if no words say it.
fn stretch(step: &Step, at: usize) -> Option<(Span, u32)> {
    let says = |action: &Action| -> Option<(u32, u32)> {
        let from = action.says.iter().map(|span| span.0).min()?;
        Some((from, action.says.iter().map(|span| span.1).max()?))
    };
    let (from, to) = step.actions.get(at).and_then(says)?;
    let others = step.actions.iter().enumerate().filter(|(other, _)| *other != at);
    let others: Vec<(u32, u32)> = others.filter_map(|(_, action)| says(action)).collect();
    let before = others.iter().map(|(_, end)| *end).filter(|end| *end <= from).max().unwrap_or(0);
    let behind = others.iter().map(|(begin, _)| *begin).filter(|begin| *begin >= to).min();
    let behind = behind.unwrap_or(u32::MAX).min(length(&step.words));
    let rest = Span(to, behind).of(&step.words);
    let marks = rest.char_indices().filter(|(at, mark)| {
        let follows = rest.get(at + mark.len_utf8()..).and_then(|rest| rest.chars().next());
        // The point and the comma within a figure end nothing.
        ".,:;!?(".contains(*mark) && !follows.is_some_and(|next| next.is_ascii_digit())
    });
    let words = [" and ", " then ", " until ", " so that "].iter().filter_map(|word| rest.find(word));
    let end = marks.map(|(at, _)| at).chain(words).min().unwrap_or(rest.len());
    let said = rest.get(..end).unwrap_or_default().trim_end();
    Some((Span(before, behind), to + length(said)))
}

/// Takes words out that were put in, the last of them that can say something of the action.
fn unsay(step: &mut Step, at: usize, text: &str) {
    let Some((around, _)) = stretch(step, at) else { return };
    let found = step.words.match_indices(text).map(|(begin, _)| {
        let from = length(step.words.get(..begin).unwrap_or_default());
        Span(from, from + length(text))
    });
    if let Some(gone) = found.filter(|found| around.0 <= found.0 && found.1 <= around.1).last() {
        take_out(step, gone);
    }
}

fn length(text: &str) -> u32 {
    u32::try_from(text.chars().count()).unwrap_or(u32::MAX)
}

#[cfg(test)]
mod tests {
    use super::restate_seal;
    use crate::capture::{Here, line_here};
    use crate::model::{
        ApplianceMap, Connection, Family, Renewal, Rest, Seal, SealPolicy, SealUse, Stage, Step,
    };

    /// A union with two washers and a flange with a gasket.
    fn map() -> ApplianceMap {
        let mut map = ApplianceMap::default();
        for (id, joint, seal, count) in
            [("u", "pump unions", "flat washer", 2), ("f", "burner flange", "burner gasket", 1)]
        {
            map.seals.push(Seal::new(format!("{id}s").as_str().into(), seal, SealPolicy::AlwaysRenew));
            let mut connection = Connection::new(id.into(), joint, Family::Joint);
            connection.count = count;
            let seal = format!("{id}s").as_str().into();
            connection.seals.push(SealUse { seal, quantity: 1, rest: Rest::default() });
            map.connections.push(connection);
        }
        map
    }

    /// The step as its words are read in a state in which everything is open.
    fn read(words: &str) -> Step {
        let map = map();
        let mut here = Here::in_service(&map);
        here.connections.values_mut().for_each(|connection| connection.made = 0);
        let mut step = Step::new("s".into(), Stage::Refit, words);
        step.actions = line_here(words, &map, here, &Stage::Refit).actions;
        step
    }

    fn set(step: &mut Step, at: usize, seal: Option<Renewal>) {
        let was = std::mem::replace(&mut step.actions[at].seal, seal);
        restate_seal(step, at, was.as_ref(), &map());
    }

    #[test]
    fn the_sentence_says_that_the_seal_is_new_and_is_read_so_again() {
        for (words, now) in [
            ("Make the burner flange.", "Make the burner flange with a new burner gasket."),
            ("Make the burner flange, 5 Nm.", "Make the burner flange with a new burner gasket, 5 Nm."),
            ("Make the two pump unions.", "Make the two pump unions with new flat washers."),
            (
                "Make the two pump unions of the heating pump at 0.5 bar.",
                "Make the two pump unions of the heating pump at 0.5 bar with new flat washers.",
            ),
        ] {
            let before = read(words);
            let mut step = before.clone();
            set(&mut step, 0, Some(Renewal::New));
            assert_eq!(step.words, now);
            let again = read(now);
            assert_eq!(again.actions.len(), 1, "{now}");
            assert_eq!(again.actions[0].seal, Some(Renewal::New), "{now}");
            set(&mut step, 0, Some(Renewal::Same));
            assert_eq!(step.words, now.replace("a new", "the same").replace("new flat", "the same flat"));
            assert_eq!(read(&step.words).actions[0].seal, Some(Renewal::Same), "{}", step.words);
            set(&mut step, 0, None);
            assert_eq!(step, before, "taken back, it is as it was");
        }
    }

    #[test]
    fn what_is_said_already_is_not_said_twice_and_own_words_stay() {
        let mut step = read("Make the burner flange, always on a fresh gasket.");
        step.actions[0].seal = None;
        set(&mut step, 0, Some(Renewal::New));
        assert_eq!(step.words, "Make the burner flange, always on a fresh gasket.");
        set(&mut step, 0, None);
        assert_eq!(step.words, "Make the burner flange, always on a fresh gasket.");
    }

    #[test]
    fn of_two_joints_only_the_one_that_is_meant() {
        let before = read("Make the pump unions and make the burner flange.");
        assert_eq!(before.actions.len(), 2, "{before:?}");
        let mut step = before.clone();
        set(&mut step, 1, Some(Renewal::New));
        assert_eq!(step.words, "Make the pump unions and make the burner flange with a new burner gasket.");
        set(&mut step, 1, None);
        set(&mut step, 0, Some(Renewal::New));
        assert_eq!(step.words, "Make the pump unions with new flat washers and make the burner flange.");
        assert_eq!(step.actions[1].says[0].of(&step.words), before.actions[1].says[0].of(&before.words));
    }
}
