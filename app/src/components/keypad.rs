//! A keypad for gloved fingers: digits, one key for the decimal sign, sign, one back and clear.
//!
//! It changes a text and judges nothing. Key repeat does not exist, and a second press of the same key
//! within `BOUNCE_MS` is a wet screen's, not a person's.

use leptos::ev::MouseEvent;
use leptos::prelude::*;

/// A second press of the same key sooner than this is ignored.
const BOUNCE_MS: f64 = 120.0;
/// Longer figures than this are no readings.
const MOST_CHARACTERS: usize = 9;

/// The key that takes the last one back.
const BACK: char = '\u{8}';

/// Keys that type into `figure`; the minus key is there only if the limits allow it.
#[component]
pub fn Keypad(
    /// The figure as typed so far.
    figure: RwSignal<String>,
    /// Whether a minus sign makes sense.
    allows_minus: bool,
) -> impl IntoView {
    let last = StoredValue::new((' ', 0.0));
    let press = move |key: char, event: &MouseEvent| {
        let (last_key, last_ms) = last.get_value();
        last.set_value((key, event.time_stamp()));
        if last_key != key || event.time_stamp() - last_ms > BOUNCE_MS {
            figure.update(|figure| type_key(figure, key));
        }
    };
    let key = move |key: char| {
        view! { <button type="button" class="digit" on:click=move |event| press(key, &event)>{key.to_string()}</button> }
    };
    let minus = allows_minus.then(|| {
        view! { <button type="button" class="digit minus" aria-label="Minus" on:click=move |event| press('-', &event)>"±"</button> }
    });
    view! {
        <div class="keypad" role="group" aria-label="Keypad">
            {['7', '8', '9', '4', '5', '6', '1', '2', '3'].map(key)}
            <button type="button" class="digit zero" on:click=move |event| press('0', &event)>"0"</button>
            <button type="button" class="digit" aria-label="Decimal point" on:click=move |event| press('.', &event)>"."</button>
            {minus}
            <button type="button" class="digit one-back" on:click=move |event| press(BACK, &event)>"One back"</button>
            <button type="button" class="digit clear" on:click=move |_| figure.set(String::new())>"Clear"</button>
        </div>
    }
}

fn type_key(figure: &mut String, key: char) {
    match key {
        BACK => {
            figure.pop();
        }
        '-' => {
            if let Some(positive) = figure.strip_prefix('-') {
                *figure = positive.to_owned();
            } else {
                figure.insert(0, '-');
            }
        }
        '.' if figure.contains('.') => {}
        '.' if figure.is_empty() || figure == "-" => figure.push_str("0."),
        _ if figure.len() >= MOST_CHARACTERS => {}
        key => figure.push(key),
    }
}

#[cfg(test)]
mod tests {
    use super::type_key;
    use wasm_bindgen_test::wasm_bindgen_test;

    fn typed(keys: &str) -> String {
        let mut figure = String::new();
        for key in keys.chars() {
            type_key(&mut figure, key);
        }
        figure
    }

    #[wasm_bindgen_test]
    fn keys_make_figures() {
        assert_eq!(typed("0.05"), "0.05");
        assert_eq!(typed(".5"), "0.5");
        assert_eq!(typed("1.2.3"), "1.23");
        assert_eq!(typed("5-"), "-5");
        assert_eq!(typed("5--"), "5");
        assert_eq!(typed("1234567890123"), "123456789");
        assert_eq!(typed("12\u{8}3\u{8}\u{8}\u{8}"), "");
    }
}
