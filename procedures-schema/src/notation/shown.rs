//! Actions as the line under the words shows them: names for ids, and in grey what the map adds.
//!
//! Drawn, never read back.

use super::detail::Detail;
use super::grammar::{Form, entry};
use crate::model::{
    Action, ApplianceMap, Connection, Grouping, Id, Known, Reading, Renewal, SealUse, Tight, Verb,
};

/// What a token of the line is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Role {
    /// The verb.
    Verb,
    /// The name of a thing.
    Thing,
    /// A value that the action itself carries.
    Value,
    /// What the map says about the thing: size, seals, torque.
    Aside,
    /// A value that somebody still has to find out.
    Later,
}

/// A piece of the line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Token {
    /// Its text.
    pub text: String,
    /// What it is.
    pub role: Role,
    /// The thing that it names.
    pub thing: Option<Id>,
}

/// The tokens as one line: things joined by commas, what the map adds set off by `·`.
pub fn line(tokens: &[Token]) -> String {
    let mut line = String::new();
    let mut before: Option<Role> = None;
    for token in tokens {
        line.push_str(match (before, token.role) {
            (None, _) => "",
            (_, Role::Aside | Role::Later) => " · ",
            (Some(Role::Thing), Role::Thing) => ", ",
            _ => " ",
        });
        line.push_str(&token.text);
        before = Some(token.role);
    }
    line
}

/// The tokens of one action.
pub fn shown(action: &Action, map: &ApplianceMap) -> Vec<Token> {
    let mut tokens = Tokens { map, list: Vec::new() };
    tokens.push(Role::Verb, action.verb.word());
    if let Some(kind) = &action.test {
        tokens.push(Role::Value, kind.word());
    }
    if let Some(part) = &action.part {
        tokens.push(Role::Value, part.word());
    }
    if let Some(what) = &action.what {
        tokens.push(Role::Value, &format!("{what} from"));
    }
    if let Some(count) = count_text(action, map) {
        tokens.push(Role::Value, &count);
    }
    for id in &action.on {
        tokens.thing(id);
    }
    tokens.details(action);
    tokens.number(action);
    tokens.map_says(action);
    tokens.list
}

/// `4` for all of four, `2 of 4` for some; nothing where there is only one.
fn count_text(action: &Action, map: &ApplianceMap) -> Option<String> {
    let of = match action.on.as_slice() {
        [only] => map.connection(only).map(|connection| connection.count),
        _ => None,
    };
    match (action.count, of) {
        (Some(n), Some(of)) if n != of => Some(format!("{n} of {of}")),
        (Some(n), None) => Some(n.to_string()),
        (_, Some(of)) if of > 1 => Some(of.to_string()),
        _ => None,
    }
}

struct Tokens<'a> {
    map: &'a ApplianceMap,
    list: Vec<Token>,
}

impl Tokens<'_> {
    fn push(&mut self, role: Role, text: &str) {
        self.list.push(Token { text: text.to_owned(), role, thing: None });
    }

    fn thing(&mut self, id: &Id) {
        let text = self.map.name_of(id).to_owned();
        self.list.push(Token { text, role: Role::Thing, thing: Some(id.clone()) });
    }

    /// A word and a thing: `at test nipple`.
    fn place(&mut self, word: &str, id: Option<&Id>) {
        if let Some(id) = id {
            self.push(Role::Value, word);
            self.thing(id);
        }
    }

    /// The details that follow the things.
    fn details(&mut self, action: &Action) {
        match &action.seal {
            Some(Renewal::New) => self.push(Role::Value, "with new seal"),
            Some(Renewal::Same) => self.push(Role::Value, "with the seal reused"),
            Some(other) => self.push(Role::Value, &format!("with seal {other}")),
            None => {}
        }
        let mut value = |text: Option<String>| {
            if let Some(text) = text {
                self.push(Role::Value, &text);
            }
        };
        value(action.torque.as_ref().map(ToString::to_string));
        value(action.pattern.clone());
        value(action.by.as_ref().map(|means| format!("by {means}")));
        value(action.mode.as_ref().map(ToString::to_string));
        value(action.with.as_ref().map(|with| match action.verb {
            Verb::Undo | Verb::Make => format!("by {with}"),
            _ => format!("with {with}"),
        }));
        self.place("through", action.through.as_ref());
        self.place("with vent", action.vent.as_ref());
        self.place("at", action.at.as_ref());
        self.destination(action);
        let mut value = |text: Option<String>| {
            if let Some(text) = text {
                self.push(Role::Value, &text);
            }
        };
        value(action.temperature.as_ref().map(|read| format!("at {read}")));
        value(action.duration.as_ref().map(ToString::to_string));
        value(action.unattended.then(|| "unattended".to_owned()));
        value(action.live.then(|| "as live work".to_owned()));
        value(action.criterion.as_ref().map(|criterion| format!("against: {criterion}")));
        // The words say the question itself; an identity is no word for people.
        let only_asks = matches!(first_detail(&action.verb), Some(Detail::Ask));
        value((action.ask.is_some() && !only_asks).then(|| "puts a question".to_owned()));
        value(action.text.clone());
        action.readings.iter().for_each(|reading| value(Some(reading_shown(reading))));
    }

    fn destination(&mut self, action: &Action) {
        let Some(to) = &action.to else { return };
        let id = Id::new(to);
        if self.map.things().any(|(_, known, ..)| *known == id) {
            self.place("to", Some(&id));
        } else {
            self.push(Role::Value, &format!("to {to}"));
        }
    }

    /// The number of a part that is fitted new, while it is to be found out.
    fn number(&mut self, action: &Action) {
        if action.verb != Verb::Fit || action.part != Some(Renewal::New) {
            return;
        }
        let map = self.map;
        for part in map.components.iter().filter(|part| action.on.contains(&part.id)) {
            if part.number.as_ref().is_some_and(Known::is_later) {
                let of = if action.on.len() > 1 { format!("{}: ", part.name) } else { String::new() };
                self.later(&of, "number");
            }
        }
    }

    /// Size, seals and torque of the connections.
    fn map_says(&mut self, action: &Action) {
        let map = self.map;
        if !matches!(action.verb, Verb::Slacken | Verb::Undo | Verb::Make | Verb::Tighten) {
            return;
        }
        for connection in action.on.iter().filter_map(|id| map.connection(id)) {
            let of = if action.on.len() > 1 { format!("{}: ", connection.name) } else { String::new() };
            match &connection.size {
                Some(Known::Value(size)) => self.aside(&of, &size.to_string()),
                Some(Known::Later { .. }) => self.later(&of, "size"),
                None => {}
            }
            if matches!(action.verb, Verb::Undo | Verb::Make) {
                connection.seals.iter().for_each(|used| self.seal(&of, connection, used));
            }
            if matches!(action.verb, Verb::Make | Verb::Tighten) {
                self.tight(&of, action, connection);
            }
        }
    }

    fn aside(&mut self, of: &str, text: &str) {
        if !text.is_empty() {
            self.push(Role::Aside, &format!("{of}{text}"));
        }
    }

    fn later(&mut self, of: &str, what: &str) {
        self.push(Role::Later, &format!("{of}[later: {what}]"));
    }

    fn seal(&mut self, of: &str, connection: &Connection, used: &SealUse) {
        let each = if connection.grouping == Grouping::Each { connection.count } else { 1 };
        let quantity = used.quantity.saturating_mul(each);
        let times = if quantity == 1 { String::new() } else { format!(" × {quantity}") };
        let Some(seal) = self.map.seals.iter().find(|seal| seal.id == used.seal) else {
            return self.aside(of, &format!("{}{times}", used.seal));
        };
        let size =
            seal.size.as_ref().and_then(Known::value).map(|size| format!(" {size}")).unwrap_or_default();
        self.aside(of, &format!("{}{size}{times}", seal.name));
        if let Some(last) = self.list.last_mut() {
            last.thing = Some(seal.id.clone());
        }
        if seal.size.as_ref().is_some_and(Known::is_later) {
            self.later(of, &format!("size of {}", seal.name));
        }
        if seal.number.as_ref().is_some_and(Known::is_later) {
            self.later(of, &format!("number of {}", seal.name));
        }
    }

    fn tight(&mut self, of: &str, action: &Action, connection: &Connection) {
        match &connection.tight {
            Some(Known::Value(tight)) => {
                for text in tight_texts(tight, action) {
                    self.aside(of, &text);
                }
            }
            Some(Known::Later { .. }) if action.torque.is_none() => self.later(of, "torque"),
            _ => {}
        }
    }
}

/// What the map says about tightness and the action does not.
fn tight_texts(tight: &Tight, action: &Action) -> Vec<String> {
    let torque = tight.torque.as_ref().filter(|_| action.torque.is_none()).map(ToString::to_string);
    let pattern = Some(tight.pattern.clone()).filter(|_| action.pattern.is_none());
    torque.into_iter().chain(pattern).chain([tight.method.clone()]).collect()
}

/// The detail that stands first after the verb.
fn first_detail(verb: &Verb) -> Option<Detail> {
    entry(verb)?.slots.iter().find(|slot| slot.form == Form::First).map(|slot| slot.detail)
}

fn reading_shown(reading: &Reading) -> String {
    let limits = reading.limits.as_ref().map(ToString::to_string).unwrap_or_default();
    let parts = [reading.what.as_str(), &limits, &reading.seen];
    let said: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
    format!("({})", said.join(" "))
}
