//! What the tabs of this browser tell each other. A browser without the channel has tabs that do not know of
//! each other.

use procedures_schema::format;
use serde::{Deserialize, Serialize};
use std::cell::RefCell;
use wasm_bindgen::JsCast;
use wasm_bindgen::closure::Closure;
use web_sys::{BroadcastChannel, MessageEvent};

/// The channel of this site.
const NAME: &str = "putback-tabs";

/// What one tab tells the others; every message names the procedure and the tab that speaks.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Word {
    /// The tab that speaks.
    pub from: String,
    /// The procedure.
    pub document: String,
    /// What it says.
    pub says: Says,
}

/// What there is to say.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub enum Says {
    /// "I have opened it, at this time."
    Opened(u64),
    /// "I am writing it."
    Writing,
    /// "Let me write it."
    Wanted,
    /// "Everything of mine is kept, and I only show it now."
    Yielded,
    /// "Something new of it is kept."
    Kept,
    /// "I wrote it, and I am going."
    Gone,
}

thread_local! {
    static CHANNEL: RefCell<Option<BroadcastChannel>> = const { RefCell::new(None) };
}

/// Joins the channel; `hear` is called with every word of another tab.
pub fn join(hear: impl Fn(Word) + 'static) {
    let Ok(channel) = BroadcastChannel::new(NAME) else { return };
    let listen = Closure::<dyn Fn(MessageEvent)>::new(move |event: MessageEvent| {
        let word = event.data().as_string().and_then(|text| format::read_part(&text).ok());
        if let Some(word) = word {
            hear(word);
        }
    });
    // The channel lives as long as the page, and so does its listener.
    channel.set_onmessage(Some(listen.into_js_value().unchecked_ref()));
    CHANNEL.set(Some(channel));
}

/// Tells the other tabs.
pub fn tell(word: &Word) {
    CHANNEL.with_borrow(|channel| {
        if let Some(channel) = channel {
            // A channel that is closed has nobody to tell.
            let _ = channel.post_message(&format::write_part(word).into());
        }
    });
}
