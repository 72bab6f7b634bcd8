//! The clock of this device, and times in words.

use js_sys::Date;
use procedures_schema::model;
use wasm_bindgen::JsValue;

/// Milliseconds since 1970.
pub fn now_ms() -> u64 {
    let now = Date::now();
    // A clock before 1970 is broken; zero then only means that groups of typing close at once.
    if now.is_finite() && now > 0.0 { whole(now) } else { 0 }
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "checked by the caller; below 2^53"
)]
fn whole(milliseconds: f64) -> u64 {
    milliseconds as u64
}

#[expect(clippy::cast_precision_loss, reason = "times stay far below 2^53")]
fn local(at_ms: u64) -> Date {
    Date::new(&JsValue::from_f64(at_ms as f64))
}

/// The calendar day here, for rules that look at dates.
pub fn today() -> model::Date {
    let now = local(now_ms());
    let text = format!("{:04}-{:02}-{:02}", now.get_full_year(), now.get_month() + 1, now.get_date());
    // Only a clock outside the years 1 to 9999 gives no date; on the first day no source has run out.
    model::Date::parse(&text).unwrap_or(model::Date::FIRST)
}

/// The moment, as files have it.
pub fn moment(at_ms: u64) -> model::Moment {
    let text = String::from(local(at_ms - at_ms % 1000).to_iso_string()).replace(".000Z", "Z");
    // As for days: only a clock outside the years 1 to 9999 gives none.
    model::Moment::parse(&text).unwrap_or(model::Moment::FIRST)
}

/// Milliseconds since 1970 of a moment of a file; 0 for one before.
pub fn ms_of(moment: &model::Moment) -> u64 {
    let ms = Date::parse(&moment.to_string());
    if ms.is_finite() && ms > 0.0 { whole(ms) } else { 0 }
}

/// The time of day to the second, `10:42:07`.
pub fn to_the_second(at_ms: u64) -> String {
    let at = local(at_ms);
    format!("{:02}:{:02}:{:02}", at.get_hours(), at.get_minutes(), at.get_seconds())
}

/// The time of day to the minute, `10:42`.
pub fn to_the_minute(at_ms: u64) -> String {
    let at = local(at_ms);
    format!("{:02}:{:02}", at.get_hours(), at.get_minutes())
}

/// The number of the calendar day here, counted from 1970.
pub fn day_number(at_ms: u64) -> i64 {
    let at = local(at_ms);
    let here = at.get_time() - at.get_timezone_offset() * 60_000.0;
    #[expect(clippy::cast_possible_truncation, reason = "days are few")]
    let day = (here / 86_400_000.0).floor() as i64;
    day
}

/// Day and time to the minute: `today 10:42`, `yesterday 17:03`, `12 Sep 09:10`, `12 Sep 2025, 09:10`.
pub fn day_and_minute(at_ms: u64, now_ms: u64) -> String {
    const MONTHS: [&str; 12] =
        ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
    let (at, now, time) = (local(at_ms), local(now_ms), to_the_minute(at_ms));
    match day_number(now_ms) - day_number(at_ms) {
        0 => format!("today {time}"),
        1 => format!("yesterday {time}"),
        _ => {
            let month = MONTHS.get(at.get_month() as usize).copied().unwrap_or_default();
            let day = format!("{} {month}", at.get_date());
            if at.get_full_year() == now.get_full_year() {
                format!("{day} {time}")
            } else {
                format!("{day} {}, {time}", at.get_full_year())
            }
        }
    }
}

/// When something was ticked: the time of day, and the day with it unless that is today.
pub fn ticked(at_ms: u64, now_ms: u64) -> String {
    if day_number(at_ms) == day_number(now_ms) { to_the_minute(at_ms) } else { day_and_minute(at_ms, now_ms) }
}

/// A stretch of time as a clock shows it, `9:05`, rounded up to whole seconds.
pub fn remaining(ms: u64) -> String {
    let seconds = ms.div_ceil(1000);
    format!("{}:{:02}", seconds / 60, seconds % 60)
}

/// A length of time in words: `10 min`, `90 s`.
pub fn length(ms: u64) -> String {
    if ms.is_multiple_of(60_000) {
        format!("{} min", ms / 60_000)
    } else {
        format!("{} s", ms.div_ceil(1000))
    }
}

/// How long ago something was, in words: `just now`, `47 min ago`, `3 h ago`.
pub fn ago(then_ms: u64, now_ms: u64) -> String {
    match now_ms.saturating_sub(then_ms) / 60_000 {
        0 => "just now".to_owned(),
        minutes @ 1..120 => format!("{minutes} min ago"),
        minutes => format!("{} h ago", minutes / 60),
    }
}
