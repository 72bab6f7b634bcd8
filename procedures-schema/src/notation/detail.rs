//! The details of an action, each as the text that the notation writes for it.
//!
//! Quotation marks are not dealt with here: a value goes in and out as bare text.

use super::value::{measured_text, range_text, read_measured, read_range, read_reading, reading_text};
use crate::model::{Action, Energy, Id, Means, Mode, Renewal, TestKind};
use crate::units::Unit;

/// A detail: one field of an action beside the verb and the things.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Detail {
    /// How many.
    Count,
    /// Which test.
    Test,
    /// New or the same part.
    Part,
    /// New or reused seals.
    Seal,
    /// The torque.
    Torque,
    /// The pattern of tightening.
    Pattern,
    /// What is released.
    What,
    /// How it is released.
    By,
    /// The port or cracked joint.
    Through,
    /// The vent opened high up.
    Vent,
    /// Where it is taken.
    At,
    /// With what, or by which method.
    With,
    /// Where to, or what is aimed at.
    To,
    /// The mode.
    Mode,
    /// The temperature read before.
    Temperature,
    /// How long.
    Duration,
    /// How long at most.
    AtMost,
    /// The step before which it must be over.
    Until,
    /// Nobody stays.
    Unattended,
    /// Justified live work.
    Live,
    /// What decides.
    Criterion,
    /// The question.
    Ask,
    /// Whom, who, of what.
    Text,
    /// Only one of the things.
    OneOf,
    /// Carried parts that come new.
    WithNew,
    /// Why.
    Reason,
    /// The values to take.
    Readings,
}

impl Detail {
    /// Every detail, with the key under which it is written where a verb does not take it.
    pub(super) const ALL: &'static [(Self, &'static str)] = &[
        (Self::Count, "n"),
        (Self::Test, "kind"),
        (Self::Part, "part"),
        (Self::Seal, "seal"),
        (Self::Torque, "torque"),
        (Self::Pattern, "pattern"),
        (Self::What, "what"),
        (Self::By, "by"),
        (Self::Through, "through"),
        (Self::Vent, "vent"),
        (Self::At, "at"),
        (Self::With, "with"),
        (Self::To, "to"),
        (Self::Mode, "mode"),
        (Self::Temperature, "temp"),
        (Self::Duration, "for"),
        (Self::AtMost, "most"),
        (Self::Until, "before"),
        (Self::Unattended, "unattended"),
        (Self::Live, "live"),
        (Self::Criterion, "criterion"),
        (Self::Ask, "ask"),
        (Self::Text, "text"),
        (Self::OneOf, "one-of"),
        (Self::WithNew, "with-new"),
        (Self::Reason, "reason"),
        (Self::Readings, "reading"),
    ];

    /// The values that an action has for this detail: none or one, for readings and parts that come new any
    /// number.
    pub(super) fn values(self, action: &Action) -> Vec<String> {
        let id = |id: &Option<Id>| id.as_ref().map(|id| id.as_str().to_owned());
        let one = match self {
            Self::Count => action.count.map(|n| n.to_string()),
            Self::Test => action.test.as_ref().map(|t| closed(t.word(), t.is_known())),
            Self::Part => action.part.as_ref().map(|p| closed(p.word(), p.is_known())),
            Self::Seal => action.seal.as_ref().map(seal_text),
            Self::Torque => action.torque.as_ref().map(|r| range_text(r, Some(&Unit::NewtonMetre), "")),
            Self::Pattern => action.pattern.clone(),
            Self::What => action.what.as_ref().map(|w| closed(w.word(), w.is_known())),
            Self::By => action.by.as_ref().map(|b| closed(b.word(), b.is_known())),
            Self::Through => id(&action.through),
            Self::Vent => id(&action.vent),
            Self::At => id(&action.at),
            Self::With => action.with.clone(),
            Self::To => action.to.clone(),
            Self::Mode => action.mode.as_ref().map(mode_text),
            Self::Temperature => action.temperature.as_ref().map(|m| measured_text(m, &Unit::Celsius)),
            Self::Duration => action.duration.as_ref().map(|m| measured_text(m, &Unit::Minute)),
            Self::AtMost => action.at_most.as_ref().map(|m| measured_text(m, &Unit::Minute)),
            Self::Until => id(&action.until),
            Self::Unattended => action.unattended.then(|| "unattended".to_owned()),
            Self::Live => action.live.then(|| "yes".to_owned()),
            Self::Criterion => action.criterion.clone(),
            Self::Ask => id(&action.ask),
            Self::Text => action.text.clone(),
            Self::Reason => action.reason.clone(),
            Self::OneOf => action.one_of.then(|| "yes".to_owned()),
            Self::WithNew => return action.with_new.iter().map(|id| id.as_str().to_owned()).collect(),
            Self::Readings => return action.readings.iter().map(reading_text).collect(),
        };
        one.into_iter().collect()
    }

    /// Gives the action this value.
    ///
    /// # Errors
    /// What the detail accepts, in words, if the text is not of that form.
    pub(super) fn set(self, action: &mut Action, text: &str) -> Result<(), &'static str> {
        let id = || Some(Id::new(text));
        let own = || Some(text.to_owned());
        match self {
            Self::Count => action.count = Some(read_count(text)?),
            Self::Test => action.test = Some(read_closed(text, TestKind::from_word, TestKind::is_known)),
            Self::Part => action.part = Some(read_closed(text, Renewal::from_word, Renewal::is_known)),
            Self::Seal => action.seal = Some(read_seal(text)),
            Self::Torque => action.torque = Some(read_range(text, Some(Unit::NewtonMetre)).ok_or(TORQUE)?),
            Self::Pattern => action.pattern = own(),
            Self::What => action.what = Some(read_closed(text, Energy::from_word, Energy::is_known)),
            Self::By => action.by = Some(read_closed(text, Means::from_word, Means::is_known)),
            Self::Through => action.through = id(),
            Self::Vent => action.vent = id(),
            Self::At => action.at = id(),
            Self::With => action.with = own(),
            Self::To => action.to = own(),
            Self::Mode => action.mode = Some(read_mode(text)),
            Self::Temperature => {
                action.temperature = Some(read_measured(text, Unit::Celsius).ok_or(TEMPERATURE)?);
            }
            Self::Duration => action.duration = Some(read_measured(text, Unit::Minute).ok_or(DURATION)?),
            Self::AtMost => action.at_most = Some(read_measured(text, Unit::Minute).ok_or(DURATION)?),
            Self::Until => action.until = id(),
            Self::Unattended => action.unattended = text == "unattended" || read_yes(text)?,
            Self::Live => action.live = read_yes(text)?,
            Self::Criterion => action.criterion = own(),
            Self::Ask => action.ask = id(),
            Self::Text => action.text = own(),
            Self::Reason => action.reason = own(),
            Self::OneOf => action.one_of = read_yes(text)?,
            Self::WithNew => action.with_new.push(Id::new(text)),
            Self::Readings => action.readings.push(read_reading(text).ok_or(READING)?),
        }
        Ok(())
    }
}

const TORQUE: &str = "a torque such as 5, 5..6 or 4..5[lbf_av].[ft_i]";
const TEMPERATURE: &str = "a temperature such as 40 or 104[degF]";
const DURATION: &str = "a time such as 10, 30s or 2h";
const READING: &str = "a reading such as \"L to N|0..5 V\" or \"drain||no flow for 60 s\"";

/// A word of a closed list with hyphens for blanks; a word of a newer version as it stands.
fn closed(word: &str, known: bool) -> String {
    if known { word.replace(' ', "-") } else { word.to_owned() }
}

/// Reads a word of a closed list, with blanks or with hyphens.
fn read_closed<T>(text: &str, from_word: fn(&str) -> T, is_known: fn(&T) -> bool) -> T {
    let spaced = from_word(&text.replace('-', " "));
    if is_known(&spaced) { spaced } else { from_word(text) }
}

fn seal_text(seal: &Renewal) -> String {
    match seal {
        Renewal::Same => "reused".to_owned(),
        other => other.word().to_owned(),
    }
}

fn read_seal(text: &str) -> Renewal {
    if text == "reused" { Renewal::Same } else { Renewal::from_word(text) }
}

fn mode_text(mode: &Mode) -> String {
    match mode {
        Mode::LeftSafe => "safe".to_owned(),
        other => closed(other.word(), other.is_known()),
    }
}

fn read_mode(text: &str) -> Mode {
    if text == "safe" { Mode::LeftSafe } else { read_closed(text, Mode::from_word, Mode::is_known) }
}

fn read_count(text: &str) -> Result<u32, &'static str> {
    let digits = !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit());
    if digits { text.parse().ok() } else { None }.ok_or("a whole number up to 4294967295")
}

fn read_yes(text: &str) -> Result<bool, &'static str> {
    match text {
        "yes" => Ok(true),
        "no" => Ok(false),
        _ => Err("yes or no"),
    }
}
