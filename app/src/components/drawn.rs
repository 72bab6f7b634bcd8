//! Acting on what a key has just changed, before the next key is heard.

use leptos::task::{spawn_local, tick};

/// What a change draws may change something that is drawn in its turn; deeper it never goes.
const TURNS: usize = 4;

/// Acts once what was changed in this turn is drawn. That is before the next event, while a frame may come much later
/// where the device is slow: whoever types on meanwhile would type into what is gone.
pub fn once_drawn(act: impl FnOnce() + 'static) {
    spawn_local(async move {
        for _ in 0..TURNS {
            tick().await;
        }
        act();
    });
}
